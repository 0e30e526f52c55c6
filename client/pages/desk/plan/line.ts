import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { usualSettings } from '../../../charts/chart-marks.ts';
import '../../../charts/chart-save.ts';
import type { Exercise } from '../../../../shared/exercise/exercise.ts';
import { levelName, levelsOf, mostHarder, type Level } from '../../../../shared/exercise/levels.ts';
import { wordingOf } from '../../../../shared/exercise/wording.ts';
import { parts, type Part, type PlannedExercise } from '../../../../shared/plans/plan.ts';
import { instrumentById, standardGuitar, type InstrumentId } from '../../../../shared/theory/fretboard.ts';
import { instrumentName } from '../../../../shared/theory/instrument.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';
import '../charts.ts';
import { deskStyles } from '../desk-styles.ts';
import { valueOf } from '../maker/field-value.ts';
import { limitWords } from '../maker/words.ts';
import { LineEvent, type LineWish } from './line-event.ts';
import { lineStyles } from './line-styles.ts';
import { Near } from './near.ts';
import './slips.ts';
import type { InsteadEvent } from './slips.ts';
import { partWords, titleOf } from './words.ts';

/**
 * One exercise of a plan: what it asks at each level, its keys, where slips land, and what can be done with it. It
 * is drawn again only where one of its own properties changes.
 */
@customElement('desk-plan-line')
export class DeskPlanLine extends LitElement {
  static override styles = [deskStyles, lineStyles];

  @property({ attribute: false }) planned: PlannedExercise | null = null;
  @property({ type: Boolean }) first = false;
  @property({ type: Boolean }) last = false;
  /** The group's: another one is said. */
  @property() instrument: InstrumentId = standardGuitar.id;
  @property({ attribute: false }) naming: NoteNaming = 'english';
  private readonly near = new Near(this);

  /** Puts the focus on what it was on before the line was moved. */
  focusOn(wish: string): void {
    this.renderRoot.querySelector<HTMLElement>(`[data-wish="${wish}"]`)?.focus();
  }

  override render() {
    const { planned } = this;
    if (!planned) return nothing;
    const title = titleOf(planned, this.naming);
    const levels = levelsOf(planned);
    return html`<div class=${levels.length > 1 ? 'levels' : ''}>
        ${levels.map((exercise, index) => this.level(exercise, (index + 1) as Level, levels.length > 1))}
      </div>
      <div class="buttons">
        ${this.step(-1, '↑', `Move ${title} up`, !this.first)}
        ${this.step(1, '↓', `Move ${title} down`, !this.last)}
        ${
          planned.harder.length === 0
            ? this.button('Change', `Change ${title}`, { kind: 'make', level: 1 })
            : nothing
        }
        ${this.button('Duplicate', `Duplicate ${title}`, { kind: 'duplicate' })}
        ${
          planned.harder.length === 0
            ? this.button('Take out', `Take out ${title}`, { kind: 'take' })
            : this.button('Take out all levels', `Take out all levels of ${title}`, { kind: 'take' })
        }
        ${
          planned.harder.length < mostHarder
            ? this.button('Add a harder level', `Add a harder level of ${title}`, {
                kind: 'make',
                level: (levels.length + 1) as Level,
              })
            : nothing
        }
        ${this.partChoice(planned, title)}
        ${
          this.near.now
            ? html`<rootcall-chart-save
                .charts=${levels}
                .settings=${{ ...usualSettings, naming: this.naming }}
                .name=${title}
              ></rootcall-chart-save>`
            : nothing
        }
      </div>`;
  }

  private level(exercise: Exercise, level: Level, isOneOfSeveral: boolean): TemplateResult {
    const { title, detail } = wordingOf(exercise, this.naming);
    const name = levelName(level);
    return html`<div class="level">
      <div class="words">
        ${isOneOfSeveral ? html`<p class="soft small">${name}</p>` : nothing}
        <h3>${title}</h3>
        <p class="soft small">${detail}</p>
        ${level === 1 ? this.apart(exercise) : nothing}
      </div>
      ${
        this.near.now
          ? html`<desk-key-chart .exercise=${exercise} .naming=${this.naming}></desk-key-chart>`
          : html`<div class="chart"></div>`
      }
      <div class="below">
        ${
          isOneOfSeveral
            ? html`<div class="buttons">
                ${this.button('Change', `Change ${name}: ${title}`, { kind: 'make', level })}
                ${
                  level > 1
                    ? this.button('Swap with easier', `Swap with easier: ${name}, ${title}`, {
                        kind: 'swap-level',
                        level,
                      })
                    : nothing
                }
                ${this.button('Take out', `Take out ${name}: ${title}`, { kind: 'take-level', level })}
              </div>`
            : nothing
        }
        ${
          this.near.now
            ? html`<desk-plan-slips
                .exercise=${exercise}
                .naming=${this.naming}
                @desk-instead=${({ exercise: other }: InsteadEvent) =>
                  this.wish({ kind: 'ask-instead', level, exercise: other })}
              ></desk-plan-slips>`
            : nothing
        }
      </div>
    </div>`;
  }

  /** Its time limit, and its instrument where that is not the group's. */
  private apart(exercise: Exercise) {
    const { planned, naming } = this;
    const neck = instrumentById(exercise.instrument);
    const words = [
      planned?.seconds ? limitWords(planned.seconds) : '',
      neck && exercise.instrument !== this.instrument ? instrumentName(neck, naming) : '',
    ].filter((part) => part !== '');
    return words.length === 0 ? nothing : html`<p class="small">${words.join(' · ')}</p>`;
  }

  private partChoice({ part }: PlannedExercise, title: string) {
    return html`<label
      ><span class="visually-hidden">Part of ${title}</span
      ><select
        data-wish="part"
        @change=${(event: Event) => this.wish({ kind: 'part', part: valueOf(event) as Part })}
      >
        ${parts.map((one) => html`<option value=${one} .selected=${one === part}>${partWords[one]}</option>`)}
      </select></label
    >`;
  }

  private button(words: string, label: string, wish: LineWish) {
    return html`<button class="plain" aria-label=${label} @click=${() => this.wish(wish)}>${words}</button>`;
  }

  private step(by: -1 | 1, words: string, label: string, can: boolean) {
    return html`<button
      class="narrow"
      data-wish=${by === 1 ? 'down' : 'up'}
      aria-label=${label}
      aria-disabled=${!can}
      @click=${() => can && this.wish({ kind: 'step', by })}
    >
      ${words}
    </button>`;
  }

  private wish(wish: LineWish) {
    if (this.planned) this.dispatchEvent(new LineEvent(this.planned.id, wish));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-plan-line': DeskPlanLine;
  }
}
