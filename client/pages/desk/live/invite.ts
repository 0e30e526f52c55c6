import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { api, type Addresses } from '../api.ts';
import { deskStyles } from '../desk-styles.ts';
import { spacedCode } from '../spaced-code.ts';
import '../../../components/qr-code.ts';

/** How students come in: address, code and QR picture; the address can be changed. */
@customElement('desk-invite')
export class DeskInvite extends LitElement {
  static override styles = [
    deskStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-4) var(--space-5);
        grid-template-columns: minmax(0, 1fr) minmax(7rem, 11rem);
      }
      .code {
        font-family: var(--face-title);
        font-size: clamp(1.9rem, 5vw, 3rem);
        font-weight: 600;
        letter-spacing: 0.1em;
        white-space: nowrap;
      }
      .address {
        overflow-wrap: anywhere;
      }
      @media (max-width: 480px) {
        :host {
          grid-template-columns: minmax(0, 1fr);
        }
        rootcall-qr-code {
          max-width: 11rem;
        }
      }
    `,
  ];

  @property() code = '';
  @state() private addresses: Addresses | null = null;

  override connectedCallback() {
    super.connectedCallback();
    void this.load();
  }

  override render() {
    const address = this.addresses?.chosen ?? '';
    const link = `${address.replace(/\/+$/, '')}/join/${this.code}`;
    return html`<div class="stack">
        <p>
          Students open <b class="address">${address.replace(/^https?:\/\//, '').replace(/\/+$/, '')}</b> and
          give this code:
        </p>
        <p class="code">${spacedCode(this.code)}</p>
        ${this.addresses && this.addresses.addresses.length > 1 ? this.choice(this.addresses) : nothing}
      </div>
      ${address === '' ? nothing : html`<rootcall-qr-code .text=${link}></rootcall-qr-code>`}`;
  }

  private choice({ addresses, chosen }: Addresses) {
    return html`<label class="small"
      >Address in QR picture and links
      <select @change=${this.choose}>
        ${addresses.map((one) => html`<option ?selected=${one === chosen}>${one}</option>`)}
      </select></label
    >`;
  }

  private async load() {
    const reply = await api.addresses();
    if (reply.ok) this.addresses = reply.value;
  }

  private async choose(event: Event) {
    if (!(event.target instanceof HTMLSelectElement)) return;
    await api.chooseAddress(event.target.value);
    await this.load();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-invite': DeskInvite;
  }
}
