import { closeSync, existsSync, fsyncSync, openSync, renameSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';

/** Gives a finished database file its name: after a power cut it has it, or nothing has changed. */
export function putInPlace(part: string, path: string): void {
  sync(part, 'r+');
  renameSync(part, path);
  syncFolder(dirname(path));
}

/** Makes the names of its files safe. Windows can't open a folder, and needs it less. */
export function syncFolder(path: string): void {
  if (process.platform !== 'win32') sync(path, 'r');
}

/** With what SQLite keeps beside it. */
export function discard(path: string): void {
  for (const file of [`${path}-wal`, `${path}-shm`, `${path}-journal`, path])
    if (existsSync(file)) rmSync(file);
}

function sync(path: string, flags: 'r' | 'r+'): void {
  const file = openSync(path, flags);
  try {
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}
