import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { DeskView } from '../../../../shared/protocol/views.ts';
import { deskStyles } from '../desk-styles.ts';
import { CommandEvent } from './events.ts';

const askingWords: Readonly<Record<DeskView['asking'][number]['reason'], string>> = {
  new: 'asks to come in.',
  move: 'is in on another device. Move to the new one?',
  refused: 'asks again; this name or device was sent away before.',
};

/** Who waits at the door for the teacher's nod. */
@customElement('desk-asking')
export class DeskAsking extends LitElement {
  static override styles = [
    deskStyles,
    css`
      ul {
        margin-bottom: var(--space-3);
        max-height: 6.1rem;
        overscroll-behavior: contain;
        overflow: auto;
      }
      li {
        align-items: center;
        border-top: 1px solid var(--line);
        display: grid;
        gap: var(--space-3);
        grid-template-columns: minmax(0, 1fr) auto;
        padding-block: var(--space-1);
      }
      li > :first-child {
        overflow-wrap: anywhere;
      }
      .buttons {
        display: flex;
        gap: var(--space-2);
      }
      button {
        padding-inline: var(--space-3);
      }
      li:first-child {
        border-top: 0;
      }
      .sheet {
        border-left: 4px solid var(--brass);
        padding: 2px var(--space-3);
      }
    `,
  ];

  @property({ attribute: false }) asking: DeskView['asking'] = [];
  @property({ type: Boolean }) hiding = false;

  override render() {
    return html`<div aria-live="polite">${this.asking.length === 0 ? nothing : this.list()}</div>`;
  }

  private list() {
    const newcomers = this.asking.filter(({ reason }) => reason === 'new').length;
    return html`<ul class="sheet" aria-label="Asking to come in">
      ${
        newcomers < 2
          ? nothing
          : html`<li>
              <span>${newcomers} new names ask to come in.</span>
              <button @click=${() => this.send({ kind: 'admit-new' })}>Let all in</button>
            </li>`
      }
      ${repeat(
        this.asking,
        ({ seatId }) => seatId,
        ({ seatId, name, reason }) => {
          const who = this.hiding ? 'Somebody' : name;
          const nod = reason === 'move' ? 'Move' : 'Let in';
          return html`<li>
            <span>
              <bdi><b>${who}</b></bdi> ${askingWords[reason]}
            </span>
            <span class="buttons">
              <button @click=${() => this.send({ kind: 'admit', seatId })} aria-label=${`${nod}: ${who}`}>
                ${nod}
              </button>
              <button @click=${() => this.send({ kind: 'refuse', seatId })} aria-label=${`Refuse: ${who}`}>
                Refuse
              </button>
            </span>
          </li>`;
        },
      )}
    </ul>`;
  }

  private send(command: CommandEvent['command']) {
    this.dispatchEvent(new CommandEvent(command));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-asking': DeskAsking;
  }
}
