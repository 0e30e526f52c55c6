import type { Exercise } from '../../../../shared/exercise/exercise.ts';

/** The teacher takes the made exercises into the plan. */
export class TakeEvent extends Event {
  static readonly kind = 'desk-take';
  readonly exercises: readonly Exercise[];
  constructor(exercises: readonly Exercise[]) {
    super(TakeEvent.kind);
    this.exercises = exercises;
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
