import fs from 'node:fs';
import { createRequire, syncBuiltinESMExports } from 'node:module';
import process from 'node:process';

/**
 * Loaded into a server process by `--import`, to show that the torture can fail: whatever `synchronous` the store asks
 * for, it gets ROOTCALL_SYNCHRONOUS and is told that it got what it needs; what it syncs itself is not synced.
 */
const Database = createRequire(import.meta.url)('better-sqlite3');
const { pragma } = Database.prototype;
Database.prototype.pragma = function (text, options) {
  if (/^\s*synchronous\s*=/i.test(text))
    return pragma.call(this, `synchronous = ${process.env.ROOTCALL_SYNCHRONOUS}`, options);
  if (/^\s*synchronous\s*$/i.test(text)) return options?.simple ? 2 : [{ synchronous: 2 }];
  return pragma.call(this, text, options);
};

for (const name of ['fsync', 'fdatasync']) fs[name] = (_file, done) => setImmediate(done, null);
syncBuiltinESMExports();
