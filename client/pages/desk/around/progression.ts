import { LitElement, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { list } from '../../../../shared/exercise/phrases.ts';
import { chordName } from '../../../../shared/exercise/wording.ts';
import type { Family } from '../../../../shared/theory/families.ts';
import { stringNumbers, type StringNumber } from '../../../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';
import { usualSettings } from '../../../charts/chart-marks.ts';
import '../../../charts/chart-row.ts';
import { deskStyles } from '../desk-styles.ts';
import { choiceField } from '../maker/choice-field.ts';
import { foundStyles } from './around-styles.ts';
import type { ChordCard } from './asks.ts';
import { cardButtons, saveMenu, walkButtons } from './card-buttons.ts';
import { instrumentOf } from '../maker/draft.ts';
import { noWays, type Ways } from './events.ts';
import type { AroundFields } from './fields.ts';
import { Finder } from './finder.ts';
import {
  familyChoices,
  firstRow,
  rangeChoices,
  rangeOf,
  rangeText,
  readRow,
  type RowFields,
} from './row-fields.ts';
import { settledField } from './settled-field.ts';

type Refusal = { readonly field: 'key' | 'chords' | 'neck'; readonly sentence: string } | null;

/** Chords in a row, each on a chart of its own, as the hand goes from one to the next. */
@customElement('desk-around-progression')
export class DeskAroundProgression extends LitElement {
  static override styles = [deskStyles, foundStyles];

  @property({ attribute: false }) fields: AroundFields | null = null;
  @property({ attribute: false }) naming: NoteNaming = 'english';
  @property({ attribute: false }) ways: Ways = noWays;
  @state() private own: RowFields | null = null;
  @state() private cards: readonly ChordCard[] = [];
  @state() private refusal: Refusal = null;

  private readonly finder = new Finder(this);

  protected override firstUpdated() {
    if (this.fields) this.change(firstRow(this.fields, this.naming));
  }

  override render() {
    const { fields, own } = this;
    if (!fields || !own) return nothing;
    const strings = [...stringNumbers(instrumentOf(fields))].reverse().map(String);
    return html`<div class="chords">
        ${settledField('Key', own.key, this.sentence('key'), (key) => this.change({ key }))}
        ${settledField('Chords', own.chords, this.sentence('chords'), (chords) => this.change({ chords }))}
        ${choiceField(
          'Roots',
          {
            choices: [
              ...strings.map((string) => [string, `on string ${string}`] as const),
              ['', 'where the hand moves least'],
            ],
          },
          String(own.rootString ?? ''),
          (text) => this.change({ rootString: text === '' ? null : (Number(text) as StringNumber) }),
        )}
        ${choiceField('Shapes', { choices: familyChoices }, own.family, (family) =>
          this.change({ family: family as Family }),
        )}
        ${choiceField('Frets', { choices: rangeChoices }, rangeText(own.range), (text) =>
          this.change({ range: rangeOf(text) }),
        )}
      </div>
      <p class="problem" role="status">${this.sentence('neck')}</p>
      ${this.cards.length === 0 ? nothing : this.row()}`;
  }

  private row() {
    const { cards, naming } = this;
    const { show, take, takeWords, keyHidden } = this.ways;
    const exercises = cards.map(({ exercise }) => exercise);
    const titles = cards.map((card) => this.headingOf(card));
    const below = cards.map((card, index) => this.below(card, index));
    return html`<div class="row">
        ${
          show || take
            ? walkButtons({
                shown: 'it chord by chord',
                taken: 'the progression',
                show: show && (() => show(exercises)),
                take: take && (() => take(exercises, 'the progression')),
                takeWords,
                filled: true,
              })
            : nothing
        }
        ${keyHidden ? nothing : saveMenu(exercises, cards.map((card) => this.named(card)).join(' '), naming)}
      </div>
      ${
        keyHidden
          ? html`<ol aria-label="Chords in a row">
              ${below.map(
                (words, index) =>
                  html`<li>
                    <h3>${titles[index]}</h3>
                    ${words}
                  </li>`,
              )}
            </ol>`
          : html`<rootcall-chart-row
              label="Chords in a row"
              .charts=${exercises}
              .keys=${cards.map(({ notes }) => notes)}
              .titles=${titles}
              .settings=${{ ...usualSettings, naming }}
              >${below}</rootcall-chart-row
            >`
      }`;
  }

  private named({ chord: { root, quality, bass } }: ChordCard): string {
    return chordName(root, quality, this.naming, bass);
  }

  private headingOf(card: ChordCard): string {
    const { numeral } = card.chord;
    return this.named(card) + (numeral === undefined ? '' : ` ${numeral}`);
  }

  /** What is said of a chord below its chart. */
  private below(card: ChordCard, index: number) {
    const { exercise, root, common } = card;
    const { place, finger } = root;
    const held = common.held.map(({ string }) => string);
    return html`<div class="beside" slot=${`below-${String(index)}`}>
      ${
        this.ways.keyHidden
          ? nothing
          : html`<p class="small">
              root: string ${place.string}${finger > 0 ? `, finger ${String(finger)}` : nothing}<br />
              ${held.length === 0 ? nothing : html`<b>held: string${held.length === 1 ? '' : 's'} ${list(held)}</b>`}
            </p>`
      }
      ${cardButtons(exercise, this.named(card), this.naming, { ...this.ways, show: null })}
    </div>`;
  }

  private sentence(field: 'key' | 'chords' | 'neck'): string {
    return this.refusal?.field === field ? this.refusal.sentence : '';
  }

  /** What can't be read changes nothing but the sentence beside its field. */
  private change(change: Partial<RowFields>) {
    const { fields, naming } = this;
    // A field may settle after its dialog was left.
    if (!fields || !this.isConnected) return;
    const own = { ...(this.own ?? firstRow(fields, naming)), ...change };
    this.own = own;
    const read = readRow(own, naming, instrumentOf(fields).fretCount);
    this.refusal = read.ok ? null : read.error;
    if (!read.ok) return;
    this.finder.find<'row'>({ kind: 'row', instrument: fields.instrument, ...read.value }, (laid) => {
      this.refusal = laid.ok ? null : { field: 'neck', sentence: laid.error };
      if (!laid.ok) return;
      this.cards = laid.value;
    });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-around-progression': DeskAroundProgression;
  }
}
