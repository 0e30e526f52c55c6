import { describe, expect, it } from 'vitest';
import { answerKey } from '../../../../shared/exercise/key.ts';
import { course } from '../../../../shared/plans/course.ts';
import { explanationOf } from '../../../../client/pages/desk/handout/explanation.ts';
import { leastSize } from '../../../../client/pages/desk/handout/legible.ts';
import { legibleSheet, pagesOf, type Page } from '../../../../client/pages/desk/handout/pages.ts';
import { bodySize, cellSize, gridOf, margin, pageSize } from '../../../../client/pages/desk/handout/paper.ts';
import { perPages, settingsIn } from '../../../../client/pages/desk/handout/settings.ts';
import {
  itemsOf,
  usualSettings,
  type SheetItem,
  type SheetSettings,
} from '../../../../client/pages/desk/handout/sheet.ts';
import { drawnCharts } from '../../../../client/charts/drawn.ts';
import { find, form, position } from '../../../../shared/plans/making.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';
import { handoutPlan } from '../../../support/handout-plan.ts';

const items = itemsOf(handoutPlan);
const pages = (change: Partial<SheetSettings>, some: readonly SheetItem[] = items) =>
  pagesOf({ settings: { ...usualSettings, ...change }, items: some, naming: 'english' });
const legible = (change: Partial<SheetSettings>, some = items, naming: NoteNaming = 'english') =>
  legibleSheet({ settings: { ...usualSettings, ...change }, items: some, naming });
const cellsOf = (all: readonly Page[]) => all.flatMap((page) => (page.kind === 'charts' ? page.cells : []));
const numbersOf = (all: readonly Page[]) => cellsOf(all).map(({ item }) => item.number);

const papers = ['a4', 'letter'] as const;
const orientations = ['portrait', 'landscape'] as const;
const layouts = papers.flatMap((paper) =>
  orientations.flatMap((orientation) => perPages.map((perPage) => ({ paper, orientation, perPage }))),
);

describe('HANDOUT-1 pages follow from the settings, and no chart is split', () => {
  it.each(layouts)('$perPage on $paper, $orientation', (layout) => {
    const { columns, rows } = gridOf(layout.perPage, layout.orientation);
    expect(columns * rows).toBe(layout.perPage);
    const all = pages(layout);
    expect(numbersOf(all)).toEqual(items.map(({ number }) => number));
    for (const page of all) {
      let row = 1;
      let column = 0;
      for (const cell of page.kind === 'charts' ? page.cells : []) {
        expect(cell.columns).toBeLessThanOrEqual(columns);
        if (column + cell.columns > columns) [row, column] = [row + 1, 0];
        column += cell.columns;
      }
      expect(row).toBeLessThanOrEqual(rows);
    }
  });

  it('takes as many as fit: twelve short charts on one page, seven on two of six', () => {
    const short = itemsOf(
      ['C', 'D', 'E', 'F', 'G', 'A'].flatMap((root, index) =>
        [index, index + 6].map((id) => ({
          id: String(id),
          part: 'new' as const,
          exercise: form('D', root, 'major', 2, { C: 13, D: 3, E: 5, F: 6, G: 8, A: 10 }[root] ?? 0),
          harder: [],
          seconds: null,
        })),
      ),
    );
    for (const paper of papers) {
      expect(pages({ perPage: 12, paper }, short).map((page) => page.of)).toEqual([1]);
      expect(pages({ perPage: 6, paper }, short.slice(0, 7))).toHaveLength(2);
    }
  });

  it('margins are 12 to 15 mm, and the rows fill what head and foot leave', () => {
    expect(margin).toBeGreaterThanOrEqual(12);
    expect(margin).toBeLessThanOrEqual(15);
    for (const layout of layouts) {
      const { columns, rows } = gridOf(layout.perPage, layout.orientation);
      const body = bodySize(layout);
      expect(body.width + 2 * margin).toBeCloseTo(pageSize(layout).width);
      expect(cellSize({ ...usualSettings, ...layout }, columns).width).toBeCloseTo(body.width);
      expect(cellSize({ ...usualSettings, ...layout }).height * rows).toBeLessThanOrEqual(body.height);
    }
  });
});

