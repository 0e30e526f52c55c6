import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import { deskStyles } from '../desk-styles.ts';
import { refusalLine } from '../refusal.ts';
import { letterActions, usualLetters, withLetter, wordsOf, type LetterAction, type Letters } from './keys.ts';

/** The teacher chose other keys. */
export class LettersEvent extends Event {
  static readonly kind = 'desk-letters';
  readonly letters: Letters;
  constructor(letters: Letters) {
    super(LettersEvent.kind);
    this.letters = letters;
  }
}

/** One field for each step's key, and the way back to the usual ones. */
@customElement('desk-key-letters')
export class DeskKeyLetters extends LitElement {
  static override styles = [
    deskStyles,
    css`
      summary {
        cursor: pointer;
        padding-block: var(--space-2);
      }
      .fields {
        display: grid;
        gap: var(--space-2) var(--space-4);
        grid-template-columns: repeat(auto-fill, minmax(7rem, 1fr));
      }
      input {
        text-align: center;
        text-transform: uppercase;
      }
    `,
  ];

  @property({ attribute: false }) letters: Letters = usualLetters;
  @state() private refusal = '';

  override render() {
    const changed = letterActions.some((action) => this.letters[action] !== usualLetters[action]);
    const now = letterActions.map((action) => this.letters[action].toUpperCase()).join(', ');
    return html`<details>
      <summary>The keys: ${now}</summary>
      <div class="stack">
        <div class="fields">${letterActions.map((action) => this.field(action))}</div>
        ${refusalLine(this.refusal)}
        ${changed ? html`<div><button @click=${() => this.choose(usualLetters)}>The usual keys</button></div>` : nothing}
        <p class="soft small">Kept on this device.</p>
      </div>
    </details>`;
  }

  private field(action: LetterAction) {
    return html`<label
      >${wordsOf(action)}
      <input
        maxlength="1"
        autocomplete="off"
        .value=${live(this.letters[action])}
        @focus=${(event: Event) => (event.target as HTMLInputElement).select()}
        @change=${(event: Event) => this.change(action, (event.target as HTMLInputElement).value)}
      />
    </label>`;
  }

  private change(action: LetterAction, typed: string) {
    const letters = withLetter(this.letters, action, typed);
    if (letters.ok) return this.choose(letters.value);
    this.refusal = letters.error;
    this.requestUpdate();
  }

  private choose(letters: Letters) {
    this.refusal = '';
    this.dispatchEvent(new LettersEvent(letters));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-key-letters': DeskKeyLetters;
  }
}
