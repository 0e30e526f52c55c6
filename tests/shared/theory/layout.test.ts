import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { known } from '../../../shared/lib/assert.ts';
import { formatChordName, parseChordName, type NamedChord } from '../../../shared/theory/chord-name.ts';
import {
  holds,
  instrumentById,
  midiAt,
  pitchClassAt,
  place,
  standardGuitar,
  stringNumbers,
  type Instrument,
  type StringNumber,
} from '../../../shared/theory/fretboard.ts';
import {
  commonTones,
  layoutAnywhere,
  layoutOnString,
  type LaidChord,
  type LayoutShape,
} from '../../../shared/theory/layout.ts';
import { travelBetween } from '../../../shared/theory/least-movement.ts';
import { parseNoteName, pitchClassOf } from '../../../shared/theory/pitch.ts';
import { parseProgression } from '../../../shared/theory/progression.ts';
import { shapeAt } from '../../../shared/theory/shape.ts';
import { formTable, type FormId } from '../../../shared/theory/tables/forms.ts';

interface FormShape extends LayoutShape {
  readonly form: FormId;
}
const string2 = 2 as StringNumber;

/** Every movable form of a chord, wherever it lies. */
function formsOf(instrument: Instrument, { root, quality }: NamedChord): readonly FormShape[] {
  const roots = stringNumbers(instrument).flatMap((string) =>
    Array.from({ length: instrument.fretCount + 1 }, (_, fret) => place(string, fret)).filter(
      (spot) => pitchClassAt(instrument, spot) === pitchClassOf(root),
    ),
  );
  return formTable
    .filter((row) => row.quality === quality)
    .flatMap((row) =>
      roots
        .filter((spot) => spot.string === row.rootStrings[0])
        .flatMap((spot) => {
          const notes = shapeAt(instrument, row, root, spot);
          return notes ? [{ form: row.form, notes }] : [];
        }),
    );
}

/** Kept, for the properties ask for the same chords again and again. */
const kept = new Map<string, readonly FormShape[]>();
function onGuitar(chord: NamedChord): readonly FormShape[] {
  const name = formatChordName(chord, 'english');
  const shapes = kept.get(name) ?? formsOf(standardGuitar, chord);
  kept.set(name, shapes);
  return shapes;
}
const chordsOf = (names: string) =>
  names.split(' ').map((name) => {
    const read = parseChordName(name, 'english');
    if (!read.ok) throw new Error(read.error);
    return read.value;
  });
type Laid = readonly LaidChord<NamedChord, FormShape>[];
const laidOut = (found: { ok: true; value: Laid } | { ok: false; error: string }): Laid => {
  if (!found.ok) throw new Error(found.error);
  return found.value;
};
const travelOf = (shapes: readonly LayoutShape[]) =>
  shapes.reduce((sum, shape, index) => {
    const before = shapes[index - 1];
    const held = ({ notes }: LayoutShape) => ({ fingers: notes, cost: 0 });
    return before ? sum + travelBetween(standardGuitar, held(before), held(shape)) : sum;
  }, 0);

/** The least travel of all ways, each counted whole. */
function leastOfAll(choices: readonly (readonly LayoutShape[])[]): number {
  const paths = choices.reduce<readonly (readonly LayoutShape[])[]>(
    (before, some) => before.flatMap((path) => some.map((one) => [...path, one])),
    [[]],
  );
  return Math.min(...paths.map(travelOf));
}

const hasRootOn2 = ({ notes }: LayoutShape) =>
  notes.some(({ degree, place: spot }) => degree === '1' && spot.string === 2);
const triads = fc.tuple(
  fc.constantFrom(...'C D Eb E F F# G A Bb B'.split(' ')),
  fc.constantFrom('major' as const, 'minor' as const),
);
const rows = fc
  .array(triads, { minLength: 1, maxLength: 3 })
  .map((some) =>
    some.map(([root, quality]): NamedChord => ({ root: known(parseNoteName(root), root), quality })),
  );

