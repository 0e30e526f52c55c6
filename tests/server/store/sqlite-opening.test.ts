import BetterSqlite3 from 'better-sqlite3';
import {
  chmodSync,
  mkdirSync,
  openSync,
  closeSync,
  readFileSync,
  statSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { migrations } from '../../../server/store/migrations/list.ts';
import { connect } from '../../../server/store/sqlite/connect.ts';
import { migrate } from '../../../server/store/sqlite/migrate.ts';
import { openStore } from '../../../server/store/sqlite/open-store.ts';
import { StoreError } from '../../../server/store/store-error.ts';
import { classId, fillStore, group, student, teacher } from './samples.ts';
import { tempPlace, type TempPlace } from './temp-place.ts';

describe('opening a SQLite store', () => {
  let where: TempPlace;

  beforeEach(() => {
    where = tempPlace();
  });
  afterEach(async () => {
    await where.remove();
  });

  /** The one line that a person reads. */
  function refusal(path = where.path): string {
    try {
      void openStore({ path }).close();
    } catch (error) {
      if (!(error instanceof StoreError)) throw error;
      expect(error.message).toContain(path);
      expect(error.message).not.toContain('\n');
      return error.message;
    }
    throw new Error('the store was opened');
  }

  function edit(change: (database: BetterSqlite3.Database) => void): void {
    mkdirSync(dirname(where.path), { recursive: true });
    const database = new BetterSqlite3(where.path);
    change(database);
    database.close();
  }

  it('writes through to the disk at every commit and enforces foreign keys', () => {
    const connection = connect(where.path);
    const setting = (name: string) => connection.pragma(name, { simple: true });
    try {
      expect(setting('journal_mode')).toBe('wal');
      // 2 is FULL: https://www.sqlite.org/pragma.html#pragma_synchronous
      expect(setting('synchronous')).toBe(2);
      expect(setting('foreign_keys')).toBe(1);
      expect(setting('secure_delete')).toBe(1);
      expect(setting('busy_timeout')).toBe(5000);
    } finally {
      connection.close();
    }
  });

  it('is for the account of the server only, in a folder that is open to all too', async () => {
    mkdirSync(dirname(where.path));
    chmodSync(dirname(where.path), 0o755);
    const store = await where.open();
    await fillStore(store);
    for (const log of ['', '-wal', '-shm']) expect(statSync(where.path + log).mode & 0o077).toBe(0);
    await store.close();
  });

  it('enforces foreign keys after a migration too', () => {
    const connection = connect(where.path);
    try {
      migrate(connection, where.path);
      expect(connection.pragma('foreign_keys', { simple: true })).toBe(1);
    } finally {
      connection.close();
    }
  });

  it('makes a folder that only its own account may read', async () => {
    const store = await where.open();
    await store.close();
    expect(statSync(dirname(where.path)).mode & 0o077).toBe(0);
  });

  it('opens in memory', async () => {
    const store = openStore({ path: ':memory:' });
    await fillStore(store);
    expect(await store.classes.open()).toEqual([classId]);
    await store.close();
  });

  it('numbers its migrations from 1 without a gap', () => {
    expect(migrations.map(({ number }) => number)).toEqual(migrations.map((_, index) => index + 1));
  });

  it('brings an empty file to the newest schema once, and keeps what is in it', async () => {
    let store = await where.open();
    expect(store.describe()).toEqual({ kind: 'sqlite', schema: migrations.length });
    await store.teachers.create(teacher);
    await store.close();
    store = await where.open();
    expect(store.describe().schema).toBe(migrations.length);
    expect(await store.teachers.count()).toBe(1);
    await store.close();
  });

  it('lets a later step rebuild a table of a filled store without losing what refers to it', async () => {
    const store = await where.open();
    await fillStore(store);
    await store.groups.saveStudent(group().id, student('a'));
    await store.close();
    const connection = connect(where.path);
    const rebuild = {
      number: migrations.length + 1,
      up: (database: BetterSqlite3.Database) =>
        database.exec(`
          create table new_groups (id text primary key, name text not null) strict;
          insert into new_groups select id, name from groups;
          drop table groups;
          alter table new_groups rename to groups;`),
    };
    expect(migrate(connection, where.path, [...migrations, rebuild])).toBe(migrations.length + 1);
    expect(connection.prepare('select count(*) from students').pluck().get()).toBe(1);
    connection.close();
  });

  it('leaves the store as it was where a step breaks off or breaks a reference', async () => {
    const store = await where.open();
    await fillStore(store);
    await store.close();
    const connection = connect(where.path);
    const next = (sql: string) => [
      ...migrations,
      { number: migrations.length + 1, up: (database: BetterSqlite3.Database) => void database.exec(sql) },
    ];
    expect(() => migrate(connection, where.path, next('delete from groups; select nonsense;'))).toThrow();
    expect(() => migrate(connection, where.path, next('delete from groups;'))).toThrow(StoreError);
    expect(connection.prepare('select count(*) from groups').pluck().get()).toBe(1);
    expect(connection.pragma('user_version', { simple: true })).toBe(migrations.length);
    connection.close();
  });

  it('refuses a store of a newer version and leaves it as it is', async () => {
    await (await where.open()).close();
    edit((database) => database.pragma('user_version = 999'));
    const before = readFileSync(where.path);
    expect(refusal()).toContain('newer Rootcall (schema 999');
    expect(readFileSync(where.path).equals(before)).toBe(true);
  });

  it("refuses another program's database", () => {
    edit((database) => database.exec('create table recipes (title text)'));
    expect(refusal()).toContain('belongs to another program');
    edit((database) => expect(database.pragma('application_id', { simple: true })).toBe(0));
  });

  it('refuses a file that is no database', () => {
    mkdirSync(dirname(where.path));
    writeFileSync(
      where.path,
      'A shopping list, long enough to be read as a header of something. '.repeat(20),
    );
    expect(refusal()).toContain('is damaged');
  });

  it('refuses a store with damage in its header', async () => {
    await (await where.open()).close();
    const bytes = readFileSync(where.path);
    writeFileSync(where.path, bytes.fill(0xa5, 0, 64));
    expect(refusal()).toContain('is damaged');
    expect(readFileSync(where.path).equals(bytes)).toBe(true);
  });

  it('refuses a store of which half is gone', async () => {
    await (await where.open()).close();
    const bytes = readFileSync(where.path);
    writeFileSync(where.path, bytes.subarray(0, bytes.length / 2));
    expect(refusal()).toContain('is damaged');
  });

  it('refuses a store with damage in its midst', async () => {
    const store = await where.open();
    await fillStore(store);
    await store.close();
    const file = openSync(where.path, 'r+');
    const { size } = statSync(where.path);
    for (let page = 4096; page < size; page += 4096) writeSync(file, Buffer.alloc(64, 0xa5), 0, 64, page);
    closeSync(file);
    expect(refusal()).toContain('is damaged');
  });

  it('refuses a folder that is a file, and a file that is a folder', () => {
    writeFileSync(join(where.folder, 'data'), '');
    expect(refusal()).toContain("can't be written");
    mkdirSync(join(where.folder, 'other', 'rootcall.db'), { recursive: true });
    expect(refusal(join(where.folder, 'other', 'rootcall.db'))).toContain("can't be written");
  });

  it('refuses a folder that may not be written, with or without a store in it', async () => {
    await (await where.open()).close();
    const empty = join(where.folder, 'empty');
    mkdirSync(empty);
    for (const folder of [dirname(where.path), empty]) chmodSync(folder, 0o555);
    chmodSync(where.folder, 0o755);
    chmodSync(where.path, 0o644);
    for (const path of [where.path, join(empty, 'rootcall.db')]) {
      expect(withoutPrivileges(() => refusal(path))).toContain("can't be written");
    }
    for (const folder of [dirname(where.path), empty]) chmodSync(folder, 0o755);
  });
});

/** The superuser may write everywhere, so it steps down meanwhile. */
function withoutPrivileges<T>(run: () => T): T {
  if (process.getuid?.() !== 0) return run();
  const nobody = 65_534;
  process.seteuid?.(nobody);
  try {
    return run();
  } finally {
    process.seteuid?.(0);
  }
}
