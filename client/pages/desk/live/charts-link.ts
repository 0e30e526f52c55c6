import { LitElement, css, html } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import '../../../components/qr-code.ts';
import { api } from '../api.ts';
import { deskStyles } from '../desk-styles.ts';

/** Where the charts of a class lie for its students, to be sent on or photographed. */
@customElement('desk-charts-link')
export class DeskChartsLink extends LitElement {
  static override styles = [
    deskStyles,
    css`
      :host {
        align-items: start;
        display: grid;
        gap: var(--space-3) var(--space-5);
        grid-template-columns: minmax(0, 1fr) minmax(7rem, 9rem);
      }
      .address {
        overflow-wrap: anywhere;
        user-select: all;
      }
      @media (max-width: 480px) {
        :host {
          grid-template-columns: minmax(0, 1fr);
        }
        rootcall-qr-code {
          max-width: 9rem;
        }
      }
    `,
  ];

  @property() classId = '';
  @state() private address = location.origin;

  override connectedCallback() {
    super.connectedCallback();
    void this.load();
  }

  override render() {
    const path = `/charts/${this.classId}`;
    const link = this.address.replace(/\/+$/, '') + path;
    return html`<div class="stack">
        <p><a href=${path}>The charts of this class</a></p>
        <p class="soft">
          For students, without names and answers. Whoever has this link can open it, until the group is
          deleted:
        </p>
        <p class="small address">${link}</p>
      </div>
      <rootcall-qr-code .text=${link} label="Picture code of the charts"></rootcall-qr-code>`;
  }

  /** The address that students use. */
  private async load() {
    const reply = await api.addresses();
    if (reply.ok && reply.value.chosen !== '') this.address = reply.value.chosen;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-charts-link': DeskChartsLink;
  }
}
