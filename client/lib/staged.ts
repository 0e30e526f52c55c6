import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** Charts that are drawn within one frame of the screen. */
const perFrame = 3;

/** Draws a long list of charts a few with each frame, so that it never holds the page up. */
export class Staged implements ReactiveController {
  readonly #host: ReactiveControllerHost;
  #drawn = 0;
  #count = 0;

  constructor(host: ReactiveControllerHost) {
    this.#host = host;
    host.addController(this);
  }

  /** Another list, of so many. */
  start(count: number): void {
    this.#drawn = perFrame;
    this.#count = count;
  }

  has(index: number): boolean {
    return index < this.#drawn;
  }

  hostUpdated(): void {
    if (this.#drawn >= this.#count) return;
    requestAnimationFrame(() => {
      this.#drawn += perFrame;
      this.#host.requestUpdate();
    });
  }
}
