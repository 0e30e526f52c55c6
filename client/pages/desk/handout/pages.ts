import { chartNotes, chartWordings, type Chart } from '../../../../shared/exercise/chart.ts';
import type { Exercise } from '../../../../shared/exercise/exercise.ts';
import { known } from '../../../../shared/lib/assert.ts';
import type { FretRange } from '../../../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';
import type { Marks } from '../../../charts/chart-marks.ts';
import { drawnCharts, type DrawnChart } from '../../../charts/drawn.ts';
import type { NeckView } from '../../../fretboard/state.ts';
import { answerLineOf, type AnswerLine } from './answers.ts';
import { explanationOf } from './explanation.ts';
import { fits, leastSize } from './legible.ts';
import { bodySize, cellSize, gridOf, nameHeight, type Size } from './paper.ts';
import { questionOf, type Question } from './quiz.ts';
import { perPages } from './settings.ts';
import type { Hand, SheetItem, SheetSettings } from './sheet.ts';

/** What a sheet is made of. */
export interface Sheet {
  readonly settings: SheetSettings;
  readonly items: readonly SheetItem[];
  readonly naming: NoteNaming;
}

/** One chart on a page, over so many of its columns. */
export interface ChartCell {
  readonly item: SheetItem;
  readonly title: string;
  readonly line: string;
  readonly view: NeckView;
  readonly marks: Marks;
  readonly columns: number;
  /** How much it may have across its strings, in mm: with more its frets would be too short for their marks. */
  readonly across: number;
  /** Whether its row is so high that its text can be read. */
  readonly legible: boolean;
}

/** What is right, with the size of its chart. */
export type AnswerRow = AnswerLine & { readonly chart: Size | null };

/** What stands on a page. */
export type PageContent =
  | { readonly kind: 'charts'; readonly cells: readonly ChartCell[] }
  | { readonly kind: 'blank'; readonly count: number; readonly window: FretRange }
  | { readonly kind: 'questions'; readonly questions: readonly Question[] }
  | { readonly kind: 'answers'; readonly answers: readonly AnswerRow[] };

export type Page = PageContent & {
  readonly hand: Hand;
  /** Counted within the copy that it belongs to: a hand's, or the answers'. */
  readonly number: number;
  readonly of: number;
};

/** All pages in the order in which they are printed: a copy for each hand, then the answers of a quiz. */
export function pagesOf(sheet: Sheet): readonly Page[] {
  const { hands, kind } = sheet.settings;
  const copies: readonly Hand[] = hands === 'both' ? ['right', 'left'] : [hands];
  const pages = contentOf(sheet);
  const [first = 'right'] = copies;
  return [
    ...copies.flatMap((hand) => numbered(pages, hand)),
    ...(kind === 'quiz' ? numbered(answerPages(sheet), first) : []),
  ];
}

function numbered(pages: readonly PageContent[], hand: Hand): readonly Page[] {
  return pages.map((page, index) => ({ ...page, hand, number: index + 1, of: pages.length }));
}

function contentOf(sheet: Sheet): readonly PageContent[] {
  switch (sheet.settings.kind) {
    case 'charts':
      return chartPages(sheet);
    case 'quiz':
      return questionPages(sheet);
    case 'blank':
      return [blankPage(sheet)];
  }
}

export function chosenOf({ items }: Pick<Sheet, 'items'>): readonly SheetItem[] {
  return items.filter(({ chosen }) => chosen);
}

// --- charts

/** In millimetres, what stands over and under the chart itself. */
const titleHeight = 6.2;
const lineHeight = 8.3;
/** What a letter of the sentence takes, and what is lost where its first line breaks. */
const lineLetter = 1.35;
const lineBreak = 8;
/** Beside an upright chart, or below a lying one. */
const notesWidth = 22;
const notesHeight = 9;
/** A line of tablature. */
const tabHeight = 17;
/** Of 7 points, what nobody sees missing. */
const nearly = 0.99;

