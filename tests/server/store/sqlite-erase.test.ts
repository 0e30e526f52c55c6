import type { Database as Connection } from 'better-sqlite3';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { backUp } from '../../../server/store/sqlite/backup.ts';
import { connect } from '../../../server/store/sqlite/connect.ts';
import { Eraser } from '../../../server/store/sqlite/erase.ts';
import type { Store } from '../../../server/store/store.ts';
import type { GroupId, StudentId } from '../../../shared/protocol/ids.ts';
import { answer, classId, fillStore, group, groupId, round, seat, student, time } from './samples.ts';
import { tempPlace, type TempPlace } from './temp-place.ts';

describe('what was deleted from a SQLite store', () => {
  let where: TempPlace;
  let store: Store;

  beforeEach(async () => {
    where = tempPlace();
    store = await where.open();
    await fillStore(store);
    await store.groups.update(groupId, { name: 'Mossgroup', school: 'Mossschool' });
    await store.groups.create(group({ id: 'other' as GroupId, name: 'Fernways' }));
    await store.classes.commit(classId, [
      { kind: 'round', round: round('r1') },
      ...['a', 'b'].flatMap((id) => [
        {
          kind: 'student' as const,
          student: student(id, { name: `Moss${id}`, alias: `Mossy${id}`, team: `Mosses${id}` }),
        },
        { kind: 'seat' as const, seat: seat(id, { name: `Moss${id}`, studentId: id as StudentId }) },
        answer('r1', id),
      ]),
      { kind: 'seat', seat: seat('asked', { name: ' MOSSA', reason: 'refused', status: 'gone' }) },
    ]);
  });
  afterEach(async () => {
    vi.useRealTimers();
    await store.close();
    await where.remove();
  });

  /** The words that start with a mark and stand in any file of the data folder. */
  function found(mark: RegExp): readonly string[] {
    const files = readdirSync(where.dataFolder, { recursive: true, withFileTypes: true });
    const texts = files
      .filter((file) => file.isFile())
      .map(({ parentPath, name }) => readFileSync(join(parentPath, name), 'latin1'));
    return [...new Set(texts.flatMap((text) => text.match(mark) ?? []))].sort();
  }

  it('is in no file once a group is purged', async () => {
    expect(found(/Moss[a-z]+/g).length).toBeGreaterThanOrEqual(8);
    await store.groups.update(groupId, { purgeAt: time(1) });
    await store.groups.purge(time(2));
    expect(found(/Moss[a-z]+/gi)).toEqual([]);
    expect(found(/Fernways/g)).toEqual(['Fernways']);
  });

  it('is in no file once a group is removed', async () => {
    await store.groups.remove(groupId);
    expect(found(/Moss[a-z]+/gi)).toEqual([]);
  });

  it('is in no file once a student is removed; the others stay', async () => {
    await store.groups.removeStudent('a' as StudentId);
    expect(found(/Moss(es|y)?[ab]/gi)).toEqual(['Mossb', 'Mossesb', 'Mossyb']);
    expect([...((await store.classes.load(classId))?.seats.keys() ?? [])]).toEqual(['b']);
  });

  it('stays in a backup made before, and only there', async () => {
    const backup = join(where.dataFolder, 'backups', 'before.db');
    await backUp(where.path, backup);
    await store.groups.remove(groupId);
    expect(readFileSync(backup, 'latin1')).toContain('Mossgroup');
    expect(readFileSync(where.path, 'latin1')).not.toMatch(/Moss/);
    expect(existsSync(`${where.path}-wal`) ? readFileSync(`${where.path}-wal`).length : 0).toBe(0);
  });

  it('goes as soon as another program has stopped reading', async () => {
    vi.useFakeTimers();
    const reader = connect(where.path);
    reader.exec('begin');
    reader.prepare('select * from students').all();
    const asked = performance.now();
    await store.groups.removeStudent('a' as StudentId);
    // Answers come through the same connection: they did not wait for the reader.
    expect(performance.now() - asked).toBeLessThan(2000);
    expect(found(/Mossa/g)).toEqual(['Mossa']);
    await vi.advanceTimersByTimeAsync(10_000);
    expect(found(/Mossa/g)).toEqual(['Mossa']);
    reader.exec('commit');
    reader.close();
    await vi.advanceTimersByTimeAsync(10_000);
    expect(found(/Mossa/gi)).toEqual([]);
    expect(vi.getTimerCount()).toBe(0);
  });

  it('goes when the store is closed, if not before', async () => {
    vi.useFakeTimers();
    const reader = connect(where.path);
    reader.exec('begin');
    reader.prepare('select * from students').all();
    await store.groups.removeStudent('a' as StudentId);
    reader.close();
    await store.close();
    expect(vi.getTimerCount()).toBe(0);
    expect(found(/Mossa/gi)).toEqual([]);
  });

  it('goes from the copies too that SQLite leaves when it moves rows from page to page', async () => {
    const own = tempPlace();
    const connection = connect(own.path);
    const dead = churn(connection);
    connection.pragma('wal_checkpoint(truncate)');
    const left = () => {
      const names = new Set(readFileSync(own.path, 'latin1').match(/Moss\d+feather/g));
      return dead.filter((name) => names.has(name)).length;
    };
    // `secure_delete` alone does not do it.
    expect(left()).toBeGreaterThan(0);
    new Eraser(connection, (error) => expect(error).toBeUndefined()).erase();
    expect(left()).toBe(0);
    connection.close();
    await own.remove();
  });
});

/** Rows that come, grow and go in a steady but scattered order; the names of those that are gone. */
function churn(connection: Connection): readonly string[] {
  connection.exec('create table rows (id text primary key, name text, filling text) strict');
  const insert = connection.prepare('insert into rows values (?, ?, ?)');
  const grow = connection.prepare('update rows set filling = ? where id = ?');
  const remove = connection.prepare('delete from rows where id = ?');
  const alive: { readonly id: string; readonly name: string }[] = [];
  const dead: string[] = [];
  let state = 7;
  const below = (limit: number) => {
    state = (state * 48_271) % 2_147_483_647;
    return state % limit;
  };
  const steps = connection.transaction(() => {
    for (let step = 0; step < 12_000; step += 1) {
      const what = below(100);
      const index = below(alive.length || 1);
      const picked = alive[index];
      if (what < 50 || picked === undefined) {
        const row = { id: `${String(below(1_000_000))}-${String(step)}`, name: `Moss${String(step)}feather` };
        insert.run(row.id, row.name, 'x'.repeat(below(900)));
        alive.push(row);
      } else if (what < 72) {
        grow.run('y'.repeat(below(900)), picked.id);
      } else {
        remove.run(picked.id);
        dead.push(picked.name);
        alive.splice(index, 1);
      }
    }
  });
  steps();
  return dead;
}
