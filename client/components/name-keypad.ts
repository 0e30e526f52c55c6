import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { namedDegrees, type Named } from '../../shared/exercise/answer.ts';
import type { NameExercise } from '../../shared/exercise/exercise.ts';
import { namedText } from '../../shared/exercise/name-words.ts';
import type { NoteNaming } from '../../shared/theory/naming.ts';
import { letters, type Alteration, type Letter } from '../../shared/theory/pitch.ts';
import { baseStyle } from '../styles/base.ts';
import { keyTo, type KeyBox } from './key-grid.ts';
import { keypadStyle } from './keypad-style.ts';

/** A place was given a name; whoever listens sets `named`. */
export class NamedEvent extends Event {
  static readonly eventName = 'named';

  constructor(readonly named: Named) {
    super(NamedEvent.eventName, { bubbles: true, composed: true });
  }
}

interface Key {
  readonly text: string;
  readonly spoken?: string;
  readonly checked: boolean;
  readonly press: () => void;
}

const accidentals: readonly (readonly [Alteration, string, string])[] = [
  [-1, '♭', 'flat'],
  [0, '♮', 'natural'],
  [1, '♯', 'sharp'],
];

/** "flat 3", as a sign alone is not read aloud everywhere. */
function degreeSpoken(degree: string): string {
  return degree === '1' ? 'root' : degree.replace('b', 'flat ').replace('#', 'sharp ');
}

/** Keys that name a place: letter and accidental of a note, an interval, or a degree. One stop for Tab, arrows inside. */
@customElement('rootcall-name-keypad')
export class NameKeypad extends LitElement {
  static override readonly styles = [baseStyle, keypadStyle];

  @property() wanted: NameExercise['wanted'] = 'note';
  @property() naming: NoteNaming = 'english';
  @property({ attribute: false }) named: Named | undefined;
  @property({ type: Boolean }) disabled = false;

  /** The accidental that is on, which may be chosen before its letter. */
  @state() private alteration: Alteration = 0;
  @state() private at: number | null = null;

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('named')) this.alteration = this.named?.kind === 'note' ? this.named.note.alteration : 0;
    if (changed.has('wanted')) this.at = null;
  }

  protected override render(): TemplateResult {
    const isNote = this.wanted === 'note';
    return html`<div
      class=${isNote ? 'keys note' : 'keys'}
      role="toolbar"
      aria-label="Name"
      aria-disabled=${this.disabled ? 'true' : nothing}
      @keydown=${this.#onKey}
    >
      ${isNote ? this.#noteKeys() : this.#degreeKeys()}
    </div>`;
  }

  #noteKeys(): TemplateResult {
    const { named, naming } = this;
    const note = named?.kind === 'note' ? named.note : undefined;
    const letterKeys = letters.map((letter): Key => ({
      text: namedText({ kind: 'note', note: { letter, alteration: 0 } }, 'note', naming),
      checked: note?.letter === letter,
      press: () => {
        this.#nameNote(letter, this.alteration);
      },
    }));
    const signKeys = accidentals.map(([alteration, text, spoken]): Key => ({
      text,
      spoken,
      checked: this.alteration === alteration,
      press: () => {
        if (note) this.#nameNote(note.letter, alteration);
        else this.alteration = alteration;
      },
    }));
    return html`${this.#group('Letter', 'letters', letterKeys, 0, letterKeys.length + signKeys.length)}
      ${this.#group('Accidental', 'signs', signKeys, letterKeys.length, letterKeys.length + signKeys.length)}
      <span class="name" aria-hidden="true">${named ? namedText(named, 'note', naming) : nothing}</span>`;
  }

  #degreeKeys(): TemplateResult {
    const { named, naming, wanted } = this;
    const keys = namedDegrees.map((degree): Key => ({
      text: namedText({ kind: 'degree', degree }, wanted, naming),
      ...(wanted === 'degree' ? { spoken: degreeSpoken(degree) } : {}),
      checked: named?.kind === 'degree' && named.degree === degree,
      press: () => {
        this.#give({ kind: 'degree', degree });
      },
    }));
    const isInterval = wanted === 'interval';
    return this.#group(
      isInterval ? 'Interval' : 'Degree',
      isInterval ? 'intervals' : 'degrees',
      keys,
      0,
      keys.length,
    );
  }

  /** `from`: how many keys stand before these, of so many `all`. */
  #group(label: string, look: string, keys: readonly Key[], from: number, all: number): TemplateResult {
    const checked = keys.findIndex((key) => key.checked);
    const start = from === 0 ? Math.max(0, checked) : -1;
    const at = this.at !== null && this.at < all ? this.at - from : start;
    return html`<div role="radiogroup" aria-label=${label} class=${`group ${look}`}>
      ${keys.map(
        ({ text, spoken, checked: isOn, press }, index) =>
          html`<button
            type="button"
            role="radio"
            aria-checked=${isOn ? 'true' : 'false'}
            aria-label=${spoken ?? nothing}
            ?disabled=${this.disabled}
            tabindex=${index === at ? 0 : -1}
            @focus=${() => (this.at = from + index)}
            @click=${press}
          >
            ${text}
          </button>`,
      )}
    </div>`;
  }

  #nameNote(letter: Letter, alteration: Alteration): void {
    this.#give({ kind: 'note', note: { letter, alteration } });
  }

  #give(named: Named): void {
    this.dispatchEvent(new NamedEvent(named));
  }

  readonly #onKey = (event: KeyboardEvent): void => {
    const keys = [...this.renderRoot.querySelectorAll('button')];
    const boxes = keys.map((key): KeyBox => {
      const { left, right, top, bottom } = key.getBoundingClientRect();
      return { x: (left + right) / 2, y: (top + bottom) / 2 };
    });
    const from = keys.findIndex((key) => key.matches(':focus'));
    const to = from < 0 ? null : keyTo(boxes, from, event.key);
    if (to === null) return;
    event.preventDefault();
    keys[to]?.focus({ focusVisible: true });
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'rootcall-name-keypad': NameKeypad;
  }
  interface HTMLElementEventMap {
    named: NamedEvent;
  }
}
