import { mostHarder } from '../exercise/levels.ts';
import { failure, success, type Result } from '../lib/result.ts';
import { parts, type Part, type PlanContent, type PlannedExercise } from './plan.ts';

/**
 * One change of a plan. It names exercises by id, so that it can be made again on a plan that another Desk changed
 * meanwhile. `before` is an exercise of the same part; null, or one that is not there, means the part's end.
 */
export type PlanEdit =
  | { readonly kind: 'insert'; readonly planned: PlannedExercise; readonly before: string | null }
  | { readonly kind: 'duplicate'; readonly id: string; readonly newId: string }
  | { readonly kind: 'remove'; readonly id: string }
  | { readonly kind: 'change'; readonly id: string; readonly to: Partial<Asked> }
  | { readonly kind: 'move'; readonly id: string; readonly part: Part; readonly before: string | null }
  | { readonly kind: 'write'; readonly to: Partial<Head> }
  /** Changes nothing: what restores a plan that an edit found as it wanted it. */
  | { readonly kind: 'leave' };

/** What of a planned exercise can be changed where it stands. */
type Asked = Pick<PlannedExercise, 'exercise' | 'harder' | 'seconds'>;
/** What is written over the exercises. */
type Head = Pick<PlanContent, 'title' | 'aim' | 'points'>;

/** A changed plan, and the edit that restores it as it was. */
export interface Edited {
  readonly plan: PlanContent;
  readonly inverse: PlanEdit;
}

/**
 * The plan with one edit made, or a sentence why it can't be; the plan must be in the order of its parts
 * (`inPartOrder`). What is there already, or gone already, is left: `applyEdit(plan, { kind: 'remove', id })`.
 */
export function applyEdit(plan: PlanContent, edit: PlanEdit): Result<Edited, string> {
  switch (edit.kind) {
    case 'leave':
      return left(plan);
    case 'insert':
      if (plan.exercises.some(({ id }) => id === edit.planned.id)) return left(plan);
      return success({
        plan: { ...plan, exercises: inserted(plan.exercises, edit.planned, edit.before) },
        inverse: { kind: 'remove', id: edit.planned.id },
      });
    case 'remove': {
      const index = plan.exercises.findIndex(({ id }) => id === edit.id);
      const own = plan.exercises[index];
      if (!own) return left(plan);
      return success({
        plan: { ...plan, exercises: plan.exercises.filter((one) => one !== own) },
        inverse: { kind: 'insert', planned: own, before: nextInPart(plan.exercises, index) },
      });
    }
    case 'write':
      if (edit.to.title?.trim() === '') return failure('A plan needs a title.');
      return success({
        plan: { ...plan, ...edit.to },
        inverse: { kind: 'write', to: valuesNow(plan, edit.to) },
      });
    default:
      return applyToOne(plan, edit);
  }
}

/** The edits of an exercise that must be there. */
function applyToOne(
  plan: PlanContent,
  edit: Extract<PlanEdit, { kind: 'duplicate' | 'change' | 'move' }>,
): Result<Edited, string> {
  const { exercises } = plan;
  const index = exercises.findIndex(({ id }) => id === edit.id);
  const own = exercises[index];
  if (!own) return failure('The exercise is not in the plan any more.');
  const before = nextInPart(exercises, index);
  switch (edit.kind) {
    case 'duplicate':
      return applyEdit(plan, { kind: 'insert', planned: { ...own, id: edit.newId }, before });
    case 'change':
      if ((edit.to.harder?.length ?? 0) > mostHarder) return failure('Three levels are the most.');
      return success({
        plan: { ...plan, exercises: exercises.map((one) => (one === own ? { ...own, ...edit.to } : one)) },
        inverse: { kind: 'change', id: own.id, to: valuesNow(own, edit.to) },
      });
    case 'move': {
      const others = exercises.filter((one) => one !== own);
      const moved = edit.part === own.part ? own : { ...own, part: edit.part };
      const target = edit.before === own.id ? before : edit.before;
      return success({
        plan: { ...plan, exercises: inserted(others, moved, target) },
        inverse: { kind: 'move', id: own.id, part: own.part, before },
      });
    }
  }
}

/** Several edits made one after another: what came of them, how to restore it, and why some were not made. */
export interface EditedOften {
  readonly plan: PlanContent;
  /** In the order in which they have to be made. */
  readonly inverse: readonly PlanEdit[];
  readonly refused: readonly string[];
}

/** Makes the edits that can be made: `applyEdits(plan, []).plan` is the plan. */
export function applyEdits(plan: PlanContent, edits: readonly PlanEdit[]): EditedOften {
  let now = plan;
  const inverse: PlanEdit[] = [];
  const refused = new Set<string>();
  for (const edit of edits) {
    const applied = applyEdit(now, edit);
    if (applied.ok) {
      now = applied.value.plan;
      inverse.unshift(applied.value.inverse);
    } else refused.add(applied.error);
  }
  return { plan: now, inverse, refused: [...refused] };
}

/** Exercises part by part, otherwise in their order: `inPartOrder([check, warmUp])` is `[warmUp, check]`. */
export function inPartOrder<T extends { readonly part: Part }>(exercises: readonly T[]): readonly T[] {
  return [...exercises].sort((a, b) => parts.indexOf(a.part) - parts.indexOf(b.part));
}

/** One place up (−1) or down (1), over into the next part at a part's edge; null at the end of the plan. */
export function stepOf(
  exercises: readonly PlannedExercise[],
  id: string,
  by: -1 | 1,
): Extract<PlanEdit, { kind: 'move' }> | null {
  const index = exercises.findIndex((one) => one.id === id);
  const own = exercises[index];
  if (!own) return null;
  const neighbour = exercises[index + by];
  if (neighbour?.part === own.part) {
    const before = by === -1 ? neighbour.id : nextInPart(exercises, index + 1);
    return { kind: 'move', id, part: own.part, before };
  }
  const part = parts[parts.indexOf(own.part) + by];
  if (!part) return null;
  const first = exercises.find((one) => one.part === part);
  return { kind: 'move', id, part, before: by === 1 ? (first?.id ?? null) : null };
}

function left(plan: PlanContent): Result<Edited, string> {
  return success({ plan, inverse: { kind: 'leave' } });
}

/** What the fields that an edit changes hold before it. */
function valuesNow<T extends object>(holder: T, to: Partial<T>): Partial<T> {
  return Object.fromEntries(Object.keys(to).map((key) => [key, holder[key as keyof T]])) as Partial<T>;
}

function nextInPart(exercises: readonly PlannedExercise[], index: number): string | null {
  const next = exercises[index + 1];
  return next && next.part === exercises[index]?.part ? next.id : null;
}

function inserted(
  exercises: readonly PlannedExercise[],
  planned: PlannedExercise,
  before: string | null,
): readonly PlannedExercise[] {
  const { part } = planned;
  const target = exercises.findIndex((one) => one.id === before && one.part === part);
  const later = exercises.findIndex((one) => parts.indexOf(one.part) > parts.indexOf(part));
  const at = target >= 0 ? target : later >= 0 ? later : exercises.length;
  return [...exercises.slice(0, at), planned, ...exercises.slice(at)];
}
