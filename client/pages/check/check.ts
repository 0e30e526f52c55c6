import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import '../../components/mark.ts';
import { sign, type SignName } from '../../components/signs.ts';
import { tryLine, tryServer } from '../../connection/try-line.ts';
import { baseStyle } from '../../styles/base.ts';
import { readingPageStyle } from '../../styles/reading-page.ts';
import { findMicrophone, findSecurity, findWakeLock } from './device.ts';
import { outcomeWord, rowsOf, summaryOf, type Findings, type Outcome, type Row } from './words.ts';

const outcomeSign: Readonly<Record<Outcome, SignName>> = {
  trying: 'waiting',
  works: 'tick',
  limited: 'ring',
  fails: 'slip',
};

/** Before the first lesson: what of a class works on this device, in this network. */
@customElement('rootcall-check')
export class NetworkCheck extends LitElement {
  static override readonly styles = [
    baseStyle,
    readingPageStyle,
    css`
      .summary {
        min-height: 2.8em;
        text-wrap: pretty;
      }
      ul {
        list-style: none;
      }
      li {
        border-top: 1px solid var(--line);
        display: grid;
        gap: 0 var(--space-3);
        grid-template-columns: 1.5em minmax(0, 1fr);
        padding-block: var(--space-3);
      }
      li > .sign {
        margin-top: -0.1em;
      }
      li > div {
        min-height: 2.8em;
      }
      h2 {
        align-items: baseline;
        display: flex;
        flex-wrap: wrap;
        font-family: var(--face-text);
        font-size: var(--text-body);
        gap: 0 var(--space-2);
        justify-content: space-between;
        line-height: 1.4;
      }
      h2 span {
        font-weight: var(--weight-text);
      }
      .works > .sign {
        color: var(--felt);
      }
      .limited > .sign {
        color: var(--brass);
      }
      .fails > .sign {
        color: var(--rose);
      }
      .help {
        border-inline-start: 3px solid var(--brass);
        margin-top: var(--space-1);
        padding-inline-start: var(--space-2);
      }
      .fails .help {
        border-color: var(--rose);
      }
      .next {
        align-items: center;
        color: inherit;
        display: inline-flex;
        min-height: var(--target);
      }
      button {
        justify-self: start;
        min-height: 3rem;
      }
    `,
  ];

  @state() private found: Findings = {};
  @state() private running = false;

  override connectedCallback(): void {
    super.connectedCallback();
    void this.#run();
  }

  protected override render(): TemplateResult {
    const rows = rowsOf(this.found);
    return html`<header>
        <a href="/"><rootcall-mark></rootcall-mark>Rootcall</a>
      </header>
      <main>
        <h1>Check this network</h1>
        <hr />
        <p class="summary lead" role="status">
          ${summaryOf(rows) || 'Trying what a class needs. This takes a few seconds.'}
        </p>
        <ul>
          ${rows.map((row) => this.#row(row))}
        </ul>
        <button class="primary" aria-disabled=${this.running ? 'true' : 'false'} @click=${this.#run}>
          Check again
        </button>
      </main>`;
  }

  #row({ title, outcome, sentence, help, next }: Row): TemplateResult {
    return html`<li class=${outcome}>
      ${sign(outcomeSign[outcome])}
      <div>
        <h2>${title} <span class="soft">${outcomeWord[outcome]}</span></h2>
        ${sentence === '' ? nothing : html`<p>${sentence}</p>`}
        ${help === '' ? nothing : html`<p class="help">${help}</p>`}
        ${next ? html`<a class="next" href=${next.path}>${next.words}</a>` : nothing}
      </div>
    </li>`;
  }

  readonly #run = async (): Promise<void> => {
    if (this.running) return;
    this.running = true;
    this.found = { security: findSecurity() };
    await Promise.all([this.#tryConnections(), this.#tryDevice()]);
    this.running = false;
  };

  /** One after another: each is timed with the network to itself. */
  async #tryConnections(): Promise<void> {
    this.#find({ server: await tryServer() });
    this.#find({ websocket: await tryLine('websocket') });
    this.#find({ polling: await tryLine('polling') });
  }

  async #tryDevice(): Promise<void> {
    this.#find({ microphone: await findMicrophone() });
    this.#find({ wakeLock: await findWakeLock() });
  }

  #find(finding: Findings): void {
    this.found = { ...this.found, ...finding };
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rootcall-check': NetworkCheck;
  }
}
