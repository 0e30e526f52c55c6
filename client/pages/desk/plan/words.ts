import { wordingOf } from '../../../../shared/exercise/wording.ts';
import type { Part, PlannedExercise } from '../../../../shared/plans/plan.ts';
import { minutesOf } from '../../../../shared/plans/duration.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';

/** The parts of a lesson as the Desk reads them. */
export const partWords: Readonly<Record<Part, string>> = {
  'warm-up': 'Warm-up',
  new: 'New',
  check: 'Check',
};

/** What a planned exercise asks, in a few words: "Build E minor". */
export function titleOf({ exercise }: Pick<PlannedExercise, 'exercise'>, naming: NoteNaming): string {
  return wordingOf(exercise, naming).title;
}

/** "5 exercises, about 13 minutes"; where there are none, that. */
export function lengthWords(exercises: readonly PlannedExercise[]): string {
  const { length } = exercises;
  if (length === 0) return 'no exercises yet';
  const minutes = minutesOf(exercises);
  return `${String(length)} ${length === 1 ? 'exercise' : 'exercises'}, about ${String(minutes)} minutes`;
}

/** "Now number 3 of 12, under Check." */
export function standsAt(exercises: readonly PlannedExercise[], id: string): string {
  const index = exercises.findIndex((one) => one.id === id);
  const own = exercises[index];
  return own
    ? `Now number ${String(index + 1)} of ${String(exercises.length)}, under ${partWords[own.part]}.`
    : '';
}
