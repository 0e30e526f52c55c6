import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { loadConfig, storePath } from './config.ts';
import { inWords, stamp } from './store/sqlite/in-words.ts';
import { restore } from './store/sqlite/restore.ts';

/** `npm run restore -- file [--force]`: puts a backup in the place of the store. */
function main(): void {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: { force: { type: 'boolean', default: false } },
  });
  const config = loadConfig();
  if (!config.ok) throw new Error(config.error);
  const [file] = positionals;
  if (file === undefined) throw new Error('Say which backup: npm run restore -- FILE');
  const path = storePath(config.value);
  const { rows, aside } = restore(
    resolve(file),
    path,
    values.force ? path.replace(/\.db$/, `-until-${stamp(new Date())}.db`) : null,
  );
  const kept = aside === null ? '' : ` The store before it is kept as ${aside}.`;
  process.stdout.write(
    `${path} now holds ${inWords(rows)}; what was deleted since the backup is back.${kept}\n`,
  );
}

try {
  main();
} catch (error) {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = 1;
}
