import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { known } from '../../../shared/lib/assert.ts';
import { qualityIds } from '../../../shared/theory/chord-name.ts';
import { chordSounds } from '../../../shared/theory/chord-rule.ts';
import { familyIds, type Family } from '../../../shared/theory/families.ts';
import {
  holds,
  instrumentById,
  isOnNeck,
  midiAt,
  pitchClassAt,
  place,
  standardGuitar,
  stringNumbers,
  type Instrument,
  type Place,
  type StringNumber,
} from '../../../shared/theory/fretboard.ts';
import { formatInstrument, parseInstrument, tuningIds } from '../../../shared/theory/instrument-id.ts';
import { semitonesOf } from '../../../shared/theory/interval.ts';
import {
  formatNoteName,
  parseNoteName,
  pitchClass,
  type NoteName,
  type PitchClass,
} from '../../../shared/theory/pitch.ts';
import { shapesFrom, shapesOnString, type Shape } from '../../../shared/theory/shapes.ts';
import { chordTable, type ChordQuality } from '../../../shared/theory/tables/chords.ts';
import { specs } from './any-instrument.ts';

const seed = 20261125;
const names = ['C', 'C#', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'];
const note = (name: string): NoteName => known(parseNoteName(name), name);
const rootAt = (instrument: Instrument, spot: Place) => note(names[pitchClassAt(instrument, spot)] ?? '');
const named = (id: string): Instrument => known(instrumentById(id), id);

const at = (
  quality: ChordQuality,
  [string, fret]: readonly [string: number, fret: number],
  families?: readonly Family[],
  instrument = standardGuitar,
) => {
  const spot = place(string, fret);
  return shapesFrom(instrument, { root: rootAt(instrument, spot), quality }, spot, families);
};
const places = (shape: Shape) =>
  shape.notes.map(({ place: spot }) => `${String(spot.string)}:${String(spot.fret)}`).join(' ');
const grips = (shapes: readonly Shape[]) => shapes.map(places);

describe('the root on string 2 at fret f', () => {
  // [computed] in the tuning, and common practice: strings 3-2-1 major (f−1, f, f−1), minor (f−1, f, f−2); strings 4-3-2
  // major (f+1, f−1, f), minor (f, f−1, f).
  test('close triads', () => {
    for (let f = 2; f <= 18; f += 1) {
      const grip = (...frets: (readonly [string: number, above: number])[]) =>
        frets.map(([string, above]) => `${String(string)}:${String(f + above)}`).join(' ');
      expect(grips(at('major', [2, f], ['triad']))).toEqual([
        grip([4, 1], [3, -1], [2, 0]),
        grip([3, -1], [2, 0], [1, -1]),
      ]);
      expect(grips(at('minor', [2, f], ['triad']))).toEqual([
        grip([4, 0], [3, -1], [2, 0]),
        grip([3, -1], [2, 0], [1, -2]),
      ]);
    }
  });

  // [common]: the C form reaches from f+2 to f−1, the D form from f−2 to f.
  test('SHAPE-5: forms, and where they lie', () => {
    const forms = at('major', [2, 10], ['form']);
    expect(forms.map(({ form, lies }) => [form, lies])).toEqual([
      ['C', 'around'],
      ['D', 'towards-nut'],
    ]);
    expect(grips(forms)).toEqual(['5:12 4:11 3:9 2:10 1:9', '4:7 3:9 2:10 1:9']);
    expect(at('minor', [2, 10], ['form']).map(({ form }) => form)).toEqual(['C', 'D']);
    expect(at('7', [2, 10], ['form']).map(({ form }) => form)).toEqual(['C']);
  });

  // [computed]: A4 is fret 10. 5 3 7 1: E string 6 fret 12, C♯ string 4 fret 11, G string 3
  // fret 12 · 7 5 1 3: G string 5 fret 10, E string 3 fret 9, C♯ string 1 fret 9.
  test('drop-3 of a seventh', () => {
    const shapes = at('7', [2, 10], ['drop-3']);
    expect(grips(shapes)).toEqual(['6:12 4:11 3:12 2:10', '5:10 3:9 2:10 1:9']);
    expect(shapes.map(({ bass, inversion }) => [bass, inversion])).toEqual([
      ['5', 2],
      ['b7', 3],
    ]);
    // Mean of the others: 1⅔ frets above the root, ⅔ below it.
    expect(shapes.map(({ lies }) => lies)).toEqual(['towards-bridge', 'towards-nut']);
  });
});

describe('shapesFrom', () => {
  // [computed]: D3 is string 5 fret 5; the forms are common practice.
  test('family by family, in each from low strings to high', () => {
    expect(at('maj7', [5, 5]).map((shape) => [shape.form ?? shape.family, places(shape)])).toEqual([
      ['A', '5:5 4:7 3:6 2:7 1:5'],
      ['C', '5:5 4:4 3:2 2:2 1:2'],
      ['shell', '5:5 4:4 3:6'],
      ['shell', '5:5 3:6 2:7'],
      ['drop-2', '6:5 5:5 4:4 3:6'],
      ['drop-2', '5:5 4:7 3:6 2:7'],
      ['drop-3', '5:5 3:6 2:7 1:5'],
    ]);
  });

  // The D form of a seventh is the drop-2 from its root: 1 5 ♭7 3.
  test('SHAPE-4: a grip of two families is given once, under the first', () => {
    const grip = '4:5 3:7 2:6 1:7';
    const family = (families?: readonly Family[]) =>
      at('7', [4, 5], families).find((shape) => places(shape) === grip)?.family;
    expect(family()).toBe('form');
    expect(family(['drop-2', 'form'])).toBe('drop-2');
  });

  // [common]: the E form's own fingers; on the nut the open strings need none. The triad's are for a hand to find.
  test('fingers', () => {
    const fingers = (shapes: readonly Shape[]) => shapes[0]?.notes.map((one) => one.finger);
    expect(fingers(at('7', [6, 5], ['form']))).toEqual([1, 3, 1, 2, 1, 1]);
    expect(fingers(at('minor', [6, 0], ['form']))?.filter((finger) => finger > 0)).toHaveLength(2);
    expect(fingers(at('minor', [2, 5], ['triad']))).toHaveLength(3);
    expect(fingers(at('minor', [2, 5], ['triad']))?.every((finger) => finger > 0)).toBe(true);
  });

  test('nothing where the place sounds another note, or lies off the neck', () => {
    const chord = { root: note('E'), quality: 'major' } as const;
    expect(shapesFrom(standardGuitar, chord, place(2, 5))).not.toEqual([]);
    expect(shapesFrom(standardGuitar, chord, place(2, 6))).toEqual([]);
    expect(shapesFrom(standardGuitar, chord, place(2, 29))).toEqual([]);
    expect(shapesFrom(standardGuitar, chord, place(7, 5))).toEqual([]);
    expect(shapesOnString(standardGuitar, chord, 7 as StringNumber)).toEqual([]);
  });
});

/** Apart from the code: the pitches of a voicing, with its bass an octave up again, lie close, the bass so far from above. */
const bassFromAbove: Partial<Record<Family, number>> = { triad: 3, 'drop-2': 2, 'drop-3': 3 };
const layouts: Partial<Record<Family, readonly number[]>> = {
  triad: [0, 1, 2],
  'drop-2': [0, 1, 2, 3],
  'drop-3': [0, 2, 3, 4],
};

function isOf(family: Family, midi: readonly number[]): boolean {
  const [bass = 0, ...upper] = midi;
  const close = family === 'triad' ? [...midi] : [bass + 12, ...upper];
  const sorted = close.toSorted((a, b) => b - a);
  const fromAbove = family === 'triad' ? 3 : sorted.indexOf(bass + 12) + 1;
  return (
    (sorted[0] ?? 0) - (sorted.at(-1) ?? 0) < 12 &&
    fromAbove === bassFromAbove[family] &&
    bass < Math.min(...upper)
  );
}

/** Every choice of one fret a string, four apart at most, that has the root place, every tone once, and the family. */
function searched(instrument: Instrument, quality: ChordQuality, root: Place, family: Family): string[] {
  const tones = chordTable[quality].degrees.map((degree) => pitchClass(semitonesOf(degree)));
  const above = (spot: Place) => pitchClass(midiAt(instrument, spot) - midiAt(instrument, root));
  const strings = stringNumbers(instrument).toReversed();
  return strings.flatMap((_, lowest) => {
    const layout = layouts[family] ?? [];
    const set = layout.flatMap((step) => strings[lowest + step] ?? []);
    if (set.length < layout.length || set.length !== tones.length || !set.includes(root.string)) return [];
    let choices: Place[][] = [[]];
    for (const string of set) {
      const spots = Array.from({ length: 9 }, (_one, index) => place(string, root.fret - 4 + index)).filter(
        (spot) =>
          (string === root.string ? spot.fret === root.fret : true) &&
          isOnNeck(instrument, spot) &&
          tones.includes(above(spot)),
      );
      choices = choices.flatMap((chosen) => spots.map((spot) => [...chosen, spot]));
    }
    return choices
      .filter((chosen) => {
        const frets = chosen.map((spot) => spot.fret);
        const classes = new Set<PitchClass>(chosen.map(above));
        return (
          Math.max(...frets) - Math.min(...frets) <= 4 &&
          classes.size === tones.length &&
          isOf(
            family,
            chosen.map((spot) => midiAt(instrument, spot)),
          )
        );
      })
      .map((chosen) => chosen.map(({ string, fret }) => `${String(string)}:${String(fret)}`).join(' '));
  });
}

const sevenths = ['7', 'm7', 'm7b5', '6'] as const;
const asked: readonly (readonly [Family, readonly ChordQuality[]])[] = [
  ['triad', ['major', 'minor', 'aug', 'sus2', '7']],
  ['drop-2', [...sevenths, 'major']],
  ['drop-3', sevenths],
];

/** The ends of the neck are where shapes begin to exist. */
const nearNut = [0, 1, 2, 3, 4, 8];

describe('SHAPE-1, SHAPE-3: against a search over every fret', () => {
  // No two of their strings lie closer than a major third, so that no voice crosses another within four frets.
  test.each([
    'guitar',
    'guitar-fourths',
    'guitar-7',
    'guitar-drop-d+capo=2',
    'bass-5',
    'mandolin',
    'ukulele-baritone',
  ])('%s: triads, drop-2 and drop-3', (id) => {
    const instrument = named(id);
    let found = 0;
    for (const [family, qualities] of asked)
      for (const quality of qualities)
        for (const string of stringNumbers(instrument))
          for (const fret of [...nearNut, ...nearNut.map((one) => instrument.fretCount - one)]) {
            const own = grips(at(quality, [string, fret], [family], instrument)).toSorted();
            const others = searched(instrument, quality, place(string, fret), family).toSorted();
            expect([quality, family, string, fret, own]).toEqual([quality, family, string, fret, others]);
            found += own.length;
          }
    expect(found).toBeGreaterThan(10);
  });
});

describe('the inversions possible', () => {
  // [computed]: the root is the lowest, middle or highest voice of the sets that have its string.
  test.each([
    [6, [0]],
    [5, [2, 0]],
    [4, [1, 2, 0]],
    [3, [1, 2, 0]],
    [2, [1, 2]],
    [1, [1]],
  ])('a triad for each set of three strings that has string %i', (string, inversions) => {
    for (const quality of ['major', 'minor', 'dim', 'aug', 'sus2', 'sus4'] as const)
      for (let fret = 5; fret <= 14; fret += 1) {
        const shapes = at(quality, [string, fret], ['triad']);
        expect(shapes.map((shape) => shape.inversion)).toEqual(inversions);
      }
  });

  // [computed]: the same of the three sets of four neighbours; voices of 1 5 7 3, 3 7 1 5, 5 1 3 7, 7 3 5 1.
  test.each([
    [6, [0]],
    [5, [2, 0]],
    [4, [1, 2, 0]],
    [3, [3, 1, 2]],
    [2, [3, 1]],
    [1, [3]],
  ])('a drop-2 for each set of four strings that has string %i', (string, inversions) => {
    for (const quality of ['7', 'maj7', 'm7', 'm7b5', 'dim7', '6', 'm6'] as const)
      for (let fret = 5; fret <= 14; fret += 1)
        expect(at(quality, [string, fret], ['drop-2']).map((shape) => shape.inversion)).toEqual(inversions);
  });
});

const instruments = fc.oneof(
  fc.constantFrom(...tuningIds.flatMap((id) => [id, `${id}+capo=3`])).map(named),
  specs.map((spec) => {
    const parsed = parseInstrument(formatInstrument(spec));
    return known(parsed.ok ? parsed.value : undefined, 'instrument');
  }),
);
const rootPlaces = instruments.chain((instrument) =>
  fc.record({
    instrument: fc.constant(instrument),
    string: fc.constantFrom(...stringNumbers(instrument)),
    fret: fc.nat(instrument.fretCount),
    quality: fc.constantFrom(...qualityIds),
  }),
);

describe('any instrument', () => {
  test('every shape sounds the chord from its root place, and none is given twice', () => {
    let laid = 0;
    fc.assert(
      fc.property(rootPlaces, ({ instrument, string, fret, quality }) => {
        const rootPlace = place(string, fret);
        const shapes = at(quality, [string, fret], familyIds, instrument);
        laid += shapes.length;
        expect(new Set(grips(shapes)).size).toBe(shapes.length);
        const degrees: readonly string[] = chordTable[quality].degrees;
        for (const shape of shapes) {
          const spots = shape.notes.map((one) => one.place);
          expect(shape.rootPlace).toEqual(rootPlace);
          expect(holds(spots, rootPlace)).toBe(true);
          expect(spots.every((spot) => isOnNeck(instrument, spot))).toBe(true);
          expect(new Set(spots.map((spot) => spot.string)).size).toBe(spots.length);
          for (const one of shape.notes)
            expect(pitchClass(midiAt(instrument, one.place) - midiAt(instrument, rootPlace))).toBe(
              pitchClass(semitonesOf(one.degree)),
            );
          const lowest = spots.toSorted((a, b) => midiAt(instrument, a) - midiAt(instrument, b))[0];
          const bass = shape.notes.find((one) => one.place === lowest)?.degree;
          const sounding = shape.notes.map((one) => one.degree);
          expect(chordSounds(quality, sounding, { bass }).ok).toBe(true);
          expect(degrees[shape.inversion]).toBe(shape.bass);
        }
      }),
      { seed, numRuns: 500 },
    );
    expect(laid).toBeGreaterThan(300);
  });

  test('a shape moved along the neck is the shape of the root moved', () => {
    let moved = 0;
    fc.assert(
      fc.property(rootPlaces, fc.nat(36), ({ instrument, string, fret, quality }, to) => {
        fc.pre(to <= instrument.fretCount);
        const there = at(quality, [string, to], familyIds, instrument).map((shape) => described(shape, 0));
        const here = at(quality, [string, fret], familyIds, instrument);
        for (const shape of here) {
          const fits = shape.notes.every(({ place: spot }) =>
            isOnNeck(instrument, place(spot.string, spot.fret + to - fret)),
          );
          expect(there.includes(described(shape, to - fret))).toBe(fits);
          moved += fits ? 1 : 0;
        }
      }),
      { seed, numRuns: 500 },
    );
    expect(moved).toBeGreaterThan(300);
  });

  test('shapesOnString: the shapes of every root on the string, from the nut on', () => {
    for (const id of tuningIds)
      for (const name of ['C', 'Eb', 'A'])
        for (const string of stringNumbers(named(id))) {
          const instrument = named(id);
          const shapes = shapesOnString(instrument, { root: note(name), quality: '7' }, string, [
            'shell',
            'drop-2',
          ]);
          const frets = shapes.map((shape) => shape.rootPlace.fret);
          expect(frets).toEqual(frets.toSorted((a, b) => a - b));
          const count = Array.from({ length: instrument.fretCount + 1 }, (_, fret) =>
            formatNoteName(rootAt(instrument, place(string, fret))) === name
              ? at('7', [string, fret], ['shell', 'drop-2'], instrument).length
              : 0,
          ).reduce((sum, one) => sum + one, 0);
          expect(shapes.length).toBe(count);
        }
  });
});

/** A shape without its root's name and its fingers, moved along the neck. */
function described(shape: Shape, by: number): string {
  const notes = shape.notes.map((one) => [one.place.string, one.place.fret + by, one.degree]);
  return JSON.stringify([shape.family, shape.form, shape.inversion, shape.lies, notes]);
}
