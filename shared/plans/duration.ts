import type { PlannedExercise } from './plan.ts';

/** Seconds that an exercise takes where the teacher holds when it is time. */
const unhurried = 90;
/** Seconds for reading, the reveal and the talk about it. */
const around = 90;

/** What asking these takes with the talking between them, in minutes, at least 1: 3 for one without a time limit. */
export function minutesOf(exercises: readonly Pick<PlannedExercise, 'seconds'>[]): number {
  const seconds = exercises.reduce((sum, one) => sum + (one.seconds ?? unhurried) + around, 0);
  return Math.max(1, Math.round(seconds / 60));
}
