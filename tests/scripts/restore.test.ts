import { copyFileSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it, test } from 'vitest';
import { backUp } from '../../server/store/sqlite/backup.ts';
import { restore as putBack } from '../../server/store/sqlite/restore.ts';
import type { Store } from '../../server/store/store.ts';
import { known } from '../../shared/lib/assert.ts';
import type { StudentId } from '../../shared/protocol/ids.ts';
import {
  answer,
  classId,
  fillStore,
  groupId,
  head,
  plan,
  right,
  round,
  seat,
  storedPlan,
  student,
  teacherId,
  time,
} from '../server/store/samples.ts';
import { tempPlace, type TempPlace } from '../server/store/temp-place.ts';
import { place } from '../../shared/theory/fretboard.ts';
import { find } from '../support/exercises.ts';
import { LiveClass } from '../support/live-class.ts';
import { runScript } from './run-script.ts';

describe('npm run restore', { timeout: 30_000 }, () => {
  let where: TempPlace;
  let fresh: TempPlace;
  let copy: string;
  let store: Store;

  beforeEach(async () => {
    where = tempPlace();
    fresh = tempPlace();
    copy = join(where.folder, 'copy.db');
    store = await where.open();
    await fillAll(store);
    await backUp(where.path, copy);
  });
  afterEach(async () => {
    await store.close();
    await where.remove();
    await fresh.remove();
  });

  const restore = (to: TempPlace, ...args: readonly string[]) => runScript('restore', to, args);
  /** The one line that a person reads, of a restore that changed nothing. */
  async function refusal(to: TempPlace, ...args: readonly string[]): Promise<string> {
    const { code, output, complaint } = await restore(to, ...args);
    expect({ code, output }).toEqual({ code: 1, output: '' });
    expect(complaint).toMatch(/^[^\n]+\n$/);
    return complaint.trim();
  }

  it('makes an empty folder hold the same rows, and the class goes on', async () => {
    const { code, output, complaint } = await restore(fresh, copy);
    expect({ code, complaint }).toEqual({ code: 0, complaint: '' });
    expect(output).toBe(
      `${fresh.path} now holds 1 group, 2 students, 1 class, 1 answer; what was deleted since the backup is back.\n`,
    );
    expect(readdirSync(fresh.dataFolder)).toEqual(['rootcall.db']);
    expect(statSync(fresh.path).mode & 0o777).toBe(0o600);

    const before = await store.classes.load(classId);
    const again = await fresh.open();
    expect(await again.classes.open()).toEqual([classId]);
    expect(await again.classes.load(classId)).toEqual(before);
    await again.classes.commit(classId, [answer('r1', 'b', { verdict: right })]);
    const answers = known(await again.classes.load(classId), 'class').rounds[0]?.answers;
    expect([...(answers?.keys() ?? [])].sort()).toEqual(['a', 'b']);
    await again.close();
  });

  it('gives back every row of every table', async () => {
    await store.close();
    await restore(fresh, copy);
    const tables = allRows(where.path);
    // Nothing is compared with nothing: the sample has rows in every table.
    expect(Object.entries(tables).filter(([, rows]) => rows.length === 0)).toEqual([]);
    expect(allRows(fresh.path)).toEqual(tables);
  });

  it('refuses while a server has the store open, with --force too, and changes nothing', async () => {
    for (const more of [[], ['--force']])
      expect(await refusal(where, copy, ...more)).toBe(`${where.path} is in use. Stop the server first.`);
    await store.groups.saveStudent(groupId, student('c'));
    expect(await store.groups.students(groupId)).toHaveLength(3);
  });

  it('keeps the store that is there, unless told; then it is kept aside', async () => {
    await store.groups.saveStudent(groupId, student('c'));
    await store.close();
    expect(await refusal(where, copy)).toBe(
      `${where.path} is there already. Say --force to keep it aside and restore.`,
    );
    const { code, output } = await restore(where, copy, '--force');
    expect(code).toBe(0);
    const aside = /is kept as (\S+)\.\n$/.exec(output)?.[1] ?? '';
    expect(aside).toMatch(/rootcall-until-[\d-]+\.db$/);
    expect(allRows(where.path)['students']).toHaveLength(2);
    expect(allRows(aside)['students']).toHaveLength(3);
  });

  it('takes the place of a damaged store', async () => {
    await store.close();
    writeFileSync(where.path, 'no database, for whatever reason');
    writeFileSync(`${where.path}-wal`, 'nor is this a log');
    expect(await refusal(where, copy)).toContain('is there already');
    expect(await restore(where, copy, '--force')).toMatchObject({ code: 0, complaint: '' });
    expect(allRows(where.path)['students']).toHaveLength(2);
  });

  it('takes no log that was left behind for the log of the backup', async () => {
    mkdirSync(fresh.dataFolder);
    await store.groups.saveStudent(groupId, student('c'));
    copyFileSync(`${where.path}-wal`, `${fresh.path}-wal`);
    expect(await restore(fresh, copy)).toMatchObject({ code: 0 });
    expect(allRows(fresh.path)['students']).toHaveLength(2);
  });

  it('takes a plain copy with the log of a server that was killed', async () => {
    await store.groups.saveStudent(groupId, student('c'));
    const plain = join(where.folder, 'plain.db');
    for (const log of ['', '-wal']) copyFileSync(where.path + log, plain + log);
    const before = [readFileSync(plain), readFileSync(`${plain}-wal`)];
    expect(await restore(fresh, plain)).toMatchObject({ code: 0 });
    expect(allRows(fresh.path)['students']).toHaveLength(3);
    expect([readFileSync(plain), readFileSync(`${plain}-wal`)]).toEqual(before);
  });

  describe('refuses', () => {
    const damaged = () => `${copy} is damaged, or is not a backup of Rootcall.`;
    const cases: readonly [string, () => void, () => string][] = [
      ['no file', () => (copy = join(where.folder, 'none')), () => `There is no file ${copy}.`],
      ['a folder', () => (copy = where.folder), () => `There is no file ${copy}.`],
      ['a file that is no database', () => writeFileSync(copy, 'Once upon a time. '.repeat(99)), damaged],
      ['an empty file', () => writeFileSync(copy, ''), () => `${copy} belongs to another program.`],
      ['half a file', () => writeFileSync(copy, readFileSync(copy).subarray(0, 40_000)), damaged],
      ['damage in its header', () => spoil(copy, 0, 64), damaged],
      ['damage in its midst', () => spoil(copy, 3 * 4096, 64), damaged],
      [
        "another program's database",
        () => edit((database) => database.pragma('application_id = 1')),
        () => `${copy} belongs to another program.`,
      ],
      [
        'a backup by a newer version',
        () => edit((database) => database.pragma('user_version = 999')),
        () =>
          expect.stringMatching(
            / was written by a newer Rootcall \(schema 999; .+ newer version\.$/,
          ) as string,
      ],
      [
        'a reference that leads nowhere',
        () => edit((database) => database.exec('pragma foreign_keys = off; delete from groups')),
        damaged,
      ],
    ];

    it.each(cases)('%s', (_, spoilIt, sentence) => {
      spoilIt();
      expect(() => putBack(copy, fresh.path, null)).toThrow(
        expect.objectContaining({ name: 'StoreError', message: sentence() }),
      );
      expect(readdirSync(fresh.folder, { recursive: true })).toEqual(
        copy.endsWith('copy.db') ? ['data'] : [],
      );
    });
  });

  function edit(change: (database: BetterSqlite3.Database) => void): void {
    const database = new BetterSqlite3(copy);
    change(database);
    database.close();
  }
});

function spoil(path: string, from: number, bytes: number): void {
  const content = readFileSync(path);
  content.fill(0xa5, from, from + bytes);
  writeFileSync(path, content);
}

test('ANSWER-2: on a restored store the server takes the class up, and every screen goes on by itself', async () => {
  const live = await LiveClass.start();
  const backup = `${live.server.storePath}.backup`;
  const [kaya, bram] = [await live.seat('Kaya'), await live.seat('Bram')];
  await live.ask(find('D'));
  expect(await live.give(kaya, { places: [place(2, 3)] })).toMatchObject({ ok: true });
  await backUp(live.server.storePath, backup);
  expect(await live.give(bram, { places: [place(2, 15)] })).toMatchObject({ ok: true });
  const answered = () => ['Kaya', 'Bram'].map((name) => live.student(name).answer?.places);
  await live.desk.until(() => answered()[1] !== undefined);
  await live.server.restart(() => {
    rmSync(live.server.storePath);
    putBack(backup, live.server.storePath, null);
  });
  await live.desk.until(() => answered()[1] === undefined);
  expect(answered()).toEqual([[place(2, 3)], undefined]);
  await bram.until(({ socket }) => socket.connected);
  expect(await live.give(bram, { places: [place(2, 3)] })).toMatchObject({ ok: true });
  await live.desk.until(() => answered()[1] !== undefined);
  await live.stop();
});

/** Something in every table. */
async function fillAll(store: Store): Promise<void> {
  await fillStore(store);
  await store.teachers.openSession({ tokenHash: 'session', teacherId, expiresAt: time(9) });
  await store.teachers.addInvitation('link', time(9));
  await store.settings.write('address', 'http://192.0.2.7:8080');
  await store.plans.save(storedPlan);
  await store.classes.commit(classId, [
    { kind: 'class', head: head({ plan, stage: 'round' }) },
    { kind: 'student', student: student('a', { name: 'Óscar', seatNumber: 3, moreTime: 1.5 }) },
    { kind: 'student', student: student('b') },
    { kind: 'seat', seat: seat('s1', { studentId: 'a' as StudentId, status: 'in', reason: null }) },
    { kind: 'round', round: round('r1', { phase: 'open', heldAt: null, revealedAt: null }) },
    answer('r1', 'a', { finger: 2 }),
  ]);
}

/** All rows of all tables, as the disk has them. */
function allRows(path: string): Readonly<Record<string, readonly unknown[]>> {
  const database = new BetterSqlite3(path);
  try {
    const tables = database
      .prepare<[], string>(`select name from sqlite_schema where type = 'table' order by name`)
      .pluck()
      .all();
    return Object.fromEntries(
      tables.map((name) => [
        name,
        database
          .prepare(`select * from "${name}"`)
          .all()
          .map((row) => JSON.stringify(row))
          .sort(),
      ]),
    );
  } finally {
    database.close();
  }
}
