import type { Exercise } from '../../../shared/exercise/exercise.ts';
import type { Part, PlanContent, PlannedExercise } from '../../../shared/plans/plan.ts';
import { randomId } from '../../lib/random-id.ts';

/** An exercise as a plan takes it, at one level. */
export function planned(
  exercise: Exercise,
  { seconds = null, part = 'new' }: { readonly seconds?: number | null; readonly part?: Part } = {},
): PlannedExercise {
  return { id: randomId(), part, exercise, harder: [], seconds };
}

/** A plan with nothing in it. */
export function emptyPlan(title: string): PlanContent {
  return { title, aim: '', points: [], exercises: [] };
}
