import { closeSync, existsSync, mkdirSync, openSync } from 'node:fs';
import { dirname } from 'node:path';
import { StoreError } from '../store-error.ts';
import { connect } from './connect.ts';
import { countRows, examine, type RowCounts } from './examine.ts';
import { sayWhy } from './say-why.ts';
import { discard, putInPlace } from './whole-file.ts';

/**
 * Copies the store at `path`, as it is at one moment, into the new file `to`, while a server may be writing to it.
 * The copy has its name only once it has been looked through and lies safely on the disk.
 */
export async function backUp(path: string, to: string): Promise<RowCounts> {
  if (!existsSync(path)) throw new StoreError(`There is no store at ${path} yet.`);
  if (existsSync(to)) throw new StoreError(`${to} is already there. Choose another name.`);
  const part = `${to}.part`;
  try {
    mkdirSync(dirname(to), { recursive: true, mode: 0o700 });
    discard(part);
    // Names of pupils lie here: for one account only, from the first byte on.
    closeSync(openSync(part, 'wx', 0o600));
    const there = await copyNow(path, part);
    const copied = examine(part, to);
    if (!sameCounts(there, copied))
      throw new StoreError(`${to} did not become what the store is. Try again.`);
    putInPlace(part, to);
    return copied;
  } catch (error) {
    throw sayWhy(error, to);
  } finally {
    discard(part);
  }
}

async function copyNow(path: string, part: string): Promise<RowCounts> {
  const connection = connect(path);
  try {
    // The first read holds on to this moment for all that follows, and keeps no writer waiting.
    connection.exec('begin');
    const counts = countRows(connection);
    await connection.backup(part);
    connection.exec('commit');
    return counts;
  } finally {
    connection.close();
  }
}

function sameCounts(a: RowCounts, b: RowCounts): boolean {
  return a.size === b.size && [...a].every(([table, rows]) => b.get(table) === rows);
}
