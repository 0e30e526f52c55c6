import { LitElement, html } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { clockText } from './clock-text.ts';

/** How long a round has been open, by the server's clock; with a limit, also how long it may be. */
@customElement('desk-clock')
export class DeskClock extends LitElement {
  @property({ type: Number }) openedAt = 0;
  @property({ type: Number }) deadline: number | null = null;
  /** Server time minus this device's time, in milliseconds. */
  @property({ type: Number }) offset = 0;

  private timer: ReturnType<typeof setInterval> | undefined;

  override connectedCallback() {
    super.connectedCallback();
    this.timer = setInterval(() => {
      this.requestUpdate();
    }, 1000);
  }

  override disconnectedCallback() {
    super.disconnectedCallback();
    clearInterval(this.timer);
  }

  override render() {
    const open = clockText(Date.now() + this.offset - this.openedAt);
    const of = this.deadline === null ? '' : ` of ${clockText(this.deadline - this.openedAt)}`;
    return html`Open for ${open}${of}`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-clock': DeskClock;
  }
}
