import type { Answer } from './answer.ts';
import type { Exercise } from './exercise.ts';
import { inversionOf, isRight } from './right.ts';
import { slipIn } from './slips.ts';
import type { Verdict } from './verdict.ts';

/** What the answer is worth; the law on fairness is SPEC JUDGE. The exercise has passed `checkExercise`. */
export function judge(exercise: Exercise, answer: Answer): Verdict {
  if (!isRight(exercise, answer)) return slipIn(exercise, answer);
  const inversion = exercise.kind === 'build' ? inversionOf(exercise, answer.places) : undefined;
  return inversion === undefined ? { kind: 'right' } : { kind: 'right', inversion };
}
