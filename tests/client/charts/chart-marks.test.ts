import { describe, expect, test } from 'vitest';
import { chartMarks, chartView, drawable, type Marks } from '../../../client/charts/chart-marks.ts';
import { drawnCharts } from '../../../client/charts/drawn.ts';
import { inkFrame } from '../../../client/fretboard/ink-frame.ts';
import { Scale } from '../../../client/fretboard/ink-marks.ts';
import { inkDrawing } from '../../../client/fretboard/render-ink.ts';
import { chartNotes, type Chart } from '../../../shared/exercise/chart.ts';
import { mapWalk } from '../../../shared/exercise/walks.ts';
import { known } from '../../../shared/lib/assert.ts';
import {
  place,
  samePlace,
  standardGuitar,
  type Fret,
  type StringNumber,
} from '../../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../../shared/theory/naming.ts';
import { parseNoteName } from '../../../shared/theory/pitch.ts';
import { build, find, name, scale } from '../../support/exercises.ts';
import { allCharts } from './all-charts.ts';
import { placesIn, templateText } from './template-text.ts';

/** E minor in the C form, its root on string 2 at fret 5 (x4212x, TRADE's movable forms: common practice, no source). */
const eMinor = build('E', 'minor', { voicing: { kind: 'form', form: 'C', full: false } });
const marksOf = (chart: Chart, marks: Marks = 'degrees', naming: NoteNaming = 'english') =>
  chartMarks(chart, { marks, naming });
const labels = (chart: Chart, marks: Marks, naming?: NoteNaming) =>
  marksOf(chart, marks, naming).map(({ place: at, look, label }) => [
    at.string,
    look === 'muted' ? 'X' : label,
  ]);

function drawing(chart: Chart, leftHanded = false, view: 'upright' | 'lying' = 'upright') {
  const [drawn] = drawnCharts([chart], { marks: 'degrees', naming: 'english', view });
  const { instrument, notes, rows, window } = known(drawn, 'a chart');
  const strings = instrument.openStrings.length;
  const frame = inkFrame({ view, leftHanded, strings, window, named: false, aspect: null, ...rows });
  const marks = { notes, corrections: [], heat: [], highlightString: null, stringNames: [] };
  return { frame, text: templateText(inkDrawing(frame, instrument, marks, new Scale(0, null))) };
}

describe('CHART-2 a mark for each note, with its degree, name, finger or nothing inside', () => {
  test('degrees, and the fingers below', () => {
    expect(labels(eMinor, 'degrees')).toEqual([
      [5, 'R'],
      [4, '♭3'],
      [3, '5'],
      [2, 'R'],
      [1, 'X'],
      [6, 'X'],
    ]);
    expect(marksOf(eMinor).map(({ finger }) => finger)).toEqual([4, 2, 1, 3, undefined, undefined]);
  });

  test('names as the reader writes them', () => {
    const names = (naming: NoteNaming) => labels(eMinor, 'names', naming).map(([, label]) => label);
    expect(names('english')).toEqual(['E', 'G', 'B', 'E', 'X', 'X']);
    // B natural is H in German, si in solfège (common practice, no source).
    expect(names('german')).toEqual(['E', 'G', 'H', 'E', 'X', 'X']);
    expect(names('solfege')).toEqual(['mi', 'sol', 'si', 'mi', 'X', 'X']);
  });

  test('fingers inside, of a scale too; then none stand below', () => {
    expect(labels(eMinor, 'fingers')).toContainEqual([2, '3']);
    const minor = scale('E', 'natural-minor', 1, 5);
    // Under a hand from fret 5 on: one finger a fret (common practice, no source).
    const fretted = marksOf(minor, 'fingers').filter(({ place: { fret } }) => fret >= 5);
    expect(fretted.map(({ label }) => label)).toEqual(
      fretted.map(({ place: { fret } }) => String(Math.min(4, fret - 4))),
    );
    for (const chart of [eMinor, minor])
      expect(marksOf(chart, 'fingers').every(({ finger }) => finger === undefined)).toBe(true);
  });

  test('nothing inside: the root is told by its shape alone', () => {
    const bare = marksOf(eMinor, 'none').filter(({ look }) => look !== 'muted');
    expect(bare.map(({ label, root }) => [label, root])).toEqual([
      [undefined, true],
      [undefined, false],
      [undefined, false],
      [undefined, true],
    ]);
  });

  test('a place that was to be named says its name, a note to be found all its places', () => {
    expect(marksOf(name('F#', 7))).toEqual([
      { place: place(2, 7), look: 'filled', label: 'F♯', root: false },
    ]);
    expect(marksOf(name('F#', 7), 'none')[0]?.label).toBeUndefined();
    expect(marksOf(find('D')).map(({ place: { fret }, root }) => [fret, root])).toEqual([
      [3, true],
      [15, true],
    ]);
  });

  test('a map shows what each layer adds', () => {
    const at = { instrument: standardGuitar, root: known(parseNoteName('A'), 'A') };
    const layers = { chord: 'm7', pentatonic: 'minor-pentatonic', scale: 'dorian' } as const;
    const [, , map] = mapWalk(at, layers, { low: 5 as Fret, high: 8 as Fret });
    const looks = marksOf(known(map, 'a map')).map(({ label, look }) => `${String(label)} ${look}`);
    expect(new Set(looks)).toEqual(
      new Set(['R filled', '♭3 filled', '5 filled', '♭7 filled', '4 pentatonic', '2 scale', '6 scale']),
    );
  });

  test('X for strings that stay silent, where the exercise says which sound; never where any voicing will do', () => {
    const any = build('E', 'minor', { strictness: 'anywhere', voicing: { kind: 'any' } });
    expect(marksOf(any).some(({ look }) => look === 'muted')).toBe(false);
  });

  test('double signs are written with what our faces hold', () => {
    expect(drawable('B𝄫 F𝄪')).toBe('B♭♭ F×');
  });

  test.each(['degrees', 'names', 'fingers', 'none'] as const)(
    'every chart, on every instrument, marks its notes and no others (%s)',
    (marks) => {
      expect(allCharts.length).toBeGreaterThan(200);
      for (const chart of allCharts) {
        const notes = chartNotes(chart);
        const sounding = marksOf(chart, marks, 'german').filter(({ look }) => look !== 'muted');
        const asked = chart.kind === 'name' ? [{ place: chart.place, degree: '' }] : notes;
        expect(sounding.map((note) => note.place)).toEqual(asked.map((note) => note.place));
        if (chart.kind !== 'name')
          for (const note of sounding)
            expect(note.root).toBe(notes.find((own) => samePlace(own.place, note.place))?.degree === '1');
      }
    },
  );
});

