import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { classMap } from 'lit/directives/class-map.js';
import { wordingOf } from '../../../../shared/exercise/wording.ts';
import { parts, type PlannedExercise } from '../../../../shared/plans/plan.ts';
import type { DeskRoundView, DeskView } from '../../../../shared/protocol/views.ts';
import { deskStyles } from '../desk-styles.ts';
import { partWords } from '../plan/words.ts';
import { CommandEvent, PanelEvent } from './events.ts';
import { percent } from './figures.ts';
import { levelCount } from './harder-lines.ts';
import { currentRound } from './steps.ts';

/** The plan with what came of it, and the ways to ask or show something that isn't on it. */
@customElement('desk-plan-column')
export class DeskPlanColumn extends LitElement {
  static override styles = [
    deskStyles,
    css`
      :host {
        display: flex;
        flex-direction: column;
        gap: var(--space-4);
      }
      .item {
        align-items: baseline;
        background: none;
        border-color: transparent;
        box-shadow: none;
        column-gap: var(--space-3);
        display: grid;
        font-weight: 400;
        grid-template-columns: 1.25rem 1fr auto;
        justify-content: normal;
        padding: var(--space-2);
        text-align: left;
        width: 100%;
      }
      .item[aria-disabled='true'] {
        border-color: transparent;
        color: var(--ink);
      }
      .item b {
        font-weight: 600;
      }
      .item .soft {
        grid-column: 2 / -1;
      }
      /* The ways below cover the foot of a long plan. */
      .item {
        scroll-margin-bottom: 12rem;
      }
      .item:not(.current) .soft {
        overflow: hidden;
        text-overflow: ellipsis;
        white-space: nowrap;
      }
      .item.current {
        background: var(--sheet);
        box-shadow: var(--elevation);
      }
      h3 {
        font-weight: 600;
        padding: var(--space-2) var(--space-2) 0;
      }
      .lozenge {
        background: var(--brass);
        display: inline-block;
        height: 10px;
        transform: rotate(45deg);
        width: 10px;
      }
      .number {
        color: var(--soft);
      }
      /* Within reach however long the plan is. */
      .ways {
        background: var(--page);
        border-top: 1px solid var(--line);
        bottom: calc(-1 * var(--space-4));
        display: grid;
        gap: var(--space-2);
        margin-bottom: calc(-1 * var(--space-4));
        padding-block: var(--space-3) var(--space-4);
        position: sticky;
      }
      .ways button {
        justify-content: flex-start;
        padding-inline: var(--space-3);
      }
      summary {
        cursor: pointer;
        font-weight: 600;
        padding-block: var(--space-2);
      }
      hr {
        margin-top: var(--space-2);
      }
      .asked li {
        align-items: center;
        display: flex;
        gap: var(--space-2);
        justify-content: space-between;
        padding-block: 2px;
      }
    `,
  ];

  @property({ attribute: false }) view: DeskView | null = null;

  private shownAt = -1;

  protected override updated() {
    const cursor = this.view?.cursor ?? -1;
    if (cursor === this.shownAt) return;
    this.shownAt = cursor;
    this.renderRoot.querySelector('.current')?.scrollIntoView({ block: 'nearest' });
  }

  override render() {
    const { view } = this;
    if (!view) return nothing;
    return html`
      <div>
        <h2>Plan</h2>
        <hr />
      </div>
      ${
        view.plan
          ? html`<div>${this.exercises(view, view.plan.exercises)}</div>`
          : html`<p class="soft">No plan. Ask something on the spot, or take up a plan under Class.</p>`
      }
      ${
        view.closed
          ? nothing
          : html`<div class="ways">
              <button @click=${() => this.open('make')}>Ask something else</button>
              <button @click=${() => this.open('chart')}>Show a chart</button>
              <button @click=${() => this.open('taps')}>Show my taps</button>
            </div>`
      }
      ${view.rounds.length === 0 ? nothing : this.asked(view)}
    `;
  }

  /** Under their parts, where the plan has more than one; numbered through. */
  private exercises(view: DeskView, exercises: readonly PlannedExercise[]) {
    const items = exercises.map((planned, index) => ({ planned, index }));
    const used = parts.filter((part) => exercises.some((planned) => planned.part === part));
    return used.map(
      (part) =>
        html`${used.length > 1 ? html`<h3 class="soft small">${partWords[part]}</h3>` : nothing}
          <ol>
            ${items.map(({ planned, index }) =>
              planned.part === part ? this.item(view, index, planned) : nothing,
            )}
          </ol>`,
    );
  }

  private item(view: DeskView, index: number, { exercise, harder }: PlannedExercise) {
    const words = wordingOf(exercise, view.naming);
    const round = currentRound(view);
    const current = view.closed ? false : round ? round.planIndex === index : view.cursor === index;
    const open = round?.phase === 'open';
    return html`<li>
      <button
        class=${classMap({ item: true, current })}
        aria-current=${current ? 'step' : nothing}
        aria-disabled=${open || view.closed}
        @click=${() => {
          if (!open && !view.closed) this.select(view, index);
        }}
      >
        ${
          current
            ? html`<span class="lozenge"></span>`
            : html`<span class="number" aria-hidden="true">${index + 1}</span>`
        }
        <b>${words.title}</b>
        <span>${outcome(view, index)}</span>
        <span class="soft small">${words.detail}</span>
        ${harder.length === 0 ? nothing : html`<span class="soft small">${levelCount(harder)}</span>`}
      </button>
    </li>`;
  }

  private asked(view: DeskView) {
    // The server's undo brings back what was taken back last, unless a held round comes first.
    const held = currentRound(view)?.phase === 'held';
    const undoable =
      held || view.closed ? undefined : [...view.rounds].reverse().find((round) => round.voided);
    return html`<details class="asked">
      <summary>Asked so far (${view.rounds.length})</summary>
      <ol>
        ${view.rounds.map(
          (round) =>
            html`<li>
              <span>${round.number}. ${wordingOf(round.exercise, view.naming).title}</span>
              ${
                round === undoable
                  ? html`<button class="plain small" @click=${this.undo}>taken back: undo</button>`
                  : html`<span class="soft small">${outcomeOf(round)}</span>`
              }
            </li>`,
        )}
      </ol>
    </details>`;
  }

  private undo() {
    this.dispatchEvent(new CommandEvent({ kind: 'undo' }));
  }

  /** Choosing an exercise takes what was asked before off the Stands. */
  private select(view: DeskView, index: number) {
    if (view.stage === 'round') this.dispatchEvent(new CommandEvent({ kind: 'next' }));
    this.dispatchEvent(new CommandEvent({ kind: 'select', index }));
  }

  private open(panel: 'make' | 'chart' | 'taps') {
    this.dispatchEvent(new PanelEvent(panel));
  }
}

/** What came of an exercise of the plan: its last round that counts, or how far it is. */
function outcome(view: DeskView, index: number): string {
  const round = [...view.rounds].reverse().find((one) => one.planIndex === index && !one.voided);
  return round ? outcomeOf(round) : '';
}

function outcomeOf(round: DeskRoundView): string {
  if (round.voided) return 'taken back';
  if (round.phase !== 'revealed') return round.phase;
  if (round.share.of === 0) return 'no answers';
  // Levels one after the other: they are counted apart.
  const shares = round.shares.map(({ right, of }) => percent(right, of));
  return `${shares.map((right) => right ?? '–').join(' · ')} %`;
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-plan-column': DeskPlanColumn;
  }
}
