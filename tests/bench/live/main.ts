import { cpus } from 'node:os';
import { rmSync } from 'node:fs';
import { prepareClass } from '../../support/prepared-class.ts';
import { isBuilt } from '../../support/server-process.ts';
import { answers } from './answers.ts';
import { memory, usualClass } from './at-rest.ts';
import { comingBack } from './coming-back.ts';
import { deskUpdates } from './desk-updates.ts';
import { OwnLoad, table, type Row } from './figures.ts';
import { push } from './push.ts';

/** The live wire under load: the production build in its own process, what loads it in this one. */
if (!isBuilt()) throw new Error('There is no build. `npm run build` makes one.');
const load = new OwnLoad();
const prepared = await prepareClass(1000);
const parts: Readonly<Record<string, () => Promise<Row[]>>> = {
  push: async () => [...(await push(prepared, load, 200, 1.4)), ...(await push(prepared, load, 1000, 1.15))],
  answers: () => answers(prepared, load),
  back: () => comingBack(prepared, load),
  desk: () => deskUpdates(load),
  memory: () => memory(prepared),
  class: () => usualClass(load),
};
const wanted = process.argv.slice(2).filter((name) => name in parts);
const rows: Row[] = [];
for (const [name, measure] of Object.entries(parts)) {
  if (wanted.length > 0 && !wanted.includes(name)) continue;
  process.stdout.write(`${name} …\n`);
  const measured = await measure().catch((error: unknown): Row[] => [
    { measure: name, value: null, goal: null, note: `broke off: ${String(error)}` },
  ]);
  process.stdout.write(`${table(measured)}\n\n`);
  rows.push(...measured);
}
rmSync(prepared.dataDir, { recursive: true });
process.stdout.write(
  `\nNode ${process.version}, ${String(cpus().length)} cores; ratios of the same run mean something, the rest little.\n\n`,
);
process.stdout.write(`${table(rows)}\n\n${load.report()}\n`);
process.exit(0);
