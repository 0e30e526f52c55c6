import { html, nothing, type TemplateResult } from 'lit';
import { chartNotes } from '../../../../shared/exercise/chart.ts';
import { instrumentById, standardGuitar, type InstrumentId } from '../../../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';
import '../../../charts/chart.ts';
import '../../../charts/tab-line.ts';
import { tabColumns } from '../../../charts/tab.ts';
import {
  answerMarks,
  isTabbed,
  linesBelow,
  questionHeight,
  tabWidth,
  type AnswerRow,
  type ChartCell,
  type Page,
} from './pages.ts';
import { gridOf, pageSize } from './paper.ts';
import type { Question } from './quiz.ts';
import type { SheetSettings } from './sheet.ts';

/** What stands on every page of a sheet. */
export interface Headed {
  readonly title: string;
  readonly school: string;
  readonly group: string;
  /** What to mind while playing; empty where nothing is played. */
  readonly caution: string;
  /** What empty charts are drawn for. */
  readonly instrument: InstrumentId;
  readonly naming: NoteNaming;
  readonly settings: SheetSettings;
  /** Whether the sheet is a plan's, whose results can be typed in. */
  readonly isPlans: boolean;
  /** Whether some of it is asked at more than one level. */
  readonly hasLevels: boolean;
}

const pageKinds: Readonly<Record<Page['kind'], string>> = {
  charts: '',
  blank: '',
  questions: '',
  answers: 'Answers',
};

/** A longer title is set smaller. */
const longestTitle = 32;

/** One page, as it is printed. */
export function pageView(page: Page, headed: Headed): TemplateResult {
  const { width, height } = pageSize(headed.settings);
  const { columns, rows } = gridOf(headed.settings.perPage, headed.settings.orientation);
  const label = [pageKinds[page.kind], page.hand === 'left' ? 'Left-handed' : ''].filter(Boolean).join(', ');
  const number = `Page ${String(page.number)} of ${String(page.of)}`;
  const size = [
    `--width: ${String(width)}mm`,
    `--height: ${String(height)}mm`,
    `--columns: ${String(columns)}`,
    `--rows: ${String(rows)}`,
  ].join('; ');
  return html`<section class="frame" .style=${size} aria-label=${[label, number].filter(Boolean).join(', ')}>
    <div class=${`page ${page.kind} per-${String(headed.settings.perPage)}`}>
      <header>
        <h2 class=${headed.title.length > longestTitle ? 'long' : ''}>${headed.title}</h2>
        <p>
          ${label === '' ? nothing : html`<strong>${label}</strong>`}
          <span>${[headed.school, headed.group].filter(Boolean).join(' · ')}</span>
        </p>
      </header>
      ${bodyOf(page, headed)}
      <footer>
        <p class="caution">${page.kind === 'charts' ? headed.caution : ''}</p>
        <p>${number}</p>
      </footer>
    </div>
  </section>`;
}

function bodyOf(page: Page, headed: Headed): TemplateResult {
  const isLeft = page.hand === 'left';
  switch (page.kind) {
    case 'charts':
      return html`<div class="body grid">${page.cells.map((cell) => chartCell(cell, isLeft, headed))}</div>`;
    case 'blank': {
      const { settings, instrument } = headed;
      const view = settings.blankView;
      return html`<div class="body grid">
        ${Array.from(
          { length: page.count },
          () =>
            html`<figure>
              <figcaption class="written"></figcaption>
              <div class=${`drawing ${view}`}>
                <rootcall-chart
                  view=${view}
                  .instrument=${instrumentById(instrument) ?? standardGuitar}
                  .window=${page.window}
                  .leftHanded=${isLeft}
                ></rootcall-chart>
                ${settings.notes && view === 'upright' ? notesLines('beside') : nothing}
              </div>
              ${settings.notes && view === 'lying' ? notesLines('below') : nothing}
            </figure>`,
        )}
      </div>`;
    }
    case 'questions':
      return html`<div class="name">
          <p class="blank-line"><strong>Name</strong><i></i></p>
          <p>
            Fill in where each finger goes: a dot on the fret, O for an open string, X for a silent one.
            ${headed.hasLevels ? 'Of a, b and c take the one that is yours.' : nothing}
          </p>
        </div>
        <ol class="body">
          ${page.questions.map((question) => questionView(question, isLeft))}
        </ol>`;
    case 'answers':
      return html`${headed.isPlans ? results(headed.hasLevels) : nothing}
        <ol class="body">
          ${page.answers.map((answer) => answerView(answer, isLeft, headed))}
        </ol>`;
  }
}

