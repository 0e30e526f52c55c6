import type { LitElement, ReactiveController } from 'lit';
import type { Part } from '../../../../shared/plans/plan.ts';

/** Where a dragged exercise would go: before another of the part, or to the part's end. */
export interface Spot {
  readonly part: Part;
  readonly before: string | null;
}

/** Pixels from the window's edge inside which dragging scrolls, and how far in one frame. */
const edge = 72;
const scrollStep = 14;

/**
 * Drags a line by its grip, with mouse, pen or finger. The host's lines are `[data-id]`, the end of each part is
 * `[data-end]`, both with `data-part`; a bar shows where the line would go.
 */
export class DragLines implements ReactiveController {
  readonly #host: LitElement;
  readonly #drop: (id: string, spot: Spot) => void;
  #stop: () => void = () => undefined;
  /** What is dragged; null while nothing is. */
  id: string | null = null;

  constructor(host: LitElement, drop: (id: string, spot: Spot) => void) {
    this.#host = host;
    this.#drop = drop;
    host.addController(this);
  }

  hostDisconnected(): void {
    this.#stop();
  }

  /** From pressing the grip of a line on. */
  start(event: PointerEvent, id: string): void {
    const grip = event.currentTarget;
    if (event.button !== 0 || !(grip instanceof HTMLElement) || this.id !== null) return;
    event.preventDefault();
    grip.setPointerCapture(event.pointerId);
    this.id = id;
    let y = event.clientY;
    let spot: Marked | null = null;
    let frame = 0;
    const bar = this.#host.renderRoot.querySelector<HTMLElement>('.drop');
    const follow = () => {
      if (y < edge) scrollBy(0, -scrollStep);
      else if (y > innerHeight - edge) scrollBy(0, scrollStep);
      spot = nearest(this.#spots(), y);
      if (bar && spot) {
        bar.hidden = false;
        bar.style.top = `${String(spot.y - (bar.offsetParent?.getBoundingClientRect().top ?? 0))}px`;
      }
      frame = requestAnimationFrame(follow);
    };
    const move = (moved: PointerEvent) => {
      y = moved.clientY;
      frame ||= requestAnimationFrame(follow);
    };
    const end = () => {
      const target = spot;
      this.#stop();
      if (target) this.#drop(id, target);
    };
    const leave = (pressed: KeyboardEvent) => {
      if (pressed.key === 'Escape') this.#stop();
    };
    const stop = () => this.#stop();
    grip.addEventListener('pointermove', move);
    grip.addEventListener('pointerup', end);
    grip.addEventListener('pointercancel', stop);
    addEventListener('keydown', leave);
    this.#stop = () => {
      this.#stop = () => undefined;
      cancelAnimationFrame(frame);
      grip.removeEventListener('pointermove', move);
      grip.removeEventListener('pointerup', end);
      grip.removeEventListener('pointercancel', stop);
      removeEventListener('keydown', leave);
      if (bar) bar.hidden = true;
      this.id = null;
      this.#host.requestUpdate();
    };
    this.#host.requestUpdate();
  }

  /** Every spot and its height in the window. Read anew each time: lines grow as they come near. */
  #spots(): readonly Marked[] {
    const marks = this.#host.renderRoot.querySelectorAll<HTMLElement>('[data-id], [data-end]');
    return [...marks].map((mark) => ({
      part: mark.dataset['part'] as Part,
      before: mark.dataset['id'] ?? null,
      y: mark.getBoundingClientRect().top,
    }));
  }
}

interface Marked extends Spot {
  readonly y: number;
}

function nearest(spots: readonly Marked[], y: number): Marked | null {
  return spots.reduce<Marked | null>(
    (best, spot) => (best && Math.abs(best.y - y) <= Math.abs(spot.y - y) ? best : spot),
    null,
  );
}
