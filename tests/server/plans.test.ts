import { afterEach, beforeEach, expect, test } from 'vitest';
import { find } from '../support/exercises.ts';
import { LiveServer } from '../support/live-server.ts';
import { TeacherBrowser } from '../support/people.ts';

let server: LiveServer;
let teacher: TeacherBrowser;

beforeEach(async () => {
  server = await LiveServer.start();
  teacher = new TeacherBrowser(server);
  await teacher.setUp();
});
afterEach(() => server.stop());

interface Kept {
  readonly plan: { readonly exercises: readonly { readonly id: string; readonly part: string }[] };
}

test('PLAN-3: exercises are kept part by part, in whichever order they are sent', async () => {
  const groupId = await teacher.makeGroup([]);
  const exercise = (id: string, part: string) => ({ id, part, exercise: find('D'), seconds: null });
  const sent = [exercise('a', 'check'), exercise('b', 'new'), exercise('c', 'warm-up'), exercise('d', 'new')];
  const { body } = await teacher.call<{ id: string }>('POST', `groups/${groupId}/plans`, {
    title: 'Roots',
    exercises: sent,
  });
  const kept = async () => {
    const reply = await teacher.call<Kept>('GET', `plans/${body.id}`);
    return reply.body.plan.exercises.map(({ id, part }) => `${part} ${id}`);
  };
  expect(await kept()).toEqual(['warm-up c', 'new b', 'new d', 'check a']);
  await teacher.call('PUT', `plans/${body.id}`, {
    title: 'Roots',
    exercises: [...sent, exercise('e', 'warm-up')],
    revision: 1,
  });
  expect(await kept()).toEqual(['warm-up c', 'warm-up e', 'new b', 'new d', 'check a']);
});
