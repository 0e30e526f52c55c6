import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Publisher } from '../../../server/live/ports.ts';
import { ClassRegistry } from '../../../server/live/registry.ts';
import type { RunningClass } from '../../../server/live/running-class.ts';
import type { Store } from '../../../server/store/store.ts';
import { known } from '../../../shared/lib/assert.ts';
import type { SeatId, SendId, StudentId } from '../../../shared/protocol/ids.ts';
import { place } from '../../../shared/theory/fretboard.ts';
import { HandClock } from '../../support/hand-clock.ts';
import { classId, find, group, newClass, student, teacher, time } from '../store/samples.ts';
import { tempPlace, type TempPlace } from '../store/temp-place.ts';

const silent = { error: () => undefined, warn: () => undefined, info: () => undefined };
const nobody: Publisher = {
  toStands: () => undefined,
  toSeat: () => undefined,
  toBoards: () => undefined,
  toDesks: () => undefined,
};

/** A real store and running class; only the clock is turned by hand. */
let at: TempPlace;
let store: Store;
let clock: HandClock;
let registry: ClassRegistry;

const running = async (): Promise<RunningClass> => known(await registry.byId(classId), 'class');
const roundOf = (one: RunningClass) => known(one.state.rounds.at(-1), 'round');

/** The store's own commits and loads, unless a test puts something in their way. */
let beforeCommit: () => Promise<void> = async () => undefined;
let beforeLoad = beforeCommit;

function newRegistry(): ClassRegistry {
  const classes = {
    ...store.classes,
    commit: async (...changes: Parameters<Store['classes']['commit']>) => {
      await beforeCommit();
      return store.classes.commit(...changes);
    },
    load: async (id: typeof classId) => {
      await beforeLoad();
      return store.classes.load(id);
    },
  };
  return new ClassRegistry(classes, { publisher: nobody, clock, log: silent, address: () => '' });
}

let sends = 0;
async function give(one: RunningClass, who: string, sendId?: string) {
  sends += 1;
  const command = {
    kind: 'place' as const,
    roundId: roundOf(one).id,
    sendId: (sendId ?? `send-${String(sends)}`) as SendId,
    places: [place(2, 3)],
    done: false,
  };
  return one.forStudent(`seat-${who}` as SeatId, command, clock.now());
}

async function ask(one: RunningClass, seconds: number): Promise<void> {
  const asked = await one.forDesk(
    { kind: 'ask', exercise: find(), seconds },
    { now: clock.now(), newId: () => `id-${String(clock.now())}` },
  );
  expect(asked.ok).toBe(true);
}

beforeEach(async () => {
  at = tempPlace();
  store = await at.open();
  clock = new HandClock(time(1000));
  await store.teachers.create(teacher);
  await store.groups.create(group());
  await store.groups.saveStudent(group().id, student('kaya'));
  await store.groups.saveStudent(group().id, student('bram', { moreTime: 2 }));
  await store.classes.create(newClass());
  for (const id of ['kaya', 'bram']) {
    const seat = {
      id: `seat-${id}` as SeatId,
      tokenHash: id,
      name: id,
      studentId: id as StudentId,
      status: 'in',
      reason: null,
      joinedAt: time(2),
    } as const;
    await store.classes.commit(classId, [{ kind: 'seat', seat }]);
  }
  beforeCommit = beforeLoad = async () => undefined;
  registry = newRegistry();
  await registry.start();
});

afterEach(async () => {
  await registry.stop();
  await store.close();
  await at.remove();
});

