import { checkExercise } from '../../../shared/exercise/check.ts';
import type { Exercise } from '../../../shared/exercise/exercise.ts';
import { exercisesFor, roots } from './making.ts';

/**
 * What slips are made of: every kind for one root, and the notes to find for all. Augmented triads are left out: moved
 * by any rule they are augmented triads again, and so right or another cause's.
 */
export const walked: readonly Exercise[] = [
  ...exercisesFor(['Eb']),
  ...exercisesFor(
    roots.filter((name) => name !== 'Eb'),
    [],
    [],
  ).filter((exercise) => exercise.kind === 'find'),
].filter(
  (exercise) => checkExercise(exercise).ok && !(exercise.kind === 'build' && exercise.quality === 'aug'),
);
