import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { known } from '../../../shared/lib/assert.ts';
import { degreeAt } from '../../../shared/theory/chord.ts';
import {
  instrumentById,
  isOnNeck,
  midiAt,
  pitchClassAt,
  place,
  standardGuitar,
  type Instrument,
  type Place,
  type StringNumber,
} from '../../../shared/theory/fretboard.ts';
import { tuningIds } from '../../../shared/theory/instrument-id.ts';
import { pitchClassOn } from '../../../shared/theory/interval.ts';
import { parseNoteName, pitchClass, pitchClassOf, type NoteName } from '../../../shared/theory/pitch.ts';
import { alongString, patternAt, patternsFrom, type Pattern } from '../../../shared/theory/patterns.ts';
import { positionsOf } from '../../../shared/theory/positions.ts';
import { everyString } from '../../../shared/theory/root-places.ts';
import { isReentrant } from '../../../shared/theory/string-steps.ts';
import { toneDegrees, type ToneSetId } from '../../../shared/theory/tone-sets.ts';
import { counts } from '../../references/counts.ts';
import { onStrings, scaleCases, scaleIdOf } from '../../references/theory/scale-cases.ts';
import { allScales, anyInstrument, anyRoot, anyTones, twelveRoots } from './any-tones.ts';

const root = (text: string): NoteName => known(parseNoteName(text), text);
const neck24 = known(instrumentById('guitar+frets=24'), 'a guitar of two octaves');
const places = (pattern: { notes: Pattern['notes'] }): readonly Place[] =>
  pattern.notes.map((note) => note.place);
const written = (spots: readonly Place[]) =>
  spots
    .map((spot) => `${String(spot.string)}/${String(spot.fret)}`)
    .sort()
    .join(' ');

/** Every pattern on the neck, each once. */
function patternsOn(neck: Instrument, one: NoteName, tones: ToneSetId, notes: 2 | 3 | 4): readonly Pattern[] {
  const all = everyString(neck, one)
    .flat()
    .flatMap((spot) => patternsFrom(neck, one, tones, spot, notes));
  return [...new Map(all.map((pattern) => [written(places(pattern)), pattern])).values()];
}

/** Each pattern once, whichever octave of the neck it lies in. */
function shapesOf(patterns: readonly Pattern[]): ReadonlySet<string> {
  return new Set(
    patterns.map((pattern) => {
      const lowest = Math.min(...places(pattern).map((spot) => spot.fret));
      const octaves = lowest - (lowest % 12);
      return written(places(pattern).map((spot) => place(spot.string, spot.fret - octaves)));
    }),
  );
}

describe('POSITION-6: two notes on each string of a pentatonic', () => {
  test.each(['minor-pentatonic', 'major-pentatonic'] as const)('%s: the five positions', (tones) => {
    for (const one of twelveRoots) {
      const boxes = positionsOf(neck24, one, tones);
      expect(boxes).toHaveLength(5);
      const patterns = new Set(patternsOn(neck24, one, tones, 2).map((pattern) => written(places(pattern))));
      for (const box of boxes) expect(patterns).toContain(written(places(box)));
      expect(shapesOf(patternsOn(neck24, one, tones, 2)).size).toBe(5);
    }
  });

  // Source: common practice; A minor pentatonic from string 6, fret 5.
  test('with the root first on string 6', () => {
    const pattern = patternAt(standardGuitar, root('A'), 'minor-pentatonic', place(6, 5), {
      notes: 2,
      rootAt: 1,
    });
    expect(pattern?.notes.map((note) => note.place.fret)).toEqual([5, 8, 5, 7, 5, 7, 5, 7, 5, 8, 5, 8]);
    expect(pattern?.notes.map((note) => note.degree).slice(0, 6)).toEqual(['1', 'b3', '4', '5', 'b7', '1']);
  });
});