function results(hasLevels: boolean): TemplateResult {
  return html`<p class="results">
    To count the results: open the plan at the Desk, then <em>Results from paper</em>. Type the fret for
    <em>Find</em>, the name for <em>Name</em>, a fret or x for each string of a chord; or + right, – not yet,
    for any. Leave empty who was absent.
    ${hasLevels ? 'Level a is the first, b the second, c the third.' : nothing}
  </p>`;
}

/** More than a page has: what doesn't fit is cut off. */
const manyLines = Array.from({ length: 40 });

function notesLines(where: 'beside' | 'below'): TemplateResult {
  return html`<div class=${`notes ${where}`} aria-hidden="true">${manyLines.map(() => html`<i></i>`)}</div>`;
}

function chartCell(cell: ChartCell, isLeft: boolean, { naming, settings }: Headed): TemplateResult {
  const { item, title, line, view, marks, columns, across } = cell;
  const { chart, number } = item;
  const key = chartNotes(chart);
  const hasLinesBelow = settings.notes && view === 'lying' && linesBelow(settings, chart);
  return html`<figure .style=${`grid-column: span ${String(columns)}`}>
    <figcaption>${number === '' ? nothing : html`<span class="number">${number}</span>`}${title}</figcaption>
    <div class=${`drawing ${view}`}>
      <rootcall-chart
        data-number=${number}
        view=${view}
        marks=${marks}
        .style=${`max-${view === 'upright' ? 'width' : 'height'}: ${mm(across)}`}
        .chart=${chart}
        .key=${key}
        .naming=${naming}
        .leftHanded=${isLeft}
      ></rootcall-chart>
      ${settings.notes && view === 'upright' ? notesLines('beside') : nothing}
    </div>
    ${
      isTabbed(settings, chart)
        ? html`<div class="tab" .style=${`width: ${mm(tabWidth(chart))}`}>
            <rootcall-tab
              .columns=${tabColumns(chart, key)}
              .strings=${instrumentById(chart.instrument)?.openStrings.length ?? 6}
            ></rootcall-tab>
          </div>`
        : nothing
    }
    ${line === '' ? nothing : html`<p class="line">${line}</p>`}
    ${hasLinesBelow ? notesLines('below') : nothing}
  </figure>`;
}

function questionView(question: Question, isLeft: boolean): TemplateResult {
  const { number, words, window, ordered, asksFinger, instrument } = question;
  return html`<li
    class=${window ? 'question' : 'question named'}
    .style=${`height: ${mm(questionHeight(question))}`}
  >
    <div class="words">
      <h3><span class="number">${number}</span>${words.title}</h3>
      <p>${words.detail}</p>
      ${ordered ? html`<p>Number the dots in their order.</p>` : nothing}
      ${asksFinger ? html`<p class="blank-line">Finger <i></i></p>` : nothing}
    </div>
    ${
      window
        ? html`<rootcall-chart
            data-number=${number}
            view="lying"
            .style=${`height: ${mm(question.chartHeight ?? 0)}`}
            .instrument=${instrumentById(instrument) ?? standardGuitar}
            .window=${window}
            .leftHanded=${isLeft}
            .label=${`Blank chart for ${number}`}
          ></rootcall-chart>`
        : html`<p class="blank-line"><span>Answer</span><i></i></p>`
    }
  </li>`;
}

function answerView(
  { number, title, exercise, right, slips, chart }: AnswerRow,
  isLeft: boolean,
  { naming }: Headed,
): TemplateResult {
  const columns = chart ? `grid-template-columns: minmax(0, 1fr) ${mm(chart.width)}` : '';
  return html`<li class="answer" .style=${columns}>
    <div class="words">
      <h3><span class="number">${number}</span>${title}</h3>
      <p class="right">${right}</p>
      ${slips.map((slip) => html`<p>${slip}</p>`)}
    </div>
    ${
      chart
        ? html`<rootcall-chart
            data-number=${number}
            view="lying"
            marks=${answerMarks(exercise)}
            .style=${`height: ${mm(chart.height)}`}
            .chart=${exercise}
            .naming=${naming}
            .leftHanded=${isLeft}
          ></rootcall-chart>`
        : nothing
    }
  </li>`;
}

/** Set by script, so that the content security policy lets it through. */
function mm(length: number): string {
  return `${length.toFixed(2)}mm`;
}
