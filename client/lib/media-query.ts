import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** A window that is wide rather than tall: the Stand's neck then lies. */
export const landscape = '(min-aspect-ratio: 6/5)';

/** Whether a media query holds. Draws its element again when that turns. */
export class MediaQuery implements ReactiveController {
  readonly #query: MediaQueryList;
  readonly #host: ReactiveControllerHost;

  constructor(host: ReactiveControllerHost, query: string) {
    this.#query = matchMedia(query);
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
