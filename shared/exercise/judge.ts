import type { Answer } from './answer.ts';
import type { Exercise } from './exercise.ts';
import { judgeHeard } from './judge-heard.ts';
import { inversionOf, isRight } from './right.ts';
import { slipIn } from './slips.ts';
import type { Verdict } from './verdict.ts';

/**
 * What the answer is worth; the law on fairness is SPEC JUDGE. The exercise has passed `checkExercise`. Where the teacher
 * has marked it, that is the verdict (SPEC ANSWER-6). What was played and heard is judged by SPEC HEARD.
 */
export function judge(exercise: Exercise, answer: Answer): Verdict {
  if (answer.teacherSays === 'right') return { kind: 'right' };
  if (answer.teacherSays === 'not-yet') return { kind: 'unnamed', marks: [], missing: [] };
  if (answer.heard) return judgeHeard(exercise, answer, answer.heard);
  if (!isRight(exercise, answer)) return slipIn(exercise, answer);
  const inversion = exercise.kind === 'build' ? inversionOf(exercise, answer.places) : undefined;
  return inversion === undefined ? { kind: 'right' } : { kind: 'right', inversion };
}
