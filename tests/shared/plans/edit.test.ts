import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyEdit, applyEdits, inPartOrder, stepOf, type PlanEdit } from '../../../shared/plans/edit.ts';
import { parts, type Part, type PlanContent, type PlannedExercise } from '../../../shared/plans/plan.ts';
import { build, find } from '../../support/exercises.ts';

const ids = ['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h'];
const anyId = fc.constantFrom(...ids, 'not-there');
const anyPart = fc.constantFrom(...parts);
const anyExercise = fc
  .tuple(fc.constantFrom('C', 'D', 'Eb', 'F#'), fc.boolean())
  .map(([root, isChord]) => (isChord ? build(root, 'minor') : find(root)));
const anyAsked = fc.record(
  {
    exercise: anyExercise,
    harder: fc.array(anyExercise, { maxLength: 2 }),
    seconds: fc.option(fc.integer({ min: 5, max: 300 })),
  },
  { requiredKeys: [] },
);
const planned = (id: fc.Arbitrary<string>): fc.Arbitrary<PlannedExercise> =>
  fc.record({
    id,
    part: anyPart,
    exercise: anyExercise,
    harder: fc.array(anyExercise, { maxLength: 2 }),
    seconds: fc.option(fc.integer({ min: 5, max: 300 })),
  });
const anyPlan: fc.Arbitrary<PlanContent> = fc.record({
  title: fc.constantFrom('Triads', 'Roots'),
  aim: fc.constantFrom('', 'They find it.'),
  points: fc.array(fc.constantFrom('Say this.', 'And this.')),
  exercises: fc
    .uniqueArray(planned(fc.constantFrom(...ids)), { selector: ({ id }) => id })
    .map((exercises) => inPartOrder(exercises)),
});
const anyBefore = fc.option(anyId);
const editOf = (id: fc.Arbitrary<string>): fc.Arbitrary<PlanEdit> =>
  fc.oneof(
    fc.record({
      kind: fc.constant('insert' as const),
      planned: planned(fc.constantFrom('new', 'a')),
      before: anyBefore,
    }),
    fc.record({ kind: fc.constant('duplicate' as const), id, newId: fc.constantFrom('copy', 'b') }),
    fc.record({ kind: fc.constant('remove' as const), id }),
    fc.record({ kind: fc.constant('change' as const), id, to: anyAsked }),
    fc.record({ kind: fc.constant('move' as const), id, part: anyPart, before: anyBefore }),
    fc.record({
      kind: fc.constant('write' as const),
      to: fc.record(
        { title: fc.constantFrom('Scales', 'Roots'), aim: fc.string(), points: fc.array(fc.string()) },
        { requiredKeys: [] },
      ),
    }),
  );
/** Edits that leave every exercise where it stands. */
const inPlace = (id: string): fc.Arbitrary<PlanEdit> =>
  fc.oneof(
    fc.record({ kind: fc.constant('change' as const), id: fc.constant(id), to: anyAsked }),
    fc.record({ kind: fc.constant('remove' as const), id: fc.constant(id) }),
  );
const runs = { numRuns: 2000, seed: 20261125 };

describe('PLAN-1: every edit can be undone', () => {
  test('an edit and its inverse leave the plan as it was', () => {
    let made = 0;
    fc.assert(
      fc.property(anyPlan, editOf(anyId), (plan, edit) => {
        const applied = applyEdit(plan, edit);
        if (!applied.ok) return;
        made += 1;
        expect(applyEdit(applied.value.plan, applied.value.inverse)).toMatchObject({
          ok: true,
          value: { plan },
        });
      }),
      runs,
    );
    expect(made).toBeGreaterThan(1000);
  });

  test('so do many edits and their inverses, and what was undone is done again by the inverse of the inverse', () => {
    fc.assert(
      fc.property(anyPlan, fc.array(editOf(anyId), { maxLength: 6 }), (plan, edits) => {
        const { plan: now, inverse } = applyEdits(plan, edits);
        const back = applyEdits(now, inverse);
        expect(back.plan).toEqual(plan);
        expect(applyEdits(back.plan, back.inverse).plan).toEqual(now);
      }),
      runs,
    );
  });
});

