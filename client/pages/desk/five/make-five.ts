import { LitElement, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Exercise } from '../../../../shared/exercise/exercise.ts';
import type { Part, PlannedExercise } from '../../../../shared/plans/plan.ts';
import { generate, type Rung, type Third } from '../../../../shared/exercise/generate.ts';
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
import { partWords } from '../plan/words.ts';
import { AskEvent, TakeEvent } from './events.ts';
import { fiveStyles } from './five-styles.ts';
import { fiveLine } from './five-line.ts';
import {
  another,
  firstFields,
  harderFor,
  lackOf,
  newSeed,
  rootsWords,
  rungWords,
  thirdWords,
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
  /** What the plan holds, where it can be said what becomes of them there. */
  @property({ attribute: false }) existing: readonly PlannedExercise[] | null = null;
  /** Whether one of them can be asked at once. */
  @property({ type: Boolean }) asking = false;
  @property({ type: Boolean }) keyHidden = false;
  @state() private fields: FiveFields = firstFields;
  @state() private made: readonly Exercise[] = [];
  @state() private refusal = '';
  @state() private said = '';
  @state() private under: Part = 'new';
  @state() private asLevel = false;

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
        ${this.made.length > 0 && this.existing ? this.where(this.existing) : nothing}
        ${this.made.length === 0 ? make : nothing}
        ${
          this.planned && this.made.length > 0
            ? html`<button type="button" class="primary" @click=${this.take}>
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
      ${
        fields.rung === 'triads'
          ? choiceField('Which triads', { choices: Object.entries(thirdWords) }, fields.third, (third) =>
              this.change({ third: third as Third }),
            )
          : nothing
      }
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

  /** Which part they go under, and whether as a harder level of what stands there. */
  private where(existing: readonly PlannedExercise[]) {
    const easier = harderFor(existing, this.under, this.made.length);
    return html`${choiceField('Under', { choices: Object.entries(partWords) }, this.under, (part) => {
      this.under = part as Part;
      this.asLevel = false;
    })}
    ${
      easier.length === 0
        ? nothing
        : html`<label class="tick"
            ><input
              type="checkbox"
              .checked=${this.asLevel}
              @change=${(event: Event) => (this.asLevel = isOn(event))}
            />As a harder level of ${easier.length === 1 ? 'the one' : `the ${String(easier.length)}`} there,
            in the same order</label
          >`
    }`;
  }

  private readonly take = (): void => {
    const easier = this.asLevel ? harderFor(this.existing ?? [], this.under, this.made.length) : [];
    this.dispatchEvent(new TakeEvent(this.made, this.under, easier));
  };

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
