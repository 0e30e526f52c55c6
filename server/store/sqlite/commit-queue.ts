import type { Database as Connection } from 'better-sqlite3';
import type { ClassId } from '../../../shared/protocol/ids.ts';
import type { Change } from '../../classroom/state.ts';
import { StoreError } from '../store-error.ts';
import type { LogSync } from './log-sync.ts';
import { sayWhy } from './say-why.ts';
import type { ChangeWriter } from './write-changes.ts';

interface Call {
  readonly classId: ClassId;
  readonly changes: readonly Change[];
  readonly resolve: () => void;
  readonly reject: (error: unknown) => void;
}

/** Each call that could not be kept, with the reason; the others were written. */
type Refused = ReadonlyMap<Call, unknown>;

/**
 * Group commit. One durable transaction takes in every call that arrived since the last one: what costs is the
 * wait for the disk, and all who come meanwhile share the next. There is no timer, so a single call waits for nobody.
 * The wait itself is outside SQLite, so that a slow disk does not hold up the server.
 */
export class CommitQueue {
  readonly #connection: Connection;
  readonly #writer: ChangeWriter;
  readonly #log: LogSync;
  readonly #writeAll: (calls: readonly Call[]) => void;
  readonly #writeEach: (calls: readonly Call[]) => Refused;
  #waiting: Call[] = [];
  #flushing: Promise<void> | undefined;
  #isLogDoubtful = false;
  #closed = false;

  constructor(connection: Connection, writer: ChangeWriter, log: LogSync) {
    this.#connection = connection;
    this.#writer = writer;
    this.#log = log;
    const writeAll = connection.transaction((calls: readonly Call[]) => calls.forEach(this.#write));
    // Inside another transaction the driver makes this a savepoint.
    const writeOne = connection.transaction(this.#write);
    const writeEach = connection.transaction((calls: readonly Call[]) => {
      const refused = new Map<Call, unknown>();
      for (const call of calls) {
        try {
          writeOne(call);
        } catch (error) {
          // A full or broken disk ends the whole transaction, which is then no one call's fault.
          if (!connection.inTransaction) throw error;
          refused.set(call, error);
        }
      }
      return refused;
    });
    this.#writeAll = (calls) => writeAll.immediate(calls);
    this.#writeEach = (calls) => writeEach.immediate(calls);
  }

  /** Resolves once the changes are durable. */
  add(classId: ClassId, changes: readonly Change[]): Promise<void> {
    if (this.#closed) return Promise.reject(new StoreError('The store is closed.'));
    return new Promise((resolve, reject) => {
      this.#waiting.push({ classId, changes, resolve, reject });
      this.#flushing ??= this.#flushAll();
    });
  }

  /** Writes what waits and takes nothing more. */
  async close(): Promise<void> {
    this.#closed = true;
    await this.#flushing;
    this.#log.close();
  }

  readonly #write = ({ classId, changes }: Call): void => this.#writer.changes(classId, changes);

  async #flushAll(): Promise<void> {
    await new Promise((resolve) => setImmediate(resolve));
    while (this.#waiting.length > 0) await this.#flush(this.#waiting.splice(0));
    this.#flushing = undefined;
  }

  async #flush(calls: readonly Call[]): Promise<void> {
    try {
      if (this.#isLogDoubtful) this.#emptyLog();
      const refused = this.#unsynced(() => this.#writeAllOrEach(calls));
      await this.#log.run().catch(() => this.#emptyLog());
      for (const call of calls) {
        if (refused.has(call)) call.reject(refused.get(call));
        else call.resolve();
      }
    } catch (error) {
      const why = sayWhy(error, this.#connection.name);
      for (const { reject } of calls) reject(why);
    }
  }

  /** Where one of them can't be kept the others are, in the same order and still with one wait for the disk. */
  #writeAllOrEach(calls: readonly Call[]): Refused {
    try {
      this.#writeAll(calls);
      return new Map();
    } catch {
      return this.#writeEach(calls);
    }
  }

  /** Commits without SQLite's own wait for the disk, which all other writes keep. */
  #unsynced<T>(write: () => T): T {
    this.#connection.pragma('synchronous = normal');
    try {
      return write();
    } finally {
      this.#connection.pragma('synchronous = full');
    }
  }

  /**
   * After a sync that failed, part of the log may be missing on the disk for good, and with it all that follows. So
   * what the log holds is brought into the store's file before anything is added to it.
   */
  #emptyLog(): void {
    this.#isLogDoubtful = true;
    const [emptied] = this.#connection.pragma('wal_checkpoint(truncate)') as readonly { busy: number }[];
    if (emptied?.busy !== 0) throw new StoreError(`${this.#connection.name} is in use by another program.`);
    this.#isLogDoubtful = false;
  }
}
