import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import { parts, type Part, type PlannedExercise } from '../../../../shared/plans/plan.ts';
import { standardGuitar, type InstrumentId } from '../../../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';
import { deskStyles } from '../desk-styles.ts';
import { DragLines } from './drag.ts';
import { LineEvent } from './line-event.ts';
import './line.ts';
import type { DeskPlanLine } from './line.ts';
import { lengthWords, partWords } from './words.ts';

/** The exercises of a plan under their three headings, numbered through; lines are dragged by their number. */
@customElement('desk-plan-parts')
export class DeskPlanParts extends LitElement {
  static override styles = [
    deskStyles,
    css`
      :host {
        counter-reset: exercise;
        display: grid;
        gap: var(--space-4);
        grid-template-columns: minmax(0, 1fr);
        position: relative;
      }
      h2 {
        align-items: baseline;
        display: flex;
        flex-wrap: wrap;
        gap: 0 var(--space-3);
      }
      h2 .soft {
        font-family: var(--face-text);
        font-weight: 400;
      }
      ol,
      .empty {
        margin-top: var(--space-2);
      }
      li {
        border-top: 1px solid var(--line);
        counter-increment: exercise;
        display: grid;
        gap: var(--space-2);
        grid-template-columns: 2.25rem minmax(0, 1fr);
        padding-block: var(--space-2);
        /* Where a line is scrolled to, the bar with Undo stays above it. */
        scroll-margin-top: 5rem;
      }
      li.dragged {
        background: var(--brass-wash);
      }
      /* No higher than its dots: beside it a finger scrolls the page. */
      .grip {
        align-items: center;
        align-self: start;
        border-radius: var(--radius-control);
        color: var(--soft);
        cursor: grab;
        display: flex;
        flex-direction: column;
        font-variant-numeric: tabular-nums;
        gap: var(--space-2);
        min-height: var(--target);
        padding-block: var(--space-2);
        touch-action: none;
        user-select: none;
      }
      .grip::before {
        content: counter(exercise);
        font-weight: 600;
      }
      .grip::after {
        background: radial-gradient(circle, currentcolor 1.5px, transparent 2px) 0 0 / 6px 6px;
        content: '';
        height: 24px;
        width: 12px;
      }
      .grip:active {
        cursor: grabbing;
      }
      .empty {
        border: 1px dashed var(--control);
        border-radius: var(--radius-control);
        padding: var(--space-2) var(--space-3);
      }
      .drop {
        background: var(--brass);
        border-radius: 2px;
        height: 4px;
        left: 0;
        pointer-events: none;
        position: absolute;
        right: 0;
        translate: 0 -2px;
        z-index: 1;
      }
      @media (max-width: 30rem) {
        li {
          grid-template-columns: 1.5rem minmax(0, 1fr);
        }
      }
    `,
  ];

  @property({ attribute: false }) exercises: readonly PlannedExercise[] = [];
  @property() instrument: InstrumentId = standardGuitar.id;
  @property({ attribute: false }) naming: NoteNaming = 'english';
  private readonly drag = new DragLines(this, (id, spot) =>
    this.dispatchEvent(new LineEvent(id, { ...spot, kind: 'move' })),
  );

  /** Puts the focus back on what moved a line, wherever it stands now. */
  async focusOn(id: string, wish: string): Promise<void> {
    await this.updateComplete;
    const line = this.renderRoot.querySelector<DeskPlanLine>(
      `li[data-id="${CSS.escape(id)}"] desk-plan-line`,
    );
    await line?.updateComplete;
    line?.focusOn(wish);
    line?.closest('li')?.scrollIntoView({ block: 'nearest' });
  }

  override render() {
    return html`${parts.map((part) => this.section(part))}
      <div class="drop" hidden></div>`;
  }

  private section(part: Part) {
    const own = this.exercises.filter((one) => one.part === part);
    return html`<section aria-labelledby=${`part-${part}`}>
      <h2 id=${`part-${part}`}>
        ${partWords[part]}
        ${own.length === 0 ? nothing : html`<span class="soft small">${lengthWords(own)}</span>`}
      </h2>
      <ol>
        ${repeat(
          own,
          ({ id }) => id,
          (planned) => this.line(planned),
        )}
      </ol>
      <div data-end data-part=${part}>
        ${
          own.length === 0
            ? html`<p class="empty soft small">
                Nothing yet. Drag an exercise here, or choose ${partWords[part]} in its row.
              </p>`
            : nothing
        }
      </div>
    </section>`;
  }

  private line(planned: PlannedExercise) {
    const { exercises } = this;
    const { id, part } = planned;
    return html`<li class=${this.drag.id === id ? 'dragged' : ''} data-id=${id} data-part=${part}>
      <div
        class="grip"
        title="Drag it"
        @pointerdown=${(event: PointerEvent) => this.drag.start(event, id)}
      ></div>
      <desk-plan-line
        .planned=${planned}
        ?first=${planned === exercises[0] && part === parts[0]}
        ?last=${planned === exercises.at(-1) && part === parts.at(-1)}
        .instrument=${this.instrument}
        .naming=${this.naming}
      ></desk-plan-line>
    </li>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-plan-parts': DeskPlanParts;
  }
}
