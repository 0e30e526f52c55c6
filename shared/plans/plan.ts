import type { Levelled } from '../exercise/levels.ts';

/** Where an exercise stands in its lesson. */
export type Part = 'warm-up' | 'new' | 'check';

/** In the order in which a lesson takes them. */
export const parts: readonly Part[] = ['warm-up', 'new', 'check'];

/** An exercise of a plan, at one level or side by side at several. */
export interface PlannedExercise extends Levelled {
  /** Tells it from the others of its plan, wherever it is moved. */
  readonly id: string;
  readonly part: Part;
  /** Null where the teacher holds when it is time. */
  readonly seconds: number | null;
}

/** What a plan holds: exercises in the order in which they are to be asked, and what its teacher wants to remember. */
export interface PlanContent {
  readonly title: string;
  /** What the students can do afterwards, in a sentence; may be empty. */
  readonly aim: string;
  /** What the teacher may say. */
  readonly points: readonly string[];
  readonly exercises: readonly PlannedExercise[];
}
