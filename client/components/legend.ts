import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { sign, type SignName } from './signs.ts';

/** What a mark on a chart means, in the words of the screen it stands on. */
export interface LegendEntry {
  readonly sign: SignName;
  readonly words: string;
}

/** The key to a chart's marks. */
@customElement('rootcall-legend')
export class Legend extends LitElement {
  static override readonly styles = css`
    :host {
      color: var(--soft);
      display: block;
      font-size: var(--text-small);
    }
    ul {
      display: flex;
      flex-wrap: wrap;
      gap: 0.4em 1.2em;
      justify-content: var(--legend-from, center);
      list-style: none;
      margin: 0;
      padding: 0;
    }
    li {
      align-items: center;
      display: inline-flex;
      gap: 0.4em;
    }
    .sign {
      color: var(--ink);
      height: 1.35em;
      width: 1.35em;
    }
    .ring .sign {
      color: var(--felt);
    }
    .slip .sign {
      color: var(--rose);
    }
  `;

  @property({ attribute: false }) entries: readonly LegendEntry[] = [];

  protected override render(): TemplateResult {
    return html`<ul>
      ${this.entries.map((entry) => html`<li class=${entry.sign}>${sign(entry.sign)}<span>${entry.words}</span></li>`)}
    </ul>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rootcall-legend': Legend;
  }
}
