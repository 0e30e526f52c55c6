import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { plansFor } from '../../../../shared/plans/course.ts';
import type { ReadyPlan } from '../../../../shared/plans/ready-plan.ts';
import { cautionsOf, pointsOf, slipsToExpect } from '../../../../shared/plans/words.ts';
import { standardGuitar, type InstrumentId } from '../../../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';
import { deskStyles } from '../desk-styles.ts';

/** A ready plan is to be taken into the group. */
export class TakePlanEvent extends Event {
  static readonly kind = 'desk-take-plan';
  readonly plan: ReadyPlan;
  constructor(plan: ReadyPlan) {
    super(TakePlanEvent.kind);
    this.plan = plan;
  }
}

/** The ready plans that fit the group's instrument, each with what a teacher wants to know before taking it. */
@customElement('desk-shelf')
export class DeskShelf extends LitElement {
  static override styles = [
    deskStyles,
    css`
      ol > li + li {
        border-top: 1px solid var(--line);
      }
      summary {
        align-items: baseline;
        cursor: pointer;
        display: flex;
        gap: var(--space-3);
        justify-content: space-between;
        min-height: var(--target);
        padding-block: var(--space-2);
      }
      summary .small {
        flex: none;
      }
      summary span:first-child {
        text-decoration: underline 1px;
        text-underline-offset: 0.2em;
      }
      .lesson {
        display: grid;
        gap: var(--space-3);
        padding-bottom: var(--space-4);
        text-wrap: pretty;
      }
      .lesson ul {
        display: grid;
        gap: var(--space-2);
        list-style: disc;
        padding-left: 1.2rem;
      }
    `,
  ];

  @property() instrument: InstrumentId = standardGuitar.id;
  @property() naming: NoteNaming = 'english';
  /** The lesson that is open: what it says is worked out only then. */
  @state() private open = '';

  override render() {
    const plans = plansFor(this.instrument);
    if (plans.length === 0)
      return html`<p class="soft">
        The ready plans are for a guitar in standard tuning. None fits this instrument.
      </p>`;
    return html`<ol>
      ${plans.map(
        (plan, index) =>
          html`<li>
            <details
              ?open=${this.open === plan.id}
              @toggle=${(event: ToggleEvent) => this.turn(plan.id, event.newState === 'open')}
            >
              <summary>
                <span>${index + 1}. ${plan.title}</span>
                <span class="soft small">${plan.minutes} minutes</span>
              </summary>
              ${this.open === plan.id ? this.lesson(plan) : nothing}
            </details>
          </li>`,
      )}
    </ol>`;
  }

  private lesson(plan: ReadyPlan) {
    const slips = slipsToExpect(plan, this.naming);
    return html`<div class="lesson">
      <p>${plan.aim}</p>
      <div>
        <h3>To say</h3>
        <ul>
          ${pointsOf(plan, this.naming).map((point) => html`<li>${point}</li>`)}
        </ul>
      </div>
      ${
        slips.length === 0
          ? nothing
          : html`<div>
              <h3>Slips to expect</h3>
              <ul>
                ${slips.map(
                  ({ name, of, says }) =>
                    html`<li><b>${name}.</b> <span class="soft">${of}:</span> ${says}</li>`,
                )}
              </ul>
            </div>`
      }
      <p class="soft small">${cautionsOf(plan).join(' ')}</p>
      <div>
        <button @click=${() => this.dispatchEvent(new TakePlanEvent(plan))}>
          Take these ${plan.exercises.length} exercises
        </button>
      </div>
    </div>`;
  }

  private turn(id: string, isOpen: boolean) {
    if (isOpen) this.open = id;
    else if (this.open === id) this.open = '';
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-shelf': DeskShelf;
  }
}
