import { StoreError } from '../store-error.ts';

/** Turns what the driver or the file system threw into one line for a person. */
export function sayWhy(error: unknown, path: string): StoreError {
  if (error instanceof StoreError) return error;
  return new StoreError(sentenceFor(error, path), { cause: error });
}

export function damaged(path: string): string {
  return `${path} is damaged, or is not a store of Rootcall. Move it away and put a backup in its place.`;
}

function sentenceFor(error: unknown, path: string): string {
  const code = codeOf(error);
  if (/^SQLITE_(NOTADB|CORRUPT)/.test(code)) return damaged(path);
  if (/^(SQLITE_FULL|ENOSPC|EDQUOT)/.test(code)) return `The disk that ${path} lies on is full.`;
  if (/^SQLITE_IOERR/.test(code)) return `The disk that ${path} lies on reports an error.`;
  if (/^SQLITE_(BUSY|LOCKED)/.test(code)) return `${path} is in use by another program.`;
  if (/^(SQLITE_(CANTOPEN|READONLY|PERM)|EACCES|EPERM|EROFS|EISDIR|ENOTDIR|EEXIST|ENOENT)/.test(code)) {
    return `${path} can't be written. Give the server's account the right to write its folder, or choose another data folder.`;
  }
  // npm installed it without its binary (it was told to run no scripts), or for another Node.
  if (code === 'ERR_DLOPEN_FAILED' || /bindings file/.test(String(error))) {
    return 'The database driver has no binary for this machine. Make it: npm rebuild better-sqlite3 --ignore-scripts=false';
  }
  return `${path} can't be used: ${error instanceof Error ? error.message : String(error)}`;
}

function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error ? String(error.code) : '';
}