describe('POSITION-6: three notes on each string', () => {
  const seven = allScales.filter((scale) => toneDegrees(scale).length === 7);

  test.each(seven)('%s has seven patterns, one from each degree on the lowest string', (scale) => {
    const patterns = patternsOn(neck24, root('G'), scale, 3);
    expect(shapesOf(patterns).size).toBe(7);
    expect(new Set(patterns.map(({ notes }) => notes[0]?.degree))).toEqual(new Set(toneDegrees(scale)));
  });

  const threeNotes = scaleCases.filter((one) => one.system === '3nps');

  test.each(threeNotes.map((one) => [`${one.id} ${one.verdict}`, one] as const))('%s', (_name, one) => {
    const scale = scaleIdOf(one.scale);
    const patterns = patternsFrom(
      standardGuitar,
      root(one.root),
      scale,
      place(one.rootString, one.rootFret),
      3,
    ).map((pattern) => written(places(pattern)));
    expect(patterns.includes(written(onStrings(one.fretsPerString)))).toBe(one.verdict === 'correct');
  });

  test('seven of these cases are right', () => {
    expect(threeNotes).toHaveLength(counts['scales.json, three notes a string'].cases);
    expect(threeNotes.filter((one) => one.verdict === 'correct')).toHaveLength(7);
  });

  test('from a root on string 2, from the nut to the bridge: the root last, in the middle, first', () => {
    const patterns = patternsFrom(standardGuitar, root('G'), 'major', place(2, 8), 3);
    // Source: computed from the tuning; G major on string 2 has frets 3 5 7 8 10 12 around its root.
    expect(
      patterns.map((pattern) => [
        pattern.rootAt,
        places(pattern)
          .filter((spot) => spot.string === 2)
          .map((spot) => spot.fret),
      ]),
    ).toEqual([
      [3, [5, 7, 8]],
      [2, [7, 8, 10]],
      [1, [8, 10, 12]],
    ]);
  });
});

