import type { Part } from './plan.ts';
import type { Exercise } from '../exercise/exercise.ts';

/** One exercise of a ready plan; `seconds` is null where the teacher holds when it is time. */
export interface ReadyExercise {
  readonly part: Part;
  readonly exercise: Exercise;
  readonly seconds: number | null;
}

/**
 * A lesson to take as it is or to change, made for the six-string guitar in standard tuning. In the sentences a note
 * stands in braces, `{Bb}`, so that each reader gets their own name for it.
 */
export interface ReadyPlan {
  readonly id: string;
  readonly title: string;
  readonly aim: string;
  /** What the exercises take with the talking between them. */
  readonly minutes: number;
  readonly exercises: readonly ReadyExercise[];
  /** What a teacher may say. */
  readonly points: readonly string[];
}
