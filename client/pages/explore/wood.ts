import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import {
  standardGuitar,
  type FretRange,
  type Instrument,
  type Place,
} from '../../../shared/theory/fretboard.ts';
import type { WindowsFittedEvent } from '../../fretboard/events.ts';
import '../../fretboard/neck.ts';
import type { HeardMark } from '../../fretboard/state.ts';
import { windowHolding } from '../../fretboard/wood-frame.ts';
import { landscape, MediaQuery } from '../../lib/media-query.ts';
import { baseStyle } from '../../styles/base.ts';
import { roundStyle } from '../stand/round-style.ts';
import { windowsFor } from '../stand/windows.ts';
import { windowWords } from '../stand/words.ts';

function differs(a: FretRange | null, b: FretRange | null | undefined): boolean {
  return a?.low !== b?.low || a?.high !== b?.high;
}

/** A neck of wood and the button to its other frets, laid into the grid of whatever holds them. */
@customElement('explore-wood')
export class ExploreWood extends LitElement {
  static override readonly styles = [
    baseStyle,
    roundStyle,
    css`
      :host {
        display: contents;
      }
    `,
  ];

  @property({ attribute: false }) instrument: Instrument = standardGuitar;
  @property({ attribute: false }) places: readonly Place[] = [];
  @property({ attribute: false }) heard: readonly HeardMark[] = [];
  @property({ attribute: false }) asked: Place | null = null;
  /** Frets that are to be in sight. */
  @property({ attribute: false, hasChanged: differs }) range: FretRange | null = null;
  @property({ type: Boolean }) leftHanded = false;
  @property() label = 'Neck';
  @state() private fitted: readonly FretRange[] = [];
  @state() private chosen: FretRange | null = null;

  readonly #landscape = new MediaQuery(this, landscape);

  protected override willUpdate(changed: Map<PropertyKey, unknown>): void {
    const { chosen, range } = this;
    // A tap leaves the window where it is; what is chosen elsewhere brings its own into sight.
    const isInSight = chosen && range && chosen.low <= range.low && chosen.high >= range.high;
    if (changed.has('instrument') || (changed.has('range') && range && !isInSight)) this.chosen = null;
  }

  protected override render(): TemplateResult {
    const windows = windowsFor(this.fitted, this.range);
    const wanted = this.chosen ?? this.range;
    const shown = (wanted ? windowHolding(windows, wanted) : windows[0]) ?? null;
    const next = windows[(windows.findIndex(({ low }) => low === shown?.low) + 1) % windows.length];
    return html`${
        windows.length > 1 && next && !this.asked
          ? html`<button type="button" class="window" @click=${() => (this.chosen = next)}>
              ${windowWords(next)}
            </button>`
          : nothing
      }
      <rootcall-neck
        material="wood"
        .label=${this.label}
        .instrument=${this.instrument}
        .view=${this.#landscape.now ? 'lying' : 'upright'}
        .leftHanded=${this.leftHanded}
        .window=${shown}
        .places=${this.places}
        .heard=${this.heard}
        .asked=${this.asked}
        @windows-fitted=${(event: WindowsFittedEvent) => (this.fitted = event.windows)}
      ></rootcall-neck>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'explore-wood': ExploreWood;
  }
}