describe('PROGRESSION-4: a row with its roots on one string', () => {
  test('every root is on string 2 and its note, each chord sounds whole, and no way is shorter', () => {
    fc.assert(
      fc.property(rows, (chords) => {
        const laid = laidOut(layoutOnString(standardGuitar, chords, string2, onGuitar));
        expect(laid.map(({ chord }) => chord)).toEqual(chords);
        for (const { chord, root, shape } of laid) {
          expect(root.place.string).toBe(2);
          expect(pitchClassAt(standardGuitar, root.place)).toBe(pitchClassOf(chord.root));
          expect(shape.notes).toContain(root);
          expect(new Set(shape.notes.map(({ degree }) => degree)).size).toBe(3);
        }
        const choices = chords.map((chord) => onGuitar(chord).filter(hasRootOn2));
        expect(travelOf(laid.map(({ shape }) => shape))).toBeCloseTo(leastOfAll(choices), 6);
      }),
      { numRuns: 60 },
    );
  });

  test('the octave is chosen with a view to the whole row', () => {
    // Roots on string 2: D 3 or 15, A 10, E 5 or 17 (NECK-2); one form, so that the frets alone decide.
    const cForm = (chord: NamedChord) => onGuitar(chord).filter(({ form }) => form === 'C');
    const frets = (names: string) =>
      laidOut(layoutOnString(standardGuitar, chordsOf(names), string2, cForm)).map(
        ({ root }) => root.place.fret,
      );
    expect(frets('D')).toEqual([3]);
    expect(frets('A D')).toEqual([10, 15]);
    // Twelve frets up the same way is half as long.
    expect(frets('D E D')).toEqual([15, 17, 15]);
  });

  test('the finger of the root is told', () => {
    // Source: common practice (C form in major 2, in minor 3).
    const cForm = (chord: NamedChord) => onGuitar(chord).filter(({ form }) => form === 'C');
    const laid = laidOut(layoutOnString(standardGuitar, chordsOf('D Em'), string2, cForm));
    expect(laid.map(({ root }) => root.finger)).toEqual([2, 3]);
  });

  test('a chord with no shape there is named, in the system of the reader', () => {
    const none = ({ root, quality }: NamedChord) => (quality === 'm7' ? [] : onGuitar({ root, quality }));
    const chords = chordsOf('D Bm7 E');
    expect(layoutOnString(standardGuitar, chords, string2, none)).toEqual({
      ok: false,
      error: 'Bm7 has no shape here with its root on string 2.',
    });
    expect(layoutOnString(standardGuitar, chords, string2, none, 'german')).toMatchObject({
      error: 'Hm7 has no shape here with its root on string 2.',
    });
    const eForm = (chord: NamedChord) => onGuitar(chord).filter(({ form }) => form === 'E');
    expect(layoutOnString(standardGuitar, chords, string2, eForm).ok).toBe(false);
  });

  test('no chords, no row', () => {
    expect(layoutOnString(standardGuitar, [], string2, onGuitar)).toEqual({ ok: true, value: [] });
  });
});

describe('PROGRESSION-4: a row with its roots anywhere', () => {
  test('never moves more than on a string, and no way is shorter', () => {
    fc.assert(
      fc.property(
        rows.filter((chords) => chords.length < 3),
        (chords) => {
          const free = travelOf(
            laidOut(layoutAnywhere(standardGuitar, chords, onGuitar)).map(({ shape }) => shape),
          );
          const bound = laidOut(layoutOnString(standardGuitar, chords, string2, onGuitar));
          expect(free).toBeLessThanOrEqual(travelOf(bound.map(({ shape }) => shape)));
          expect(free).toBeCloseTo(leastOfAll(chords.map(onGuitar)), 6);
        },
      ),
      { numRuns: 60 },
    );
  });

  test('the root is the place that the shape names, else the lowest root', () => {
    const eForm = (chord: NamedChord) => onGuitar(chord).filter(({ form }) => form === 'E');
    const rootOf = (shapesOf: (chord: NamedChord) => readonly FormShape[]) =>
      laidOut(layoutAnywhere(standardGuitar, chordsOf('A'), shapesOf)).map(({ root }) => root.place);
    expect(rootOf(eForm)).toEqual([place(6, 5)]);
    expect(rootOf((chord) => eForm(chord).map((shape) => ({ ...shape, rootPlace: place(1, 5) })))).toEqual([
      place(1, 5),
    ]);
  });

  test('a shape that leaves its root out is none; the chord is named', () => {
    const rootless = (chord: NamedChord) =>
      onGuitar(chord).map(({ form, notes }) => ({
        form,
        notes: notes.filter(({ degree }) => degree !== '1'),
      }));
    expect(layoutAnywhere(standardGuitar, chordsOf('A'), rootless)).toEqual({
      ok: false,
      error: 'A has no shape here that sounds its root.',
    });
  });

  test('what a cost tells apart, where the ways are equal', () => {
    const notes = known(onGuitar(known(chordsOf('A')[0], 'A'))[0], 'shape').notes;
    const shapes = [3, 1, 2].map((cost) => ({ notes, cost }));
    const found = layoutAnywhere(standardGuitar, chordsOf('A A'), () => shapes);
    expect(found.ok && found.value.map(({ shape }) => shape.cost)).toEqual([1, 1]);
  });

  test('it goes on any instrument', () => {
    const ukulele = known(instrumentById('ukulele'), 'ukulele');
    // One string, one finger: the roots alone.
    const roots = ({ root }: NamedChord) =>
      stringNumbers(ukulele).flatMap((string) =>
        Array.from({ length: ukulele.fretCount }, (_, fret) => place(string, fret + 1))
          .filter((spot) => pitchClassAt(ukulele, spot) === pitchClassOf(root))
          .map((spot) => ({ notes: [{ place: spot, degree: '1', finger: 1, optional: false }] })),
      );
    const found = layoutAnywhere(ukulele, chordsOf('D A'), roots);
    // D is fret 2 of string 3 (C), A fret 2 of string 4 (high G): one string across.
    expect(found.ok && found.value.map(({ root }) => root.place)).toEqual([place(3, 2), place(4, 2)]);
  });
});

