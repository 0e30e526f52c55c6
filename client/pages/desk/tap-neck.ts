import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import {
  instrumentById,
  standardGuitar,
  type FretRange,
  type InstrumentId,
  type Place,
} from '../../../shared/theory/fretboard.ts';
import type { WindowsFittedEvent } from '../../fretboard/events.ts';
import '../../fretboard/neck.ts';
import { deskStyles } from './desk-styles.ts';

const narrow = '(max-width: 40rem)';

/** A wooden neck for the teacher's taps: lying where there is room, upright on a phone, with a button for the rest of it. */
@customElement('desk-tap-neck')
export class DeskTapNeck extends LitElement {
  static override styles = [
    deskStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-2);
        justify-items: start;
      }
      rootcall-neck {
        height: 15rem;
        width: 100%;
      }
      :host([small]) rootcall-neck {
        height: 10rem;
      }
      :host([small]) .upright {
        height: min(18rem, 45dvh);
      }
      .upright {
        height: min(26rem, 55dvh);
        justify-self: center;
        max-width: 22rem;
      }
    `,
  ];

  @property() instrument: InstrumentId = standardGuitar.id;
  @property({ attribute: false }) places: readonly Place[] = [];
  /** One part of a form, not the thing itself. */
  @property({ type: Boolean, reflect: true }) small = false;
  /** Whether each place shows when it was given. */
  @property({ type: Boolean }) ordered = false;
  @property({ attribute: false }) root: Place | null = null;
  @property() label = 'Neck';
  @state() private windows: readonly FretRange[] = [];
  @state() private shown = 0;
  @state() private upright = matchMedia(narrow).matches;

  private readonly media = matchMedia(narrow);
  private readonly turn = () => {
    this.upright = this.media.matches;
  };

  override connectedCallback() {
    super.connectedCallback();
    this.media.addEventListener('change', this.turn);
  }

  override disconnectedCallback() {
    super.disconnectedCallback();
    this.media.removeEventListener('change', this.turn);
  }

  override render() {
    const next = this.windows[(this.shown + 1) % Math.max(1, this.windows.length)];
    return html`<rootcall-neck
        class=${this.upright ? 'upright' : ''}
        material="wood"
        .view=${this.upright ? 'upright' : 'lying'}
        .instrument=${instrumentById(this.instrument) ?? standardGuitar}
        .label=${this.label}
        .places=${this.places}
        .ordered=${this.ordered}
        .root=${this.root}
        .window=${this.windows[this.shown] ?? null}
        @windows-fitted=${(event: WindowsFittedEvent) => {
          this.windows = event.windows;
          this.shown = 0;
        }}
      ></rootcall-neck>
      <div class="row">
        ${
          this.windows.length > 1 && next
            ? html`<button
                type="button"
                @click=${() => (this.shown = (this.shown + 1) % this.windows.length)}
              >
                Frets ${next.low}–${next.high}
              </button>`
            : nothing
        }
        <slot></slot>
      </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-tap-neck': DeskTapNeck;
  }
}
