import type { Orientation, Paper, PerPage, SheetSettings } from './sheet.ts';

/** Where things lie on paper, in millimetres. */

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** ISO 216, and the letter of ANSI/ASME Y14.1 (8.5 × 11 in). */
export const paperSizes: Readonly<Record<Paper, Size>> = {
  a4: { width: 210, height: 297 },
  letter: { width: 215.9, height: 279.4 },
};

export const margin = 13;
/** Title and school above, cautions and page number below. */
export const headHeight = 13;
export const footHeight = 10;
/** The line for the name, and what to do, on a quiz. */
export const nameHeight = 18;
/** Between charts. */
export const gutter = 6;

export function pageSize({ paper, orientation }: Pick<SheetSettings, 'paper' | 'orientation'>): Size {
  const { width, height } = paperSizes[paper];
  return orientation === 'portrait' ? { width, height } : { width: height, height: width };
}

/** What is left of the page between head and foot. */
export function bodySize(settings: Pick<SheetSettings, 'paper' | 'orientation'>): Size {
  const { width, height } = pageSize(settings);
  return { width: width - 2 * margin, height: height - 2 * margin - headHeight - footHeight };
}

/** Columns and rows of an upright page; a lying one turns them round. */
const grids: Readonly<Record<PerPage, readonly [number, number]>> = {
  1: [1, 1],
  2: [1, 2],
  4: [2, 2],
  6: [2, 3],
  12: [3, 4],
};

export interface Grid {
  readonly columns: number;
  readonly rows: number;
}

export function gridOf(perPage: PerPage, orientation: Orientation): Grid {
  const [short, long] = grids[perPage];
  return orientation === 'portrait' ? { columns: short, rows: long } : { columns: long, rows: short };
}

/** One chart's share of the page, over so many columns. */
export function cellSize(settings: SheetSettings, columns = 1): Size {
  const body = bodySize(settings);
  const grid = gridOf(settings.perPage, settings.orientation);
  const width = (body.width - gutter * (grid.columns - 1)) / grid.columns;
  return {
    width: width * columns + gutter * (columns - 1),
    height: (body.height - gutter * (grid.rows - 1)) / grid.rows,
  };
}
