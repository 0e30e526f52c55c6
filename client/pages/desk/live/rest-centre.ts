import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { patternText } from '../../../../shared/exercise/pattern.ts';
import { wordingOf } from '../../../../shared/exercise/wording.ts';
import type { DeskView } from '../../../../shared/protocol/views.ts';
import { instrumentById, standardGuitar } from '../../../../shared/theory/fretboard.ts';
import '../charts.ts';
import { deskStyles } from '../desk-styles.ts';
import { limitWords } from '../maker/words.ts';
import { PanelEvent } from './events.ts';
import { harderLines } from './harder-lines.ts';
import './invite.ts';
import { planned } from './steps.ts';

/** The middle of the live Desk between rounds: what Ask would ask with its answer key, and the way in. */
@customElement('desk-rest-centre')
export class DeskRestCentre extends LitElement {
  static override styles = [
    deskStyles,
    css`
      :host {
        align-content: start;
        display: grid;
        gap: var(--space-4);
      }
      .next {
        display: grid;
        gap: var(--space-4);
        grid-template-columns: minmax(0, 1fr) minmax(9rem, 16rem);
      }
      .text {
        align-content: start;
        display: grid;
        gap: var(--space-2);
      }
      .key {
        text-align: center;
      }
      desk-key-chart:not([lying]) {
        height: 15rem;
      }
      /* A long neck needs the width more than the words do. */
      .next:has([lying]) {
        grid-template-columns: minmax(0, 2fr) minmax(0, 3fr);
      }
      @media (max-width: 60rem) {
        h1 {
          font-size: 1.5rem;
        }
        desk-key-chart:not([lying]) {
          height: 11rem;
        }
        .next {
          grid-template-columns: minmax(0, 1fr) minmax(7rem, 40%);
        }
        .next:has([lying]) {
          grid-template-columns: minmax(0, 1fr);
        }
        .next:has([lying]) .key {
          text-align: start;
        }
      }
      @media (max-width: 22rem) {
        .next {
          grid-template-columns: minmax(0, 1fr);
        }
      }
    `,
  ];

  @property({ attribute: false }) view: DeskView | null = null;
  @property({ type: Boolean }) hiding = false;

  override render() {
    const { view } = this;
    if (!view) return nothing;
    const last = view.rounds.at(-1);
    const neck = instrumentById(view.instrument) ?? standardGuitar;
    return html`
      ${
        last?.voided
          ? html`<p role="status">
              Round ${last.number} is taken back. Undo brings it back with its answers.
            </p>`
          : nothing
      }
      ${view.pattern && !this.hiding ? html`<p>${patternText(view.pattern, 'class', neck)}</p>` : nothing}
      ${this.next(view)}
      ${
        view.rounds.length === 0
          ? html`<section class="sheet" aria-label="How students come in">
              <desk-invite .code=${view.code}></desk-invite>
            </section>`
          : nothing
      }
    `;
  }

  private next(view: DeskView) {
    const next = planned(view);
    if (!next)
      return html`<section class="sheet text">
        <h1>${view.plan && view.plan.exercises.length > 0 ? 'The plan ends here' : 'Nothing is planned'}</h1>
        <p>
          ${
            view.plan && view.plan.exercises.length > 0
              ? 'Ask something on the spot, choose from the plan again, or close the class.'
              : 'Ask makes an exercise on the spot.'
          }
        </p>
      </section>`;
    const { title, detail } = wordingOf(next.exercise, view.naming);
    return html`<section class="sheet next" aria-label="What Ask would ask">
      <div class="text">
        <p class="soft small">Next: ${view.cursor + 1} of ${view.plan?.exercises.length}</p>
        <h1>${title}</h1>
        <p class="soft">${detail}</p>
        ${harderLines(next.harder, view.naming)}
        <p>${limitWords(next.seconds)}</p>
        <p><button @click=${() => this.dispatchEvent(new PanelEvent('change'))}>Change it first</button></p>
      </div>
      <div class="key">
        <p class="soft small">${next.harder.length > 0 ? 'Answer key, first level' : 'Answer key'}</p>
        ${
          this.hiding
            ? html`<p class="soft small">Hidden.</p>`
            : html`<desk-key-chart .exercise=${next.exercise} .naming=${view.naming}></desk-key-chart>`
        }
      </div>
    </section>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-rest-centre': DeskRestCentre;
  }
}
