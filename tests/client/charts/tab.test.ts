import { describe, expect, test } from 'vitest';
import { renderTab } from '../../../client/charts/render-tab.ts';
import { hasTab, tabColumns, tabInWords, tabSystems } from '../../../client/charts/tab.ts';
import { instrumentOf } from '../../../client/charts/chart-marks.ts';
import { chartNotes, type Chart } from '../../../shared/exercise/chart.ts';
import { midiAt, place, type Fret, type StringNumber } from '../../../shared/theory/fretboard.ts';
import { build, find, name, scale } from '../../support/exercises.ts';
import { allCharts } from './all-charts.ts';
import { placesIn, templateText } from './template-text.ts';

const columnsOf = (chart: Chart) => tabColumns(chart, chartNotes(chart));
const written = (chart: Chart) => columnsOf(chart).map((column) => column.map((at) => [at.string, at.fret]));

describe('CHART-5 tablature', () => {
  test('of a scale goes up note by note', () => {
    // E minor pentatonic, root on string 2 at fret 5 under finger 1, strings 6 to 1 (computed in standard tuning).
    expect(written(scale('E', 'minor-pentatonic', 1, 5)).flat()).toEqual([
      [6, 5], [6, 7], [5, 5], [5, 7], [4, 5], [4, 7], [3, 4], [3, 7], [2, 5], [2, 8], [1, 5], [1, 7],
    ]); // prettier-ignore
  });

  test('of a walk along one string stays on it', () => {
    const along = columnsOf({
      ...scale('E', 'natural-minor', 1, 5),
      oneString: true,
      strictness: 'range',
      range: { low: 0 as Fret, high: 12 as Fret },
    });
    // String 2, E minor: B C D E F♯ G A B (computed).
    expect(along.flat().map((at) => [at.string, at.fret])).toEqual(
      [0, 1, 3, 5, 7, 8, 10, 12].map((fret) => [2, fret]),
    );
  });

  test('of a chord is one column', () => {
    const eMinor = build('E', 'minor', { voicing: { kind: 'form', form: 'C', full: false } });
    expect(written(eMinor)).toEqual([[[5, 7], [4, 5], [3, 4], [2, 5]]]); // prettier-ignore
    expect(tabInWords(columnsOf(eMinor))).toBe(
      'Tablature; string 5, fret 7 with string 4, fret 5 with string 3, fret 4 with string 2, fret 5',
    );
  });

  test('is none of a note to be found or named, nor of a map', () => {
    expect([find('D'), name('D', 3)].map(hasTab)).toEqual([false, false]);
  });

  test('holds every note of every chart once, in rising pitch, on the screen and in a file', () => {
    const withTab = allCharts.filter(hasTab);
    expect(withTab.length).toBeGreaterThan(200);
    for (const chart of withTab) {
      const instrument = instrumentOf(chart);
      const columns = columnsOf(chart);
      const wanted = chartNotes(chart).map(({ place: at }) => `${String(at.string)} ${String(at.fret)}`);
      for (const width of [260, 700]) {
        const { drawing } = renderTab(columns, instrument.openStrings.length, width);
        expect(placesIn(drawing).toSorted()).toEqual(wanted.toSorted());
        expect(placesIn(drawing)).toEqual(
          columns.flat().map((at) => `${String(at.string)} ${String(at.fret)}`),
        );
      }
      const pitches = columns.flat().map((at) => midiAt(instrument, at));
      expect(pitches).toEqual(pitches.toSorted((a, b) => a - b));
    }
  });

  test('goes on in systems about as long as each other, and stays inside its box', () => {
    const columns = Array.from({ length: 17 }, (_, fret) => [place(2, fret)]);
    expect(tabSystems(columns, 8).map((system) => system.length)).toEqual([6, 6, 5]);
    expect(tabSystems([], 8)).toEqual([[]]);
    const { drawing, width } = renderTab(columns, 6, 300);
    expect(width).toBeLessThanOrEqual(300);
    for (const [, x] of templateText(drawing).matchAll(/ x2=([\d.]+)/g))
      expect(Number(x)).toBeLessThanOrEqual(300);
  });

  test('has a line for each string, string 1 on top', () => {
    const ukulele = build('C', 'major', {
      instrument: 'ukulele', rootString: 3 as StringNumber, strictness: 'anywhere', voicing: { kind: 'any' },
    }); // prettier-ignore
    const text = templateText(renderTab(columnsOf(ukulele), 4, 300).drawing);
    expect([...text.matchAll(/<line /g)]).toHaveLength(4 + 1);
    const heights = [...text.matchAll(/data-string=(\d+)[^]*?<text[^>]* y=([\d.]+)/g)].map(
      ([, string, y]) => [Number(string), Number(y)] as const,
    );
    expect(heights.length).toBeGreaterThan(2);
    for (const [string, y] of heights)
      for (const [other, otherY] of heights) if (string < other) expect(y).toBeLessThan(otherY);
  });
});
