import { statSync } from 'node:fs';
import type { Database as Connection } from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { CommitQueue } from '../../../server/store/sqlite/commit-queue.ts';
import { connect } from '../../../server/store/sqlite/connect.ts';
import type { LogSync } from '../../../server/store/sqlite/log-sync.ts';
import { changeWriter } from '../../../server/store/sqlite/write-changes.ts';
import { known } from '../../../shared/lib/assert.ts';
import { classId, fillStore, student } from './samples.ts';
import { tempPlace, type TempPlace } from './temp-place.ts';
import { transactionsInLog } from './wal.ts';

/** A disk that is done, or fails, when told. */
class HandSync implements LogSync {
  readonly waiting: PromiseWithResolvers[] = [];
  readonly #started = new Set<() => void>();

  run(): Promise<void> {
    return new Promise((resolve, reject) => {
      this.waiting.push({ resolve, reject });
      for (const tell of this.#started) tell();
    });
  }

  close(): void {
    this.#started.clear();
  }

  /** Resolves once so many syncs are asked for and not done. */
  async asked(count: number): Promise<void> {
    while (this.waiting.length < count) await new Promise<void>((resolve) => this.#started.add(resolve));
  }

  async finish(error?: Error): Promise<void> {
    await this.asked(1);
    const { resolve, reject } = known(this.waiting.shift(), 'sync');
    if (error) reject(error);
    else resolve();
  }
}

interface PromiseWithResolvers {
  readonly resolve: () => void;
  readonly reject: (error: Error) => void;
}

describe('the queue of commits', () => {
  let where: TempPlace;
  let connection: Connection;
  let disk: HandSync;
  let queue: CommitQueue;

  beforeEach(async () => {
    where = tempPlace();
    const store = await where.open();
    await fillStore(store);
    await store.close();
    connection = connect(where.path);
    disk = new HandSync();
    queue = new CommitQueue(connection, changeWriter(connection), disk);
  });
  afterEach(async () => {
    await queue.close();
    connection.close();
    await where.remove();
  });

  const add = (id: string) => queue.add(classId, [{ kind: 'student', student: student(id) }]);
  const kept = () => connection.prepare('select id from students order by id').pluck().all();

  it('acknowledges when the disk has the log, and takes all who come meanwhile into the next', async () => {
    const done: string[] = [];
    const note = (id: string) => add(id).then(() => done.push(id));
    const all = [note('a'), note('b')];
    await disk.asked(1);
    expect(transactionsInLog(where.path)).toBe(1);
    all.push(note('c'), note('d'));
    await new Promise((resolve) => setImmediate(resolve));
    expect(done).toEqual([]);
    expect(transactionsInLog(where.path)).toBe(1);
    await disk.finish();
    await disk.asked(1);
    expect(done).toEqual(['a', 'b']);
    expect(transactionsInLog(where.path)).toBe(2);
    await disk.finish();
    await Promise.all(all);
    expect(done).toEqual(['a', 'b', 'c', 'd']);
  });

  it('leaves all other writes to wait for the disk by themselves', async () => {
    const one = add('a');
    await disk.asked(1);
    // 2 is FULL: https://www.sqlite.org/pragma.html#pragma_synchronous
    expect(connection.pragma('synchronous', { simple: true })).toBe(2);
    await disk.finish();
    await one;
  });

  it('brings the log into the store where the disk did not take it', async () => {
    const one = add('a');
    await disk.finish(new Error('EIO'));
    await one;
    expect(statSync(`${where.path}-wal`).size).toBe(0);
    expect(kept()).toEqual(['a']);
  });

  it('acknowledges nothing upon a log that the disk did not take', async () => {
    connection.pragma('busy_timeout = 0');
    const reader = connect(where.path);
    reader.exec('begin');
    reader.prepare('select * from students').all();
    const one = add('a');
    const failed = expect(one).rejects.toMatchObject({ name: 'StoreError' });
    await disk.finish(new Error('EIO'));
    await failed;
    await expect(add('b')).rejects.toMatchObject({ name: 'StoreError' });
    expect(disk.waiting).toEqual([]);
    reader.exec('commit');
    reader.close();

    const next = add('c');
    await disk.asked(1);
    // What was there before is in the file; the log holds the new one alone.
    expect(transactionsInLog(where.path)).toBe(1);
    await disk.finish();
    await next;
    expect(kept()).toEqual(['a', 'c']);
  });
});
