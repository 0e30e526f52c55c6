import { once } from 'node:events';
import { text } from 'node:stream/consumers';
import { runTypescript } from '../server/store/run-typescript.ts';
import type { TempPlace } from '../server/store/temp-place.ts';
import type { Ended } from './started.ts';

/** What `npm run backup` or `npm run restore` runs once all is built, in a process of its own, on a data folder. */
export async function runScript(
  name: 'backup' | 'restore',
  where: TempPlace,
  args: readonly string[],
): Promise<Ended> {
  const child = runTypescript(`server/${name}.ts`, args, { DATA_DIR: where.dataFolder });
  const ended = once(child, 'close');
  const [output, complaint] = await Promise.all([text(child.stdout), text(child.stderr)]);
  await ended;
  return { code: child.exitCode, output, complaint };
}
