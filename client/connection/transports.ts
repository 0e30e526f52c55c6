import { WebSocket, XHR, type Manager } from 'socket.io-client';

/** What Socket.IO takes as a list of transports. */
export type Transports = NonNullable<Manager['opts']['transports']>;

/** How long a WebSocket may stay silent before long-polling is tried instead, in milliseconds. */
const patience = 2500;
/** A WebSocket that lived shorter than this was cut by something in between, in milliseconds. */
const shortLife = 5000;

/**
 * A WebSocket that says when it is good for nothing. A school's proxy may let it open and close it at once, or
 * swallow what it carries; the library falls back to the next transport only on an error, so it gets one.
 */
class CandidWebSocket extends WebSocket {
  #settled = false;
  #timer: ReturnType<typeof setTimeout> | undefined;

  override doOpen(): this {
    const opened = super.doOpen();
    this.#timer = setTimeout(() => {
      this.#giveUp();
    }, patience);
    return opened;
  }

  protected override onData(data: Parameters<WebSocket['onData']>[0]): void {
    this.#settled = true;
    clearTimeout(this.#timer);
    super.onData(data);
  }

  protected override onClose(details?: Parameters<WebSocket['onClose']>[0]): void {
    clearTimeout(this.#timer);
    if (this.#settled) super.onClose(details);
    else this.#giveUp();
  }

  override doClose(): void {
    // On purpose: no silence to complain of.
    this.#settled = true;
    clearTimeout(this.#timer);
    super.doClose();
  }

  #giveUp(): void {
    if (this.#settled) return;
    this.#settled = true;
    this.onError('the WebSocket stayed silent', undefined);
    this.close();
  }
}

/** WebSocket first, long-polling where it doesn't come through. */
export const bothTransports: Transports = [CandidWebSocket, XHR];
const pollingOnly: Transports = [XHR];

/** Keeps to long-polling for the next connection where a WebSocket was cut soon after it opened. */
export function avoidCutWebSockets(manager: Manager): void {
  let openedAt = 0;
  manager.on('open', () => {
    openedAt = performance.now();
  });
  manager.on('close', (reason) => {
    if (reason === 'forced close') return;
    const cut = manager.engine.transport.name === 'websocket' && performance.now() - openedAt < shortLife;
    manager.opts.transports = cut ? pollingOnly : bothTransports;
  });
}
