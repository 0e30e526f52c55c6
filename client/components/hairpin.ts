import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';

/** From last time to today: a hairpin that opens where the class has grown, else a plain line. */
@customElement('rootcall-hairpin')
export class Hairpin extends LitElement {
  static override readonly styles = css`
    :host {
      color: var(--brass);
      display: block;
    }
    svg {
      display: block;
      height: 100%;
      width: 100%;
    }
  `;

  @property({ type: Boolean }) grows = false;

  protected override render(): TemplateResult {
    const lines = this.grows ? 'M198 4 2 28l196 24' : 'M2 28h196';
    return html`<svg
      aria-hidden="true"
      viewBox="0 0 200 56"
      fill="none"
      stroke="currentColor"
      stroke-width="3.2"
    >
      <path d=${lines} stroke-linejoin="miter" stroke-linecap="round" />
    </svg>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rootcall-hairpin': Hairpin;
  }
}
