import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { planFileOf, readPlanFile } from '../../../client/exchange/plan-file.ts';
import type { PlanContent, PlannedExercise } from '../../../shared/plans/plan.ts';
import { course } from '../../../shared/plans/course.ts';
import { pointsOf } from '../../../shared/plans/words.ts';
import { exerciseOn, instrumentIds } from '../../shared/exercise/arbitraries.ts';
import { build, find } from '../../support/exercises.ts';

const published = 'docs/plan.schema.json';
const fits = new Ajv2020({ strict: false }).compile(
  JSON.parse(readFileSync(published, 'utf8')) as Record<string, unknown>,
);

const ready: readonly PlanContent[] = course.map((plan) => ({
  title: plan.title,
  aim: plan.aim,
  points: pointsOf(plan, 'english'),
  exercises: plan.exercises.map((one, index) => ({ ...one, harder: [], id: String(index) })),
}));

/** Some of them can’t be asked. */
const anyExercise = exerciseOn(instrumentIds);
const anyPlan: fc.Arbitrary<PlanContent> = fc.record({
  title: fc.stringMatching(/^[\w<>&"' ]{0,60}x$/).map((text) => text.trim()),
  aim: fc.constantFrom('', 'Find every root on string 2.'),
  points: fc.array(fc.constantFrom('Fret 5 of string 2 is E.', '</script>'), { maxLength: 3 }),
  exercises: fc.array(
    fc.record<PlannedExercise>({
      id: fc.constant('a'),
      part: fc.constantFrom('warm-up', 'new', 'check'),
      exercise: anyExercise,
      harder: fc.array(anyExercise, { maxLength: 2 }),
      seconds: fc.constantFrom(null, 5, 3600),
    }),
    { maxLength: 5 },
  ),
});

/** What a plan says without the ids of its server. */
function contentOf({ title, aim, points, exercises }: PlanContent) {
  const own = exercises.map(({ part, exercise, harder, seconds }) => ({ part, exercise, harder, seconds }));
  return { title: title.replace(/\s+/g, ' '), aim, points, exercises: own };
}

function fileOf(fields: Record<string, unknown>): string {
  return JSON.stringify({ rootcall: 'plan', version: 1, title: 'Strings', exercises: [], ...fields });
}

const one = { exercise: find('D'), seconds: null };

describe('EXCHANGE-3: a plan as a file', () => {
  test('the published schema is the one that plans are read by', () => {
    const folder = mkdtempSync(join(tmpdir(), 'plan-schema-'));
    const made = join(folder, 'made.json');
    execFileSync(process.execPath, ['scripts/plan-schema.mjs', made]);
    expect(readFileSync(made, 'utf8')).toBe(readFileSync(published, 'utf8'));
    rmSync(folder, { recursive: true });
  });

  test('the whole course fits the schema, and comes back as it was', () => {
    for (const plan of ready) {
      const file = planFileOf(plan);
      expect(fits(JSON.parse(file))).toBe(true);
      expect(readPlanFile(file)).toEqual({ ok: true, value: { ...contentOf(plan), refused: [] } });
    }
  });

  test('so does any plan', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const file = planFileOf(plan);
        expect(fits(JSON.parse(file))).toBe(true);
        const read = readPlanFile(file);
        // What can't be asked is told by its number, and nothing else is lost.
        const count = read.ok ? read.value.exercises.length + read.value.refused.length : -1;
        expect(count).toBe(plan.exercises.length);
        if (read.ok && read.value.refused.length === 0)
          expect(read.value).toEqual({ ...contentOf(plan), refused: [] });
      }),
      { numRuns: 60 },
    );
  });

  test('what the schema refuses is not taken', () => {
    const anyJson = fc.jsonValue({ maxDepth: 2 });
    const spoilt = fc
      .tuple(
        anyPlan,
        fc.array(fc.nat(8), { minLength: 1, maxLength: 6 }),
        anyJson,
        fc.constantFrom('x', '__proto__', 'constructor'),
      )
      .map(([plan, path, value, key]) => spoil(planFileOf(plan), path, value, key));
    let refusals = 0;
    fc.assert(
      fc.property(spoilt, (file) => {
        if (fits(JSON.parse(file))) return;
        refusals += 1;
        const read = readPlanFile(file);
        expect(!read.ok || read.value.refused.length > 0).toBe(true);
      }),
      { numRuns: 400 },
    );
    expect(refusals).toBeGreaterThan(100);
  });
});

