import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { samePlace, type Place } from '../../../../shared/theory/fretboard.ts';
import type { DeskView } from '../../../../shared/protocol/views.ts';
import type { PlaceToggledEvent } from '../../../fretboard/events.ts';
import { stepText } from '../../../lib/step-text.ts';
import { deskStyles } from '../desk-styles.ts';
import '../tap-neck.ts';
import { CommandEvent, PanelEvent } from './events.ts';

/** What is on Board and Stands without a question, and the neck for the teacher's live taps. */
@customElement('desk-shown')
export class DeskShown extends LitElement {
  static override styles = [
    deskStyles,
    css`
      .sheet {
        border-left: 4px solid var(--brass);
        display: grid;
        gap: var(--space-3);
        margin-bottom: var(--space-3);
      }
      .line {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-2) var(--space-4);
        align-items: center;
        justify-content: space-between;
      }
    `,
  ];

  @property({ attribute: false }) view: DeskView | null = null;
  /** Whether the neck for live taps is open. */
  @property({ type: Boolean }) tapping = false;

  override render() {
    const { view } = this;
    if (!view || (!view.show && !this.tapping)) return nothing;
    return html`<section class="sheet" aria-label="Shown on Board and Stands">
      <div class="line">
        <p role="status">${this.words(view)}</p>
        <span class="row">
          ${
            this.tapping && this.places.length > 0
              ? html`<button @click=${() => this.show([])}>Clear the neck</button>`
              : nothing
          }
          <button @click=${this.stop}>Show nothing</button>
        </span>
      </div>
      ${
        this.tapping
          ? html`<desk-tap-neck
              .instrument=${view.instrument}
              .places=${this.places}
              label="Your taps, live on Board and Stands"
              @place-toggled=${this.toggle}
            ></desk-tap-neck>`
          : nothing
      }
    </section>`;
  }

  private get places(): readonly Place[] {
    const show = this.view?.show;
    return show?.kind === 'taps' ? show.places : [];
  }

  private words(view: DeskView) {
    if (!view.show) return 'Tap: everybody sees it at once, without note names.';
    if (view.show.kind === 'taps') return html`<b>Your taps</b> are on Board and Stands.`;
    const { title, detail } = view.show.wording[view.naming];
    const { step } = view.show;
    return html`On Board and Stands${step ? `, ${stepText(step).toLowerCase()}` : ''}: <b>${title}</b>
      <span class="soft">${detail}</span>`;
  }

  private toggle(event: PlaceToggledEvent) {
    const without = this.places.filter((place) => !samePlace(place, event.place));
    this.show(without.length < this.places.length ? without : [...without, event.place]);
  }

  private show(places: readonly Place[]) {
    this.dispatchEvent(new CommandEvent({ kind: 'show-taps', places: [...places] }));
  }

  private stop() {
    if (this.view?.show) this.dispatchEvent(new CommandEvent({ kind: 'show-nothing' }));
    this.dispatchEvent(new PanelEvent(null));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-shown': DeskShown;
  }
}
