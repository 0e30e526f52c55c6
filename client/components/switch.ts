import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { baseStyle } from '../styles/base.ts';

/** A switch was turned; whoever listens sets `on`. */
export class SwitchTurnedEvent extends Event {
  static readonly eventName = 'switch-turned';

  constructor(readonly on: boolean) {
    super(SwitchTurnedEvent.eventName, { bubbles: true, composed: true });
  }
}

/** A setting that is on or off; its words are the target too. */
@customElement('rootcall-switch')
export class Switch extends LitElement {
  static override readonly styles = [
    baseStyle,
    css`
      :host {
        display: block;
      }
      button {
        align-items: center;
        background: none;
        border: 0;
        color: inherit;
        cursor: pointer;
        display: flex;
        font: inherit;
        gap: var(--space-4);
        justify-content: space-between;
        min-height: var(--target);
        padding: 0;
        text-align: start;
        width: 100%;
      }
      .track {
        background: var(--sheet);
        border: 2px solid var(--control);
        border-radius: 1rem;
        flex: none;
        height: 1.75rem;
        position: relative;
        transition: background var(--state);
        width: 3.25rem;
      }
      .thumb {
        background: var(--control);
        border-radius: 50%;
        height: 1.25rem;
        left: 0.125rem;
        position: absolute;
        top: 0.125rem;
        transition: transform var(--state);
        width: 1.25rem;
      }
      [aria-checked='true'] .track {
        background: var(--ink);
        border-color: var(--ink);
      }
      [aria-checked='true'] .thumb {
        background: var(--on-fill);
        transform: translateX(1.5rem);
      }
    `,
  ];

  @property({ type: Boolean }) on = false;

  protected override render(): TemplateResult {
    return html`<button
      type="button"
      role="switch"
      aria-checked=${this.on ? 'true' : 'false'}
      @click=${() => this.dispatchEvent(new SwitchTurnedEvent(!this.on))}
    >
      <span><slot></slot></span>
      <span class="track"><span class="thumb"></span></span>
    </button>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rootcall-switch': Switch;
  }
  interface HTMLElementEventMap {
    'switch-turned': SwitchTurnedEvent;
  }
}
