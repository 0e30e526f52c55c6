import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { NameExercise } from '../../../../shared/exercise/exercise.ts';
import type { DeskView } from '../../../../shared/protocol/views.ts';
import { sign } from '../../../components/signs.ts';
import { deskStyles } from '../desk-styles.ts';
import { settledAnswers } from './figures.ts';
import { namedCounts } from './named-counts.ts';

/** What everybody called the place, in bars with their numbers; stands where other rounds have the heat map. */
@customElement('desk-named-list')
export class DeskNamedList extends LitElement {
  static override styles = [
    deskStyles,
    css`
      :host {
        display: block;
      }
      section {
        align-content: start;
        display: grid;
        gap: var(--space-3);
        min-height: 100%;
      }
      h2 {
        font-family: var(--face-text);
        font-size: var(--text-body);
      }
      table {
        border-collapse: collapse;
        width: 100%;
      }
      th,
      td {
        border-top: 1px solid var(--line);
        padding: var(--space-2);
        text-align: left;
        vertical-align: middle;
      }
      th {
        font-size: var(--text-lead);
        padding-left: 0;
        width: 1%;
      }
      .number {
        font-variant-numeric: tabular-nums lining-nums;
        font-weight: 600;
        text-align: right;
        width: 2.5rem;
      }
      .line {
        align-items: center;
        display: flex;
        gap: var(--space-3);
      }
      .mark {
        color: var(--felt);
        flex: none;
        font-weight: 600;
      }
      .bar {
        background: var(--heat-3);
        border: 1px solid var(--ink);
        flex: 0 1 auto;
        height: 1.1rem;
        min-width: 3px;
      }
      .right .bar {
        box-shadow:
          0 0 0 2px var(--sheet),
          0 0 0 5px var(--felt);
      }
    `,
  ];

  @property({ attribute: false }) view: DeskView | null = null;
  @property({ attribute: false }) exercise: NameExercise | null = null;
  @property({ type: Boolean }) covered = false;

  override render() {
    const { view, exercise } = this;
    if (!view || !exercise) return nothing;
    const names = settledAnswers(view).flatMap(({ named }) => named ?? []);
    return html`<section class="sheet" aria-label="What the place was called">
      <h2>What the place was called</h2>
      ${
        this.covered
          ? html`<p class="soft">Hidden until the reveal.</p>`
          : html`<table>
              <tbody>
                ${namedCounts(exercise, names, view.naming).map(
                  ({ text, count, share, right }) =>
                    html`<tr class=${right ? 'right' : ''}>
                      <th scope="row">${text}</th>
                      <td class="number">${count}</td>
                      <td>
                        <div class="line">
                          ${
                            count === 0
                              ? nothing
                              : html`<div
                                  class="bar"
                                  .style=${`flex-basis: ${String(Math.round(100 * share))}%`}
                                ></div>`
                          }
                          ${right ? html`<span class="mark">${sign('tick')} right</span>` : nothing}
                        </div>
                      </td>
                    </tr>`,
                )}
              </tbody>
            </table>`
      }
    </section>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-named-list': DeskNamedList;
  }
}
