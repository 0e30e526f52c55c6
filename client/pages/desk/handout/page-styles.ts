import { css, unsafeCSS } from 'lit';
import { footHeight, gutter, headHeight, margin, nameHeight } from './paper.ts';
import { resultsHeight } from './pages.ts';

const mm = (length: number) => unsafeCSS(`${String(length)}mm`);

/**
 * A page in millimetres and points, black on white in either theme: a proof of what the copier makes of it. On the
 * screen it is scaled as a whole, so that it is laid out once.
 */
export const pageStyles = css`
  .frame {
    height: calc(var(--height) * var(--scale, 1));
    width: calc(var(--width) * var(--scale, 1));
  }
  .page {
    --ink: black;
    --sheet: white;
    --page: white;
    --soft: black;
    --control: black;
    --line: black;
    --felt: black;
    --on-fill: white;
    --rose: black;

    background: var(--sheet);
    color: var(--ink);
    color-scheme: light;
    display: grid;
    font-size: 9pt;
    font-weight: 400;
    grid-template-columns: minmax(0, 1fr);
    grid-template-rows: ${mm(headHeight)} minmax(0, 1fr) ${mm(footHeight)};
    height: var(--height);
    line-height: 1.25;
    overflow: hidden;
    padding: ${mm(margin)};
    transform: scale(var(--scale, 1));
    transform-origin: 0 0;
    width: var(--width);
  }
  .page.questions {
    grid-template-rows: ${mm(headHeight)} ${mm(nameHeight)} minmax(0, 1fr) ${mm(footHeight)};
  }
  .page.answers {
    grid-template-rows: ${mm(headHeight)} ${mm(resultsHeight)} minmax(0, 1fr) ${mm(footHeight)};
  }
  .page p,
  .page h2,
  .page h3,
  .page ol,
  .page figure {
    margin: 0;
    padding: 0;
  }
  .page header,
  .page footer {
    align-items: baseline;
    display: flex;
    gap: 6mm;
    justify-content: space-between;
  }
  .page header {
    align-self: start;
    border-bottom: 0.6mm solid var(--ink);
    padding-bottom: 1.2mm;
  }
  .page header h2 {
    font-size: 15pt;
  }
  .page header h2.long {
    font-size: 11pt;
  }
  .page header p {
    flex: none;
    max-width: 50%;
    text-align: end;
  }
  .page header strong {
    margin-right: 3mm;
  }
  .page footer {
    align-items: end;
  }
  .page footer p:last-child {
    flex: none;
  }
  .caution {
    font-size: 8pt;
    line-height: 1.2;
  }
  .grid {
    display: grid;
    gap: ${mm(gutter)};
    grid-template-columns: repeat(var(--columns), minmax(0, 1fr));
    grid-template-rows: repeat(var(--rows), minmax(0, 1fr));
  }
  .page figure {
    break-inside: avoid;
    display: flex;
    flex-direction: column;
    gap: 1mm;
    min-height: 0;
    min-width: 0;
    overflow: hidden;
  }
  .page figcaption,
  .page h3 {
    font-size: 11pt;
    font-weight: 700;
    line-height: 1.15;
  }
  .page figcaption {
    flex: none;
    min-height: 5mm;
    overflow: hidden;
    text-overflow: ellipsis;
    white-space: nowrap;
  }
  .page figcaption.written {
    border-bottom: 0.25mm solid var(--ink);
    height: 8mm;
    margin-bottom: 1.5mm;
  }
  .number {
    margin-right: 2mm;
  }
  .number::after {
    content: '.';
  }
  .drawing {
    display: flex;
    flex: 1;
    gap: 3mm;
    min-height: 0;
  }
  .drawing rootcall-chart {
    flex: 3;
    min-height: 0;
    min-width: 0;
  }
  .notes {
    flex: 2;
    min-height: 0;
    min-width: 0;
    overflow: hidden;
  }
  /* A lying chart is wide enough long before it is this high. */
  .drawing.lying:has(~ .notes) {
    flex: 0 1 44mm;
  }
  .notes.below {
    flex: 1 0 8.5mm;
  }
  .notes i {
    border-bottom: 0.25mm solid var(--ink);
    display: block;
    height: 8mm;
  }
  .page rootcall-tab {
    zoom: 0.81;
  }
  .tab {
    flex: none;
    margin-block: 1mm;
    max-width: 100%;
  }
  .line {
    flex: none;
    font-size: 8.5pt;
    line-height: 1.2;
    max-height: 2.4em;
    overflow: hidden;
  }
  .per-1 figcaption,
  .per-2 figcaption {
    font-size: 16pt;
  }
  .per-1 .line,
  .per-2 .line {
    font-size: 12pt;
  }
  .name {
    align-content: start;
    display: grid;
    gap: 2.5mm;
  }
  .blank-line {
    align-items: end;
    display: flex;
    gap: 2mm;
  }
  .blank-line i {
    border-bottom: 0.25mm solid var(--ink);
    flex: 1;
    height: 6mm;
  }
  .name .blank-line i {
    flex: 0 1 90mm;
  }
  .question,
  .answer {
    border-top: 0.2mm solid var(--ink);
    break-inside: avoid;
    display: grid;
    gap: 4mm;
    grid-template-columns: 45mm minmax(0, 1fr);
    padding-top: 1.5mm;
  }
  .question.named {
    grid-template-columns: minmax(0, 1fr) 60mm;
  }
  .question.named .blank-line {
    align-self: start;
    margin-top: 4mm;
  }
  .question rootcall-chart {
    max-width: 150mm;
  }
  .words {
    align-content: start;
    display: grid;
    gap: 0.8mm;
  }
  .answer {
    grid-template-columns: minmax(0, 1fr);
    padding-bottom: 1.5mm;
  }
  .answer .right {
    font-weight: 600;
  }
  @media print {
    .frame {
      break-after: page;
      break-inside: avoid;
      /* A paper's height is rounded down by some browsers: what is a hair too high draws an empty page after it. */
      height: calc(var(--height) - 1px);
      overflow: hidden;
      width: var(--width);
    }
    .frame:last-child {
      break-after: auto;
    }
    .page {
      transform: none;
    }
  }
`;