/** Puts a value, or a key that doesn't belong, somewhere into a file. */
function spoil(file: string, path: readonly number[], value: unknown, key: string): string {
  const parsed = JSON.parse(file) as Record<string, unknown>;
  let at: Record<string, unknown> = parsed;
  for (const step of path.slice(1)) {
    const inner = Object.values(at).filter((one) => typeof one === 'object' && one !== null);
    if (inner.length === 0) break;
    at = inner[step % inner.length] as Record<string, unknown>;
  }
  const keys = Object.keys(at);
  const own = keys[(path[0] ?? 0) % (keys.length + 1)];
  if (own === undefined) {
    const added = JSON.stringify({ [key]: value });
    Object.defineProperty(at, key, { value: added, enumerable: true, configurable: true });
  } else at[own] = value;
  return JSON.stringify(parsed);
}

describe('EXCHANGE-4: what can’t be taken is told, and nothing else of it', () => {
  const whole: readonly (readonly [string, string, RegExp])[] = [
    ['no JSON', '{"rootcall": "plan"', /no JSON/],
    ['cut to pieces', '['.repeat(100_000), /no JSON/],
    ['another file', '{"name":"something"}', /no plan/],
    ['a list', '[]', /no plan/],
    ['null', 'null', /no plan/],
    ['a newer version', fileOf({ version: 2 }), /newer Rootcall/],
    ['an unknown version', fileOf({ version: '1' }), /version/],
    ['no version', fileOf({ version: undefined }), /version/],
    ['a title that is too long', fileOf({ title: 'x'.repeat(81) }), /title/],
    ['no title', fileOf({ title: '\u202e ' }), /title/],
    ['an aim that is too long', fileOf({ aim: 'x'.repeat(301) }), /aim/],
    ['too much to say', fileOf({ points: Array(21).fill('x') }), /things to say/],
    ['too many exercises', fileOf({ exercises: Array(301).fill(one) }), /300 exercises; this one has 301/],
    ['exercises that are no list', fileOf({ exercises: {} }), /no list/],
    ['something that no plan has', fileOf({ mood: 'calm' }), /“mood”/],
    ['a key that every object has', fileOf({}).replace('{', '{"__proto__":{"admin":true},'), /names in it/],
    [
      'such a key deep inside',
      fileOf({ exercises: [one] }).replace('"letter"', '"constructor":1,"letter"'),
      /names in it/,
    ],
  ];
  test.each(whole)('%s', (_, file, sentence) => {
    const read = readPlanFile(file);
    expect(read.ok ? '' : read.error).toMatch(sentence);
    expect(Object.prototype).not.toHaveProperty('admin');
  });

  test('an exercise that can’t be asked or read is told by its number, and the others can be taken', () => {
    const file = fileOf({
      exercises: [
        one,
        { ...one, exercise: build('E', 'minor', { rootString: 1 as never }) },
        { ...one, exercise: { ...find('D'), strictness: 'nearby' } },
        { ...one, seconds: 1 },
        { ...one, harder: [find('D', { instrument: 'harp' })] },
        7,
      ],
    });
    const read = readPlanFile(file);
    if (!read.ok) throw new Error(read.error);
    expect(read.value.exercises).toHaveLength(1);
    expect(read.value.refused).toEqual([
      { number: 2, reason: 'This form has no such chord with its root on string 1.' },
      { number: 3, reason: 'This can’t be read: exercise.strictness.' },
      { number: 4, reason: 'This can’t be read: seconds.' },
      { number: 5, reason: '“harp” is no tuning known here.' },
      { number: 6, reason: 'This is no exercise.' },
    ]);
  });

  test('EDGE-2: text is one line without direction marks and control characters; a tag is only text', () => {
    const read = readPlanFile(
      fileOf({ title: '<script>alert(1)</script>', aim: 'one\u202e\u0007\n two', points: ['\u200fthree'] }),
    );
    expect(read.ok && read.value).toMatchObject({
      title: '<script>alert(1)</script>',
      aim: 'one two',
      points: ['three'],
    });
  });
});
