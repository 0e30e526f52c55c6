import type { Database as Connection } from 'better-sqlite3';
import { closeSync, fsync, openSync } from 'node:fs';
import { dirname } from 'node:path';
import { promisify } from 'node:util';
import { inMemory } from './connect.ts';
import { syncFolder } from './whole-file.ts';

/** Makes the write-ahead log safe against a power cut while other work goes on. */
export interface LogSync {
  /** Resolves once everything written to the log so far is on the disk. */
  run(): Promise<void>;
  close(): void;
}

const sync = promisify(fsync);

/** SQLite would wait for the disk itself, and with it the whole server; this waits in a thread of Node's. */
export function openLogSync({ name }: Connection): LogSync {
  if (name === inMemory) return { run: async () => undefined, close: () => undefined };
  // The log stays the same file while the store is open. No lock of SQLite's is on it, so it may be closed again.
  const log = openSync(`${name}-wal`, 'r+');
  // SQLite does this at its own first sync, which may come later than ours.
  syncFolder(dirname(name));
  return { run: () => sync(log), close: () => closeSync(log) };
}
