import { stringNumbers, type StringNumber } from '../theory/fretboard.ts';
import type { Exercise } from './exercise.ts';
import { instrumentOf } from './roots.ts';
import type { KeyNote } from './verdict.ts';

/**
 * The strings that a chord leaves silent, where the exercise says which strings make it: 4, 5 and 6 of a triad on
 * strings 3, 2 and 1.
 */
export function silentIn(exercise: Exercise, key: readonly KeyNote[]): readonly StringNumber[] {
  if (exercise.kind !== 'build' || exercise.voicing.kind === 'any') return [];
  return stringNumbers(instrumentOf(exercise)).filter((string) =>
    key.every(({ place }) => place.string !== string),
  );
}
