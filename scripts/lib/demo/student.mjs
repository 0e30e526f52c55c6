import { randomUUID } from 'node:crypto';
import { io } from 'socket.io-client';

/** A simulated student on a real socket: hears what is asked, places note after note, says when it is done. */
export class Student {
  /** The round that is open on this Stand; undefined where none is. */
  roundId;
  #socket;
  #timers = [];
  #onAsked;

  constructor(onAsked) {
    this.#onAsked = onAsked;
  }

  /** Gives code and name at the door, as the Stand's page does. */
  async join(url, code, name) {
    const response = await fetch(`${url}/api/join`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ code, name }),
    });
    const { token, error } = await response.json();
    if (!token) throw new Error(`${name} could not come in: ${error?.message}`);
    const auth = { role: 'stand', token };
    this.#socket = io(url, { auth, transports: ['websocket'], forceNew: true });
    let own;
    let shared;
    const look = () => own?.seat === 'in' && shared && this.#hear(shared.stage);
    this.#socket.on('stand:own', ({ view }) => ((own = view), look()));
    this.#socket.on('stand:shared', ({ view }) => ((shared = view), look()));
  }

  #hear(stage) {
    const roundId = stage.kind === 'open' ? stage.roundId : undefined;
    if (roundId === this.roundId) return;
    this.roundId = roundId;
    for (const timer of this.#timers) clearTimeout(timer);
    this.#timers = [];
    if (roundId) this.#onAsked(roundId);
  }

  /** Places the answer after so many seconds: first a part of it, soon after all. */
  answer(roundId, answer, seconds) {
    const { places } = answer;
    // What was played is sent as a whole.
    const parts = places.length === 0 || answer.heard ? [] : [1 / 3, 2 / 3];
    const sends = [
      ...parts.map((part) => ({ places: places.slice(0, Math.ceil(places.length * part)) })),
      answer,
    ];
    sends.forEach((given, index) => {
      const send = () => this.#place(roundId, given, index === sends.length - 1);
      this.#timers.push(setTimeout(send, 1000 * (seconds + Math.min(1, seconds / 4) * index)));
    });
  }

  #place(roundId, given, done) {
    // An answer that the hold cut off is no matter here.
    if (roundId === this.roundId)
      this.#socket.emit(
        'stand:command',
        { kind: 'place', roundId, sendId: randomUUID(), ...given, done },
        () => {},
      );
  }

  leave() {
    this.#hear({ kind: 'rest' });
    this.#socket?.close();
  }
}
