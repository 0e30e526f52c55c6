import { describe, expect, test } from 'vitest';
import { known } from '../../../shared/lib/assert.ts';
import {
  instrumentById,
  midiAt,
  place,
  samePlace,
  standardGuitar,
  type Place,
} from '../../../shared/theory/fretboard.ts';
import { pitchClassOf, letters, midiOf, type NoteName } from '../../../shared/theory/pitch.ts';
import { handFrets, positionAt } from '../../../shared/theory/position.ts';
import { scaleTable, type ScaleId } from '../../../shared/theory/tables/scales.ts';

const f = 7;
const fSharp: NoteName = { letter: 'F', alteration: 1 };
const openMidi = [64, 59, 55, 50, 45, 40];
const scaleIds = Object.keys(scaleTable) as ScaleId[];
/** Source: common practice; written apart from the table, in semitones. */
const semitones: Record<ScaleId, readonly number[]> = {
  major: [0, 2, 4, 5, 7, 9, 11],
  'natural-minor': [0, 2, 3, 5, 7, 8, 10],
  'major-pentatonic': [0, 2, 4, 7, 9],
  'minor-pentatonic': [0, 3, 5, 7, 10],
  dorian: [0, 2, 3, 5, 7, 9, 10],
  phrygian: [0, 1, 3, 5, 7, 8, 10],
  lydian: [0, 2, 4, 6, 7, 9, 11],
  mixolydian: [0, 2, 4, 5, 7, 9, 10],
  locrian: [0, 1, 3, 5, 6, 8, 10],
  'harmonic-minor': [0, 2, 3, 5, 7, 8, 11],
  'melodic-minor': [0, 2, 3, 5, 7, 9, 11],
  blues: [0, 3, 5, 6, 7, 10],
  'major-blues': [0, 2, 3, 4, 7, 9],
  'whole-tone': [0, 2, 4, 6, 8, 10],
  'diminished-whole-half': [0, 2, 3, 5, 6, 8, 9, 11],
  'diminished-half-whole': [0, 1, 3, 4, 6, 7, 9, 10],
  altered: [0, 1, 3, 4, 6, 8, 10],
  'lydian-dominant': [0, 2, 4, 6, 7, 9, 10],
  'phrygian-dominant': [0, 1, 4, 5, 7, 8, 10],
  'harmonic-major': [0, 2, 4, 5, 7, 8, 11],
};

/** Frets of each string, lowest string first. */
function byString(scale: ScaleId, finger: number): readonly (readonly number[])[] {
  const position = known(positionAt(standardGuitar, fSharp, scale, place(2, f), finger), 'position');
  return [6, 5, 4, 3, 2, 1].map((string) =>
    position.notes.filter((note) => note.place.string === string).map((note) => note.place.fret),
  );
}

describe('POSITION-1: round a root on string 2 at fret f', () => {
  // Source: common practice; the minor pentatonic also computed.
  test.each<[ScaleId, number, number[][]]>([
    [
      'major-pentatonic',
      2,
      [
        [-1, 2],
        [-1, 2],
        [-1, 1],
        [-1, 1],
        [0, 2],
        [-1, 2],
      ],
    ],
    [
      'minor-pentatonic',
      1,
      [
        [0, 2],
        [0, 2],
        [0, 2],
        [-1, 2],
        [0, 3],
        [0, 2],
      ],
    ],
    [
      'major',
      2,
      [
        [-1, 0, 2],
        [-1, 1, 2],
        [-1, 1, 2],
        [-1, 1],
        [-1, 0, 2],
        [-1, 0, 2],
      ],
    ],
    [
      'natural-minor',
      1,
      [
        [0, 2, 3],
        [0, 2],
        [-1, 0, 2],
        [-1, 0, 2],
        [0, 2, 3],
        [0, 2, 3],
      ],
    ],
  ])('%s with finger %i on it', (scale, finger, expected) => {
    expect(byString(scale, finger)).toEqual(expected.map((frets) => frets.map((fret) => f + fret)));
  });
});

describe('POSITION-1…3: every scale, letter, string, fret and finger against the definition', () => {
  const cases = scaleIds.map((scale) => [scale] as const);

  test.each(cases)('%s', (scale) => {
    for (const letter of letters)
      for (let string = 1; string <= 6; string += 1)
        for (let fret = 0; fret <= 19; fret += 1)
          for (const finger of [1, 2, 3, 4]) {
            const root: NoteName = { letter, alteration: 0 };
            const rootClass = pitchClassOf(root);
            const open = openMidi[string - 1] ?? 0;
            if ((open + fret) % 12 !== rootClass) continue;
            const position = positionAt(standardGuitar, root, scale, place(string, fret), finger);
            const low = fret - finger + 1;
            const high = low + 3;
            expect(position !== undefined).toBe(low >= 1 && high <= 19);
            if (!position) continue;
            const inScale = (midi: number) =>
              semitones[scale].includes((((midi - rootClass) % 12) + 12) % 12);
            const hand = [low, low + 1, low + 2, high];
            const wanted = (s: number) => hand.map((one) => (openMidi[s - 1] ?? 0) + one).filter(inScale);
            const lowest = Math.min(...wanted(6));
            const highest = Math.max(...wanted(1));
            const required = Array.from({ length: highest - lowest + 1 }, (_, i) => lowest + i).filter(
              inScale,
            );
            expect(position.notes.map((note) => midiAt(standardGuitar, note.place))).toEqual(required);
            const accepted = [1, 2, 3, 4, 5, 6].flatMap((s) =>
              [low - 1, ...hand, high + 1]
                .filter((one) => one >= 0 && one <= 19 && required.includes((openMidi[s - 1] ?? 0) + one))
                .map((one) => place(s, one)),
            );
            expect(position.accepted).toHaveLength(accepted.length);
            expect(accepted.every((spot) => position.accepted.some((other) => samePlace(other, spot)))).toBe(
              true,
            );
            expect(position.notes.every((note) => accepted.some((spot) => samePlace(spot, note.place)))).toBe(
              true,
            );
          }
  });
});

