import { connect, createServer, type Server, type Socket } from 'node:net';
import type { AddressInfo } from 'node:net';

/** What lies between a browser and the server, and what it does to the lines that pass. */
export class BadNetwork {
  /** `refuse`: no WebSocket opens · `cut`: it opens and is closed at its first word. */
  webSockets: 'pass' | 'refuse' | 'cut' = 'pass';
  readonly #server: Server;
  readonly #target: number;
  readonly #lines = new Set<{ readonly near: Socket; readonly far: Socket }>();
  #down = false;
  #port = 0;
  /** WebSockets that were asked for. */
  tried = 0;

  private constructor(target: number) {
    this.#target = target;
    this.#server = createServer((near) => this.#take(near));
  }

  static async before(url: string): Promise<BadNetwork> {
    const network = new BadNetwork(Number(new URL(url).port));
    await new Promise<void>((resolve) => network.#server.listen(0, '127.0.0.1', resolve));
    network.#port = (network.#server.address() as AddressInfo).port;
    return network;
  }

  get url(): string {
    return `http://rootcall.test:${String(this.#port)}`;
  }

  /** Nothing passes either way for so long; then all of it does. */
  async stall(milliseconds: number): Promise<void> {
    const held = [...this.#lines];
    for (const { near, far } of held) for (const end of [near, far]) end.pause();
    await new Promise((resolve) => setTimeout(resolve, milliseconds));
    for (const { near, far } of held) for (const end of [near, far]) end.resume();
  }

  /** The lines there are carry nothing any more, and neither end is told. New ones do. */
  deafen(): void {
    for (const { near, far } of this.#lines) {
      near.removeAllListeners('data').resume();
      far.removeAllListeners('data').resume();
    }
  }

  /** Cuts all lines and takes no new one, until `up`. */
  down(): void {
    this.#down = true;
    for (const { near, far } of this.#lines) for (const end of [near, far]) end.destroy();
  }

  up(): void {
    this.#down = false;
  }

  async close(): Promise<void> {
    this.down();
    await new Promise((resolve) => this.#server.close(resolve));
  }

  #take(near: Socket): void {
    near.on('error', () => undefined);
    if (this.#down) return void near.destroy();
    const far = connect(this.#target, '127.0.0.1');
    const line = { near, far };
    this.#lines.add(line);
    let cutNext = false;
    near.on('data', (data: Buffer) => {
      const upgrade = /^GET [^\n]*transport=websocket/.test(data.toString('latin1'));
      if (upgrade) this.tried += 1;
      if (upgrade && this.webSockets === 'refuse')
        return void near.end('HTTP/1.1 403 Forbidden\r\nconnection: close\r\ncontent-length: 0\r\n\r\n');
      cutNext ||= upgrade && this.webSockets === 'cut';
      far.write(data);
    });
    far.on('data', (data: Buffer) => {
      near.write(data);
      if (cutNext) near.end();
    });
    far.on('error', () => near.destroy());
    for (const [end, other] of [
      [near, far],
      [far, near],
    ] as const)
      end.on('close', () => {
        this.#lines.delete(line);
        other.destroy();
      });
  }
}
