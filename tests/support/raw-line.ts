import { once } from 'node:events';
import { WebSocket } from 'ws';
import type { Reachable } from './people.ts';

/** A line that speaks the wire's own text, for what no browser does. */
export class RawLine {
  readonly socket: WebSocket;
  readonly heard: string[] = [];

  constructor(server: Pick<Reachable, 'url'>, headers: Readonly<Record<string, string>> = {}) {
    this.socket = new WebSocket(`${server.url.replace('http', 'ws')}/socket.io/?EIO=4&transport=websocket`, {
      headers,
    });
    this.socket.on('message', (data: Buffer) => {
      const text = data.toString();
      this.heard.push(text);
      if (text === '2') this.socket.send('3');
    });
    this.socket.on('error', () => undefined);
  }

  /** The status with which the handshake was answered; 101 where it was let in. */
  status(): Promise<number> {
    return new Promise((resolve) => {
      this.socket.once('open', () => resolve(101));
      this.socket.once('unexpected-response', (_request, { statusCode = 0 }) => resolve(statusCode));
    });
  }

  /** Takes its place; resolves once a first word of that kind is here. */
  async enter(auth: object, event: string): Promise<void> {
    if (this.socket.readyState === WebSocket.CONNECTING) await once(this.socket, 'open');
    this.socket.send(`40${JSON.stringify(auth)}`);
    while (!this.heard.some((text) => text.startsWith(`42["${event}"`))) await once(this.socket, 'message');
  }

  /** Reads nothing any more, as a phone that was put to sleep. */
  stopReading(): void {
    this.socket.pause();
  }

  closed(): Promise<number> {
    return new Promise((resolve) => this.socket.once('close', (code) => resolve(code)));
  }

  end(): void {
    this.socket.terminate();
  }
}