describe('ROUND: a deadline is the server’s', () => {
  test('ROUND-3: time runs out for each student by their own measure, and the round is held after the last', async () => {
    const one = await running();
    await ask(one, 10);
    clock.turn(10_500);
    expect(await give(one, 'kaya')).toEqual({ ok: true, value: false });
    expect(one.ownSnapshot('seat-kaya' as SeatId).view).toMatchObject({ timeUp: true, seconds: 10 });
    expect(one.ownSnapshot('seat-bram' as SeatId).view).toMatchObject({ timeUp: false, seconds: 20 });
    expect(one.sharedSnapshot().view.stage.kind).toBe('open');
    clock.turn(2000);
    expect(await give(one, 'kaya')).toEqual({ ok: true, value: true });
    expect(await give(one, 'bram')).toEqual({ ok: true, value: false });
    clock.turn(8000);
    await one.reload();
    expect(roundOf(one)).toMatchObject({ phase: 'held', heldAt: time(21_000) });
    expect([...roundOf(one).late.keys()]).toEqual(['kaya']);
  });

  test('ROUND-3: one that passed while the server was down holds the round at the start', async () => {
    await ask(await running(), 10);
    await registry.stop();
    clock.turn(60_000);
    registry = newRegistry();
    await registry.start();
    clock.turn(0);
    const one = await running();
    await one.reload();
    expect(roundOf(one)).toMatchObject({ phase: 'held', heldAt: time(21_000) });
    expect((await store.classes.load(classId))?.rounds.at(-1)?.phase).toBe('held');
  });

  test('ANSWER-3: what was placed just before the hold still counts, and what comes later does not', async () => {
    const one = await running();
    await ask(one, 600);
    await one.forDesk({ kind: 'hold' }, { now: clock.now(), newId: () => 'unused' });
    clock.turn(1400);
    expect(await give(one, 'kaya')).toEqual({ ok: true, value: false });
    clock.turn(200);
    expect(await give(one, 'kaya')).toEqual({ ok: true, value: true });
    expect(one.state.rounds.at(-1)?.answers.get('kaya' as StudentId)?.sendId).not.toBe(
      one.state.rounds.at(-1)?.late.get('kaya' as StudentId)?.sendId,
    );
  });

  test('ANSWER-2: a commit that fails is refused, and the class goes on from what is kept', async () => {
    const one = await running();
    await ask(one, 600);
    const unknown = { kind: 'enter' as const, studentId: 'kaya' as StudentId, places: [place(2, 3)] };
    await store.groups.removeStudent('kaya' as StudentId);
    const refused = await one.forDesk(unknown, { now: clock.now(), newId: () => 'x' });
    expect(refused).toEqual({ ok: false, error: 'store-failed' });
    expect(one.state.students.has('kaya' as StudentId)).toBe(false);
    expect(await give(one, 'bram')).toEqual({ ok: true, value: false });
  });

  test('ANSWER-2: nobody is told of what is decided but not durable yet', async () => {
    const one = await running();
    await ask(one, 600);
    let open = (): void => undefined;
    const gate = new Promise<void>((resolve) => (open = resolve));
    const kaya = give(one, 'kaya');
    beforeCommit = () => gate;
    const bram = give(one, 'bram');
    await kaya;
    const answerOf = (who: string) => one.ownSnapshot(`seat-${who}` as SeatId).view.answer;
    const answered = () => one.deskSnapshot().view.students.filter(({ answer }) => answer).length;
    expect(one.state.rounds.at(-1)?.answers.size).toBe(2);
    expect([answerOf('kaya'), answerOf('bram')]).toEqual([expect.objectContaining({ done: false }), null]);
    expect(answered()).toBe(1);
    open();
    await bram;
    expect(answerOf('bram')).toMatchObject({ late: false });
    expect(answered()).toBe(2);
  });

  test('ANSWER-2: what was lost with the whole disk is not taken for known when it is sent again', async () => {
    const one = await running();
    await ask(one, 600);
    const broken = () => Promise.reject(new Error('the disk is gone'));
    beforeCommit = beforeLoad = broken;
    expect(await give(one, 'kaya', 'again')).toEqual({ ok: false, error: 'store-failed' });
    beforeCommit = beforeLoad = async () => undefined;
    expect(await give(one, 'kaya', 'again')).toEqual({ ok: true, value: false });
    const stored = await store.classes.load(classId);
    expect(stored?.rounds.at(-1)?.answers.get('kaya' as StudentId)?.sendId).toBe('again');
  });
});
