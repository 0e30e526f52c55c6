import { LitElement, html } from 'lit';
import { customElement, property } from 'lit/decorators.js';

@customElement('desk-paper')
export class DeskPaper extends LitElement {
  @property() planId = '';

  override render() {
    return html`<main></main>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-paper': DeskPaper;
  }
}
