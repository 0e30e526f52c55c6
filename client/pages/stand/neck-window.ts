import { html, nothing, type ReactiveControllerHost, type TemplateResult } from 'lit';
import type { TaskView } from '../../../shared/protocol/views.ts';
import type { FretRange } from '../../../shared/theory/fretboard.ts';
import { windowHolding } from '../../fretboard/wood-frame.ts';
import { windowsFor } from './windows.ts';
import { windowWords } from './words.ts';

/** Which frets of the neck a task shows, and the button that leads to the others. */
export class NeckWindow {
  readonly #host: ReactiveControllerHost;
  #fitted: readonly FretRange[] = [];
  #chosen: FretRange | null = null;

  constructor(host: ReactiveControllerHost) {
    this.#host = host;
  }

  /** Another question. */
  forget(): void {
    this.#chosen = null;
  }

  /** As many frets as fit at once, in so many windows. */
  fit(windows: readonly FretRange[]): void {
    this.#fitted = windows;
    this.#host.requestUpdate();
  }

  /** The window with the place that is asked for, else the one the student chose, else that of the range asked, else the one by the nut. */
  shown(task: TaskView): FretRange | null {
    const { input } = task;
    const windows = this.#windows(task);
    const asked = input.kind === 'name' ? { low: input.place.fret, high: input.place.fret } : null;
    const range = asked ?? this.#chosen ?? rangeOf(task);
    return (range ? windowHolding(windows, range) : windows[0]) ?? null;
  }

  /** Names the window that a press leads to; where all frets fit there is nothing to press. */
  button(task: TaskView): TemplateResult | typeof nothing {
    const windows = this.#windows(task);
    const at = windows.findIndex(({ low }) => low === this.shown(task)?.low);
    const next = windows[(at + 1) % windows.length];
    if (windows.length < 2 || !next) return nothing;
    const choose = () => {
      this.#chosen = next;
      this.#host.requestUpdate();
    };
    return html`<button type="button" class="window" @click=${choose}>${windowWords(next)}</button>`;
  }

  #windows(task: TaskView): readonly FretRange[] {
    return windowsFor(this.#fitted, rangeOf(task));
  }
}

function rangeOf({ range }: TaskView): FretRange | null {
  return range as FretRange | null;
}
