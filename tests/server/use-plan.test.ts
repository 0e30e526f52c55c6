import { afterEach, beforeEach, expect, test } from 'vitest';
import { find, places } from '../support/exercises.ts';
import { LiveClass } from '../support/live-class.ts';

let live: LiveClass;

beforeEach(async () => {
  live = await LiveClass.start();
});

afterEach(async () => {
  await live.stop();
});

const planOf = (...letters: readonly ('C' | 'D' | 'E' | 'F')[]) => ({
  title: 'Four roots',
  aim: '',
  points: [],
  exercises: letters.map((letter) => ({
    id: letter,
    part: 'new',
    exercise: find(letter),
    seconds: null,
    harder: [],
  })),
});

async function stored(plan: object): Promise<string> {
  const { body } = await live.teacher.call<{ id: string }>('POST', `groups/${live.groupId}/plans`, plan);
  return body.id;
}

async function use(planId: string | null): Promise<void> {
  expect(await live.desk.ask({ kind: 'use-plan', planId })).toEqual({ ok: true });
}

/** The exercise that each round belongs to in the class's copy, and the one that Ask would ask. */
function standing() {
  const { plan, rounds = [], cursor = 0 } = live.desk.desk ?? {};
  const idAt = (index: number | null) => (index === null ? undefined : plan?.exercises[index]?.id);
  return { rounds: rounds.map(({ planIndex }) => idAt(planIndex)), next: idAt(cursor) };
}

/** Asks the next two of the plan and reveals both; Kaya answers the first. */
async function playTwo() {
  const kaya = await live.seat('Kaya');
  for (const number of [1, 2]) {
    expect(await live.desk.ask({ kind: 'ask-planned', seconds: null })).toEqual({ ok: true });
    await live.desk.until(({ desk }) => desk?.rounds.length === number);
    if (number === 1) expect(await live.give(kaya, { places: places([2, 1]) })).toMatchObject({ ok: true });
    for (const kind of ['hold', 'reveal', 'next'])
      expect(await live.desk.ask({ kind })).toEqual({ ok: true });
  }
  await live.desk.until(({ desk }) => desk?.cursor === 2);
}

test('ROUND-5: after the plan was changed elsewhere, rounds and the place in it stay with their exercises', async () => {
  const planId = await stored(planOf('C', 'D', 'E'));
  await use(planId);
  await playTwo();
  expect(standing()).toEqual({ rounds: ['C', 'D'], next: 'E' });
  const { body } = await live.teacher.call<{ plan: { revision: number } }>('GET', `plans/${planId}`);
  const changed = { ...planOf('E', 'F', 'C'), revision: body.plan.revision };
  expect((await live.teacher.call('PUT', `plans/${planId}`, changed)).status).toBeLessThan(300);
  // A running class doesn't change by itself.
  expect(standing()).toEqual({ rounds: ['C', 'D'], next: 'E' });
  await use(planId);
  await live.desk.until(({ desk }) => desk?.rounds[0]?.planIndex === 2);
  expect(standing()).toEqual({ rounds: ['C', undefined], next: 'E' });
  expect(live.desk.desk?.rounds.map(({ share }) => share.of)).toEqual([1, 0]);
});

test('ROUND-5: what is added at the end of a plan that was asked through is next', async () => {
  const planId = await stored(planOf('C', 'D'));
  await use(planId);
  await playTwo();
  const { body } = await live.teacher.call<{ plan: { revision: number } }>('GET', `plans/${planId}`);
  await live.teacher.call('PUT', `plans/${planId}`, {
    ...planOf('C', 'D', 'F'),
    revision: body.plan.revision,
  });
  await use(planId);
  await live.desk.until(({ desk }) => desk?.plan?.exercises.length === 3);
  expect(standing()).toEqual({ rounds: ['C', 'D'], next: 'F' });
});

test('ROUND-5: rounds of one plan are not those of another', async () => {
  await use(await stored(planOf('C', 'D', 'E')));
  await playTwo();
  const other = planOf('F', 'E');
  await use(
    await stored({ ...other, exercises: other.exercises.map((one) => ({ ...one, id: `other-${one.id}` })) }),
  );
  await live.desk.until(({ desk }) => desk?.plan?.exercises.length === 2);
  await live.desk.until(({ desk }) => desk?.rounds[1]?.planIndex === null);
  expect(standing()).toEqual({ rounds: [undefined, undefined], next: 'other-F' });
});
