import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { DeskView, Share } from '../../../../shared/protocol/views.ts';
import { deskStyles } from '../desk-styles.ts';
import { groupPath } from '../routes.ts';
import './charts-link.ts';
import { percent } from './figures.ts';

/** What the class came to, once it is closed. */
@customElement('desk-summary')
export class DeskSummary extends LitElement {
  static override styles = [
    deskStyles,
    css`
      :host {
        align-content: start;
        display: grid;
        gap: var(--space-4);
        grid-template-columns: minmax(0, 44rem);
      }
      table {
        border-collapse: collapse;
        font-variant-numeric: tabular-nums lining-nums;
        width: 100%;
      }
      th,
      td {
        border-bottom: 1px solid var(--line);
        padding: var(--space-2);
        text-align: left;
      }
      td {
        text-align: right;
        white-space: nowrap;
      }
      thead th:not(:first-child) {
        text-align: right;
      }
      tbody th {
        font-weight: 400;
      }
    `,
  ];

  @property({ attribute: false }) view: DeskView | null = null;

  override render() {
    const { view } = this;
    if (!view) return nothing;
    const { score } = view;
    const right = percent(score.now.right, score.now.of);
    return html`
      <div>
        <h1>The class is over</h1>
        <p class="lead">
          ${right === null ? 'No answers were revealed.' : `${String(right)} % right over ${rounds(score.rows.length)}.`}
        </p>
      </div>
      ${score.rows.length === 0 ? nothing : this.rows(view)}
      ${
        score.teams.length === 0
          ? nothing
          : html`<section class="sheet">
              <h2>Teams</h2>
              ${this.list(score.teams.map(({ team, share }) => [team, share]))}
            </section>`
      }
      ${
        score.ranking.length === 0
          ? nothing
          : html`<section class="sheet">
              <h2>By alias</h2>
              ${this.list(score.ranking.map(({ alias, share }) => [alias, share]))}
            </section>`
      }
      ${
        score.rows.length === 0
          ? nothing
          : html`<section class="sheet" aria-label="Charts">
              <desk-charts-link .classId=${view.classId}></desk-charts-link>
            </section>`
      }
      <p><a class="button primary" href=${groupPath(view.groupId)}>Back to the group</a></p>
    `;
  }

  private rows({ score }: DeskView) {
    return html`<section class="sheet">
      <table>
        <thead>
          <tr>
            <th scope="col">Asked</th>
            <th scope="col">Today</th>
            <th scope="col">Last time</th>
          </tr>
        </thead>
        <tbody>
          ${score.rows.map(
            ({ title, now, before }) =>
              html`<tr>
                <th scope="row">${title}</th>
                <td>${share(now)}</td>
                <td class="soft">${before ? share(before) : 'first time'}</td>
              </tr>`,
          )}
        </tbody>
      </table>
    </section>`;
  }

  private list(lines: readonly (readonly [string, Share])[]) {
    return html`<table>
      <tbody>
        ${lines.map(
          ([name, one]) =>
            html`<tr>
              <th scope="row">${name}</th>
              <td>${share(one)}</td>
            </tr>`,
        )}
      </tbody>
    </table>`;
  }
}

function share({ right, of }: Share): string {
  const whole = percent(right, of);
  return whole === null ? 'no answers' : `${String(whole)} %`;
}

function rounds(count: number): string {
  return count === 1 ? 'one round' : `${String(count)} rounds`;
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-summary': DeskSummary;
  }
}
