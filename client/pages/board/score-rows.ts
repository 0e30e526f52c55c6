import { css, html, svg, type TemplateResult } from 'lit';
import type { ScoreRowView } from '../../../shared/protocol/views.ts';
import { percent } from './words.ts';

export const scoreRowStyles = css`
  .rows {
    align-content: start;
    column-gap: calc(88 * var(--unit));
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    row-gap: calc(10 * var(--unit));
  }
  .rows.two {
    grid-auto-flow: column;
    grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
    grid-template-rows: repeat(6, auto);
  }
  .row {
    align-items: center;
    column-gap: calc(32 * var(--unit));
    display: grid;
    grid-template-columns: minmax(0, 1fr) calc(610 * var(--unit)) calc(310 * var(--unit));
  }
  .two .row {
    column-gap: calc(24 * var(--unit));
    grid-template-columns: minmax(0, 1fr) calc(150 * var(--unit)) calc(250 * var(--unit));
  }
  .row h2 {
    font-family: var(--face-text);
    font-size: var(--text-body);
    font-weight: 500;
    line-height: 1.25;
    overflow: hidden;
    text-overflow: ellipsis;
    white-space: nowrap;
  }
  .row p {
    font-variant-numeric: tabular-nums;
    text-align: end;
    white-space: nowrap;
  }
  .two .first {
    font-size: var(--text-small);
  }
  .row svg {
    display: block;
    height: auto;
    overflow: visible;
    width: 100%;
  }
  .line {
    stroke: var(--control);
  }
  .way {
    stroke: var(--ink);
  }
  .head {
    fill: var(--noteheads-ground, var(--sheet));
    stroke: var(--ink);
  }
  .head.full {
    fill: var(--ink);
  }
  @media (max-aspect-ratio: 1/1) {
    .rows.two {
      grid-auto-flow: row;
      grid-template-columns: minmax(0, 1fr);
      grid-template-rows: none;
    }
    .row,
    .two .row {
      grid-template-columns: minmax(0, 1fr) calc(300 * var(--unit));
    }
    .row svg {
      display: none;
    }
  }
`;

function head(x: number, full: boolean) {
  return svg`<ellipse class=${full ? 'head full' : 'head'} rx="14" ry="9.6" stroke-width="3"
    transform="translate(${x} 20) rotate(-20)" />`;
}

/** From none to all on a line: hollow is last time, full is today. `width` in px of the 1920 × 1080 picture. */
function track(width: number, { now, before }: ScoreRowView) {
  const at = (share: number) => 16 + (share / 100) * (width - 32);
  const today = now.of === 0 ? null : at(percent(now));
  const last = before && at(percent(before));
  return html`<svg viewBox="0 0 ${width} 40" aria-hidden="true">
    ${svg`<path class="line" stroke-width="2"
      d="M${at(0)} 20H${at(100)}M${at(0)} 10v20M${at(50)} 10v20M${at(100)} 10v20" />`}
    ${last === null || today === null ? '' : svg`<path class="way" stroke-width="5" d="M${last} 20H${today}" />`}
    ${last === null ? '' : head(last, false)}${today === null ? '' : head(today, true)}
  </svg>`;
}

export function scoreRow(row: ScoreRowView, wide: boolean): TemplateResult {
  const { title, now, before } = row;
  return html`<li class="row">
    <h2>${title}</h2>
    ${track(wide ? 610 : 150, row)}
    <p>
      ${
        now.of === 0
          ? html`<span class="soft first">no answers</span>`
          : before === null
            ? html`<span class="soft first">first time</span> <b>${percent(now)} %</b>`
            : html`<span class="soft">${percent(before)} to</span> <b>${percent(now)} %</b>`
      }
    </p>
  </li>`;
}

/** The key to the rows' noteheads. */
export function rowLegend(): TemplateResult {
  const one = (full: boolean) => html`<svg viewBox="0 0 40 40" aria-hidden="true">${head(20, full)}</svg>`;
  return html`<p class="legend soft"><span>${one(false)} last time</span><span>${one(true)} today</span></p>`;
}
