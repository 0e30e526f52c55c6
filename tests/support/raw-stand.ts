import { setTimeout as wait } from 'node:timers/promises';
import { WebSocket } from 'ws';
import type { CommandReply } from '../../shared/protocol/events.ts';

/** The server answered 503: it asks to come again. */
class Busy extends Error {}

/** A tenth of the second for which the server asks: here nobody minds a crowd. */
const pause = 100;

export interface Opening {
  readonly headers?: Readonly<Record<string, string>>;
  /** Called with each event as text. */
  readonly heard?: (text: string) => void;
  /** Which failures pass by themselves; a busy server alone, unless said otherwise. */
  readonly passes?: (error: unknown) => boolean;
  /** How often to come again. */
  readonly tries?: number;
}

/**
 * A Stand that costs next to nothing: it speaks the wire's own text, so that a thousand of them in one process don't
 * hold up what they measure. `42["event",…]` is an event, `43<n>[…]` the answer to command n.
 */
export class RawStand {
  readonly #socket: WebSocket;
  readonly #waiting = new Map<
    number,
    { readonly resolve: (reply: CommandReply) => void; readonly reject: () => void }
  >();
  #commands = 0;
  closed: () => void = () => undefined;

  private constructor(socket: WebSocket) {
    this.#socket = socket;
  }

  /** Resolves once the first snapshots are here; comes again where that may help. */
  static async open(port: number, auth: object, opening: Opening = {}): Promise<RawStand> {
    const { passes = (error) => error instanceof Busy, tries = 60 } = opening;
    for (let left = tries; ; left -= 1) {
      try {
        return await RawStand.#knock(port, auth, opening);
      } catch (error) {
        if (left === 0 || !passes(error)) throw error;
        await wait(pause);
      }
    }
  }

  static #knock(port: number, auth: object, { headers = {}, heard }: Opening): Promise<RawStand> {
    return new Promise((resolve, reject) => {
      const address = `ws://127.0.0.1:${String(port)}/socket.io/?EIO=4&transport=websocket`;
      const socket = new WebSocket(address, { perMessageDeflate: false, headers });
      const stand = new RawStand(socket);
      socket.on('error', reject);
      socket.on('unexpected-response', (_request, { statusCode }) => {
        reject(statusCode === 503 ? new Busy('busy') : new Error(`answered ${String(statusCode)}`));
        socket.terminate();
      });
      socket.on('close', () => {
        reject(new Error('closed'));
        for (const waiting of stand.#waiting.values()) waiting.reject();
        stand.closed();
      });
      socket.on('message', (data: Buffer) => {
        const text = data.toString();
        if (text.startsWith('0{')) socket.send(`40${JSON.stringify(auth)}`);
        else if (text === '2') socket.send('3');
        else if (text.startsWith('43')) stand.#answered(text);
        else if (text.startsWith('44')) reject(new Error(text));
        else if (text.startsWith('42')) {
          heard?.(text);
          if (/^42\["(stand:own|desk:view|board:view)"/.test(text)) resolve(stand);
        }
      });
    });
  }

  /** Sends a command; resolves with the server's reply, and fails where the line goes first. */
  send(event: 'stand:command' | 'desk:command', command: object): Promise<CommandReply> {
    this.#commands += 1;
    const id = this.#commands;
    return new Promise((resolve, reject) => {
      if (this.#socket.readyState !== WebSocket.OPEN) return reject(new Error('closed'));
      this.#waiting.set(id, { resolve, reject: () => reject(new Error('closed before the answer')) });
      this.#socket.send(`42${String(id)}${JSON.stringify([event, command])}`);
    });
  }

  /** Sends any text at all. */
  raw(text: string | Buffer): void {
    if (this.#socket.readyState === WebSocket.OPEN) this.#socket.send(text);
  }

  close(): void {
    this.#socket.terminate();
  }

  #answered(text: string): void {
    const at = text.indexOf('[');
    const id = Number(text.slice(2, at));
    const [reply] = JSON.parse(text.slice(at)) as [CommandReply];
    this.#waiting.get(id)?.resolve(reply);
    this.#waiting.delete(id);
  }
}
