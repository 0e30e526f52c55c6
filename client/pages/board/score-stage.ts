import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { ScoreView } from '../../../shared/protocol/views.ts';
import '../../components/hairpin.ts';
import { boardStyles } from './board-styles.ts';
import { rowLegend, scoreRow, scoreRowStyles } from './score-rows.ts';
import { percent } from './words.ts';

/** What fits under the figures: exercises in two columns, teams beside them, aliases in three columns. */
const mostRows = 12;
const mostInOneColumn = 8;
const mostUnderLargeFigures = 5;
const mostTeams = 6;
const mostAliases = 24;

/** The class against its own last time; at the end also teams' or, where the teacher chose it, aliases' shares. */
@customElement('board-score')
export class BoardScore extends LitElement {
  static override styles = [
    boardStyles,
    scoreRowStyles,
    css`
      :host {
        align-content: center;
        display: grid;
        gap: calc(32 * var(--unit));
        grid-template-columns: minmax(0, 1fr);
      }
      .top {
        align-items: end;
        column-gap: calc(48 * var(--unit));
        display: flex;
        justify-content: space-between;
      }
      .figures {
        align-items: end;
        column-gap: calc(64 * var(--unit));
        display: flex;
      }
      .figure {
        font-size: calc(150 * var(--unit));
        line-height: 0.95;
        white-space: nowrap;
      }
      .figure small {
        font-size: 0.5em;
      }
      .today .figure {
        font-size: var(--text-figure);
      }
      .small-figures .figure {
        font-size: calc(88 * var(--unit));
      }
      .small-figures .today .figure {
        font-size: calc(112 * var(--unit));
      }
      rootcall-hairpin {
        align-self: center;
        height: calc(116 * var(--unit));
        width: calc(414 * var(--unit));
      }
      .small-figures rootcall-hairpin {
        height: calc(84 * var(--unit));
        width: calc(300 * var(--unit));
      }
      .legend {
        display: flex;
        gap: calc(40 * var(--unit));
      }
      .legend span {
        align-items: center;
        display: inline-flex;
        gap: calc(12 * var(--unit));
      }
      .legend svg {
        height: calc(40 * var(--unit));
        width: calc(40 * var(--unit));
      }
      .shares {
        column-gap: calc(56 * var(--unit));
        display: grid;
        grid-template-columns: repeat(2, minmax(0, 1fr));
        row-gap: calc(14 * var(--unit));
      }
      .shares.three {
        /* A column only where there are aliases for it: the fewer, the wider. */
        grid-auto-columns: minmax(0, max-content);
        grid-auto-flow: column;
        grid-template-columns: none;
        grid-template-rows: repeat(8, auto);
        row-gap: 0;
      }
      .shares li {
        display: flex;
        gap: calc(20 * var(--unit));
        justify-content: space-between;
      }
      .three li {
        font-size: calc(44 * var(--unit));
      }
      .shares span:first-child {
        overflow: hidden;
        text-overflow: ellipsis;
        white-space: nowrap;
      }
      @media (max-aspect-ratio: 1/1) {
        .top,
        .figures {
          flex-wrap: wrap;
          row-gap: calc(24 * var(--unit));
        }
        rootcall-hairpin {
          width: calc(260 * var(--unit));
        }
        .shares,
        .shares.three {
          grid-auto-flow: row;
          grid-template-columns: minmax(0, 1fr);
          grid-template-rows: none;
        }
      }
    `,
  ];

  @property({ attribute: false }) score: ScoreView | null = null;
  @property({ type: Boolean }) over = false;

  override render() {
    const { score } = this;
    if (!score) return nothing;
    // Nothing was asked, or the teacher keeps no score.
    if (score.rows.length === 0)
      return html`<h1>${this.over ? 'This class is over.' : 'Nothing is asked yet.'}</h1>`;
    return html`<div class="top">
        ${this.figures(score)}
        <h1 class=${this.over ? 'long-3' : 'visually-hidden'}>
          ${this.over ? 'This class is over.' : 'The class against its last time'}
        </h1>
      </div>
      <hr class="rule" />
      ${score.ranking.length > 0 ? this.ranking(score) : this.rows(score)}`;
  }

  private figures({ now, before, rows, teams, ranking }: ScoreView) {
    const today = percent(now);
    const last = before && percent(before);
    const small = this.over || teams.length > 0 || ranking.length > 0 || rows.length > mostUnderLargeFigures;
    return html`<div class=${small ? 'figures small-figures' : 'figures'}>
      ${
        last === null
          ? nothing
          : html`<div class="soft">
                <p class="figure title-face">${last}<small> %</small></p>
                <p>last time</p>
              </div>
              <rootcall-hairpin .grows=${today > last}></rootcall-hairpin>`
      }
      <div class="today">
        <p class="figure title-face">${today}<small> %</small></p>
        <p class="soft">
          ${last === null ? 'today, of all answers (first time)' : 'today, in the same kinds'}
        </p>
      </div>
    </div>`;
  }

  private rows({ rows, teams }: ScoreView) {
    const most = teams.length === 0 ? mostRows : teams.length > 4 ? 3 : 4;
    const shown = rows.slice(-most);
    const left = rows.length - shown.length;
    const two = shown.length > mostInOneColumn;
    const compared = shown.some(({ before }) => before !== null);
    return html`${teams.length > 0 ? this.teams(teams) : nothing}
      <ul class=${two ? 'rows two' : 'rows'}>
        ${shown.map((row) => scoreRow(row, !two))}
      </ul>
      <div class="legend">
        ${compared ? rowLegend() : nothing}
        ${left > 0 ? html`<p class="soft">and ${left} before ${left === 1 ? 'this' : 'these'}</p>` : nothing}
      </div>`;
  }

  private teams(teams: ScoreView['teams']) {
    return html`<ul class="shares" aria-label="Teams">
      ${teams
        .slice(0, mostTeams)
        .map(
          ({ team, share }) =>
            html`<li><span dir="auto">${team}</span> <b class="nowrap">${percent(share)} %</b></li>`,
        )}
    </ul>`;
  }

  private ranking({ ranking }: ScoreView) {
    const left = ranking.length - mostAliases;
    return html`<ul class="shares three" aria-label="By alias">
        ${ranking
          .slice(0, mostAliases)
          .map(
            ({ alias, share }) =>
              html`<li>
                <span dir="auto">${alias}</span> <span class="nowrap">${share.right} of ${share.of}</span>
              </li>`,
          )}
      </ul>
      ${left > 0 ? html`<p class="soft">and ${left} more</p>` : nothing}`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'board-score': BoardScore;
  }
}
