import type { DeskView } from '../../../../shared/protocol/views.ts';
import type { Step } from './steps.ts';

/** A step that was answered, but whose view doesn't show it after this long, is over all the same; in milliseconds. */
const viewWithin = 1500;

/**
 * One step at a time. Letters that are pressed while a step is under way wait in their order, each for the view that
 * the step before it leads to. A second press of the same key, or of the pedal, belongs to the first: it is dropped.
 */
export class StepLine {
  #underWay: { readonly step: Step | 'back'; readonly before: string; repliedAt: number | null } | null =
    null;
  #waiting: readonly Step[] = [];

  isFree(now: number): boolean {
    const repliedAt = this.#underWay?.repliedAt ?? null;
    if (repliedAt !== null && now - repliedAt > viewWithin) this.#clear();
    return this.#underWay === null;
  }

  start(step: Step | 'back', view: DeskView): void {
    this.#underWay = { step, before: standOf(view), repliedAt: null };
  }

  wait(step: Step): void {
    const last = this.#waiting.at(-1) ?? this.#underWay?.step;
    if (last !== step) this.#waiting = [...this.#waiting, step];
  }

  /** The server's answer. After a refusal nothing is as it was thought to be, so nothing waits any longer. */
  replied(ok: boolean, now: number): void {
    if (!ok) this.#clear();
    else if (this.#underWay) this.#underWay.repliedAt = now;
  }

  /** The step that may act now, once the newest view shows what the last one did. */
  next(view: DeskView): Step | null {
    const line = this.#underWay;
    if (line && (line.repliedAt === null || standOf(view) === line.before)) return null;
    const [step = null, ...later] = this.#waiting;
    this.#underWay = null;
    this.#waiting = later;
    return step;
  }

  #clear(): void {
    this.#underWay = null;
    this.#waiting = [];
  }
}

/** All that a step can change, and that answers coming in don't. */
function standOf({ stage, cursor, closed, show, rounds }: DeskView): string {
  return JSON.stringify([
    stage,
    cursor,
    closed,
    show,
    rounds.map(({ id, phase, voided }) => [id, phase, voided]),
  ]);
}
