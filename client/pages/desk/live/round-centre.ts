import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { levelsOf, type Level } from '../../../../shared/exercise/levels.ts';
import { patternText } from '../../../../shared/exercise/pattern.ts';
import { wordingOf } from '../../../../shared/exercise/wording.ts';
import type { DeskRoundView, DeskView } from '../../../../shared/protocol/views.ts';
import { deskStyles } from '../desk-styles.ts';
import { chartView } from '../../../charts/chart-marks.ts';
import { keyChart } from '../chart-notes.ts';
import '../charts.ts';
import './advice.ts';
import { viewAtLevel } from './at-level.ts';
import './level-row.ts';
import type { LevelShownEvent } from './level-row.ts';
import { neckOf } from './answer-text.ts';
import './clock.ts';
import './figures-row.ts';
import { harderLine } from './harder-lines.ts';
import './heat-map.ts';
import './named-list.ts';
import { currentRound } from './steps.ts';

/** More strings than this need a wider card for their key. */
const mostNarrow = 7;

/** The middle of the live Desk while a round is on: what is asked, how it goes, where the answers lie. */
@customElement('desk-round-centre')
export class DeskRoundCentre extends LitElement {
  static override styles = [
    deskStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-3) var(--space-4);
        grid-template-areas: 'task key' 'heat heat' 'advice advice';
        grid-template-columns: minmax(0, 1fr) 11.6rem;
        grid-template-rows: auto minmax(auto, 1fr) auto;
      }
      .task {
        grid-area: task;
      }
      .words p {
        margin-top: 2px;
      }
      desk-figures-row {
        display: block;
        margin-top: var(--space-4);
      }
      desk-level-row {
        display: block;
        margin-top: var(--space-3);
      }
      .pattern {
        margin-top: var(--space-2);
      }
      .key {
        align-content: start;
        align-self: start;
        display: grid;
        gap: var(--space-1);
        grid-area: key;
        grid-template-columns: minmax(0, 1fr);
        padding: var(--space-2) var(--space-3);
        text-align: center;
      }
      .key desk-key-chart:not([lying]) {
        height: 10rem;
      }
      :host([wide-key]) {
        grid-template-columns: minmax(0, 1fr) 20rem;
      }
      .answers {
        grid-area: heat;
      }
      desk-advice {
        grid-area: advice;
      }
      /* Between plan and register: the key beside the words alone, all else below both. */
      @media (min-width: 60.01rem) {
        @container (max-width: 48rem) {
          :host {
            grid-template-areas: 'words key' 'counts counts' 'heat heat' 'advice advice';
            grid-template-rows: auto auto minmax(auto, 1fr) auto;
          }
          :host([wide-key]) {
            grid-template-columns: minmax(0, 1fr) min(20rem, 52%);
          }
          .task {
            display: contents;
          }
          .words {
            grid-area: words;
          }
          .counts {
            grid-area: counts;
          }
          .counts > :first-child {
            margin-top: 0;
          }
          .key desk-key-chart:not([lying]) {
            height: 8rem;
          }
        }
      }
      /* A low window: what is asked, counted and advised stands in it together. */
      @media (min-width: 60.01rem) and (max-height: 52rem) {
        :host {
          row-gap: var(--space-2);
        }
        desk-figures-row {
          margin-top: var(--space-3);
        }
        desk-level-row {
          margin-top: var(--space-2);
        }
      }
      @media (max-width: 60rem) {
        :host,
        :host([wide-key]) {
          grid-template-areas: 'task' 'advice' 'heat' 'key';
          grid-template-columns: minmax(0, 1fr);
          grid-template-rows: auto;
        }
        desk-figures-row {
          margin-top: var(--space-3);
        }
        h1 {
          font-size: 1.5rem;
        }
      }
    `,
  ];

  @property({ attribute: false }) view: DeskView | null = null;
  @property({ type: Boolean }) hiding = false;
  @property({ type: Number }) offset = 0;
  /** The level that is looked at, and in which round; else all. */
  @state() private chosen: { readonly level: Level | null; readonly roundId: string } | null = null;

  override render() {
    const whole = this.view;
    const asked = whole && currentRound(whole);
    if (!asked) return nothing;
    const level = this.chosen?.roundId === asked.id ? this.chosen.level : null;
    const view = level === null ? whole : viewAtLevel(whole, level);
    const round = currentRound(view) ?? asked;
    const { title, detail } = wordingOf(round.exercise, view.naming);
    const hidden = this.hiding && round.phase !== 'revealed';
    const isWide =
      chartView(keyChart(round.exercise, view.naming)) === 'lying' ||
      neckOf(round.exercise).openStrings.length > mostNarrow;
    this.toggleAttribute('wide-key', !hidden && isWide);
    return html`
      <section class="task" aria-label="The round">
        <div class="words">
          <h1>${title}</h1>
          <p><span class="soft">${detail}</span> <b>${this.phase(round)}</b></p>
          ${harderLine(round.harder, view.naming)}
        </div>
        <div class="counts">
          ${
            asked.harder.length === 0
              ? nothing
              : html`<desk-level-row
                  .view=${whole}
                  .level=${level}
                  @desk-level=${(event: LevelShownEvent) => (this.chosen = { level: event.level, roundId: asked.id })}
                ></desk-level-row>`
          }
          <desk-figures-row .view=${view} .covered=${hidden}></desk-figures-row>
          ${view.pattern && !hidden ? html`<p class="pattern">${patternText(view.pattern, 'class', neckOf(round.exercise))}</p>` : nothing}
        </div>
      </section>
      <section class="sheet key" aria-label="Answer key">
        <p class="soft small">${round.harder.length > 0 ? 'Answer key, first level' : 'Answer key'}</p>
        ${
          hidden
            ? html`<p class="soft small">Hidden until the reveal.</p>`
            : html`<desk-key-chart .exercise=${round.exercise} .naming=${view.naming}></desk-key-chart>`
        }
      </section>
      ${
        round.harder.length > 0 && levelsOf(round).some(({ kind }) => kind === 'name')
          ? html`<p class="answers soft">Choose one level to see what was answered there.</p>`
          : round.exercise.kind === 'name'
            ? html`<desk-named-list
                class="answers"
                .view=${view}
                .exercise=${round.exercise}
                .covered=${hidden}
              ></desk-named-list>`
            : html`<desk-heat-map class="answers" .view=${view} .covered=${hidden}></desk-heat-map>`
      }
      <desk-advice .view=${view}></desk-advice>
    `;
  }

  private phase(round: DeskRoundView) {
    switch (round.phase) {
      case 'open':
        return html`<desk-clock
          .openedAt=${round.openedAt}
          .deadline=${round.deadline}
          .offset=${this.offset}
        ></desk-clock>`;
      case 'held':
        return 'Held';
      case 'revealed':
        return 'Revealed';
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-round-centre': DeskRoundCentre;
  }
}
