import { describe, expect, test } from 'vitest';
import { known } from '../../../shared/lib/assert.ts';
import { midiAt, place, samePlace, standardGuitar } from '../../../shared/theory/fretboard.ts';
import { pitchClassOf, letters, type NoteName } from '../../../shared/theory/pitch.ts';
import { positionAt } from '../../../shared/theory/position.ts';
import { scaleTable, type ScaleId } from '../../../shared/theory/tables/scales.ts';

const f = 7;
const fSharp: NoteName = { letter: 'F', alteration: 1 };
const openMidi = [64, 59, 55, 50, 45, 40];
const semitones: Record<ScaleId, readonly number[]> = {
  major: [0, 2, 4, 5, 7, 9, 11],
  'natural-minor': [0, 2, 3, 5, 7, 8, 10],
  'major-pentatonic': [0, 2, 4, 7, 9],
  'minor-pentatonic': [0, 3, 5, 7, 10],
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
  const cases = (Object.keys(scaleTable) as ScaleId[]).map((scale) => [scale] as const);

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
            expect(position !== undefined).toBe(low >= 0 && high <= 19);
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
