import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { sign } from './signs.ts';

/** Our mark: a fermata whose dot is the root's lozenge. */
@customElement('rootcall-mark')
export class Mark extends LitElement {
  static override readonly styles = css`
    :host {
      color: var(--brass);
      display: inline-block;
      line-height: 0;
    }
  `;

  protected override render(): TemplateResult {
    return html`${sign('mark')}`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rootcall-mark': Mark;
  }
}