/** Frets under a hand: one fewer than the usual step between strings, four at least. */
const necks: readonly (readonly [id: string, hand: number, gaps: boolean])[] = [
  ['guitar', 4, false],
  ['guitar-drop-d+capo=2', 4, true],
  ['guitar-open-g', 4, true],
  ['guitar-fourths', 4, false],
  ['guitar-7', 4, false],
  ['bass-4', 4, false],
  ['ukulele', 4, false],
  ['ukulele-low-g', 4, false],
  ['mandolin', 6, false],
  ['tenor-guitar', 6, false],
  ['custom:D4-B3-G3-D3-G4', 4, false],
  ['custom:E4-B3-G3', 4, false],
  ['custom:A4-E4-C4-G3-D3-A2-E2-B1-F#1-C#1', 4, false],
];

describe('POSITION-1, POSITION-2: any instrument', () => {
  test.each(necks)('%s, a hand of %i frets', (id, hand, hasGaps) => {
    const instrument = known(instrumentById(id), id);
    const open = instrument.openStrings.map(midiOf);
    expect(handFrets(instrument)).toBe(hand);
    let gaps = 0;
    for (const scale of scaleIds)
      for (const root of ['C', 'F'] as const) {
        const rootClass = pitchClassOf({ letter: root, alteration: 0 });
        const inScale = (midi: number) => semitones[scale].includes((((midi - rootClass) % 12) + 12) % 12);
        for (const [index, own] of open.entries())
          for (let fret = 0; fret <= instrument.fretCount; fret += 1) {
            if ((own + fret) % 12 !== rootClass) continue;
            const rootPlace = place(index + 1, fret);
            const position = positionAt(instrument, { letter: root, alteration: 0 }, scale, rootPlace, 1);
            expect(position !== undefined).toBe(fret >= 1 && fret + hand - 1 <= instrument.fretCount);
            if (!position) continue;
            const spots = (low: number, high: number) =>
              open.flatMap((midi, at) =>
                Array.from({ length: high - low + 1 }, (_, step) => low + step)
                  .filter((one) => one >= 0 && one <= instrument.fretCount && inScale(midi + one))
                  .map((one) => place(at + 1, one)),
              );
            const midis = (some: readonly Place[]) => some.map((spot) => midiAt(instrument, spot));
            const under = midis(spots(fret, fret + hand - 1));
            const reached = spots(fret - 1, fret + hand);
            const isWanted = (midi: number) => midi >= Math.min(...under) && midi <= Math.max(...under);
            const wanted = [...new Set(midis(reached).filter(isWanted))].sort((a, b) => a - b);
            expect(midis(position.notes.map((note) => note.place))).toEqual(wanted);
            // What no stretch reaches may be played where the hand moves for it.
            const isBeside = (spot: Place) => spot.fret >= fret - 1 && spot.fret <= fret + hand;
            expect(position.accepted).toEqual(
              spots(fret - hand, fret + 2 * hand - 1).filter((spot) => {
                const midi = midiAt(instrument, spot);
                return isWanted(midi) && (isBeside(spot) || !wanted.includes(midi));
              }),
            );
            // Fingers rise with the frets, and the root lies under the index.
            expect(position.notes.every(({ finger }) => finger >= 1 && finger <= 4)).toBe(true);
            expect(position.notes.find((note) => samePlace(note.place, rootPlace))?.finger ?? 1).toBe(1);
            const [first = 0, last = 0] = [wanted[0], wanted.at(-1)];
            const between = Array.from({ length: last - first + 1 }, (_, step) => first + step).filter(
              inScale,
            );
            gaps += between.length - wanted.length;
          }
      }
    // No pitch is skipped unless strings lie further apart than the usual step.
    expect(gaps > 0).toBe(hasGaps);
  });

  test('on a re-entrant ukulele string 3 starts, string 1 ends, and string 4 is as right as string 2 or 1', () => {
    const ukulele = known(instrumentById('ukulele'), 'ukulele');
    const d: NoteName = { letter: 'D', alteration: 0 };
    // Source: computed from the tuning G4 C4 E4 A4: D major with the index on fret 2.
    const position = known(positionAt(ukulele, d, 'major', place(3, 2), 1), 'position');
    expect(position.notes.map(({ place: spot }) => [spot.string, spot.fret])).toEqual([
      [3, 2],
      [3, 4],
      [2, 2],
      [2, 3],
      [2, 5],
      [1, 2],
      [1, 4],
      [1, 5],
    ]);
    for (const fret of [2, 4, 6])
      expect(position.accepted.some((spot) => samePlace(spot, place(4, fret)))).toBe(true);
  });

  test('a mandolin’s hand spans a fifth less a fret: index, middle, ring and little finger on 2, 4, 5 and 7', () => {
    const mandolin = known(instrumentById('mandolin'), 'mandolin');
    const e: NoteName = { letter: 'E', alteration: 0 };
    const position = known(positionAt(mandolin, e, 'natural-minor', place(3, 2), 1), 'position');
    const onString3 = position.notes.filter((note) => note.place.string === 3);
    expect(onString3.map((note) => [note.place.fret, note.finger])).toEqual([
      [2, 1],
      [4, 2],
      [5, 3],
      [7, 4],
    ]);
  });
});
