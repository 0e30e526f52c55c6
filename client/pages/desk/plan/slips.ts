import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Exercise } from '../../../../shared/exercise/exercise.ts';
import { wordingOf } from '../../../../shared/exercise/wording.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';
import { deskStyles } from '../desk-styles.ts';
import { meetingsIn, slipLandings } from '../five/slip-landings.ts';

/** Another exercise is to be asked in place of this one. */
export class InsteadEvent extends Event {
  static readonly kind = 'desk-instead';
  readonly exercise: Exercise;
  constructor(exercise: Exercise) {
    super(InsteadEvent.kind);
    this.exercise = exercise;
  }
}

/** The likely slips of an exercise, worked out when they are looked at; those that meet are said at once. */
@customElement('desk-plan-slips')
export class DeskPlanSlips extends LitElement {
  static override styles = [
    deskStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-1);
        grid-template-columns: minmax(0, 1fr);
      }
      details {
        font-size: var(--text-small);
      }
      summary {
        font-weight: 400;
        min-height: 24px;
        padding-block: var(--space-1);
      }
      dl {
        display: grid;
        gap: 0 var(--space-3);
        grid-template-columns: repeat(auto-fill, minmax(min(100%, 15rem), 1fr));
        margin: 0;
      }
      dt {
        font-weight: 600;
      }
      dd {
        margin: 0 0 var(--space-2);
      }
      .meeting {
        border-left: 3px solid var(--brass);
        display: grid;
        gap: var(--space-2);
        grid-template-columns: minmax(0, 1fr);
        justify-items: start;
        padding-left: var(--space-3);
      }
    `,
  ];

  @property({ attribute: false }) exercise: Exercise | null = null;
  @property({ attribute: false }) naming: NoteNaming = 'english';
  @state() private isOpen = false;

  override render() {
    const { exercise } = this;
    // A name is answered with a word: it lands nowhere.
    if (!exercise || exercise.kind === 'name') return nothing;
    const title = (other: Exercise) => wordingOf(other, this.naming).title;
    return html`${meetingsIn(exercise).map(
        ({ says, instead }) =>
          html`<div class="meeting small">
            <p>${says}</p>
            ${
              instead
                ? html`<button @click=${() => this.dispatchEvent(new InsteadEvent(instead))}>
                    Ask from another root instead: ${title(instead)}
                  </button>`
                : nothing
            }
          </div>`,
      )}
      <details @toggle=${(event: ToggleEvent) => (this.isOpen = event.newState === 'open')}>
        <summary>Likely slips<span class="visually-hidden">: ${title(exercise)}</span></summary>
        ${this.isOpen ? landingsOf(exercise) : nothing}
      </details>`;
  }
}

function landingsOf(exercise: Exercise) {
  const landings = slipLandings(exercise);
  if (landings.length === 0) return html`<p class="soft">No slip is likelier than another here.</p>`;
  return html`<dl>
    ${landings.map(
      ({ name, where }) =>
        html`<div>
          <dt>${name}</dt>
          <dd class="soft">${where}</dd>
        </div>`,
    )}
  </dl>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-plan-slips': DeskPlanSlips;
  }
}
