import type { PlanEdit } from '../../../../shared/plans/edit.ts';

/** What was done at once, and can be undone at once. */
export interface Step {
  /** What it does: "take out Find D". */
  readonly words: string;
  readonly edits: readonly PlanEdit[];
  /** Worked out anew where the step is made again on another plan. */
  inverse: readonly PlanEdit[];
}

/** Steps to undo, and steps undone. */
export class Steps {
  #done: Step[] = [];
  #undone: Step[] = [];

  get undoes(): string | null {
    return this.#done.at(-1)?.words ?? null;
  }
  get redoes(): string | null {
    return this.#undone.at(-1)?.words ?? null;
  }

  /** A new step; what was undone before it can't be redone any more. */
  add(step: Step): void {
    this.#undone = [];
    this.#done.push(step);
  }
  addAgain(step: Step): void {
    this.#done.push(step);
  }
  addUndone(step: Step): void {
    this.#undone.push(step);
  }
  takeBack(): Step | undefined {
    return this.#done.pop();
  }
  takeUndone(): Step | undefined {
    return this.#undone.pop();
  }
  /** Steps that came to nothing. */
  drop(steps: readonly Step[]): void {
    this.#done = this.#done.filter((step) => !steps.includes(step));
    this.#undone = this.#undone.filter((step) => !steps.includes(step));
  }
}
