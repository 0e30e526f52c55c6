import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Plan } from '../../../client/pages/desk/api.ts';
import { PlanStore, type PlanWire } from '../../../client/pages/desk/plan/store.ts';
import type { PlanEdit } from '../../../shared/plans/edit.ts';
import type { PlannedExercise } from '../../../shared/plans/plan.ts';
import { failure, success } from '../../../shared/lib/result.ts';
import { errorReply } from '../../../shared/protocol/errors.ts';
import { find } from '../../support/exercises.ts';

const planned = (id: string, fields: Partial<PlannedExercise> = {}): PlannedExercise => ({
  id,
  part: 'new',
  exercise: find('D'),
  harder: [],
  seconds: null,
  ...fields,
});
const insert = (id: string): PlanEdit => ({ kind: 'insert', planned: planned(id), before: null });
const time = (id: string, seconds: number): PlanEdit => ({ kind: 'change', id, to: { seconds } });

type Fate = 'through' | 'request-lost' | 'reply-lost';

/** What a server does with a plan, with a network that loses what it is told to lose. */
class Server {
  plan: Plan | null;
  fates: Fate[] = [];
  writing = 0;
  mostWriting = 0;
  readonly waiting = new Set<() => void>();

  constructor(ids: readonly string[] = ['a', 'b', 'c']) {
    this.plan = {
      id: 'plan',
      revision: 1,
      title: 'Roots',
      aim: '',
      points: [],
      exercises: ids.map((id) => planned(id)),
    };
  }

  readonly wire: PlanWire = {
    read: async () => {
      await Promise.resolve();
      return this.plan ? success(structuredClone(this.plan)) : failure(errorReply('not-found'));
    },
    write: async ({ revision, ...content }) => {
      this.writing += 1;
      this.mostWriting = Math.max(this.mostWriting, this.writing);
      const fate = this.fates.shift() ?? 'through';
      await Promise.resolve();
      this.writing -= 1;
      if (fate === 'request-lost') return failure(errorReply('server-failed'));
      if (!this.plan) return failure(errorReply('not-found'));
      if (content.title === 'refused') return failure(errorReply('too-long'));
      if (revision !== this.plan.revision) return failure(errorReply('plan-changed'));
      this.plan = { ...this.plan, ...structuredClone(content), revision: revision + 1 };
      return fate === 'reply-lost'
        ? failure(errorReply('server-failed'))
        : success({ revision: revision + 1 });
    },
    later: (_, act) => {
      this.waiting.add(act);
      return () => this.waiting.delete(act);
    },
  };

  open(): PlanStore {
    if (!this.plan) throw new Error('The plan is gone.');
    return new PlanStore(structuredClone(this.plan), this.wire, () => undefined);
  }

  get ids(): readonly string[] {
    return this.plan?.exercises.map(({ id }) => id) ?? [];
  }

  /** Until nothing is under way: every wait is over at once. */
  async settle(): Promise<void> {
    for (let turn = 0; turn < 200; turn += 1) {
      await Promise.resolve();
      if (turn % 20 !== 0) continue;
      const acts = [...this.waiting];
      this.waiting.clear();
      for (const act of acts) act();
    }
  }
}

const shownIds = (store: PlanStore) => store.plan.exercises.map(({ id }) => id);

test('PLAN-5: an edit shows at once and is saved by itself', async () => {
  const server = new Server();
  const store = server.open();
  store.edit('add D', [insert('d')]);
  expect(shownIds(store)).toEqual(['a', 'b', 'c', 'd']);
  expect(store.saving).toBe('saving');
  await server.settle();
  expect(store.saving).toBe('saved');
  expect(server.ids).toEqual(['a', 'b', 'c', 'd']);
});

test('PLAN-6: where another Desk changed the plan, both changes are in it, and it is said', async () => {
  const server = new Server();
  const [here, there] = [server.open(), server.open()];
  there.edit('take out A', [{ kind: 'remove', id: 'a' }]);
  await server.settle();
  here.edit('add D', [insert('d')]);
  await server.settle();
  expect(server.ids).toEqual(['b', 'c', 'd']);
  expect(shownIds(here)).toEqual(['b', 'c', 'd']);
  expect(here.news).toBe('Another Desk changed this plan; both changes are in it.');
});

test('PLAN-6: an edit of what was taken out there is said not to be done, and the others are', async () => {
  const server = new Server();
  const [here, there] = [server.open(), server.open()];
  there.edit('take out A', [{ kind: 'remove', id: 'a' }]);
  await server.settle();
  server.fates = ['request-lost'];
  here.edit('change A', [time('a', 30)]);
  here.edit('change B', [time('b', 30)]);
  await server.settle();
  expect(server.plan?.exercises.map(({ id, seconds }) => [id, seconds])).toEqual([
    ['b', 30],
    ['c', null],
  ]);
  expect(here.news).toContain('Not done: change A. The exercise is not in the plan any more.');
  expect(here.undoes).toBe('change B');
});

test('PLAN-6: where both changed the same it is said, and undo brings theirs back', async () => {
  const server = new Server();
  const [here, there] = [server.open(), server.open()];
  there.edit('change A', [time('a', 60)]);
  await server.settle();
  here.edit('change A', [time('a', 30)]);
  await server.settle();
  expect(server.plan?.exercises[0]?.seconds).toBe(30);
  expect(here.news).toContain('Both changed the same: yours stands (change A). Undo brings theirs back.');
  here.undo();
  await server.settle();
  expect(server.plan?.exercises[0]?.seconds).toBe(60);
});

