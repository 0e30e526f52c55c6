import type { Exercise } from '../../../../shared/exercise/exercise.ts';
import type { Part, PlannedExercise } from '../../../../shared/plans/plan.ts';

/** The teacher takes the made exercises into the plan. */
export class TakeEvent extends Event {
  static readonly kind = 'desk-take';
  readonly exercises: readonly Exercise[];
  /** Where they go. */
  readonly part: Part;
  /** What each becomes a harder level of, in the same order; empty where they stand for themselves. */
  readonly harderFor: readonly PlannedExercise[];
  constructor(
    exercises: readonly Exercise[],
    part: Part = 'new',
    harderFor: readonly PlannedExercise[] = [],
  ) {
    super(TakeEvent.kind);
    this.exercises = exercises;
    this.part = part;
    this.harderFor = harderFor;
  }
}

/** The teacher asks one of them at once. */
export class AskEvent extends Event {
  static readonly kind = 'desk-ask';
  readonly exercise: Exercise;
  constructor(exercise: Exercise) {
    super(AskEvent.kind);
    this.exercise = exercise;
  }
}
