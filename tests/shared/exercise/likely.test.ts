import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkExercise } from '../../../shared/exercise/check.ts';
import type { Exercise } from '../../../shared/exercise/exercise.ts';
import { judge } from '../../../shared/exercise/judge.ts';
import { isRight } from '../../../shared/exercise/right.ts';
import { likelySlips, separatingExercise, slipsApart } from '../../../shared/exercise/likely.ts';
import type { SlipCause } from '../../../shared/exercise/verdict.ts';
import type { StringNumber } from '../../../shared/theory/fretboard.ts';
import { exercisesFor, note, range } from './making.ts';

const find = (root: string, rootString = 2): Exercise => ({
  kind: 'find',
  instrument: 'guitar',
  root: note(root),
  rootString: rootString as StringNumber,
  strictness: 'string',
  range: null,
});

/** The lowest fret of string 2 on which a cause lands. */
const fretOf = (exercise: Exercise, cause: SlipCause) =>
  Math.min(
    ...likelySlips(exercise)
      .filter((slip) => slip.cause === cause)
      .map(({ places: [spot] }) => spot?.fret ?? NaN),
  );

/** Counted out by hand in standard tuning: the fret of string 6; one less; two for every letter from B on. */
const onString2: readonly (readonly [root: string, lowString: number, nut: number, letters: number])[] = [
  ['C', 8, 0, 2],
  ['D', 10, 2, 4],
  ['E', 0, 4, 6],
  ['F', 1, 5, 8],
  ['G', 3, 7, 10],
  ['A', 5, 9, 12],
];

describe('GENERATE-4: where likely slips land', () => {
  test.each(onString2)('%s on string 2', (root, lowString, nut, letters) => {
    const exercise = find(root);
    expect(fretOf(exercise, 'low-string-map')).toBe(lowString);
    expect(fretOf(exercise, 'nut-as-one')).toBe(nut);
    expect(fretOf(exercise, 'letters-two-frets')).toBe(letters);
  });

  test.each(onString2)(
    'a marked fret beside %s on string 2 meets another slip only for F, G and A',
    (root) => {
      const slips = likelySlips(find(root));
      const marked = slips.filter(({ cause }) => cause === 'mark-drift');
      const meets = marked.some(({ places: [drift] }) =>
        slips.some(
          ({ cause, places: [spot] }) =>
            cause !== 'mark-drift' && spot?.string === 2 && spot.fret === drift?.fret,
        ),
      );
      expect(meets).toBe(['F', 'G', 'A'].includes(root));
      expect(slipsApart(find(root)) < 1).toBe(meets);
    },
  );

  test('no likely slip is a right answer, off the neck, or told twice', () => {
    fc.assert(
      fc.property(fc.constantFrom(...exercisesFor(['C', 'Eb', 'F#'])), (exercise) => {
        if (!checkExercise(exercise).ok) return;
        const slips = likelySlips(exercise);
        for (const { places } of slips) {
          expect(isRight(exercise, { places })).toBe(false);
          for (const { string, fret } of places) {
            expect(string).toBeGreaterThanOrEqual(1);
            expect(string).toBeLessThanOrEqual(6);
            expect(fret).toBeGreaterThanOrEqual(0);
            expect(fret).toBeLessThanOrEqual(19);
          }
        }
        expect(new Set(slips.map((slip) => JSON.stringify(slip))).size).toBe(slips.length);
      }),
      { numRuns: 300, seed: 4 },
    );
  });

  test('a place that is named has a word for an answer, and no slip on the neck', () => {
    const named: Exercise = {
      ...find('C'),
      kind: 'name',
      place: { string: 2, fret: 1 } as never,
      strictness: 'place',
      range: range(1, 1),
      wanted: 'note',
    };
    expect(likelySlips(named)).toEqual([]);
    expect(slipsApart(named)).toBe(1);
    expect(separatingExercise(named, ['low-string-map', 'nut-as-one'])).toBeUndefined();
  });
});

describe('GENERATE-5: the question that tells two causes apart', () => {
  const pairs: readonly (readonly [root: string, causes: readonly [SlipCause, SlipCause]])[] = [
    ['F', ['nut-as-one', 'mark-drift']],
    ['G', ['nut-as-one', 'mark-drift']],
    ['A', ['nut-as-one', 'mark-drift']],
    ['D', ['letters-two-frets', 'nut-as-one']],
    ['E', ['low-string-map', 'letters-two-frets']],
  ];
  test.each(pairs)('after %s on string 2: %s', (root, causes) => {
    const asked = find(root);
    const next = separatingExercise(asked, causes);
    expect(next).toMatchObject({ kind: 'find', rootString: 2, strictness: 'string' });
    if (!next) return;
    expect(next.root).not.toEqual(asked.root);
    expect(checkExercise(next).ok).toBe(true);
    for (const cause of causes) {
      const landed = likelySlips(next).filter((slip) => slip.cause === cause);
      expect(landed.length).toBeGreaterThan(0);
      for (const { places } of landed) expect(judge(next, { places })).toMatchObject({ kind: 'slip', cause });
    }
  });

  test('whatever is unclear gets a question that can be asked and tells, or none', () => {
    const some = exercisesFor(['D', 'Ab']).filter((exercise) => checkExercise(exercise).ok);
    const notes = ['F', 'G', 'A', 'Bb'].map((root) => find(root));
    let separated = 0;
    fc.assert(
      fc.property(fc.oneof(fc.constantFrom(...notes), fc.constantFrom(...some)), (exercise) => {
        for (const { places } of likelySlips(exercise)) {
          const verdict = judge(exercise, { places });
          if (verdict.kind !== 'unclear') continue;
          const next = separatingExercise(exercise, verdict.causes);
          if (!next) continue;
          separated += 1;
          expect(checkExercise(next).ok).toBe(true);
          // Another root on the same string, or the same root on another string.
          expect([next.root, next.rootString]).not.toEqual([exercise.root, exercise.rootString]);
          const moved = { root: null, rootString: null, range: null };
          expect({ ...next, ...moved }).toEqual({ ...exercise, ...moved });
        }
      }),
      { numRuns: 40, seed: 5 },
    );
    expect(separated).toBeGreaterThan(0);
  });
});