/** The sheet with fewer charts on each page where with so many they could not be read. */
export function legibleSheet(sheet: Sheet): Sheet {
  const { settings } = sheet;
  if (settings.kind !== 'charts') return sheet;
  const perPage = perPages
    .filter((count) => count <= settings.perPage)
    .findLast((count) => {
      const fewer = { ...sheet, settings: { ...settings, perPage: count } };
      return chosenOf(sheet).every((item) => cellOf(item, fewer).legible);
    });
  return perPage === undefined ? sheet : { ...sheet, settings: { ...settings, perPage } };
}

function chartPages(sheet: Sheet): readonly PageContent[] {
  const { columns, rows } = gridOf(sheet.settings.perPage, sheet.settings.orientation);
  const pages: ChartCell[][] = [];
  let row = rows;
  let column = columns;
  for (const cell of chosenOf(sheet).map((item) => cellOf(item, sheet))) {
    if (column + cell.columns > columns) {
      row += 1;
      column = 0;
    }
    if (row > rows || pages.length === 0) {
      pages.push([]);
      row = 1;
    }
    pages.at(-1)?.push(cell);
    column += cell.columns;
  }
  return pages.map((cells) => ({ kind: 'charts', cells }));
}

function cellOf(item: SheetItem, { settings, naming }: Sheet): ChartCell {
  const { chart, line } = item;
  const drawn = known(drawnCharts([chart], { ...settings, naming })[0], 'a chart');
  const isUpright = drawn.view === 'upright' && fits(leastSize(drawn, 'upright'), chartBox(settings, chart));
  const view = isUpright ? 'upright' : 'lying';
  const least = leastSize(drawn, view);
  const bare = leastSize(withoutLabels(drawn), view);
  // Where every mark is a root its shape says all.
  const isBare = isAllRoots(drawn) && columnsFor(bare.width, settings) < columnsFor(least.width, settings);
  const needed = isBare ? bare : least;
  const tab = isTabbed(settings, chart) ? columnsFor(tabWidth(chart), settings) : 1;
  const text = settings.explained ? (line ?? explanationOf(chart, naming)) : '';
  const columns = Math.max(columnsFor(needed.width, settings), tab, columnsFor(lineWidth(text), settings));
  const box = chartBox(settings, chart, columns, view);
  const [wide, high] = [box.width / needed.width, box.height / needed.height];
  return {
    item,
    title: chartWordings(chart)[naming].title,
    line: text,
    view,
    marks: isBare ? 'none' : settings.marks,
    columns,
    across: Math.min(wide, high) * (view === 'upright' ? needed.width : needed.height),
    legible: high >= Math.min(1, wide) * nearly,
  };
}

/** The least number of the page's columns that is so wide; all of them where none is. */
function columnsFor(width: number, settings: SheetSettings): number {
  const { columns } = gridOf(settings.perPage, settings.orientation);
  const counts = Array.from({ length: columns }, (_, index) => index + 1);
  return counts.find((count) => cellSize(settings, count).width >= width) ?? columns;
}

/** The sentence stands in two lines. */
function lineWidth(text: string): number {
  return (text.length * lineLetter + lineBreak) / 2;
}

export function isTabbed({ tab }: SheetSettings, chart: Chart): boolean {
  return tab && chart.kind === 'scale';
}

/** Tablature in one line: what a note takes, of one figure and of two, and what stands before and after. */
const tabNote = [4.3, 5.5] as const;
const tabBesides = 8;

export function tabWidth(chart: Chart): number {
  const notes = chartNotes(chart);
  const isHigh = notes.some(({ place }) => place.fret > 9);
  return Math.max(2, notes.length) * tabNote[isHigh ? 1 : 0] + tabBesides;
}

/** What is left for the chart itself. */
function chartBox(settings: SheetSettings, chart: Chart, columns = 1, view: NeckView = 'upright'): Size {
  const { width, height } = cellSize(settings, columns);
  const besides =
    titleHeight + (settings.explained ? lineHeight : 0) + (isTabbed(settings, chart) ? tabHeight : 0);
  const notes = settings.notes && view === 'upright' ? notesWidth : 0;
  return { width: width - notes, height: height - besides };
}

