import { LitElement, html } from 'lit';
import { customElement, property } from 'lit/decorators.js';

@customElement('desk-handout')
export class DeskHandout extends LitElement {
  @property() groupId = '';

  override render() {
    return html`<main></main>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-handout': DeskHandout;
  }
}
