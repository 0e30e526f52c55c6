import { css, html, LitElement, svg, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';

/** From here on heads would be too small to count: a number and a bar say it. */
const most = 39;
/** Sizes of the drawing's own units; a head is 30 wide with its space. */
const step = 30;
const row = 30;

/**
 * So many of so many, as noteheads on a line. They fill from the left in order of arrival, so none is a person.
 * The words beside it say the same, so the drawing is not read aloud.
 */
@customElement('rootcall-noteheads')
export class Noteheads extends LitElement {
  static override readonly styles = css`
    :host {
      color: var(--ink);
      display: block;
    }
    svg {
      display: block;
      height: auto;
      max-width: 100%;
      width: 100%;
    }
    .line {
      stroke: var(--control);
    }
    .head {
      fill: var(--noteheads-ground, var(--sheet));
      stroke: var(--ink);
      transition: fill var(--count);
    }
    .head.full,
    .bar {
      fill: var(--ink);
    }
    .bar {
      transition: width var(--count);
    }
    .rail {
      fill: none;
      stroke: var(--control);
    }
    text {
      fill: var(--ink);
      font-family: var(--face-title);
      font-weight: 600;
    }
  `;

  @property({ type: Number }) filled = 0;
  @property({ type: Number }) of = 0;
  /** Heads in one row before the next begins. */
  @property({ type: Number, attribute: 'per-row' }) perRow = 20;

  protected override render(): TemplateResult {
    return this.of > most ? this.#bar() : this.#heads();
  }

  #heads(): TemplateResult {
    const fitting = Math.max(1, Math.min(this.perRow, this.of));
    const rows = Math.max(1, Math.ceil(this.of / fitting));
    // Rows of one length, so that none is left with a single head; heads keep their size.
    const perRow = Math.max(1, Math.ceil(this.of / rows));
    const width = fitting * step + 10;
    const lines = Array.from({ length: rows }, (_, at) => {
      const count = Math.min(perRow, this.of - at * perRow);
      return svg`<path class="line" d="M0 ${at * row + row / 2}h${count * step + 10}" stroke-width="1" />`;
    });
    const heads = Array.from({ length: this.of }, (_, at) => {
      const x = (at % perRow) * step + 5 + step / 2;
      const y = Math.floor(at / perRow) * row + row / 2;
      return svg`<ellipse class=${at < this.filled ? 'head full' : 'head'} rx="12.4" ry="8.6" stroke-width="2"
        transform="translate(${x} ${y}) rotate(-20)" />`;
    });
    return html`<svg aria-hidden="true" viewBox="0 0 ${width} ${rows * row}">${lines}${heads}</svg>`;
  }

  #bar(): TemplateResult {
    const share = this.of === 0 ? 0 : Math.min(1, this.filled / this.of);
    return html`<svg aria-hidden="true" viewBox="0 0 600 40">
      <text x="0" y="31" font-size="36">${this.filled}</text>
      <rect class="rail" x="100" y="12" width="498" height="16" stroke-width="1.5" />
      <rect class="bar" x="102" y="14" width=${(494 * share).toFixed(1)} height="12" />
    </svg>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rootcall-noteheads': Noteheads;
  }
}