function withoutLabels(drawn: DrawnChart): DrawnChart {
  return { ...drawn, notes: drawn.notes.map((note) => ({ ...note, label: undefined })) };
}

function isAllRoots({ notes }: DrawnChart): boolean {
  return notes.every(({ root }) => root);
}

/** Whether lines to write on fit below a lying chart. */
export function linesBelow(settings: SheetSettings, chart: Chart): boolean {
  const leastChart = 37;
  const besides = titleHeight + lineHeight + (isTabbed(settings, chart) ? tabHeight : 0);
  return cellSize(settings).height >= besides + leastChart + notesHeight;
}

// --- empty charts

function blankPage({ settings }: Sheet): PageContent {
  const { blankFrom, blankFrets, perPage } = settings;
  const window = { low: blankFrom, high: blankFrom + blankFrets - 1 } as FretRange;
  return { kind: 'blank', count: perPage, window };
}

// --- the quiz

/** With a line to write on, and what a chart takes besides itself; in millimetres. */
const questionLine = 19;
const besideChart = 3.7;

/** What was added freely is numbered in its order, so that the answers can be found. */
function askedOf(sheet: Sheet): readonly SheetItem[] {
  return chosenOf(sheet)
    .filter(({ chart }) => chart.kind !== 'map')
    .map((item, index) => ({ ...item, number: item.number || String(index + 1) }));
}

function questionPages(sheet: Sheet): readonly PageContent[] {
  const questions = askedOf(sheet).flatMap((item) => questionOf(item, sheet.naming));
  const room = bodySize(sheet.settings).height - nameHeight;
  return stacked(questions, room, questionHeight).map((some) => ({ kind: 'questions', questions: some }));
}

export function questionHeight({ chartHeight }: Question): number {
  return chartHeight === null ? questionLine : chartHeight + besideChart;
}

/** A chart beside the words is so large at least; what a line and a letter of words take. */
const answerChart: Size = { width: 48, height: 37 };
const wordsLine = 4.1;
const letterWidth = 1.7;
/** What to do with the results, above the answers. */
export const resultsHeight = 13;

function answerPages(sheet: Sheet): readonly PageContent[] {
  const { width, height } = bodySize(sheet.settings);
  const answers = askedOf(sheet)
    .flatMap((item) => answerLineOf(item, sheet.naming))
    .map((line) => ({ ...line, chart: answerChartSize(line, sheet.naming) }));
  const heightOf = (row: AnswerRow) => answerHeight(row, width);
  return stacked(answers, height - resultsHeight, heightOf).map((some) => ({
    kind: 'answers',
    answers: some,
  }));
}

function answerChartSize({ exercise }: AnswerLine, naming: NoteNaming): Size | null {
  if (exercise.kind === 'name') return null;
  const drawn = known(
    drawnCharts([exercise], { marks: answerMarks(exercise), naming, view: 'lying' })[0],
    'a chart',
  );
  const least = leastSize(drawn, 'lying');
  return {
    width: Math.max(answerChart.width, least.width),
    height: Math.max(answerChart.height, least.height),
  };
}

/** Where every mark is a root its shape says all. */
export function answerMarks({ kind }: Exercise): Marks {
  return kind === 'find' ? 'none' : 'degrees';
}

function answerHeight({ chart, right, slips }: AnswerRow, width: number): number {
  const letters = Math.floor((width - (chart ? chart.width + 4 : 0)) / letterWidth);
  const lines = [right, ...slips].reduce((sum, text) => sum + Math.ceil(text.length / letters), 1);
  return Math.max(lines * wordsLine + 5, (chart?.height ?? 0) + 3);
}

/** Things one below the other, none split, on as few pages as in this order. */
function stacked<T>(things: readonly T[], room: number, heightOf: (thing: T) => number): readonly T[][] {
  const pages: T[][] = [];
  let left = 0;
  for (const thing of things) {
    const height = heightOf(thing);
    if (height > left || pages.length === 0) {
      pages.push([]);
      left = room;
    }
    pages.at(-1)?.push(thing);
    left -= height;
  }
  return pages;
}
