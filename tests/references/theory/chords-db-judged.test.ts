import { expect, test } from 'vitest';
import type { BuildExercise } from '../../../shared/exercise/exercise.ts';
import { isRight } from '../../../shared/exercise/right.ts';
import type { StringNumber } from '../../../shared/theory/fretboard.ts';
import { positions, reasons } from './chords-db-positions.ts';

// Source: chords-db 0.5.1 (MIT, © 2016 David Rubert), the same positions as `chords-db.test.ts`, asked as exercises.
test('CHORD: every published position is judged right, but for the errors of the table', () => {
  const astray = positions
    .filter(({ name, chord: { root, quality, bass }, places }) => {
      const exercise: BuildExercise = {
        kind: 'build',
        instrument: 'guitar',
        root,
        rootString: 2 as StringNumber,
        strictness: 'anywhere',
        range: null,
        quality,
        voicing: { kind: 'any' },
        ...(bass ? { bass } : {}),
      };
      return isRight(exercise, { places }) === reasons.has(name);
    })
    .map(({ name }) => name);
  expect(astray).toEqual([]);
  expect(positions).toHaveLength(2069);
});
