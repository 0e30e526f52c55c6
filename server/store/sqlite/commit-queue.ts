import type { Database as Connection } from 'better-sqlite3';
import type { ClassId } from '../../../shared/protocol/ids.ts';
import type { Change } from '../../classroom/state.ts';
import { StoreError } from '../store-error.ts';
import type { ChangeWriter } from './write-changes.ts';

interface Call {
  readonly classId: ClassId;
  readonly changes: readonly Change[];
  readonly resolve: () => void;
  readonly reject: (error: unknown) => void;
}

/**
 * Group commit. One durable transaction takes in every call that arrived since the last one: what costs is the
 * wait for the disk, and all who come meanwhile share the next. There is no timer, so a single call waits for nobody.
 */
export class CommitQueue {
  readonly #writer: ChangeWriter;
  readonly #writeAll: (calls: readonly Call[]) => void;
  readonly #writeEach: (calls: readonly Call[]) => ReadonlyMap<Call, unknown>;
  #waiting: Call[] = [];
  #closed = false;

  constructor(connection: Connection, writer: ChangeWriter) {
    this.#writer = writer;
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
      if (this.#waiting.length === 1) setImmediate(() => this.#flush());
    });
  }

  /** Writes what waits and takes nothing more. */
  close(): void {
    this.#closed = true;
    this.#flush();
  }

  readonly #write = ({ classId, changes }: Call): void => this.#writer.changes(classId, changes);

  #flush(): void {
    const calls = this.#waiting;
    if (calls.length === 0) return;
    this.#waiting = [];
    try {
      this.#writeAll(calls);
      for (const { resolve } of calls) resolve();
    } catch {
      this.#flushApart(calls);
    }
  }

  /** One of them can't be kept: the others are, in the same order and still with one wait for the disk. */
  #flushApart(calls: readonly Call[]): void {
    try {
      const refused = this.#writeEach(calls);
      for (const call of calls) {
        if (refused.has(call)) call.reject(refused.get(call));
        else call.resolve();
      }
    } catch (error) {
      for (const { reject } of calls) reject(error);
    }
  }
}
