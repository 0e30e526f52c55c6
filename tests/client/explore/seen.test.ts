import { describe, expect, it } from 'vitest';
import { firstIdeas, type Ideas } from '../../../client/pages/explore/ideas.ts';
import {
  firstOf,
  from,
  joinWords,
  likeIn,
  marksOf,
  onNextString,
  seenFrom,
  spoken,
} from '../../../client/pages/explore/seen.ts';
import { chartNotes } from '../../../shared/exercise/chart.ts';
import { known } from '../../../shared/lib/assert.ts';
import {
  instrumentById,
  pitchClassAt,
  place,
  samePlace,
  standardGuitar,
} from '../../../shared/theory/fretboard.ts';
import { tuningIds } from '../../../shared/theory/instrument-id.ts';

const ideas = (change: Partial<Ideas> = {}): Ideas => ({ ...firstIdeas, ...change });
const onString2 = from(standardGuitar, place(2, 5), ideas());
const named = (start: string, of = ideas()) =>
  known(
    seenFrom(onString2, of).find(({ name }) => name.startsWith(start)),
    start,
  );

describe('what lies around a root', () => {
  it('holds the root at its place in every chart, on every instrument', () => {
    for (const id of tuningIds) {
      const neck = known(instrumentById(id), id);
      for (const kind of ['chord', 'pentatonic', 'scale', 'map'] as const) {
        const at = from(neck, place(2, 5), ideas({ kind }));
        for (const { chart, name } of seenFrom(at, ideas({ kind })))
          expect(
            chartNotes(chart).some((note) => note.degree === '1' && samePlace(note.place, at.place)),
            `${id} ${name}`,
          ).toBe(true);
      }
    }
  });

  it('goes from the nut to the bridge, and starts round the root', () => {
    const all = seenFrom(onString2, ideas());
    const order = all.map(({ lies }) => ['towards-nut', 'around', 'towards-bridge'].indexOf(lies));
    expect(order).toEqual(order.toSorted((a, b) => a - b));
    expect(all[firstOf(all)]?.lies).toBe('around');
    const scales = seenFrom(onString2, ideas({ kind: 'pentatonic' }));
    // No position lies there, and along the string the hand has none.
    expect(scales.filter(({ lies }) => lies === 'around').map(({ name }) => name)).toEqual([
      'Along string 2',
    ]);
    expect(scales[firstOf(scales)]?.lies).toBe('towards-bridge');
    expect(firstOf([])).toBe(0);
  });

  it('shows a map whole at first, four frets to either side of the root, or as far as the neck goes', () => {
    const ranges = [0, 7, 19].map((fret) => {
      const map = seenFrom(from(standardGuitar, place(2, fret), ideas()), ideas({ kind: 'map' }));
      expect(firstOf(map)).toBe(2);
      const chart = map[2]?.chart;
      return chart?.kind === 'map' ? [chart.range.low, chart.range.high] : [];
    });
    expect(ranges).toEqual([
      [0, 8],
      [3, 11],
      [11, 19],
    ]);
  });

  it('finds the same note on the next string, from the last back to the first, as near as it lies', () => {
    // E on string 2 fret 5: string 3 fret 9; on string 6 open and at 12, then string 1 the same (computed from the tuning).
    expect(onNextString(onString2)).toEqual(place(3, 9));
    expect(onNextString({ ...onString2, place: place(6, 12) })).toEqual(place(1, 12));
    for (let string = 1; string <= 6; string += 1) {
      const next = onNextString({ ...onString2, place: place(string, 0) });
      if (pitchClassAt(standardGuitar, place(string, 0)) === 4)
        expect(pitchClassAt(standardGuitar, next)).toBe(4);
    }
  });

  it('stays with the same shape on another string, else with one that lies the same way', () => {
    const seen = named('C form');
    const onString5 = seenFrom(from(standardGuitar, place(5, 7), ideas()), ideas());
    expect(onString5[likeIn(onString5, seen)]?.name).toBe('C form');
    // The D form has its roots on strings 4 and 2 (common practice).
    const towardsNut = named('D form');
    expect(towardsNut.lies).toBe('towards-nut');
    const lying = onString5[likeIn(onString5, towardsNut)];
    expect(lying?.name).not.toBe('D form');
    expect(lying?.lies).toBe('towards-nut');
    expect(likeIn([], seen)).toBe(0);
  });

  it('says how a position goes over into its neighbour, and nothing of a chord', () => {
    // Minor pentatonic round E on string 2: under finger 1 the third lies three frets up (computed).
    expect(joinWords(onString2, named('C form position', ideas({ kind: 'pentatonic' })))).toBe(
      'Into the next position: on string 2 slide from fret 5 to fret 8.',
    );
    expect(joinWords(onString2, named('C form'))).toBe('');
  });
});

describe('a chart in marks and words', () => {
  // Movable C form, minor, root on string 2: finger 3 on the root, 4 on string 5, which may stay silent (common practice).
  it('says every note to whoever hears it: string, fret, degree, note, finger', () => {
    expect(spoken(onString2, named('C form'), 'english')).toBe(
      'string 5, fret 7, root, E, finger 4, may stay silent; string 4, fret 5, flat 3, G, finger 2; ' +
        'string 3, fret 4, 5, B, finger 1; string 2, fret 5, root, E, finger 3',
    );
  });

  it('writes degrees or note names into the marks, the names as the reader reads them', () => {
    const inside = (labels: 'degrees' | 'notes', naming: 'english' | 'german') =>
      marksOf(named('C form'), labels, naming).flatMap(({ label }) => label ?? []);
    expect(inside('degrees', 'english')).toEqual(['R', '♭3', '5', 'R']);
    expect(inside('notes', 'english')).toEqual(['E', 'G', 'B', 'E']);
    expect(inside('notes', 'german')).toEqual(['E', 'G', 'H', 'E']);
  });

  it('says of a map which layer a note is of', () => {
    const map = known(seenFrom(onString2, ideas({ kind: 'map' })).at(-1), 'a map');
    expect(spoken(onString2, map, 'english')).toContain('string 1, fret 5, 4, A, of the pentatonic');
    expect(spoken(onString2, map, 'english')).toContain('string 4, fret 4, 2, F♯, of the scale');
  });
});
