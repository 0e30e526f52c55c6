import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Size } from './paper.ts';

/** CSS pixels in a millimetre (CSS Values 4: 96 to the inch). */
const pixels = 96 / 25.4;

/** How much smaller than paper the pages are shown, so that they fit the column. */
export class PreviewScale implements ReactiveController {
  readonly #host: ReactiveControllerHost;
  readonly #observer = new ResizeObserver(([entry]) => {
    const width = entry?.contentRect.width ?? 0;
    // Printed, the column is as wide as the paper, and nothing is scaled.
    if (width === 0 || width === this.#width) return;
    this.#width = width;
    this.#host.requestUpdate();
  });
  #width = 0;
  #observed: Element | null = null;

  constructor(host: ReactiveControllerHost) {
    this.#host = host;
    host.addController(this);
  }

  /** True size at most. */
  of({ width }: Size): number {
    return this.#width === 0 ? 1 : Math.min(1, this.#width / (width * pixels));
  }

  observe(column: Element | null): void {
    if (column === this.#observed) return;
    this.#observer.disconnect();
    this.#observed = column;
    if (column) this.#observer.observe(column);
  }

  hostDisconnected(): void {
    this.observe(null);
  }
}
