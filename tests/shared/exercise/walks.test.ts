import { describe, expect, test } from 'vitest';
import { chartNotes, checkChart } from '../../../shared/exercise/chart.ts';
import { joinWalk, mapWalk } from '../../../shared/exercise/walks.ts';
import { holds, place, type Place } from '../../../shared/theory/fretboard.ts';
import type { Layers } from '../../../shared/theory/neck-map.ts';
import { positionsFrom } from '../../../shared/theory/positions.ts';
import type { ToneSetId } from '../../../shared/theory/tone-sets.ts';
import { everyPlaceOf, note, range } from './making.ts';
import { neck, written } from './proposed.ts';

const at = (id: string, root: string, string: number, fret: number) => ({
  instrument: neck(id),
  root: note(root),
  place: place(string, fret),
});
const layers: Layers = { chord: 'm7', pentatonic: 'minor-pentatonic', scale: 'dorian' };

test.each(['guitar', 'bass-4', 'ukulele'])('WALK-1: the map grows layer by layer: %s', (id) => {
  const walk = mapWalk(at(id, 'A', 1, 5), layers, range(2, 10));
  expect(walk.map(({ upTo }) => upTo)).toEqual(['chord', 'pentatonic', 'scale']);
  const shown = walk.map((chart) => {
    expect(checkChart(chart).ok).toBe(true);
    return chartNotes(chart);
  });
  for (const [index, notes] of shown.entries()) {
    const before = shown[index - 1] ?? [];
    expect(notes).toEqual(expect.arrayContaining([...before]));
    expect(notes.length).toBeGreaterThan(before.length);
    const added = notes.filter((one) => !before.includes(one)).map(({ layer }) => layer);
    if (index > 0) expect(added).toContain(walk[index]?.upTo);
  }
  expect(shown[2]?.filter(({ layer }) => layer === undefined)).toEqual(shown[0]);
});

describe('WALK-2: two positions that share the root', () => {
  // Source: common practice for the boxes of E round string 2, fret 5: D form frets 2 to 5, C form frets 5 to 8.
  test('E minor pentatonic from string 2', () => {
    const walk = joinWalk(at('guitar', 'E', 2, 5), 'minor-pentatonic');
    expect(walk?.words).toBe('On string 2 slide from fret 5 to fret 8.');
    const notes = walk?.charts.map((chart) => written(chartNotes(chart).map((one) => one.place))) ?? [];
    const box = (pairs: readonly (readonly [number, number, number])[]) =>
      written(pairs.flatMap(([string, low, high]) => [place(string, low), place(string, high)]));
    expect([notes[0], notes[2]]).toEqual([
      box([
        [6, 3, 5],
        [5, 2, 5],
        [4, 2, 5],
        [3, 2, 4],
        [2, 3, 5],
        [1, 3, 5],
      ]),
      box([
        [6, 5, 7],
        [5, 5, 7],
        [4, 5, 7],
        [3, 4, 7],
        [2, 5, 8],
        [1, 5, 7],
      ]),
    ]);
  });

  const cases: readonly (readonly [string, ToneSetId])[] = [
    ['guitar', 'minor-pentatonic'],
    ['guitar', 'dorian'],
    ['guitar', 'arpeggio-m7'],
    ['guitar-drop-d', 'major'],
    ['bass-4', 'minor-pentatonic'],
    ['mandolin', 'major'],
  ];
  test.each(cases)(
    '%s, %s: from every place, position, both, position, and a slide between them',
    (id, tones) => {
      const instrument = neck(id);
      let walked = 0;
      for (const { place: spot, midi } of everyPlaceOf(instrument)) {
        if (midi % 12 !== 9) continue;
        const from = { instrument, root: note('A'), place: spot };
        const positions = positionsFrom(instrument, from.root, tones, spot);
        const walk = joinWalk(from, tones);
        expect(walk !== undefined).toBe(positions.length >= 2);
        if (!walk) continue;
        walked += 1;
        const keys = walk.charts.map((chart) => {
          expect(checkChart(chart).ok).toBe(true);
          return chartNotes(chart).map((one) => one.place);
        });
        const [one = [], both = [], other = []] = keys;
        expect(keys).toHaveLength(3);
        for (const [index, key] of [one, other].entries()) {
          expect(written(key)).toBe(written(positions[index]?.notes.map((own) => own.place) ?? []));
          expect(key.every((own) => holds(both, own))).toBe(true);
        }
        const [, string, from1, to1] =
          /^On string (\d) slide from (?:fret (\d+)|the open string) to fret (\d+)\.$/.exec(walk.words) ?? [];
        if (string === undefined) {
          expect(walk.words).toBe('One goes over into the other without a slide.');
          continue;
        }
        const start: Place = place(Number(string), Number(from1 ?? 0));
        const end: Place = place(Number(string), Number(to1));
        expect([holds(one, start), holds(other, end), end.fret > start.fret]).toEqual([true, true, true]);
      }
      expect(walked).toBeGreaterThan(3);
    },
  );

  test('none where there are not two, or no root', () => {
    expect(joinWalk(at('guitar', 'C', 2, 1), 'minor-pentatonic')).toBeUndefined();
    expect(joinWalk(at('guitar', 'E', 2, 6), 'minor-pentatonic')).toBeUndefined();
  });
});
