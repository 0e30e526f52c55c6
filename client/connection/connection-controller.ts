import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { ClassConnection, ViewEvent } from './class-connection.ts';

/** Draws its element again on every change of the connection, and closes it when the element goes. */
export class ConnectionController<E extends ViewEvent> implements ReactiveController {
  readonly #host: ReactiveControllerHost;
  #connection: ClassConnection<E> | null = null;
  #stop: () => void = () => undefined;

  constructor(host: ReactiveControllerHost) {
    this.#host = host;
    host.addController(this);
  }

  get connection(): ClassConnection<E> | null {
    return this.#connection;
  }

  /** Takes a connection over and lets the one before it go. */
  use(connection: ClassConnection<E> | null): void {
    this.#stop();
    this.#connection?.close();
    this.#connection = connection;
    this.#stop = connection?.subscribe(() => this.#host.requestUpdate()) ?? (() => undefined);
    this.#host.requestUpdate();
  }

  hostDisconnected(): void {
    this.use(null);
  }
}
