import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { loadConfig, storePath } from './config.ts';
import { backUp } from './store/sqlite/backup.ts';
import { inWords, stamp } from './store/sqlite/in-words.ts';

/** `npm run backup -- [file]`: a copy of the store, which a server may be using meanwhile. */
async function main(): Promise<void> {
  const [file] = parseArgs({ allowPositionals: true }).positionals;
  const config = loadConfig();
  if (!config.ok) throw new Error(config.error);
  const to = resolve(file ?? join(config.value.dataDir, 'backups', `rootcall-${stamp(new Date())}.db`));
  const rows = await backUp(storePath(config.value), to);
  process.stdout.write(
    `${to} holds ${inWords(rows)}; names are in it, so delete it once a group or student of today has been deleted.\n`,
  );
}

main().catch((error: unknown) => {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = 1;
});
