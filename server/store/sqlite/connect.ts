import BetterSqlite3, { type Database as Connection } from 'better-sqlite3';
import { closeSync, mkdirSync, openSync } from 'node:fs';
import { dirname } from 'node:path';
import { StoreError } from '../store-error.ts';
import { damaged, sayWhy } from './say-why.ts';

export const inMemory = ':memory:';

/** Marks a database file as ours: "Root" in ASCII. */
const applicationId = 0x526f6f74;

/** Opens the file, makes it and its folder where they are missing, and sees that what it keeps survives a power cut. */
export function connect(path: string): Connection {
  let connection: Connection | undefined;
  try {
    if (path !== inMemory) {
      // Names of pupils lie here: for the server's own account only. SQLite gives its log the same mode.
      mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
      closeSync(openSync(path, 'a', 0o600));
    }
    connection = new BetterSqlite3(path, { timeout: 5000 });
    claim(connection, path);
    configure(connection, path);
    return connection;
  } catch (error) {
    connection?.close();
    throw sayWhy(error, path);
  }
}

function claim(connection: Connection, path: string): void {
  if (isOurs(connection)) return;
  const isEmpty = connection.prepare('select 1 from sqlite_schema').get() === undefined;
  if (!isEmpty) throw new StoreError(`${path} belongs to another program. Choose another data folder.`);
  connection.pragma(`application_id = ${String(applicationId)}`);
}

export function isOurs(connection: Connection): boolean {
  return connection.pragma('application_id', { simple: true }) === applicationId;
}

function configure(connection: Connection, path: string): void {
  connection.pragma('journal_mode = wal');
  connection.pragma('synchronous = full');
  // Only this makes macOS write through the disk's own cache; elsewhere it does nothing.
  connection.pragma('fullfsync = on');
  connection.pragma('foreign_keys = on');
  // What is deleted is overwritten: a purged name must not stay behind in free pages.
  connection.pragma('secure_delete = on');
  // Nor may names be written anywhere but beside the store.
  connection.pragma('temp_store = memory');
  const mode = connection.pragma('journal_mode', { simple: true });
  const synchronous = connection.pragma('synchronous', { simple: true });
  if (synchronous !== 2 || mode !== (path === inMemory ? 'memory' : 'wal')) {
    throw new StoreError(`${path} can't be kept safely on this disk. Choose a data folder on a local disk.`);
  }
  const state = connection.pragma('quick_check(1)', { simple: true });
  if (state !== 'ok') throw new StoreError(damaged(path));
}