describe('HANDOUT-2 a chart has the room that its text needs', () => {
  it.each(layouts)('$perPage on $paper, $orientation', (layout) => {
    const settings = { ...usualSettings, ...layout };
    const all = [...items, ...itemsOf(course.flatMap(({ exercises }) => exercises.map(plannedOf)))];
    for (const { item, view, marks, columns } of cellsOf(pages(layout, all))) {
      const [drawn] = drawnCharts([item.chart], { marks, view, naming: 'english' });
      if (!drawn) throw new Error('no chart');
      const least = leastSize(drawn, view);
      const name = `${item.number} ${explanationOf(item.chart, 'english')}`;
      const { columns: most } = gridOf(layout.perPage, layout.orientation);
      // What is too long even for the whole width can't be larger.
      if (columns < most) expect(least.width, name).toBeLessThanOrEqual(cellSize(settings, columns).width);
      expect(least.height, name).toBeLessThan(cellSize(settings, columns).height);
    }
  });

  it('fewer stand on a page where with so many they could not be read', () => {
    const scale = itemsOf([plannedOf({ exercise: position('major', 'F', 2, 6, 4) })]);
    for (const paper of papers) {
      expect(legible({ perPage: 12, paper }, scale).settings.perPage).toBe(12);
      // Tablature takes 17 mm of the 57 or 53 that a twelfth has.
      const tabbed = legible({ perPage: 12, paper, tab: true }, scale);
      expect(tabbed.settings.perPage).toBe(6);
      expect(cellsOf(pagesOf(tabbed)).every((cell) => cell.legible)).toBe(true);
    }
    // "Fis" needs a larger mark than "F♯".
    const fSharp = itemsOf([plannedOf({ exercise: form('C', 'D', 'major', 2, 3) })]);
    const named = { perPage: 12, marks: 'names' } as const;
    expect(legible(named, fSharp).settings.perPage).toBe(12);
    expect(legible(named, fSharp, 'german').settings.perPage).toBe(6);
  });

  it('a long sentence takes more of the row', () => {
    const own = items.slice(0, 1).map((item) => ({ ...item, line: 'a'.repeat(140) }));
    expect(cellsOf(pages({ perPage: 12 }, own))[0]?.columns).toBeGreaterThan(1);
  });

  it('a chart that can’t be read upright lies', () => {
    const [cell] = cellsOf(
      pages({ perPage: 12, view: 'upright' }, itemsOf([plannedOf({ exercise: find('D', 2) })])),
    );
    expect(cell?.view).toBe('lying');
  });
});

it('HANDOUT-3 a left-handed copy follows, and each copy counts its own pages', () => {
  const one = pages({});
  const both = pages({ hands: 'both' });
  expect(both.map(({ hand }) => hand)).toEqual([...one.map(() => 'right'), ...one.map(() => 'left')]);
  expect(both.map(({ number, of }) => [number, of])).toEqual(
    [...one, ...one].map(({ number, of }) => [number, of]),
  );
  expect(cellsOf(both.filter(({ hand }) => hand === 'left'))).toEqual(cellsOf(one));
  expect(pages({ hands: 'left' }).every(({ hand }) => hand === 'left')).toBe(true);
});

it('HANDOUT-4 numbers and letters are the plan’s, whatever is left out', () => {
  expect(items.map(({ number }) => number).slice(0, 4)).toEqual(['1a', '1b', '2', '3']);
  const some = items.map((item) => ({ ...item, chosen: item.number !== '1b' && item.number !== '2' }));
  expect(numbersOf(pages({}, some)).slice(0, 2)).toEqual(['1a', '3']);
  expect(pages({}, [])).toEqual([]);
});

it('HANDOUT-4 in a quiz, what was added freely is numbered in its order', () => {
  const free = items.slice(0, 3).map((item) => ({ ...item, number: '' }));
  const numbers = pages({ kind: 'quiz' }, free).map((page) => {
    if (page.kind === 'questions') return page.questions.map(({ number }) => number);
    return page.kind === 'answers' ? page.answers.map(({ number }) => number) : [];
  });
  expect(numbers).toEqual([
    ['1', '2', '3'],
    ['1', '2', '3'],
  ]);
});

it('HANDOUT-5 the sentence below says what it is, where the root lies and which finger takes it', () => {
  expect(explanationOf(form('C', 'A', 'minor', 2, 10), 'english')).toBe(
    'C form: root on string 2, fret 10, finger 3.',
  );
  expect(explanationOf(position('minor-pentatonic', 'E', 2, 5, 1), 'english')).toBe(
    'Under one hand: root on string 2, fret 5, finger 1.',
  );
  expect(explanationOf(find('Eb', 2), 'german')).toBe('Es: string 2, frets 4 and 16.');
  const own = items.map((item) => ({ ...item, line: 'Listen first.' }));
  expect(cellsOf(pages({}, own))[0]?.line).toBe('Listen first.');
  expect(cellsOf(pages({ explained: false }, own))[0]?.line).toBe('');
});

it('HANDOUT-5 the sentence tells the root of the key', () => {
  for (const { exercise } of course.flatMap(({ exercises }) => exercises)) {
    if (exercise.kind !== 'build' && exercise.kind !== 'scale') continue;
    const root = answerKey(exercise).find(
      ({ degree, place }) => degree === '1' && place.string === exercise.rootString,
    );
    expect(explanationOf(exercise, 'english')).toContain(
      `root on string ${String(exercise.rootString)}, fret ${String(root?.place.fret)}`,
    );
  }
});

describe('settings are kept on the device', () => {
  it('come back as they were', () => {
    const settings: SheetSettings = {
      ...usualSettings,
      kind: 'quiz',
      paper: 'letter',
      perPage: 12,
      tab: true,
    };
    expect(settingsIn(JSON.stringify(settings))).toEqual(settings);
  });

  it.each([
    null,
    'no JSON',
    '[]',
    '{"paper":"a0","perPage":5,"notes":"yes","blankFrets":99,"kind":"toString"}',
  ])('what can’t be read is as usual: %s', (stored) => {
    expect(settingsIn(stored)).toEqual(usualSettings);
  });
});

function plannedOf({ exercise }: { exercise: (typeof handoutPlan)[number]['exercise'] }) {
  return { id: 'one', part: 'new' as const, exercise, harder: [], seconds: null };
}
