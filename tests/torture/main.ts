import { isBuilt } from '../support/server-process.ts';
import { fuzz } from './fuzz.ts';
import { kills } from './kills.ts';
import { powerCuts } from './power-cuts.ts';
import { randomClasses } from './random-classes.ts';
import type { Report } from './report.ts';
import { soak } from './soak.ts';

/** What a class has to stand: `npm run torture`, or parts of it with a size: `npm run torture kills=20 seed=7`. */
if (!isBuilt()) throw new Error('There is no build. `npm run build` makes one.');
const given = new Map(process.argv.slice(2).map((word) => word.split('=') as [string, string | undefined]));
const seed = Number(given.get('seed') ?? Date.now() % 1_000_000);
given.delete('seed');

const parts: Readonly<Record<string, { readonly size: number; run(size: number): Promise<Report> }>> = {
  kills: { size: 200, run: (size) => kills(size, seed) },
  'power-cuts': { size: 50, run: (size) => powerCuts(size, seed) },
  fuzz: { size: 100_000, run: (size) => fuzz(size, seed) },
  classes: { size: 500, run: (size) => randomClasses(size, seed) },
  soak: { size: 30, run: (size) => soak(size, seed) },
};

let ok = true;
process.stdout.write(`seed ${String(seed)}\n`);
for (const [name, { size, run }] of Object.entries(parts)) {
  if (given.size > 0 && !given.has(name)) continue;
  const start = performance.now();
  const report = await run(Number(given.get(name) ?? size));
  ok &&= report.ok;
  const seconds = ((performance.now() - start) / 1000).toFixed(0);
  process.stdout.write(`${report.ok ? 'held' : 'NOT HELD'}  ${name} (${seconds} s): ${report.text}\n`);
}
process.exit(ok ? 0 : 1);
