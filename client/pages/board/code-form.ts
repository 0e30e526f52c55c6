import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import '../../components/mark.ts';
import { boardStyles } from './board-styles.ts';
import { readCode } from './words.ts';

/** Somebody gave the Board a class code. */
export class CodeGivenEvent extends Event {
  static readonly eventName = 'board-code-given';

  constructor(readonly code: string) {
    super(CodeGivenEvent.eventName, { bubbles: true, composed: true });
  }
}

/** `/board` without a code: one field, large enough to be typed from the back of the room. */
@customElement('board-code-form')
export class BoardCodeForm extends LitElement {
  static override styles = [
    boardStyles,
    css`
      :host {
        display: grid;
        min-height: 100vh;
        min-height: 100dvh;
        padding: calc(84 * var(--unit)) var(--margin);
        place-items: center;
      }
      main {
        width: min(100%, calc(1240 * var(--unit)));
      }
      form {
        display: grid;
        gap: calc(40 * var(--unit));
      }
      h1 {
        align-items: center;
        column-gap: calc(28 * var(--unit));
        display: flex;
        font-size: calc(84 * var(--unit));
      }
      label {
        font-size: var(--text-lead);
        font-weight: 500;
      }
      .field {
        display: grid;
        gap: calc(24 * var(--unit));
        grid-template-columns: minmax(0, 1fr) auto;
      }
      input:not([type='checkbox'], [type='radio']) {
        font-family: var(--face-title);
        font-size: max(24px, calc(112 * var(--unit)));
        font-weight: 600;
        letter-spacing: 0.1em;
        min-width: 0;
        padding: calc(12 * var(--unit)) calc(32 * var(--unit));
        text-transform: uppercase;
      }
      button {
        font-size: max(18px, var(--text-lead));
        padding-inline: calc(56 * var(--unit));
      }
      .refusal {
        color: var(--rose);
        font-weight: 600;
        min-height: 1.3em;
      }
      @media (max-aspect-ratio: 1/1) {
        .field {
          grid-template-columns: minmax(0, 1fr);
        }
      }
    `,
  ];

  /** The code that was refused, to be mended; and why, in a sentence. */
  @property() code = '';
  @property() refusal = '';

  override render() {
    const refused = this.refusal !== '';
    return html`<main>
      <form @submit=${this.submit}>
        <h1><rootcall-mark></rootcall-mark>Board</h1>
        <label for="code">The class’s code, as the Desk shows it</label>
        <div class="field">
          <input
            id="code"
            name="code"
            .value=${this.code}
            autocomplete="off"
            autocapitalize="characters"
            spellcheck="false"
            maxlength="12"
            required
            aria-describedby="refusal"
            aria-invalid=${refused ? 'true' : nothing}
          />
          <button class="primary">Open</button>
        </div>
        <p class="refusal lead" id="refusal" role="alert">${this.refusal}</p>
      </form>
    </main>`;
  }

  protected override firstUpdated(): void {
    this.renderRoot.querySelector('input')?.focus();
  }

  private readonly submit = (event: SubmitEvent): void => {
    event.preventDefault();
    const code = readCode(this.renderRoot.querySelector('input')?.value ?? '');
    if (code !== '') this.dispatchEvent(new CodeGivenEvent(code));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'board-code-form': BoardCodeForm;
  }
  interface HTMLElementEventMap {
    'board-code-given': CodeGivenEvent;
  }
}
