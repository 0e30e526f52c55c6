import BetterSqlite3, { type Database as Connection } from 'better-sqlite3';
import { migrations } from '../migrations/list.ts';
import { StoreError } from '../store-error.ts';
import { isOurs } from './connect.ts';

/** How many rows each table holds. */
export type RowCounts = ReadonlyMap<string, number>;

export function countRows(connection: Connection): RowCounts {
  const tables = connection
    .prepare<[], string>(`select name from sqlite_schema where type = 'table' order by name`)
    .pluck()
    .all();
  return new Map(
    tables.map((name) => [
      name,
      connection.prepare<[], number>(`select count(*) from "${name}"`).pluck().get() ?? 0,
    ]),
  );
}

/**
 * Looks through the whole of a copy and makes it one file, without a log beside it. What is wrong is said of `name`,
 * the file that a person knows.
 */
export function examine(copy: string, name: string): RowCounts {
  const connection = new BetterSqlite3(copy, { fileMustExist: true });
  try {
    if (!isOurs(connection)) throw new StoreError(`${name} belongs to another program.`);
    const schema = connection.pragma('user_version', { simple: true }) as number;
    if (schema > migrations.length) {
      throw new StoreError(
        `${name} was written by a newer Rootcall (schema ${String(schema)}; this one knows ${String(migrations.length)}). Use the newer version.`,
      );
    }
    connection.pragma('journal_mode = delete');
    if (connection.pragma('integrity_check(1)', { simple: true }) !== 'ok') throw notABackup(name);
    if ((connection.pragma('foreign_key_check') as readonly unknown[]).length > 0) throw notABackup(name);
    return countRows(connection);
  } catch (error) {
    if (isDamage(error)) throw notABackup(name, error);
    throw error;
  } finally {
    connection.close();
  }
}

export function isDamage(error: unknown): boolean {
  return error instanceof BetterSqlite3.SqliteError && /^SQLITE_(NOTADB|CORRUPT)/.test(error.code);
}

function notABackup(name: string, cause?: unknown): StoreError {
  return new StoreError(`${name} is damaged, or is not a backup of Rootcall.`, { cause });
}
