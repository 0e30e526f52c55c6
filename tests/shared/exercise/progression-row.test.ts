import { describe, expect, test } from 'vitest';
import { checkExercise } from '../../../shared/exercise/check.ts';
import { judge } from '../../../shared/exercise/judge.ts';
import { answerKey } from '../../../shared/exercise/key.ts';
import { progressionRow, type RowChord, type RowWish } from '../../../shared/exercise/progression-row.ts';
import { known } from '../../../shared/lib/assert.ts';
import { familyIds, type Family } from '../../../shared/theory/families.ts';
import { fingeringsOf } from '../../../shared/theory/fingering.ts';
import { holds, midiAt, type StringNumber } from '../../../shared/theory/fretboard.ts';
import { parseInstrument } from '../../../shared/theory/instrument-id.ts';
import { pitchClassOf } from '../../../shared/theory/pitch.ts';
import { parseProgression } from '../../../shared/theory/progression.ts';
import type { RomanKey } from '../../../shared/theory/roman.ts';
import { note, range } from './making.ts';
import { keyPlaces, neck, written } from './proposed.ts';

const major = (tonic: string): RomanKey => ({ tonic: note(tonic), mode: 'major' });
const read = (text: string, tonic = 'C') => {
  const chords = parseProgression(text, major(tonic), 'english');
  if (!chords.ok) throw new Error(chords.error);
  return chords.value;
};
const wish = (text: string, fields: Partial<RowWish> = {}): RowWish => ({
  instrument: neck('guitar'),
  chords: read(text),
  rootString: null,
  family: 'form',
  range: range(1, 12),
  naming: 'english',
  ...fields,
});
const string = (number: number) => number as StringNumber;
const rowOf = (asked: RowWish): readonly RowChord[] => {
  const row = progressionRow(asked);
  if (!row.ok) throw new Error(row.error);
  return row.value;
};

const texts = ['ii7 V7 Imaj7', 'I/E IV V/B I', 'vii°7 iiø7 V13 I6'];
const cases = ['guitar', 'guitar-drop-d', 'guitar-7', 'mandolin', 'bass-4', 'ukulele'].flatMap((id) =>
  (id === 'guitar' ? familyIds : (['form', 'drop-2'] as const)).map((family) => [id, family] as const),
);

describe('PROGRESSION-6: each chord can be asked, its key is right, and a hand can hold it', () => {
  test.each(cases)('%s, %s', (id, family) => {
    const instrument = neck(id);
    let laid = 0;
    for (const text of texts)
      for (const rootString of [null, ...instrument.openStrings.map((_, index) => string(index + 1))]) {
        const asked = wish(text, { instrument, family, rootString });
        const row = progressionRow(asked);
        if (!row.ok) {
          expect(row.error).toMatch(/^[A-G]\S* has no shape here .*\.$/);
          continue;
        }
        laid += 1;
        expect(row.value.map(({ chord }) => chord)).toEqual(asked.chords);
        let before: ReturnType<typeof keyPlaces> = [];
        for (const { chord, exercise, root, common } of row.value) {
          expect(checkExercise(exercise).ok).toBe(true);
          const places = keyPlaces(exercise);
          expect(judge(exercise, { places }).kind).toBe('right');
          expect(fingeringsOf(instrument, places).ok).toBe(true);
          // The root: on its string, in the key, and its note.
          expect(holds(places, root.place)).toBe(true);
          if (rootString !== null) expect(root.place.string).toBe(rootString);
          expect(midiAt(instrument, root.place) % 12).toBe(pitchClassOf(chord.root));
          expect(exercise.range).toEqual({ low: root.place.fret, high: root.place.fret });
          // PROGRESSION-5: what both have, and the same pitch elsewhere.
          expect(written(common.held)).toBe(written(places.filter((spot) => holds(before, spot))));
          for (const { from, to } of common.elsewhere) {
            expect(midiAt(instrument, from)).toBe(midiAt(instrument, to));
            expect([from.string === to.string, holds(before, from), holds(places, to)]).toEqual([
              false,
              true,
              true,
            ]);
          }
          before = places;
        }
      }
    expect(laid).toBeGreaterThan(2);
  });
});

