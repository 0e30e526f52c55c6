import type { DeskView } from '../../../../shared/protocol/views.ts';
import type { Step } from './steps.ts';

/** A step that was answered, but whose view doesn't show it after this long, is over all the same; in milliseconds. */
const viewWithin = 1500;

/**
 * One step at a time. A letter that is pressed while a step is under way waits for the view that the step leads to,
 * and then acts on that. A second press of the same key, or of the pedal, belongs to the first: it is dropped.
 */
export class StepLine {
  #underWay: { readonly step: Step | 'back'; readonly before: string; repliedAt: number | null } | null =
    null;
  #waiting: Step | null = null;

  isFree(now: number): boolean {
    const repliedAt = this.#underWay?.repliedAt ?? null;
    if (repliedAt !== null && now - repliedAt > viewWithin) this.#clear();
    return this.#underWay === null;
  }

  start(step: Step | 'back', view: DeskView): void {
    this.#underWay = { step, before: standOf(view), repliedAt: null };
  }

  /** Another key while a step is under way: the last one pressed is the one that is meant. */
  wait(step: Step): void {
    if (this.#underWay && this.#underWay.step !== step) this.#waiting = step;
  }

  /** The server's answer. After a refusal nothing is as it was thought to be, so nothing waits any longer. */
  replied(ok: boolean, now: number): void {
    if (!ok) this.#clear();
    else if (this.#underWay) this.#underWay.repliedAt = now;
  }

  /** The step that may act now, once the newest view shows what the last one did. */
  next(view: DeskView): Step | null {
    const line = this.#underWay;
    if (!line || line.repliedAt === null || standOf(view) === line.before) return null;
    const step = this.#waiting;
    this.#clear();
    return step;
  }

  #clear(): void {
    this.#underWay = null;
    this.#waiting = null;
  }
}

/** All that a step can change, and that answers coming in don't. */
function standOf({ stage, cursor, closed, rounds }: DeskView): string {
  return JSON.stringify([stage, cursor, closed, rounds.map(({ id, phase, voided }) => [id, phase, voided])]);
}
