import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { DeskView } from '../../../../shared/protocol/views.ts';
import { deskStyles } from '../desk-styles.ts';
import { figuresOf, percent } from './figures.ts';
import { commonSlip } from './slips.ts';
import { currentRound } from './steps.ts';
import { waysText } from './ways.ts';

/** Three figures parted by barlines: done, right, commonest slip. */
@customElement('desk-figures-row')
export class DeskFiguresRow extends LitElement {
  static override styles = [
    deskStyles,
    css`
      dl {
        display: grid;
        grid-template-columns: auto auto minmax(0, 1fr);
        margin: 0;
      }
      div {
        border-left: 1px solid var(--ink);
        display: grid;
        grid-template-columns: auto auto 1fr;
        align-content: start;
        align-items: baseline;
        column-gap: var(--space-1);
        padding: 0 1.6rem;
        min-width: 0;
      }
      div:first-child {
        border-left: 0;
        padding-left: 0;
      }
      dt {
        grid-column: 1 / -1;
        grid-row: 2;
      }
      dd {
        color: var(--soft);
        font-size: 1.4rem;
        line-height: 1;
        margin: 0;
        white-space: nowrap;
      }
      .figure {
        color: var(--ink);
        font-variant-numeric: lining-nums;
        line-height: 1;
      }
      .slip {
        color: var(--rose);
        font-weight: 600;
      }
      .line,
      .ways {
        display: block;
      }
      /* As wide as the figure above it. */
      .ways {
        font-size: var(--text-small);
        line-height: 1.3;
        min-width: 100%;
        text-wrap: balance;
        width: 0;
      }
      @media (max-width: 22rem) {
        .line {
          display: none;
        }
      }
      .slip::first-letter,
      .line::first-letter {
        text-transform: uppercase;
      }
      @container (max-width: 48rem) {
        div {
          padding: 0 var(--space-3);
        }
        .figure {
          font-size: 2.25rem;
        }
        dd {
          font-size: 1rem;
        }
        dt {
          font-size: var(--text-small);
        }
      }
    `,
  ];

  @property({ attribute: false }) view: DeskView | null = null;
  /** While names and key are hidden: the slip would tell what is right. */
  @property({ type: Boolean }) covered = false;

  override render() {
    const { view } = this;
    if (!view) return nothing;
    const { done, of, right, slips } = figuresOf(view);
    const share = percent(right, done);
    const open = currentRound(view)?.phase === 'open';
    const slip = this.covered ? null : commonSlip(view);
    return html`<dl>
      <div>
        <dt class="soft">${open ? 'done' : 'answered'}<span class="ways">${waysText(view)}</span></dt>
        <dd class="figure">${done}</dd>
        <dd>of ${of}</dd>
      </div>
      <div>
        <dt class="soft">right</dt>
        <dd class="figure">${right}</dd>
        <dd>${share === null ? nothing : html`${share} %`}</dd>
      </div>
      ${
        slip
          ? html`<div>
              <dt>
                <span class="slip">${slip.name}</span>
                <span class="soft line">${slip.line}</span>
              </dt>
              <dd class="figure">${slip.count}</dd>
              <dd>of ${slips} ${slips === 1 ? 'slip' : 'slips'}</dd>
            </div>`
          : html`<div>
              <dt class="soft">${slips === 1 ? 'slip' : 'slips'}</dt>
              <dd class="figure">${slips}</dd>
            </div>`
      }
    </dl>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-figures-row': DeskFiguresRow;
  }
}
