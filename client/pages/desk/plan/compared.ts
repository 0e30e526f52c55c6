import type { PlanContent, PlannedExercise } from '../../../../shared/plans/plan.ts';
import type { PlanEdit } from '../../../../shared/plans/edit.ts';

/** What a plan holds, without what the server says of it. */
export function contentOf({ title, aim, points, exercises }: PlanContent): PlanContent {
  return { title, aim, points, exercises };
}

/** Whether both hold the same, in whichever order the server wrote the fields. */
export function sameContent(one: PlanContent, other: PlanContent): boolean {
  return text(contentOf(one)) === text(contentOf(other));
}

/** The plan with the exercises of `before` wherever they are the same: what is drawn of them stays as it is. */
export function keepingSame(plan: PlanContent, before: PlanContent): PlanContent {
  const drawn = new Map(before.exercises.map((one) => [one.id, one]));
  const exercises = plan.exercises.map((one) => {
    const own = drawn.get(one.id);
    return own && text(own) === text(one) ? own : one;
  });
  return { ...plan, exercises };
}

/** Whether another Desk changed the very thing that one of these edits changes. */
export function clashesOf(edits: readonly PlanEdit[], before: PlanContent, newest: PlanContent): boolean {
  return edits.some((edit) => {
    switch (edit.kind) {
      case 'write':
        return keysOf(edit.to).some((key) => differs(before[key], newest[key], edit.to[key]));
      case 'change': {
        const [was, is] = [before, newest].map((plan) => exerciseIn(plan, edit.id));
        return !!was && !!is && keysOf(edit.to).some((key) => differs(was[key], is[key], edit.to[key]));
      }
      case 'remove': {
        const [was, is] = [before, newest].map((plan) => exerciseIn(plan, edit.id));
        return !!was && !!is && text(was) !== text(is);
      }
      default:
        return false;
    }
  });
}

function exerciseIn({ exercises }: PlanContent, id: string): PlannedExercise | undefined {
  return exercises.find((one) => one.id === id);
}

/** Changed there, and to something else than here. */
function differs(was: unknown, is: unknown, own: unknown): boolean {
  return text(was) !== text(is) && text(is) !== text(own);
}

function keysOf<T extends object>(object: T): readonly (keyof T)[] {
  return Object.keys(object) as (keyof T)[];
}

/** JSON with the fields in one order. */
function text(value: unknown): string {
  return JSON.stringify(value, (_, part: unknown) =>
    typeof part === 'object' && part !== null && !Array.isArray(part)
      ? Object.fromEntries(Object.entries(part).sort(([a], [b]) => (a < b ? -1 : 1)))
      : part,
  );
}
