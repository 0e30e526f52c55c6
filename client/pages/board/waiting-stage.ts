import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import '../../components/qr-code.ts';
import { boardStyles } from './board-styles.ts';
import { heads, mostHeads } from './heads.ts';
import { codeGroups, isOrAre, joinLink, lengthStep, typedAddress } from './words.ts';

/** M and W are half as wide again as other letters. */
function isWide(code: string): boolean {
  return code.replace(/[^MW]/g, '').length > 2;
}

/** Before the first round: where to go, what to type there, and how many are in. */
@customElement('board-waiting')
export class BoardWaiting extends LitElement {
  static override styles = [
    boardStyles,
    css`
      :host {
        align-content: center;
        align-items: center;
        column-gap: calc(72 * var(--unit));
        display: grid;
        grid-template-columns: minmax(0, 1fr) calc(560 * var(--unit));
        row-gap: calc(40 * var(--unit));
      }
      .address {
        font-size: calc(92 * var(--unit));
        margin-bottom: calc(28 * var(--unit));
        overflow-wrap: anywhere;
      }
      .address.long-1 {
        font-size: calc(64 * var(--unit));
      }
      .address.long-2 {
        font-size: calc(48 * var(--unit));
      }
      .give {
        margin-top: calc(32 * var(--unit));
      }
      .code {
        font-size: calc(176 * var(--unit));
        letter-spacing: 0.05em;
        white-space: nowrap;
      }
      .code.wide {
        font-size: calc(140 * var(--unit));
      }
      .code span + span {
        margin-left: 0.28em;
      }
      rootcall-qr-code {
        border: calc(2 * var(--unit)) solid var(--line);
        border-radius: calc(20 * var(--unit));
      }
      .in {
        align-items: center;
        display: flex;
        font-size: calc(66 * var(--unit));
        gap: calc(40 * var(--unit));
        grid-column: 1 / -1;
        min-height: calc(90 * var(--unit));
      }
      @media (max-aspect-ratio: 1/1) {
        :host {
          grid-template-columns: minmax(0, 1fr);
        }
        .code,
        .code.wide {
          font-size: calc(116 * var(--unit));
        }
        rootcall-qr-code {
          margin-inline: auto;
          max-width: calc(640 * var(--unit));
        }
      }
    `,
  ];

  @property() address = '';
  @property() code = '';
  @property({ type: Number }) here = 0;

  override render() {
    const address = typedAddress(this.address);
    const [first, second] = codeGroups(this.code);
    return html`<div>
        <h1 class="visually-hidden">Come in</h1>
        <p class="lead">On your phone, open</p>
        <p class="address title-face ${lengthStep(address, [21, 32])}">${address}</p>
        <hr class="rule" />
        <p class="lead give">and give the code</p>
        <p class=${isWide(this.code) ? 'code wide title-face' : 'code title-face'}>
          <span>${first}</span><span>${second}</span>
        </p>
      </div>
      <rootcall-qr-code
        .text=${joinLink(this.address, this.code)}
        label="QR picture of the address with the code"
      ></rootcall-qr-code>
      <div class="in title-face">
        <p class="nowrap">
          ${this.here === 0 ? 'Nobody is in yet' : html`${this.here} ${isOrAre(this.here)} in`}
        </p>
        ${this.here > 0 && this.here <= mostHeads ? heads(this.here, this.here, 20, 62) : nothing}
      </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'board-waiting': BoardWaiting;
  }
}
