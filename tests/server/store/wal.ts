import { existsSync, readFileSync } from 'node:fs';

/**
 * How many transactions the write-ahead log holds: in each, the last frame alone gives the database's size
 * (SQLite's "Database File Format", section 4.1, https://www.sqlite.org/fileformat2.html#walformat).
 */
export function transactionsInLog(databasePath: string): number {
  const path = `${databasePath}-wal`;
  if (!existsSync(path)) return 0;
  const log = readFileSync(path);
  if (log.length < 32) return 0;
  const frameBytes = 24 + log.readUInt32BE(8);
  const salt = log.subarray(16, 24);
  let count = 0;
  for (let at = 32; at + frameBytes <= log.length; at += frameBytes) {
    if (!log.subarray(at + 8, at + 16).equals(salt)) break;
    if (log.readUInt32BE(at + 4) > 0) count += 1;
  }
  return count;
}
