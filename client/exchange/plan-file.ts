import * as v from 'valibot';
import { checkExercise } from '../../shared/exercise/check.ts';
import { levelsOf } from '../../shared/exercise/levels.ts';
import { failure, success, type Result } from '../../shared/lib/result.ts';
import type { PlanContent, PlannedExercise } from '../../shared/plans/plan.ts';
import { mostPlanned, mostPoints, planSchema, plannedSchema } from '../../shared/protocol/plans.ts';

/** The version that is written; one that a newer Rootcall writes is refused. */
const version = 1;
const { id: _id, ...plannedEntries } = plannedSchema.entries;
const exerciseFileSchema = v.strictObject(plannedEntries);
const { title, aim, points } = planSchema.entries;
const head = { rootcall: v.literal('plan'), version: v.literal(version), title, aim, points };

/** A plan as a file; `docs/plan.schema.json` is made from it. */
export const planFileSchema: v.GenericSchema = v.strictObject({
  ...head,
  exercises: v.pipe(v.array(exerciseFileSchema), v.maxLength(mostPlanned)),
});
/** Exercises are looked at one by one, so that one that can't be read doesn't keep the others out. */
const headSchema = v.strictObject({ ...head, exercises: v.array(v.unknown()) });

/** An exercise of a plan before it has an id. */
export type ReadExercise = Omit<PlannedExercise, 'id'>;

/** What of a file becomes a plan, and what doesn't, by its number in the file. */
export interface ReadPlan extends Omit<PlanContent, 'exercises'> {
  readonly exercises: readonly ReadExercise[];
  readonly refused: readonly { readonly number: number; readonly reason: string }[];
}

/** The plan as a file, without the ids by which its own server knows its exercises. */
export function planFileOf({ title, aim, points, exercises }: PlanContent): string {
  const own = exercises.map(({ part, exercise, harder, seconds }) => ({ part, exercise, harder, seconds }));
  return `${JSON.stringify({ rootcall: 'plan', version, title, aim, points, exercises: own }, null, 2)}\n`;
}

/** Reads a plan's file; the failure says why none of it can be taken. */
export function readPlanFile(text: string): Result<ReadPlan, string> {
  const parsed = parse(text);
  if (parsed === undefined) return failure('This file is no JSON, or it was cut off.');
  const known = whatItIs(parsed);
  if (known !== undefined) return failure(known);
  const read = v.safeParse(headSchema, parsed);
  if (!read.success) return failure(sentenceFor(read.issues[0]));
  const { title, aim, points, exercises } = read.output;
  if (exercises.length > mostPlanned)
    return failure(
      `A plan has room for ${most(mostPlanned)} exercises; this one has ${most(exercises.length)}.`,
    );
  const taken: ReadExercise[] = [];
  const refused: ReadPlan['refused'][number][] = [];
  for (const [index, one] of exercises.entries()) {
    const checked = exerciseIn(one);
    if (checked.ok) taken.push(checked.value);
    else refused.push({ number: index + 1, reason: checked.error });
  }
  return success({ title, aim, points, exercises: taken, refused });
}

function parse(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return undefined;
  }
}

function whatItIs(parsed: unknown): string | undefined {
  const file = typeof parsed === 'object' && parsed !== null ? parsed : {};
  if (!('rootcall' in file) || file.rootcall !== 'plan') return 'This file is no plan of Rootcall.';
  const own: unknown = 'version' in file ? file.version : undefined;
  if (typeof own === 'number' && own > version)
    return 'This plan was made by a newer Rootcall. Bring this one up to date, then take it.';
  if (own !== version) return 'This plan doesn’t say a version that is known here.';
  return hasInheritedName(parsed) ? 'This file has names in it that no plan has.' : undefined;
}

/**
 * Whether a key is one that every object has anyway, like `__proto__`. Such a key would be taken for one that is known;
 * no plan has one. Without recursion, for a file may be nested deep.
 */
function hasInheritedName(parsed: unknown): boolean {
  const left: unknown[] = [parsed];
  while (left.length > 0) {
    const one = left.pop();
    if (typeof one !== 'object' || one === null) continue;
    for (const [key, value] of Object.entries(one)) {
      if (key in Object.prototype) return true;
      left.push(value);
    }
  }
  return false;
}

function exerciseIn(one: unknown): Result<ReadExercise, string> {
  const read = v.safeParse(exerciseFileSchema, one);
  if (!read.success) {
    const [{ path }] = read.issues;
    const where = path?.map(({ key }) => String(key)).join('.');
    return failure(where ? `This can’t be read: ${where.slice(0, 60)}.` : 'This is no exercise.');
  }
  for (const exercise of levelsOf(read.output)) {
    const checked = checkExercise(exercise);
    if (!checked.ok) return checked;
  }
  return success(read.output);
}

const words: Readonly<Record<string, string>> = {
  title: 'The title has room for 80 letters and needs one.',
  aim: 'The aim has room for 300 letters.',
  points: `A plan has room for ${most(mostPoints)} things to say, each of up to 300 letters.`,
  exercises: 'The exercises are no list.',
};

function sentenceFor({ path }: v.BaseIssue<unknown>): string {
  const key = String(path?.[0]?.key ?? '');
  return words[key] ?? `A plan has nothing called “${key.slice(0, 40)}”.`;
}

function most(count: number): string {
  return String(count);
}