describe('PLAN-2: edits go by exercise, whatever else changed', () => {
  test('edits of different exercises give the same in either order', () => {
    fc.assert(
      fc.property(anyPlan, inPlace('a'), inPlace('b'), (plan, one, other) => {
        expect(applyEdits(plan, [one, other]).plan).toEqual(applyEdits(plan, [other, one]).plan);
      }),
      runs,
    );
  });

  test('a moved exercise keeps what was changed on another, in either order', () => {
    fc.assert(
      fc.property(anyPlan, anyPart, anyBefore, inPlace('b'), (plan, part, before, other) => {
        fc.pre(before !== 'b');
        const move: PlanEdit = { kind: 'move', id: 'a', part, before };
        expect(applyEdits(plan, [move, other]).plan).toEqual(applyEdits(plan, [other, move]).plan);
      }),
      runs,
    );
  });

  test('what can’t be made any more is said, and the rest is made', () => {
    const plan: PlanContent = { title: 'Roots', aim: '', points: [], exercises: [] };
    const { plan: now, refused } = applyEdits(plan, [
      { kind: 'change', id: 'a', to: { seconds: 30 } },
      { kind: 'write', to: { aim: 'They find it.' } },
    ]);
    expect(now.aim).toBe('They find it.');
    expect(refused).toEqual(['The exercise is not in the plan any more.']);
  });

  test('what is there already, or gone already, is left as it is', () => {
    fc.assert(
      fc.property(anyPlan, editOf(anyId), (plan, edit) => {
        fc.pre(edit.kind !== 'move');
        const once = applyEdits(plan, [edit]).plan;
        expect(applyEdits(once, [edit]).plan).toEqual(once);
      }),
      runs,
    );
  });
});

describe('PLAN-3: exercises are asked part by part', () => {
  test('every edit keeps the parts in order, and no exercise twice', () => {
    fc.assert(
      fc.property(anyPlan, editOf(anyId), (plan, edit) => {
        const { exercises } = applyEdits(plan, [edit]).plan;
        expect(exercises).toEqual(inPartOrder(exercises));
        expect(new Set(exercises.map(({ id }) => id)).size).toBe(exercises.length);
      }),
      runs,
    );
  });

  test('step by step an exercise goes from the first place to the last and back', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const [first] = plan.exercises;
        fc.pre(first !== undefined);
        const id = first?.id ?? '';
        const seen = (by: -1 | 1, from: PlanContent) => {
          const places: { readonly part: Part; readonly at: number }[] = [];
          let now = from;
          for (let step = stepOf(now.exercises, id, by); step; step = stepOf(now.exercises, id, by)) {
            now = applyEdits(now, [step]).plan;
            const at = now.exercises.findIndex((one) => one.id === id);
            places.push({ part: now.exercises[at]?.part ?? 'new', at });
          }
          return { places, now };
        };
        const top = seen(-1, plan);
        const down = seen(1, top.now);
        // Each step passes one exercise or enters one part.
        expect(down.places).toHaveLength(plan.exercises.length - 1 + parts.length - 1);
        expect(down.places.at(-1)).toEqual({ part: 'check', at: plan.exercises.length - 1 });
        expect(seen(-1, down.now).places.at(-1)).toEqual({ part: 'warm-up', at: 0 });
      }),
      runs,
    );
  });
});

test('PLAN-4: three levels are the most, and a plan has a title', () => {
  const own: PlannedExercise = { id: 'a', part: 'new', exercise: find('D'), harder: [], seconds: null };
  const plan: PlanContent = { title: 'Roots', aim: '', points: [], exercises: [own] };
  const harder = [find('E'), find('F'), find('G')];
  expect(applyEdit(plan, { kind: 'change', id: 'a', to: { harder } })).toEqual({
    ok: false,
    error: 'Three levels are the most.',
  });
  expect(applyEdit(plan, { kind: 'write', to: { title: ' ' } })).toEqual({
    ok: false,
    error: 'A plan needs a title.',
  });
});
