import { css, html, LitElement, nothing, svg, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { encode } from 'uqr';

/** Modules of quiet ground on each side (ISO/IEC 18004 asks for four). */
const quiet = 4;

/** A QR picture, dark on light in both themes: many cameras read no other. */
@customElement('rootcall-qr-code')
export class QrCode extends LitElement {
  static override readonly styles = css`
    :host {
      background: var(--qr-light);
      border-radius: var(--radius-sheet);
      display: block;
      overflow: hidden;
    }
    svg {
      display: block;
      fill: var(--qr-dark);
      height: auto;
      width: 100%;
    }
  `;

  @property() text = '';
  @property() label = 'Picture code of the address';

  protected override render(): TemplateResult | typeof nothing {
    if (this.text === '') return nothing;
    const { size, data } = encode(this.text, { ecc: 'M', border: quiet });
    const dark = data.flatMap((row, y) =>
      row.flatMap((on, x) => (on ? [`M${String(x)} ${String(y)}h1v1h-1z`] : [])),
    );
    return html`<svg
      role="img"
      aria-label=${this.label}
      viewBox="0 0 ${size} ${size}"
      shape-rendering="crispEdges"
    >
      ${svg`<path d=${dark.join('')} />`}
    </svg>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rootcall-qr-code': QrCode;
  }
}
