import { LitElement, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Exercise } from '../../../../shared/exercise/exercise.ts';
import { generate, type Rung } from '../../../../shared/exercise/generate.ts';
import { instrumentById, standardGuitar, type InstrumentId } from '../../../../shared/theory/fretboard.ts';
import { formatName, type NoteNaming } from '../../../../shared/theory/naming.ts';
import { formatNoteName } from '../../../../shared/theory/pitch.ts';
import { deskStyles } from '../desk-styles.ts';
import { choiceField, segments } from '../maker/choice-field.ts';
import { isOn } from '../maker/field-value.ts';
import { circleStyles, segmentStyles } from '../maker/maker-styles.ts';
import { rangeField } from '../maker/range-field.ts';
import { stringField } from '../maker/string-field.ts';
import { usualRoots } from '../maker/words.ts';
import { refusalLine } from '../refusal.ts';
import { AskEvent, TakeEvent } from './events.ts';
import { fiveStyles } from './five-styles.ts';
import { fiveLine } from './five-line.ts';
import {
  another,
  firstFields,
  lackOf,
  newSeed,
  rootsWords,
  rungWords,
  toggledRoot,
  wishOf,
  type FiveFields,
  type RootsWanted,
} from './wish.ts';

/** Makes several exercises of a rung at once: each can be looked at, replaced or left out before it is taken. */
@customElement('desk-make-five')
export class DeskMakeFive extends LitElement {
  static override styles = [deskStyles, circleStyles, segmentStyles, fiveStyles];

  @property() instrument: InstrumentId = standardGuitar.id;
  @property({ attribute: false }) naming: NoteNaming = 'english';
  /** Whether there is a plan to take them into. */
  @property({ type: Boolean }) planned = false;
  /** Whether one of them can be asked at once. */
  @property({ type: Boolean }) asking = false;
  @property({ type: Boolean }) keyHidden = false;
  @state() private fields: FiveFields = firstFields;
  @state() private made: readonly Exercise[] = [];
  @state() private refusal = '';
  @state() private said = '';

  override render() {
    const lack = lackOf(this.fields);
    const { count } = this.fields;
    const make = html`<button
      type="button"
      class=${this.made.length === 0 ? 'primary' : ''}
      aria-disabled=${lack !== null}
      @click=${this.make}
    >
      ${this.made.length === 0 ? `Make ${String(count)}` : `Make ${String(count)} others`}
    </button>`;
    return html`<div class="fields">
        <div class="wishes">
          ${this.wishes()} ${this.made.length === 0 ? nothing : html`<div class="again">${make}</div>`}
        </div>
        ${this.refusal === '' ? nothing : refusalLine(this.refusal)}
        ${lack === null ? nothing : html`<p class="soft" role="status">${lack}</p>`}
        <div class="visually-hidden" role="status">${this.said}</div>
        ${this.list()}
      </div>
      <div class="row end">
        ${this.made.length === 0 ? make : nothing}
        ${
          this.planned && this.made.length > 0
            ? html`<button
                type="button"
                class="primary"
                @click=${() => this.dispatchEvent(new TakeEvent(this.made))}
              >
                Add ${this.made.length === 1 ? 'it' : `all ${String(this.made.length)}`} to the plan
              </button>`
            : nothing
        }
        <slot></slot>
      </div>`;
  }

  private wishes() {
    const { fields } = this;
    const neck = instrumentById(this.instrument) ?? standardGuitar;
    return html` ${choiceField('What', { choices: Object.entries(rungWords) }, fields.rung, (rung) =>
        this.change({ rung: rung as Rung }),
      )}
      ${stringField('Root on strings', neck, fields.rootStrings, 'many', (string) => {
        const others = fields.rootStrings.filter((other) => other !== string);
        this.change({
          rootStrings: others.length < fields.rootStrings.length ? others : [...others, string],
        });
      })}
      <div class="roots">
        <span class="label">Roots</span>
        ${segments('Roots', 'roots', Object.entries(rootsWords), fields.roots, (roots) =>
          this.change({ roots: roots as RootsWanted }),
        )}
        ${fields.roots === 'own' ? this.ownRoots() : nothing}
      </div>
      <details>
        <summary>
          Frets, how many
          <span class="soft small"
            >${fields.narrow ? `frets ${String(fields.range.low)} to ${String(fields.range.high)}` : 'the whole neck'}
            · ${fields.count === 1 ? 'one exercise' : `${String(fields.count)} exercises`}</span
          >
        </summary>
        <div class="more">
          <label class="tick"
            ><input
              type="checkbox"
              .checked=${fields.narrow}
              @change=${(event: Event) => this.change({ narrow: isOn(event) })}
            />Only between two frets</label
          >
          ${
            fields.narrow
              ? rangeField(fields.range, neck.fretCount, (range) => this.change({ range }))
              : nothing
          }
          ${choiceField(
            'How many',
            { choices: [1, 2, 3, 4, 5, 6, 8, 10, 15, 20].map((n) => [String(n), String(n)]) },
            String(fields.count),
            (count) => this.change({ count: Number(count) }),
          )}
        </div>
      </details>`;
  }

  private ownRoots() {
    const chosen = new Set(this.fields.own.map(formatNoteName));
    return html`<fieldset class="chips">
      <legend class="visually-hidden">My roots</legend>
      ${usualRoots.map(
        (root) =>
          html`<label
            ><input
              type="checkbox"
              .checked=${chosen.has(formatNoteName(root))}
              @change=${() => this.change({ own: toggledRoot(this.fields.own, root) })}
            /><span>${formatName(root, this.naming)}</span></label
          >`,
      )}
    </fieldset>`;
  }

  private list() {
    return html`<ol>
      ${this.made.map((exercise, index) =>
        fiveLine(exercise, this.naming, {
          keyHidden: this.keyHidden,
          ask: this.asking ? () => this.dispatchEvent(new AskEvent(exercise)) : null,
          replace: () => this.replace(index),
          leaveOut: () => this.leaveOut(index),
        }),
      )}
    </ol>`;
  }

  private change(change: Partial<FiveFields>) {
    this.fields = { ...this.fields, ...change };
    this.refusal = '';
  }

  private readonly make = async (): Promise<void> => {
    if (lackOf(this.fields) !== null) return;
    const made = generate(wishOf(this.fields, this.instrument, newSeed()));
    this.refusal = made.ok ? '' : made.error;
    this.made = made.ok ? made.value : [];
    this.said = made.ok ? `${String(made.value.length)} made.` : '';
    // On a phone the wishes fill the screen.
    if (!matchMedia('(max-width: 48rem)').matches) return;
    await this.updateComplete;
    this.renderRoot.querySelector('.again')?.scrollIntoView({ block: 'start' });
  };

  private replace(index: number) {
    const found = another(wishOf(this.fields, this.instrument, newSeed()), this.made);
    this.refusal = found ? '' : 'There is no other one of this kind.';
    if (found) this.made = this.made.map((exercise, at) => (at === index ? found : exercise));
  }

  private leaveOut(index: number) {
    this.made = this.made.filter((_, at) => at !== index);
    this.said = `${String(this.made.length)} left.`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-make-five': DeskMakeFive;
  }
}