describe('PROGRESSION-4: where the shapes lie', () => {
  // Source: common practice: with roots on string 5, D minor seventh is the A form at fret 5, G7 at 10, C at 3.
  test('roots on string 5', () => {
    const row = rowOf(wish('ii7 V7 Imaj7', { rootString: string(5), range: range(1, 12) }));
    expect(row.map(({ root }) => [root.place.string, root.place.fret])).toEqual([
      [5, 5],
      [5, 10],
      [5, 3],
    ]);
  });

  test.each<[Family, string, number]>([
    ['form', 'ii7 V7 Imaj7', 5],
    ['triad', 'I vi IV V', 2],
    ['shell', 'ii7 V7 Imaj7', 6],
    ['drop-2', 'ii7 V7 Imaj7', 5],
    ['drop-3', 'ii7 V7 Imaj7', 6],
  ])('%s: all of the family, inside the frets asked for', (family, text, rootString) => {
    const row = rowOf(wish(text, { family, rootString: string(rootString), range: range(1, 15) }));
    for (const { exercise } of row) {
      const { voicing } = exercise;
      expect(voicing.kind === 'family' ? voicing.family : voicing.kind).toBe(family);
      for (const { fret } of keyPlaces(exercise)) expect([fret >= 1, fret <= 15]).toEqual([true, true]);
    }
  });

  test('another family where a chord has none of it, the easiest where it has none at all', () => {
    const sevenths = rowOf(wish('ii7 V7', { family: 'triad' }));
    for (const { exercise } of sevenths) expect(exercise.voicing.kind).not.toBe('strings');
    const ukulele = rowOf(wish('ii7', { instrument: neck('ukulele'), rootString: string(2) }));
    expect(ukulele.map(({ exercise }) => exercise.voicing.kind)).toEqual(['strings']);
  });

  test('a slash chord has its bass lowest', () => {
    const instrument = neck('guitar');
    for (const { chord, exercise } of rowOf(wish('C/E F G/B C'))) {
      const lowest = Math.min(...keyPlaces(exercise).map((spot) => midiAt(instrument, spot)));
      if (chord.bass) expect(lowest % 12).toBe(pitchClassOf(chord.bass));
      expect(exercise.bass).toEqual(chord.bass);
    }
  });

  test('with the hand wherever it moves least, it moves no more than on any one string', () => {
    // Along the strings alone, in frets of the index: our own rough measure beside the theory's.
    const way = (row: readonly RowChord[]) =>
      row
        .map(({ exercise }) => Math.min(...keyPlaces(exercise).map(({ fret }): number => fret)))
        .reduce((sum, fret, index, all) => sum + Math.abs(fret - (all[index - 1] ?? fret)), 0);
    const free = way(rowOf(wish('ii7 V7 Imaj7', { range: range(3, 15) })));
    for (const on of [5, 6, 4])
      expect(free).toBeLessThanOrEqual(
        way(rowOf(wish('ii7 V7 Imaj7', { rootString: string(on), range: range(3, 15) }))),
      );
  });
});

describe('a progression in another key moves every place by the same frets', () => {
  test.each<[Family, string, number]>([
    ['form', 'ii7 V7 Imaj7', 5],
    ['form', 'I IV V', 6],
    ['triad', 'I vi IV V', 2],
    ['shell', 'ii7 V7 Imaj7', 5],
    ['drop-2', 'ii7 V7 Imaj7', 4],
  ])('%s, %s on string %i', (family, text, on) => {
    const places = (tonic: string, by: number) =>
      rowOf(
        wish(text, {
          chords: read(text, tonic),
          family,
          rootString: string(on),
          range: range(1 + by, 13 + by),
        }),
      ).map(({ exercise }) =>
        written(keyPlaces(exercise).map((spot) => ({ ...spot, fret: (spot.fret - by) as typeof spot.fret }))),
      );
    const home = places('C', 0);
    for (const [tonic, by] of [
      ['Db', 1],
      ['D', 2],
      ['Eb', 3],
    ] as const)
      expect(places(tonic, by)).toEqual(home);
  });
});

describe('a chord without a shape is named', () => {
  const custom = (text: string) => {
    const instrument = parseInstrument(text);
    if (!instrument.ok) throw new Error(instrument.error);
    return instrument.value;
  };

  test.each<[string, string, string]>([
    [
      'three strings of one pitch, four tones',
      'custom:C4-C4-C4+frets=5',
      'C7 has no shape here that sounds its root.',
    ],
    [
      'three strings of five frets',
      'custom:C#4-D5-Eb6+frets=5',
      'C7 has no shape here that sounds its root.',
    ],
  ])('%s', (_name, instrument, error) => {
    expect(progressionRow(wish('I7', { instrument: custom(instrument) }))).toEqual({ ok: false, error });
  });

  test('with its string, in the naming of the reader', () => {
    const asked = wish('V13', {
      instrument: custom('custom:B3-E4-A4+frets=5'),
      rootString: string(1),
      naming: 'german',
    });
    const row = progressionRow({ ...asked, chords: read('Bb13') });
    expect(row).toEqual({ ok: false, error: 'B13 has no shape here with its root on string 1.' });
  });

  test.each(['xyz', 'IX', 'ii7 blah I'])('PROGRESSION-1: “%s” gets a sentence with the word', (text) => {
    const chords = parseProgression(text, major('C'), 'english');
    expect(chords.ok ? '' : chords.error).toContain(`“${text.split(' ').at(-2) ?? text}”`);
  });

  test('no chords, no row', () => {
    expect(progressionRow({ ...wish('I'), chords: [] })).toEqual({ ok: true, value: [] });
  });
});

test('the finger of the root is told, where the shape has fingers', () => {
  const [first] = rowOf(wish('ii7', { rootString: string(5) }));
  const row = known(first, 'a chord');
  const own = answerKey(row.exercise).find(({ place }) => place.string === 5);
  expect(own?.finger).toBe(row.root.finger);
  expect(row.root.finger).toBeGreaterThan(0);
});
