import { once } from 'node:events';
import { io } from 'socket.io-client';

/** The teacher's hand: the Desk's own calls over HTTP, and a Desk's socket. */
export class Teacher {
  #url;
  #cookie = '';

  constructor(url) {
    this.#url = url;
  }

  async post(path, body) {
    const response = await fetch(`${this.#url}/api/${path}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', cookie: this.#cookie },
      body: JSON.stringify(body),
    });
    const [session] = response.headers.getSetCookie();
    if (session) this.#cookie = session.split(';')[0];
    const answer = await response.json();
    if (!response.ok) throw new Error(`${path}: ${answer.error?.message}`);
    return answer;
  }

  /** Opens a class; resolves once its Desk is connected. */
  async openClass(groupId, planId) {
    const { id } = await this.post(`groups/${groupId}/classes`, { planId });
    const desk = new Desk(this.#url, id, this.#cookie);
    await desk.until((view) => view !== undefined);
    return desk;
  }
}

/** One class as its Desk sees it. */
class Desk {
  view;
  #socket;

  constructor(url, classId, cookie) {
    const auth = { role: 'desk', classId };
    this.#socket = io(url, { auth, extraHeaders: { cookie }, transports: ['websocket'], forceNew: true });
    this.#socket.on('desk:view', (snapshot) => (this.view = snapshot.view));
  }

  async until(condition) {
    while (!condition(this.view)) await once(this.#socket, 'desk:view');
  }

  async do(command) {
    const reply = await this.#socket.timeout(5000).emitWithAck('desk:command', command);
    if (!reply.ok) throw new Error(reply.error.message);
  }

  /** What a round asks, once this Desk has heard of it. */
  async exerciseOf(roundId) {
    const find = (view) => view.rounds.find((round) => round.id === roundId);
    await this.until(find);
    return find(this.view).exercise;
  }

  close() {
    this.#socket.close();
  }
}
