import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openStore } from '../../server/store/sqlite/open-store.ts';
import type { Store } from '../../server/store/store.ts';
import { known } from '../../shared/lib/assert.ts';
import { answer, classId, fillStore, round, student } from '../server/store/samples.ts';
import { tempPlace, type TempPlace } from '../server/store/temp-place.ts';
import { runScript } from './run-script.ts';

describe('npm run backup', { timeout: 30_000 }, () => {
  let where: TempPlace;
  let store: Store | undefined;

  beforeEach(() => {
    where = tempPlace();
  });
  afterEach(async () => {
    await store?.close();
    store = undefined;
    await where.remove();
  });

  const backUp = (...args: readonly string[]) => runScript('backup', where, args);

  async function openFilled(): Promise<Store> {
    store = await where.open();
    await fillStore(store);
    await store.classes.commit(classId, [{ kind: 'round', round: round('r1') }]);
    return store;
  }

  /** Adds students with an answer each, two at a time, until told to stop; gives back how many. */
  function keepAnswering(into: Store): () => Promise<number> {
    let stopped = false;
    let count = 0;
    const turn = async () => {
      while (!stopped) {
        count += 1;
        const id = `student-${String(count)}`;
        await into.classes.commit(classId, [{ kind: 'student', student: student(id) }, answer('r1', id)]);
        await new Promise((resolve) => setImmediate(resolve));
      }
    };
    const turns = [turn(), turn()];
    return async () => {
      stopped = true;
      await Promise.all(turns);
      return count;
    };
  }

  it('makes one whole file while a class goes on, for this account only, and says what is in it', async () => {
    const busy = await openFilled();
    const stop = keepAnswering(busy);
    const { code, output, complaint } = await backUp();
    const answered = await stop();
    expect({ code, complaint }).toEqual({ code: 0, complaint: '' });

    const backups = join(where.dataFolder, 'backups');
    const [file, ...others] = readdirSync(backups);
    expect(others).toEqual([]);
    expect(file).toMatch(/^rootcall-\d{4}-\d\d-\d\d-\d{6}\.db$/);
    const path = join(backups, known(file, 'file'));
    expect(statSync(path).mode & 0o777).toBe(0o600);
    expect(statSync(backups).mode & 0o777).toBe(0o700);

    const copy = openStore({ path });
    const state = known(await copy.classes.load(classId), 'class');
    await copy.close();
    const kept = known(state.rounds[0], 'round').answers.size;
    // Of one moment: each student came in one commit with the answer.
    expect(state.students.size).toBe(kept);
    expect(kept).toBeGreaterThan(0);
    expect(kept).toBeLessThan(answered);
    expect(output).toBe(
      `${path} holds 1 group, ${String(kept)} students, 1 class, ${String(kept)} answers; names are in it, so delete it once a group or student of today has been deleted.\n`,
    );
  });

  it('holds what a server that was killed left in the log', async () => {
    const open = await openFilled();
    await open.classes.commit(classId, [
      { kind: 'student', student: student('a') },
      { kind: 'student', student: student('b') },
    ]);
    const killed = tempPlace();
    mkdirSync(killed.dataFolder);
    for (const log of ['', '-wal']) writeFileSync(killed.path + log, readFileSync(where.path + log));
    const to = join(killed.folder, 'copy.db');
    expect(await runScript('backup', killed, [to])).toMatchObject({ code: 0 });
    const copy = new BetterSqlite3(to, { readonly: true });
    expect(copy.prepare('select count(*) from students').pluck().get()).toBe(2);
    copy.close();
    await killed.remove();
  });

  it('leaves a file that is there already, and nothing half done', async () => {
    await openFilled();
    const to = join(where.folder, 'kept.db');
    writeFileSync(to, 'mine');
    expect(await backUp(to)).toEqual({
      code: 1,
      output: '',
      complaint: `${to} is already there. Choose another name.\n`,
    });
    expect(readFileSync(to, 'utf8')).toBe('mine');
    const nowhere = join(to, 'copy.db');
    const { code, complaint } = await backUp(nowhere);
    expect(code).toBe(1);
    expect(complaint).toMatch(/^[^\n]+ can't be written\. [^\n]+\n$/);
    expect(readdirSync(where.folder).sort()).toEqual(['data', 'kept.db']);
  });

  it('makes nothing where there is no store', async () => {
    expect(await backUp()).toEqual({
      code: 1,
      output: '',
      complaint: `There is no store at ${where.path} yet.\n`,
    });
    expect(existsSync(dirname(where.path))).toBe(false);
  });

  it('refuses to copy a damaged store', async () => {
    await (await openFilled()).close();
    const bytes = readFileSync(where.path);
    for (let page = 4096; page < bytes.length; page += 4096) bytes.fill(0xa5, page, page + 64);
    writeFileSync(where.path, bytes);
    const { code, complaint } = await backUp();
    expect(code).toBe(1);
    expect(complaint).toMatch(/ is damaged, [^\n]+\n$/);
    rmSync(where.path);
  });
});