describe('PROGRESSION-5: tones in common', () => {
  test('the same place is held; the same pitch on another string is marked apart', () => {
    // Open C to A minor: strings 4, 2 and 1 stay (common practice); string 3 of C, open, is no tone of A minor.
    const c = [place(5, 3), place(4, 2), place(3, 0), place(2, 1), place(1, 0)];
    const aMinor = [place(5, 0), place(4, 2), place(3, 2), place(2, 1), place(1, 0)];
    expect(commonTones(standardGuitar, c, aMinor)).toEqual({
      held: [place(4, 2), place(2, 1), place(1, 0)],
      elsewhere: [],
    });
    expect(commonTones(standardGuitar, [place(2, 5)], [place(1, 0), place(3, 9)])).toEqual({
      held: [],
      elsewhere: [{ from: place(2, 5), to: place(1, 0) }],
    });
  });

  test('each place is told once, and only pitches that sound in both', () => {
    const places = fc.uniqueArray(
      fc.record({ string: fc.integer({ min: 1, max: 6 }), fret: fc.nat({ max: 19 }) }),
      { maxLength: 6, selector: (one) => one.string },
    );
    fc.assert(
      fc.property(places, places, (some, others) => {
        const before = some.map(({ string, fret }) => place(string, fret));
        const now = others.map(({ string, fret }) => place(string, fret));
        const { held, elsewhere } = commonTones(standardGuitar, before, now);
        expect(held).toEqual(now.filter((spot) => holds(before, spot)));
        const used = [...held, ...elsewhere.map(({ from }) => from)];
        expect(new Set(used.map((spot) => spot.string)).size).toBe(used.length);
        for (const { from, to } of elsewhere) {
          expect(midiAt(standardGuitar, from)).toBe(midiAt(standardGuitar, to));
          expect([holds(before, from), holds(now, to), holds(held, to)]).toEqual([true, true, false]);
        }
        const back = commonTones(standardGuitar, now, before);
        expect([back.held.length, back.elsewhere.length]).toEqual([held.length, elsewhere.length]);
      }),
    );
  });

  test('a row tells them from chord to chord, none for the first', () => {
    const laid = laidOut(layoutAnywhere(standardGuitar, chordsOf('A A F#m'), onGuitar));
    expect(laid[0]?.common).toEqual({ held: [], elsewhere: [] });
    for (const [index, { shape, common }] of laid.entries()) {
      const before = laid[index - 1];
      if (!before) continue;
      const spots = (one: LayoutShape) => one.notes.map(({ place: spot }) => spot);
      expect(common).toEqual(commonTones(standardGuitar, spots(before.shape), spots(shape)));
    }
    expect(laid[1]?.common.held).toHaveLength(laid[1]?.shape.notes.length ?? 0);
  });
});

test('from the words to the neck: what parseProgression reads can be laid out, numerals and all', () => {
  const key = { tonic: known(parseNoteName('A'), 'A'), mode: 'major' } as const;
  const read = parseProgression('I vi IV E', key, 'english');
  if (!read.ok) throw new Error(read.error);
  const found = layoutOnString(standardGuitar, read.value, string2, onGuitar);
  expect(found.ok && found.value.map(({ chord, root }) => [chord.numeral, root.place.string])).toEqual([
    ['I', 2],
    ['vi', 2],
    ['IV', 2],
    ['V', 2],
  ]);
});