describe('POSITION-6: every instrument', () => {
  const choices = fc
    .constantFrom(2 as const, 3 as const, 4 as const)
    .chain((notes) => fc.record({ notes: fc.constant(notes), rootAt: fc.integer({ min: 1, max: notes }) }));
  const anyPattern = fc
    .record({ neck: anyInstrument, one: anyRoot, tones: anyTones, choice: choices, at: fc.nat() })
    .map(({ neck, one, tones, choice, at }) => {
      const roots = everyString(neck, one).flat();
      const spot = known(roots[at % Math.max(1, roots.length)] ?? place(1, 0), 'a place');
      return { neck, one, tones, choice, spot, pattern: patternAt(neck, one, tones, spot, choice) };
    });

  test('so many notes on each string, each pitch the next of the set, the root where it was asked', () => {
    let found = 0;
    fc.assert(
      fc.property(anyPattern, ({ neck, one, tones, choice, spot, pattern }) => {
        if (!pattern) return;
        found += 1;
        const spots = places(pattern);
        expect(pattern.accepted).toEqual(spots);
        expect(spots.every((other) => isOnNeck(neck, other))).toBe(true);
        for (const [index] of neck.openStrings.entries())
          expect(spots.filter(({ string }) => string === index + 1)).toHaveLength(choice.notes);
        expect(spots.filter(({ string }) => string === spot.string)[choice.rootAt - 1]).toEqual(spot);
        const pitches = spots.map((other) => midiAt(neck, other));
        const [first = 0, last = 0] = [pitches[0], pitches.at(-1)];
        const wanted = Array.from({ length: last - first + 1 }, (_, step) => first + step).filter(
          (midi) => degreeAt(one, toneDegrees(tones), pitchClass(midi)) !== undefined,
        );
        expect(pitches).toEqual(wanted);
        for (const { place: other, degree } of pattern.notes)
          expect(degreeAt(one, toneDegrees(tones), pitchClassAt(neck, other))).toBe(degree);
      }),
      { numRuns: 1000 },
    );
    expect(found).toBeGreaterThan(20);
  });

  test('there is one unless a fret lies outside the neck', () => {
    // Computed apart: the tones in a row, dealt out to the strings.
    fc.assert(
      fc.property(anyPattern, ({ neck, one, tones, choice, spot, pattern }) => {
        const isRoot = pitchClassAt(neck, spot) === pitchClassOf(one);
        const strings = neck.openStrings.length;
        const own = midiAt(neck, spot);
        const isTone = Array.from({ length: 12 }, (_, sounding) =>
          toneDegrees(tones).some((degree) => pitchClassOn(one, degree) === sounding),
        );
        const row = Array.from({ length: 601 }, (_, step) => own - 300 + step).filter(
          (midi) => isTone[pitchClass(midi)],
        );
        const start = row.indexOf(own) - (strings - spot.string) * choice.notes - choice.rootAt + 1;
        const fits = neck.openStrings.every((_, index) => {
          const string = strings - index;
          const dealt = row.slice(start + index * choice.notes, start + (index + 1) * choice.notes);
          return dealt.every((midi) => isOnNeck(neck, place(string, midi - midiAt(neck, place(string, 0)))));
        });
        expect(pattern !== undefined).toBe(isRoot && fits && !isReentrant(neck));
      }),
      { numRuns: 300 },
    );
  });

  test('moved along the neck by so many frets, a pattern stays the same', () => {
    fc.assert(
      fc.property(anyPattern, fc.nat(), ({ neck, tones, choice, spot, pattern }, to) => {
        const moved = place(spot.string, to % (neck.fretCount + 1));
        const other = twelveRoots.find((one) => pitchClassOf(one) === pitchClassAt(neck, moved));
        const again = patternAt(neck, known(other, 'a root'), tones, moved, choice);
        const relative = (own: Pattern, from: Place) =>
          own.notes.map((note) => [note.place.string, note.place.fret - from.fret, note.degree]);
        if (pattern && again) expect(relative(again, moved)).toEqual(relative(pattern, spot));
      }),
      { numRuns: 300 },
    );
  });

  test('a pattern is the same from every root in it', () => {
    for (const tones of ['major', 'minor-pentatonic', 'arpeggio-9', 'diminished-half-whole'] as const)
      for (const notes of [2, 3] as const)
        for (const pattern of patternsOn(neck24, root('Bb'), tones, notes))
          for (const note of pattern.notes.filter(({ degree }) => degree === '1')) {
            const again = patternsFrom(neck24, root('Bb'), tones, note.place, notes);
            expect(again.map(({ notes: own }) => own)).toContainEqual(pattern.notes);
          }
  });

  test.each(tuningIds)('%s: four notes on each string of every scale, or none', (id) => {
    const neck = known(instrumentById(id), id);
    for (const scale of allScales)
      for (const pattern of patternsOn(neck, root('D'), scale, 4))
        expect(pattern.notes).toHaveLength(4 * neck.openStrings.length);
  });

  test('none on re-entrant strings, from a place that sounds no root, or beyond the notes of a string', () => {
    const ukulele = known(instrumentById('ukulele'), 'ukulele');
    const choice = { notes: 2, rootAt: 1 } as const;
    expect(patternAt(ukulele, root('D'), 'major', place(3, 2), choice)).toBeUndefined();
    const lowG = known(instrumentById('ukulele-low-g'), 'ukulele');
    expect(patternAt(lowG, root('D'), 'major', place(3, 2), choice)).toBeDefined();
    expect(patternAt(standardGuitar, root('G'), 'major', place(2, 7), choice)).toBeUndefined();
    expect(patternAt(standardGuitar, root('G'), 'major', place(7, 8), choice)).toBeUndefined();
    for (const rootAt of [0, 3])
      expect(
        patternAt(standardGuitar, root('G'), 'major', place(2, 8), { notes: 2, rootAt }),
      ).toBeUndefined();
  });
});

describe('along one string', () => {
  // Source: common practice.
  test('C major pentatonic on string 2', () => {
    const notes = alongString(standardGuitar, root('C'), 'major-pentatonic', 2 as StringNumber);
    expect(notes.map((note) => note.place.fret)).toEqual([1, 3, 5, 8, 10, 13, 15, 17]);
    expect(notes.slice(0, 6).map((note) => note.degree)).toEqual(['1', '2', '3', '5', '6', '1']);
  });

  test('every tone of the set from the open string to the last fret, on this string alone', () => {
    fc.assert(
      fc.property(anyInstrument, anyRoot, anyTones, fc.nat(), (neck, one, tones, s) => {
        const string = (1 + (s % neck.openStrings.length)) as StringNumber;
        const wanted = Array.from({ length: neck.fretCount + 1 }, (_, fret) => place(string, fret)).filter(
          (spot) => degreeAt(one, toneDegrees(tones), pitchClassAt(neck, spot)) !== undefined,
        );
        expect(alongString(neck, one, tones, string).map((note) => note.place)).toEqual(wanted);
      }),
    );
  });
});
