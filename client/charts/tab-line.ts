import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { gap } from '../fretboard/ink-frame.ts';
import { inkStyle } from '../fretboard/ink-style.ts';
import { renderTab } from './render-tab.ts';
import { tabInWords, type TabColumn } from './tab.ts';

/** Px of the screen for a gap of the drawing: figures come out as large as text. */
const perGap = 26;

/** A line of tablature that goes on in another system where its box is too narrow. */
@customElement('rootcall-tab')
export class TabLine extends LitElement {
  static override readonly styles = [
    inkStyle,
    css`
      :host {
        display: block;
        min-width: 0;
      }
      .chart {
        height: auto;
        position: static;
      }
    `,
  ];

  @property({ attribute: false }) columns: readonly TabColumn[] = [];
  @property({ type: Number }) strings = 6;

  @state() private width = 10 * perGap;
  readonly #observer = new ResizeObserver(() => this.#measure());

  override connectedCallback(): void {
    super.connectedCallback();
    this.#observer.observe(this);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#observer.disconnect();
  }

  protected override render(): TemplateResult {
    const { width, height, drawing } = renderTab(this.columns, this.strings, (this.width / perGap) * gap);
    return html`<svg
      class="chart"
      role="img"
      aria-label=${tabInWords(this.columns)}
      viewBox=${`0 0 ${width.toFixed(1)} ${height.toFixed(1)}`}
    >
      ${drawing}
    </svg>`;
  }

  #measure(): void {
    if (this.clientWidth > 0) this.width = this.clientWidth;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rootcall-tab': TabLine;
  }
}
