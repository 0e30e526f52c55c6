import { once } from 'node:events';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { text } from 'node:stream/consumers';
import type { Database as Connection } from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { ClassRegistry } from '../../../server/live/registry.ts';
import { backUp } from '../../../server/store/sqlite/backup.ts';
import { connect } from '../../../server/store/sqlite/connect.ts';
import { storeOn } from '../../../server/store/sqlite/open-store.ts';
import { StoreError } from '../../../server/store/store-error.ts';
import type { Store } from '../../../server/store/store.ts';
import { success } from '../../../shared/lib/result.ts';
import { known } from '../../../shared/lib/assert.ts';
import type { Change } from '../../../server/classroom/state.ts';
import { answer, classId, fillStore, groupId, round, student, time } from './samples.ts';
import { runTypescript } from './run-typescript.ts';
import { tempPlace, type TempPlace } from './temp-place.ts';

describe('a disk that is full', () => {
  let where: TempPlace;
  let connection: Connection;
  let store: Store;

  beforeEach(async () => {
    where = tempPlace();
    connection = connect(where.path);
    store = storeOn(connection, where.path, undefined);
    await fillStore(store);
    await store.classes.commit(classId, [{ kind: 'round', round: round('r1', { phase: 'open' }) }]);
  });
  afterEach(async () => {
    await store.close();
    await where.remove();
  });

  // SQLite answers with the same error when the disk has no room and when the file may not grow any more.
  const leaveRoomFor = (pages: number) => {
    const used = connection.pragma('page_count', { simple: true }) as number;
    connection.pragma(`max_page_count = ${String(used + pages)}`);
  };
  const makeRoom = () => connection.pragma('max_page_count = 1000000');
  const coming = (id: string): readonly Change[] => [
    { kind: 'student', student: student(id) },
    answer('r1', id),
  ];

  it('loses nothing that was acknowledged, says why, and takes answers again once there is room', async () => {
    leaveRoomFor(8);
    const kept: string[] = [];
    const complaints: unknown[] = [];
    for (let batch = 0; complaints.length === 0; batch += 1) {
      const ids = Array.from({ length: 20 }, (_, n) => `s${String(batch * 20 + n)}`);
      const results = await Promise.allSettled(ids.map((id) => store.classes.commit(classId, coming(id))));
      for (const [index, result] of results.entries()) {
        if (result.status === 'fulfilled') kept.push(known(ids[index], 'id'));
        else complaints.push(result.reason);
      }
    }
    expect(kept.length).toBeGreaterThan(0);
    expect(complaints[0]).toBeInstanceOf(StoreError);
    expect(complaints[0]).toMatchObject({ message: `The disk that ${where.path} lies on is full.` });
    const ids = async (from: Store) =>
      [...(known(await from.classes.load(classId), 'class').rounds[0]?.answers.keys() ?? [])].sort();
    expect(await ids(store)).toEqual([...kept].sort());

    makeRoom();
    await store.classes.commit(classId, coming('last'));
    await store.close();
    store = await where.open();
    expect(await ids(store)).toEqual([...kept, 'last'].sort());
  });

  it('leaves the running class at what is kept, and lets it go on once there is room', async () => {
    const complaints: object[] = [];
    const registry = new ClassRegistry(store.classes, {
      publisher: {
        toStands: () => undefined,
        toSeat: () => undefined,
        toBoards: () => undefined,
        toDesks: () => undefined,
      },
      clock: { now: () => time(1), after: () => () => undefined },
      log: { error: (details) => complaints.push(details), warn: () => undefined, info: () => undefined },
      address: () => '',
    });
    const running = known(await registry.byId(classId), 'class');
    const many = Array.from({ length: 400 }, (_, n) => coming(`s${String(n)}`)).flat();
    leaveRoomFor(2);
    expect(await running.execute(() => success(many))).toEqual({ ok: false, error: 'store-failed' });
    expect(complaints).toMatchObject([{ error: { name: 'StoreError' } }]);
    expect(running.state.students.size).toBe(0);
    makeRoom();
    expect(await running.execute(() => success(many))).toMatchObject({ ok: true });
    expect(running.state.students.size).toBe(400);
    expect(await store.classes.load(classId)).toEqual(running.state);
    await registry.stop();
  });
});

/** Only a system with limits on the size of files can say no to a process without saying no to all others. */
describe.skipIf(process.platform === 'win32')('a disk that takes no more', { timeout: 30_000 }, () => {
  it('leaves no half of a backup', async () => {
    const where = tempPlace();
    const store = await where.open();
    await fillStore(store);
    for (let n = 0; n < 3000; n += 1) await store.groups.saveStudent(groupId, student(`s${String(n)}`));
    await store.close();
    const backups = join(where.dataFolder, 'backups');
    const ended = await limited(100, 'server/backup.ts', [], { DATA_DIR: where.dataFolder });
    expect(ended).toMatchObject({ code: 1, output: '' });
    expect(ended.complaint).toMatch(/^[^\n]*backups[^\n]*\n$/);
    expect(readdirSync(backups)).toEqual([]);
    await backUp(where.path, join(backups, 'whole.db'));
    expect(readdirSync(backups)).toEqual(['whole.db']);
    await where.remove();
  });

  it('keeps every acknowledged answer and says why it takes no other', async () => {
    const where = tempPlace();
    const ended = await limited(1000, 'tests/server/store/commit-until-killed.ts', [where.path], {});
    expect(ended.code).toBe(3);
    expect(ended.complaint).toMatch(/^[^\n]*rootcall\.db[^\n]*$/);
    const acknowledged = ended.output.split('\n').filter((line) => line !== '');
    expect(acknowledged.length).toBeGreaterThan(50);

    const store = await where.open();
    const state = known(await store.classes.load(classId), 'class');
    const answers = new Set<string>(state.rounds[0]?.answers.keys());
    expect(acknowledged.filter((id) => !answers.has(id))).toEqual([]);
    await store.classes.commit(classId, [
      { kind: 'student', student: student('last') },
      answer('r1', 'last'),
    ]);
    await store.close();
    await where.remove();
  });
});

async function limited(
  kilobytes: number,
  file: string,
  args: readonly string[],
  env: Readonly<Record<string, string>>,
) {
  const child = runTypescript(file, args, env, kilobytes);
  const ended = once(child, 'close');
  const [output, complaint] = await Promise.all([text(child.stdout), text(child.stderr)]);
  await ended;
  return { code: child.exitCode, output, complaint };
}
