import BetterSqlite3 from 'better-sqlite3';
import { chmodSync, copyFileSync, existsSync, mkdirSync, renameSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import { StoreError } from '../store-error.ts';
import { examine, isDamage, type RowCounts } from './examine.ts';
import { sayWhy } from './say-why.ts';
import { discard, putInPlace } from './whole-file.ts';

export interface Restored {
  readonly rows: RowCounts;
  /** Where the store that was there before now lies. */
  readonly aside: string | null;
}

/**
 * Puts the backup `from` in the place of the store at `path`. If there is a store, `aside` says which name it takes;
 * without that it is left alone. Nothing is moved before the backup has been looked through.
 */
export function restore(from: string, path: string, aside: string | null): Restored {
  if (!statSync(from, { throwIfNoEntry: false })?.isFile()) throw new StoreError(`There is no file ${from}.`);
  const part = `${path}.part`;
  try {
    mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
    const isThere = existsSync(path);
    if (isThere) refuseWhileOpen(path);
    if (isThere && aside === null) {
      throw new StoreError(`${path} is there already. Say --force to keep it aside and restore.`);
    }
    const rows = takeIn(from, part);
    if (isThere && aside !== null) putAside(path, aside);
    // A log that stayed behind would be taken for the backup's own.
    discard(path);
    putInPlace(part, path);
    return { rows, aside: isThere ? aside : null };
  } catch (error) {
    throw sayWhy(error, path);
  } finally {
    discard(part);
  }
}

/** Copies a backup, with the log that a server which was killed left beside it, and looks it through. */
function takeIn(from: string, part: string): RowCounts {
  discard(part);
  copyFileSync(from, part);
  chmodSync(part, 0o600);
  if (existsSync(`${from}-wal`)) copyFileSync(`${from}-wal`, `${part}-wal`);
  return examine(part, from);
}

function putAside(path: string, aside: string): void {
  if (existsSync(aside)) throw new StoreError(`${aside} is already there. Try again.`);
  if (existsSync(`${path}-wal`)) renameSync(`${path}-wal`, `${aside}-wal`);
  renameSync(path, aside);
}

/** Whoever has it open holds a lock as long as the store is in use, also while nothing is written. */
function refuseWhileOpen(path: string): void {
  const connection = new BetterSqlite3(path, { timeout: 0 });
  try {
    connection.pragma('journal_mode = delete');
  } catch (error) {
    // A damaged store is what a backup is for.
    if (isDamage(error)) return;
    if (error instanceof BetterSqlite3.SqliteError && /^SQLITE_(BUSY|LOCKED)/.test(error.code)) {
      throw new StoreError(`${path} is in use. Stop the server first.`, { cause: error });
    }
    throw error;
  } finally {
    connection.close();
  }
}
