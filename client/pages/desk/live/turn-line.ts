import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { StudentId } from '../../../../shared/protocol/ids.ts';
import type { DeskView } from '../../../../shared/protocol/views.ts';
import { deskStyles } from '../desk-styles.ts';
import { CommandEvent } from './events.ts';
import { usualKeys, type KeySettings } from './keys.ts';
import { shownName } from './shown-name.ts';
import { goesByTurns, nextTurn } from './turns.ts';

/** Whose turn it is to play, and on to the next; nothing where playing doesn't go by turns. */
@customElement('desk-turn-line')
export class DeskTurnLine extends LitElement {
  static override styles = [
    deskStyles,
    css`
      :host {
        display: block;
      }
      .sheet {
        align-items: center;
        border-left: 4px solid var(--brass);
        display: grid;
        gap: var(--space-1) var(--space-3);
        grid-template-columns: minmax(0, 1fr) auto;
        margin-bottom: var(--space-3);
        padding: var(--space-1) var(--space-3);
      }
      p {
        overflow-wrap: anywhere;
      }
      .buttons {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-1) var(--space-2);
        justify-content: end;
      }
      button {
        padding-inline: var(--space-3);
        white-space: nowrap;
      }
      @media (max-width: 30rem) {
        .sheet {
          grid-template-columns: minmax(0, 1fr);
          padding-block: var(--space-2);
        }
        .buttons {
          justify-content: start;
        }
        kbd {
          display: none;
        }
      }
    `,
  ];

  @property({ attribute: false }) view: DeskView | null = null;
  @property({ type: Boolean }) hiding = false;
  @property({ attribute: false }) keys: KeySettings = usualKeys;

  override render() {
    const { view } = this;
    if (!view || !goesByTurns(view)) return nothing;
    const next = nextTurn(view);
    const key = this.keys.letterOf.turn.toUpperCase();
    return html`<section class="sheet" aria-label="Turns">
      <p aria-live="polite">${this.whose(view)}</p>
      <div class="buttons">
        <button
          aria-disabled=${next === null && view.turn === null}
          aria-keyshortcuts=${this.keys.letters ? key : nothing}
          @click=${() => this.give(next)}
        >
          Next turn ${this.keys.letters ? html`<kbd aria-hidden="true">${key}</kbd>` : nothing}
        </button>
        ${view.turn === null ? nothing : html`<button @click=${() => this.give(null)}>Take it back</button>`}
      </div>
    </section>`;
  }

  private whose(view: DeskView) {
    const student = view.students.find(({ id }) => id === view.turn);
    if (!student) return html`<b>Nobody’s turn</b> <span class="soft">to play; tapping goes on.</span>`;
    const gone = student.presence === 'here' ? nothing : html`<span class="soft">, out of touch</span>`;
    return html`<span class="soft">Plays now:</span>
      <b dir="auto">${shownName(view, student, this.hiding)}</b>${gone}`;
  }

  private give(studentId: StudentId | null) {
    const turn = this.view?.turn ?? null;
    if (studentId !== turn) this.dispatchEvent(new CommandEvent({ kind: 'give-turn', studentId }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-turn-line': DeskTurnLine;
  }
}
