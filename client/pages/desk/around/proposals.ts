import { LitElement, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Exercise } from '../../../../shared/exercise/exercise.ts';
import type { Wish } from '../../../../shared/exercise/proposals.ts';
import { subjectOf } from '../../../../shared/exercise/wording.ts';
import type { HandSize } from '../../../../shared/theory/hand.ts';
import type { Lies } from '../../../../shared/theory/lies.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';
import { positionNumber } from '../../../../shared/theory/positions.ts';
import { formsAlongNeck } from '../../../../shared/theory/tables/position-names.ts';
import { choiceField } from '../maker/choice-field.ts';
import { deskStyles } from '../desk-styles.ts';
import { foundStyles } from './around-styles.ts';
import type { Found, ProposalCard } from './asks.ts';
import { cardButtons, exercisesOf, walkButtons } from './card-buttons.ts';
import { noWays, type Ways } from './events.ts';
import type { AroundFields } from './fields.ts';
import { Finder } from './finder.ts';
import { handWords, loadSettings, saveSettings, type Settings } from './settings.ts';
import { Staged } from '../../../lib/staged.ts';
import { thumbnail } from './thumbnail.ts';

const liesWords: Readonly<Record<Lies, string>> = {
  'towards-nut': 'Towards the nut',
  around: 'Around the root',
  'towards-bridge': 'Towards the bridge',
};

function easeWords({ ease }: ProposalCard): string {
  if (!ease.ok) return ease.error;
  return ease.value === 'stretch' ? 'A stretch for this hand.' : '';
}

/** Every shape, position or pattern of what is wished from one root, as it lies on the neck from the nut on. */
@customElement('desk-around-proposals')
export class DeskAroundProposals extends LitElement {
  static override styles = [deskStyles, foundStyles];

  @property({ attribute: false }) fields: AroundFields | null = null;
  @property({ attribute: false }) wish: Wish | null = null;
  @property({ attribute: false }) naming: NoteNaming = 'english';
  @property({ attribute: false }) ways: Ways = noWays;
  @state() private settings: Settings = loadSettings();
  @state() private found: Found | null = null;

  private readonly finder = new Finder(this);
  private readonly staged = new Staged(this);
  private asked = '';

  protected override willUpdate() {
    const { fields, wish } = this;
    if (!fields || !wish) return;
    const { instrument, root, rootString, fret } = fields;
    const place = { string: rootString, fret };
    const ask = { kind: 'proposals', instrument, root, place, wish, hand: this.settings.hand } as const;
    const words = JSON.stringify(ask);
    if (words === this.asked) return;
    this.asked = words;
    this.finder.find<'proposals'>(ask, (found) => {
      this.staged.start(found.cards.length);
      this.found = found;
    });
  }

  override render() {
    const { found } = this;
    if (!found) return nothing;
    const { cards } = found;
    return html`<p class="visually-hidden" role="status">
        ${cards.length === 1 ? 'One way of playing it.' : `${String(cards.length)} ways of playing it.`}
      </p>
      ${
        cards.length === 0
          ? html`<p>Nothing that a hand can play lies round this root. Try another string or fret.</p>`
          : html`<div class="ways">
              ${Object.entries(liesWords).map(([lies, words]) => this.group(words, lies as Lies, cards))}
            </div>`
      }
      ${this.further(found)}
      <div class="choices">${this.choices(cards)}</div>`;
  }

  private group(words: string, lies: Lies, cards: readonly ProposalCard[]) {
    if (!cards.some((card) => card.lies === lies)) return nothing;
    return html`<section aria-label=${words}>
      <h3>${words}</h3>
      <ol>
        ${cards.map((card, index) => {
          const { name, exercise, notes } = card;
          if (card.lies !== lies) return nothing;
          return html`<li>
            ${this.ways.keyHidden ? nothing : thumbnail(exercise, notes, name, this.naming, this.staged.has(index))}
            <div class="beside">
              <h4>${this.named(card)}</h4>
              ${easeWords(card) === '' ? nothing : html`<p class="soft">${easeWords(card)}</p>`}
              ${cardButtons(exercise, `${subjectOf(exercise, this.naming)}, ${name}`, this.naming, this.ways)}
            </div>
          </li>`;
        })}
      </ol>
    </section>`;
  }

  /** With its number, for whom positions have numbers. */
  private named({ name, form }: ProposalCard): string {
    const { firstPosition } = this.settings;
    return form && firstPosition ? `Position ${String(positionNumber(form, firstPosition))}: ${name}` : name;
  }

  /** What hangs on teacher and student rather than on the root. */
  private choices(cards: readonly ProposalCard[]) {
    const { hand, firstPosition } = this.settings;
    return this.wish?.kind === 'chord'
      ? choiceField('Hand', { choices: Object.entries(handWords) }, hand, (size) =>
          this.set({ hand: size as HandSize }),
        )
      : cards.some(({ form }) => form)
        ? choiceField(
            'Position numbers',
            {
              choices: [
                ['', 'none'],
                ...formsAlongNeck.map((form) => [form, `1 is the ${form} form`] as const),
              ],
            },
            firstPosition ?? '',
            (first) => this.set({ firstPosition: formsAlongNeck.find((form) => form === first) ?? null }),
          )
        : nothing;
  }

  private set(change: Partial<Settings>) {
    this.settings = { ...this.settings, ...change };
    saveSettings(this.settings);
  }

  /** From here to the neighbouring position, and to the other strings. */
  private further({ join }: Found) {
    const { show, take, takeWords, keyHidden } = this.ways;
    return html`<section class="further" aria-label="From here on">
      ${
        join
          ? html`<div>
              <h3>How they join</h3>
              <p class="soft">${keyHidden ? 'Two positions that share this root.' : join.words}</p>
              ${walkButtons({
                shown: 'how they join',
                show: show && (() => show(join.charts)),
                take: take && (() => take(exercisesOf(join.charts), 'how they join')),
                takeWords,
              })}
            </div>`
          : nothing
      }
      <div>
        <h3>On every string</h3>
        <p class="soft">The same from its lowest root on each string.</p>
        ${walkButtons({
          shown: 'on every string',
          show: show && (() => this.everyString(show)),
          take: take && (() => this.everyString((exercises) => take(exercises, 'on every string'))),
          takeWords,
        })}
      </div>
    </section>`;
  }

  private everyString(use: (exercises: readonly Exercise[]) => void) {
    const { fields, wish } = this;
    if (!fields || !wish) return;
    const { instrument, root } = fields;
    this.finder.find<'every-string'>({ kind: 'every-string', instrument, root, wish }, (exercises) => {
      if (exercises.length > 0) use(exercises);
    });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-around-proposals': DeskAroundProposals;
  }
}