test('PLAN-5: without the network an edit stays, is said not to be saved, and is tried again', async () => {
  const server = new Server();
  const store = server.open();
  server.fates = ['request-lost'];
  store.edit('add D', [insert('d')]);
  await new Promise((resolve) => setImmediate(resolve));
  expect(store.saving).toBe('not-saved');
  expect(shownIds(store)).toContain('d');
  await server.settle();
  expect(store.saving).toBe('saved');
  expect(server.ids).toContain('d');
});

test('PLAN-6: a save whose reply was lost is not taken for another Desk', async () => {
  const server = new Server();
  const store = server.open();
  server.fates = ['reply-lost'];
  store.edit('add D', [insert('d')]);
  await server.settle();
  expect(server.ids).toEqual(['a', 'b', 'c', 'd']);
  expect(store.news).toBe('');
  expect(store.saving).toBe('saved');
});

test('PLAN-1: undo and redo go by exercise, after another Desk’s changes too', async () => {
  const server = new Server();
  const [here, there] = [server.open(), server.open()];
  here.edit('take out B', [{ kind: 'remove', id: 'b' }]);
  await server.settle();
  await there.refresh();
  expect(there.news).toBe('Another Desk changed this plan. It is shown as it is now.');
  there.edit('add D', [insert('d')]);
  await server.settle();
  expect(here.undoes).toBe('take out B');
  expect(here.undo()).toBe('take out B');
  await server.settle();
  expect(server.ids).toEqual(['a', 'b', 'c', 'd']);
  expect(here.redoes).toBe('take out B');
  here.redo();
  await server.settle();
  expect(server.ids).toEqual(['a', 'c', 'd']);
  expect(here.redoes).toBeNull();
});

test('PLAN-1: a new edit forgets what was undone', () => {
  const store = new Server().open();
  store.edit('take out B', [{ kind: 'remove', id: 'b' }]);
  store.undo();
  store.edit('add D', [insert('d')]);
  expect(store.redoes).toBeNull();
});

test('PLAN-5: what the server refuses is put back, and its sentence said', async () => {
  const server = new Server();
  const store = server.open();
  store.edit('change the title', [{ kind: 'write', to: { title: 'refused' } }]);
  await server.settle();
  expect(store.plan.title).toBe('Roots');
  expect(store.news).toBe('Not saved: This is too long.');
  expect(store.undoes).toBeNull();
  expect(store.saving).toBe('saved');
});

test('PLAN-7: a plan deleted at another Desk keeps what is on this screen', async () => {
  const server = new Server();
  const store = server.open();
  server.plan = null;
  store.edit('add D', [insert('d')]);
  await server.settle();
  expect(store.saving).toBe('gone');
  expect(shownIds(store)).toEqual(['a', 'b', 'c', 'd']);
});

test('PLAN-7: that a plan was deleted at another Desk is seen when the window is looked at again', async () => {
  const server = new Server();
  const store = server.open();
  server.plan = null;
  await store.refresh();
  expect(store.saving).toBe('gone');
});

test('PLAN-5: saves go one after another, never two at once', async () => {
  const server = new Server();
  const store = server.open();
  for (const id of ['d', 'e', 'f']) store.edit('add', [insert(id)]);
  await Promise.resolve();
  store.edit('take out', [{ kind: 'remove', id: 'e' }]);
  await server.settle();
  expect(server.mostWriting).toBe(1);
  expect(server.ids).toEqual(['a', 'b', 'c', 'd', 'f']);
});

test('PLAN-5, PLAN-6: two Desks and a network that loses things: nothing is lost', async () => {
  const turnOf = (...does: readonly string[]) =>
    fc.record({ desk: fc.nat(1), does: fc.constantFrom(...does), on: fc.nat(9) });
  const anyTurns = fc.oneof(
    fc.array(turnOf('add', 'take', 'time', 'undo', 'redo', 'settle'), { maxLength: 25 }),
    fc.array(turnOf('add', 'time', 'settle'), { minLength: 1, maxLength: 25 }),
  );
  const anyFate = fc.constantFrom<Fate>('through', 'request-lost', 'reply-lost');
  await fc.assert(
    fc.asyncProperty(anyTurns, fc.array(anyFate, { maxLength: 15 }), async (turns, fates) => {
      const server = new Server();
      const desks = [server.open(), server.open()];
      server.fates = [...fates];
      for (const [number, { desk, does, on }] of turns.entries()) {
        const store = desks[desk];
        const id = store?.plan.exercises[on % Math.max(1, store.plan.exercises.length)]?.id ?? 'a';
        if (does === 'add') store?.edit('add', [insert(`made-${String(number)}`)]);
        if (does === 'take') store?.edit('take', [{ kind: 'remove', id }]);
        if (does === 'time') store?.edit('time', [time(id, 5 + on)]);
        if (does === 'undo') store?.undo();
        if (does === 'redo') store?.redo();
        if (does === 'settle') await server.settle();
      }
      server.fates = [];
      await server.settle();
      const added = turns.flatMap(({ does }, number) => (does === 'add' ? [`made-${String(number)}`] : []));
      // Where nothing is taken out or undone, all that was added is there.
      if (turns.every(({ does }) => ['add', 'time', 'settle'].includes(does)))
        expect([...server.ids].sort()).toEqual(['a', 'b', 'c', ...added].sort());
      expect(new Set(server.ids).size).toBe(server.ids.length);
      for (const store of desks) {
        expect(store.saving).toBe('saved');
        await store.refresh();
        expect(store.plan.exercises).toEqual(server.plan?.exercises);
      }
    }),
    { numRuns: 400, seed: 20261125 },
  );
});