describe('CHART-3 the drawing', () => {
  test('holds every mark at its place, whichever way it lies', () => {
    for (const chart of allCharts)
      for (const view of ['upright', 'lying'] as const) {
        const wanted = marksOf(chart).map(
          ({ place: at, look }) => `${String(at.string)} ${look === 'muted' ? 'silent' : String(at.fret)}`,
        );
        expect(placesIn(drawing(chart, false, view).text).toSorted()).toEqual(wanted.toSorted());
      }
  });

  test('mirrors for the left hand, and nothing else changes', () => {
    const right = drawing(eMinor);
    const left = drawing(eMinor, true);
    const across = (text: string) => [...text.matchAll(/<circle class="filled" cx=([\d.]+) cy=([\d.]+)/g)];
    const mirrored = across(right.text).map(([, x, y]) => [right.frame.width - Number(x), Number(y)]);
    expect(mirrored.length).toBeGreaterThan(0);
    across(left.text).forEach(([, x, y], index) => {
      expect(Number(x)).toBeCloseTo(mirrored[index]?.[0] ?? NaN);
      expect(Number(y)).toBeCloseTo(mirrored[index]?.[1] ?? NaN);
    });
  });

  test('stands upright, and lies where it would be too long for that', () => {
    expect(chartView(marksOf(eMinor))).toBe('upright');
    expect(chartView(marksOf(find('D')))).toBe('lying');
  });
});

describe('CHART-6 charts in a row', () => {
  const row = (...charts: readonly Chart[]) =>
    drawnCharts(charts, { marks: 'degrees', naming: 'english', view: 'auto' });

  test('have as many frets and the same rows beside them, so that they can be compared', () => {
    const dForm = build('A', 'major', { voicing: { kind: 'form', form: 'D', full: false } });
    const open = build('C', 'major', { strictness: 'anywhere', voicing: { kind: 'any' } });
    const charts = row(eMinor, dForm, open);
    expect(new Set(charts.map(({ window }) => window.high - window.low)).size).toBe(1);
    expect(new Set(charts.map(({ rows }) => JSON.stringify(rows))).size).toBe(1);
    expect(new Set(charts.map(({ view }) => view)).size).toBe(1);
    for (const { notes, window } of charts)
      for (const { place: at, look } of notes)
        if (look !== 'muted' && at.fret > 0)
          expect(at.fret >= window.low && at.fret <= window.high).toBe(true);
  });

  test('stay on the neck', () => {
    const high = build('D', 'minor', {
      rootString: 1 as StringNumber,
      strictness: 'anywhere',
      voicing: { kind: 'any' },
    });
    for (const { instrument, window } of row(high, find('D'))) {
      expect(window.low).toBeGreaterThanOrEqual(1);
      expect(window.high).toBeLessThanOrEqual(instrument.fretCount);
    }
  });
});
