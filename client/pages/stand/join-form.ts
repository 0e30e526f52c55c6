import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { ErrorReply } from '../../../shared/protocol/errors.ts';
import { JoinEvent } from './events.ts';
import { standHeader } from './header.ts';
import { standStyles } from './stand-style.ts';

/** The door: the code from the board, and a name. A link with the code in it leaves the name alone. */
@customElement('stand-join')
export class StandJoin extends LitElement {
  static override readonly styles = [
    standStyles,
    css`
      .door {
        display: grid;
        grid-template-rows: auto minmax(0, 1fr) auto;
        min-height: 100%;
      }
      form {
        align-self: center;
        display: grid;
        gap: var(--space-4);
        justify-self: center;
        max-width: 24rem;
        padding: var(--space-4) calc(var(--margin) * 2);
        width: 100%;
      }
      h1 {
        font-size: clamp(2rem, 10vw, 2.75rem);
      }
      .field {
        display: grid;
        gap: var(--space-1);
      }
      .code {
        font-size: 1.5rem;
        font-weight: 600;
        letter-spacing: 0.25em;
        text-transform: uppercase;
      }
      .refused {
        border-inline-start: 3px solid var(--rose);
        padding-inline-start: var(--space-3);
      }
      .primary {
        min-height: 3rem;
      }
      footer {
        display: flex;
        font-size: var(--text-small);
        justify-content: space-between;
        padding: 0 var(--margin) calc(var(--space-2) + env(safe-area-inset-bottom));
      }
      @media (max-height: 500px) and (min-width: 600px) {
        form {
          gap: var(--space-2) var(--space-4);
          grid-template-columns: repeat(2, minmax(0, 1fr));
          max-width: 40rem;
          padding-block: 0;
        }
        form > :not(.field) {
          grid-column: 1 / -1;
        }
        h1 {
          font-size: 1.75rem;
        }
        .primary {
          margin-top: var(--space-2);
        }
      }
      footer a {
        align-items: center;
        color: var(--soft);
        display: inline-flex;
        min-height: var(--target);
      }
    `,
  ];

  /** From the link, or '' where it is to be typed. */
  @property() code = '';
  @property() name = '';
  @property({ attribute: false }) refusal: ErrorReply | null = null;
  @property({ type: Boolean }) busy = false;

  protected override render(): TemplateResult {
    const { refusal } = this;
    const codeRefused = refusal?.code === 'unknown-code' || refusal?.code === 'class-closed';
    const nameRefused = refusal?.code === 'name-missing' || refusal?.code === 'too-long';
    return html`<div class="door">
      ${standHeader('Rootcall')}
      <form @submit=${this.#onSubmit} novalidate>
        <h1>Join the class</h1>
        <hr />
        ${refusal ? html`<p class="refused" id="refused" role="alert">${refusal.message}</p>` : nothing}
        <div class="field">
          <label for="code">Code on the board</label>
          <input
            id="code"
            name="code"
            class="code"
            .value=${this.code}
            maxlength="12"
            autocomplete="off"
            autocapitalize="characters"
            spellcheck="false"
            required
            aria-invalid=${codeRefused ? 'true' : 'false'}
            aria-describedby=${codeRefused ? 'refused' : nothing}
          />
        </div>
        <div class="field">
          <label for="name">Your name or seat number</label>
          <input
            id="name"
            name="name"
            dir="auto"
            .value=${this.name}
            maxlength="40"
            autocomplete="given-name"
            spellcheck="false"
            required
            aria-invalid=${nameRefused ? 'true' : 'false'}
            aria-describedby=${nameRefused ? 'refused' : nothing}
          />
        </div>
        <button class="primary" ?disabled=${this.busy}>${this.busy ? 'One moment' : 'Join'}</button>
      </form>
      <footer><a href="/explore">Explore the neck</a><a href="/desk">I teach</a></footer>
    </div>`;
  }

  protected override firstUpdated(): void {
    // A link has filled the code: the name is all that is left to do.
    this.#field(this.code === '' ? 'code' : 'name')?.focus();
  }

  #field(name: 'code' | 'name'): HTMLInputElement | null {
    return this.renderRoot.querySelector<HTMLInputElement>(`#${name}`);
  }

  readonly #onSubmit = (event: SubmitEvent): void => {
    event.preventDefault();
    const code = (this.#field('code')?.value ?? '').replace(/[^a-z]/gi, '').toUpperCase();
    const name = (this.#field('name')?.value ?? '').trim();
    if (code === '') this.#field('code')?.focus();
    else if (name === '') this.#field('name')?.focus();
    else this.dispatchEvent(new JoinEvent(code, name));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'stand-join': StandJoin;
  }
}
