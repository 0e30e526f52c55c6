import { describe, expect, test } from 'vitest';
import {
  chartNotes,
  chartWordings,
  checkChart,
  type Chart,
  type MapChart,
} from '../../../shared/exercise/chart.ts';
import { answerKey } from '../../../shared/exercise/key.ts';
import type { InstrumentId } from '../../../shared/theory/fretboard.ts';
import type { Layer, Layers } from '../../../shared/theory/neck-map.ts';
import { build, find, scale } from '../../support/exercises.ts';
import { everyPlaceOf, note, range } from './making.ts';
import { neck, necks } from './proposed.ts';

const layers: Layers = { chord: 'm7', pentatonic: 'minor-pentatonic', scale: 'dorian' };
const map = (root: string, upTo: Layer, fields: Partial<MapChart> = {}): MapChart => ({
  kind: 'map',
  instrument: 'guitar' as InstrumentId,
  root: note(root),
  range: range(0, 12),
  upTo,
  ...layers,
  ...fields,
});

describe('MAP-1: each tone is of the innermost layer that has it', () => {
  /** Half steps above A, by hand: A C E G are the chord, D more the pentatonic, B and F♯ more the dorian scale. */
  const own: Readonly<Record<Layer, readonly number[]>> = {
    chord: [0, 3, 7, 10],
    pentatonic: [5],
    scale: [2, 9],
  };
  const order: readonly Layer[] = ['chord', 'pentatonic', 'scale'];

  test.each(necks.flatMap((id) => order.map((upTo) => [id, upTo] as const)))(
    '%s up to the %s',
    (id, upTo) => {
      const shown = order.slice(0, order.indexOf(upTo) + 1);
      const expected = everyPlaceOf(neck(id))
        .filter(({ place }) => place.fret >= 3 && place.fret <= 9)
        .flatMap(({ place, midi }) =>
          shown
            .filter((layer) => own[layer].includes((midi - 9) % 12))
            .map((layer) => [place.string, place.fret, layer].join('.')),
        );
      const chart = map('A', upTo, { instrument: id, range: range(3, 9) });
      expect(checkChart(chart).ok).toBe(true);
      const notes = chartNotes(chart).map(({ place, layer }) =>
        [place.string, place.fret, layer ?? 'chord'].join('.'),
      );
      expect(notes.sort()).toEqual(expected.sort());
      expect(notes.length).toBeGreaterThan(8);
    },
  );

  test('degrees are the scale’s, and the chord’s where the scale has none', () => {
    const degrees = new Set(
      chartNotes(map('C', 'scale', { chord: '7', pentatonic: 'major-pentatonic', scale: 'major' })).map(
        ({ degree }) => degree,
      ),
    );
    expect([...degrees].sort()).toEqual(['1', '2', '3', '4', '5', '6', '7', 'b7']);
  });

  test('the key of an exercise is its chart', () => {
    for (const exercise of [find('D'), build('E', 'minor'), scale('E', 'minor-pentatonic', 1, 5)])
      expect(chartNotes(exercise)).toEqual(answerKey(exercise));
  });
});

describe('CHART-1: what can’t be drawn is refused with a sentence', () => {
  test.each<[Chart, string]>([
    [map('A', 'scale', { instrument: 'guitar-9' as InstrumentId }), 'This instrument is not known here.'],
    [map('A', 'scale', { range: range(5, 3) }), 'The neck has frets 0 to 19.'],
    [map('A', 'scale', { range: range(0, 20) }), 'The neck has frets 0 to 19.'],
    [
      map('Fb', 'scale', { chord: 'dim7' }),
      'Some of its notes would need a triple accidental. Take another name for the root.',
    ],
    [find('D', { instrument: 'guitar-9' }), '“guitar-9” is no tuning known here.'],
  ])('%#', (chart, error) => {
    expect(checkChart(chart)).toEqual({ ok: false, error });
  });

  test('a map of a neck that isn’t known has no notes', () => {
    expect(chartNotes(map('A', 'scale', { instrument: 'guitar-9' as InstrumentId }))).toEqual([]);
  });
});

describe('CHART-1: the words ask nothing', () => {
  test.each<[Chart, string, string]>([
    [map('A', 'chord'), 'Am7', 'Am7, on every string, frets 0 to 12.'],
    [
      map('A', 'pentatonic'),
      'A minor pentatonic',
      'Am7 inside the minor pentatonic, on every string, frets 0 to 12.',
    ],
    [
      map('A', 'scale', { range: range(5, 5) }),
      'A dorian mode',
      'Am7 inside the minor pentatonic inside the dorian mode, on every string, fret 5.',
    ],
    [build('E', 'minor'), 'E minor', 'Root on string 2, any fret. Close triad on strings 3, 2 and 1.'],
  ])('%#', (chart, title, detail) => {
    expect(chartWordings(chart).english).toEqual({ title, detail });
  });

  test('PITCH-3: in the reader’s own naming', () => {
    const words = chartWordings(map('B', 'chord'));
    expect([words.german.title, words.solfege.title]).toEqual(['Hm7', 'si m7']);
  });
});
