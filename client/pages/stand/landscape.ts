import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** Whether the window is wide rather than tall: the neck then lies. Draws its element again when that turns. */
export class Landscape implements ReactiveController {
  readonly #query = matchMedia('(min-aspect-ratio: 6/5)');
  readonly #host: ReactiveControllerHost;

  constructor(host: ReactiveControllerHost) {
    this.#host = host;
    host.addController(this);
  }

  get now(): boolean {
    return this.#query.matches;
  }

  hostConnected(): void {
    this.#query.addEventListener('change', this.#turned);
  }

  hostDisconnected(): void {
    this.#query.removeEventListener('change', this.#turned);
  }

  readonly #turned = (): void => {
    this.#host.requestUpdate();
  };
}
