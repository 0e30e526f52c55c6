import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { BoardView } from '../../../shared/protocol/views.ts';
import '../../components/mark.ts';
import { boardStyles } from './board-styles.ts';
import { codeGroups, typedAddress } from './words.ts';

/** Whose class this is, where it stands in the plan, and the way in for whoever comes late. */
@customElement('board-header')
export class BoardHeader extends LitElement {
  static override styles = [
    boardStyles,
    css`
      :host {
        align-items: baseline;
        color: var(--soft);
        column-gap: calc(40 * var(--unit));
        display: flex;
        font-size: calc(44 * var(--unit));
        justify-content: space-between;
        min-height: calc(64 * var(--unit));
        white-space: nowrap;
      }
      .group {
        align-items: baseline;
        column-gap: calc(20 * var(--unit));
        display: flex;
        min-width: 0;
      }
      rootcall-mark {
        align-self: center;
        flex: none;
        font-size: calc(40 * var(--unit));
      }
      .cut {
        min-width: 0;
        overflow: hidden;
        text-overflow: ellipsis;
      }
      .group .cut + span::before {
        content: '·';
        margin-inline-end: calc(20 * var(--unit));
      }
      .way-in {
        align-items: baseline;
        column-gap: calc(28 * var(--unit));
        display: flex;
        flex: none;
        max-width: calc(1240 * var(--unit));
      }
      .code {
        color: var(--ink);
        flex: none;
        font-size: calc(52 * var(--unit));
        letter-spacing: 0.06em;
      }
      .code span + span {
        margin-inline-start: 0.3em;
      }
      @media (max-aspect-ratio: 1/1) {
        :host {
          flex-wrap: wrap;
          row-gap: calc(12 * var(--unit));
        }
        .way-in {
          flex: 0 1 auto;
          max-width: 100%;
        }
      }
    `,
  ];

  @property({ attribute: false }) view: BoardView | null = null;

  override render() {
    const { view } = this;
    if (!view) return nothing;
    const { kind } = view.stage;
    const inRound = kind === 'open' || kind === 'held' || kind === 'revealed';
    return html`<p class="group">
        <rootcall-mark></rootcall-mark>
        <span class="cut" dir="auto">${view.group}</span>
        ${inRound && view.next ? html`<span>Exercise ${view.next.number} of ${view.next.of}</span>` : nothing}
      </p>
      ${kind === 'waiting' || kind === 'over' ? html`<p class="cut" dir="auto">${view.school}</p>` : this.wayIn(view)}`;
  }

  private wayIn({ address, code }: BoardView) {
    const [first, second] = codeGroups(code);
    return html`<p class="way-in">
      <span class="cut">${typedAddress(address)}</span>
      <span class="code title-face"
        ><span class="visually-hidden">Code: </span><span>${first}</span><span>${second}</span></span
      >
    </p>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'board-header': BoardHeader;
  }
}
