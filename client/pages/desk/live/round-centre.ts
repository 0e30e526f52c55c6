import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { patternText } from '../../../../shared/exercise/pattern.ts';
import { wordingOf } from '../../../../shared/exercise/wording.ts';
import type { DeskRoundView, DeskView } from '../../../../shared/protocol/views.ts';
import { deskStyles } from '../desk-styles.ts';
import { chartView, keyChart } from '../chart-notes.ts';
import '../charts.ts';
import './advice.ts';
import { neckOf } from './answer-text.ts';
import './clock.ts';
import './figures-row.ts';
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
      .task p {
        margin-top: 2px;
      }
      desk-figures-row {
        display: block;
        margin-top: var(--space-4);
      }
      .task .pattern {
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
      @media (min-width: 60.01rem) {
        :host([wide-key]) {
          grid-template-columns: minmax(0, 1fr) 20rem;
        }
      }
      .answers {
        grid-area: heat;
      }
      desk-advice {
        grid-area: advice;
      }
      @media (max-width: 60rem) {
        :host {
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

  override render() {
    const { view } = this;
    const round = view && currentRound(view);
    if (!round) return nothing;
    const { title, detail } = wordingOf(round.exercise, view.naming);
    const hidden = this.hiding && round.phase !== 'revealed';
    const isWide =
      chartView(keyChart(round.exercise, view.naming)) === 'lying' ||
      neckOf(round.exercise).openStrings.length > mostNarrow;
    this.toggleAttribute('wide-key', !hidden && isWide);
    return html`
      <section class="task" aria-label="The round">
        <h1>${title}</h1>
        <p><span class="soft">${detail}</span> <b>${this.phase(round)}</b></p>
        <desk-figures-row .view=${view} .covered=${hidden}></desk-figures-row>
        ${view.pattern && !hidden ? html`<p class="pattern">${patternText(view.pattern, 'class', neckOf(round.exercise))}</p>` : nothing}
      </section>
      <section class="sheet key" aria-label="Answer key">
        <p class="soft small">Answer key</p>
        ${
          hidden
            ? html`<p class="soft small">Hidden until the reveal.</p>`
            : html`<desk-key-chart .exercise=${round.exercise} .naming=${view.naming}></desk-key-chart>`
        }
      </section>
      ${
        round.exercise.kind === 'name'
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
