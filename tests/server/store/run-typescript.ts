import { spawn, type ChildProcessWithoutNullStreams } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../..', import.meta.url));
const runner = fileURLToPath(new URL('run-typescript.mjs', import.meta.url));

/** Runs a TypeScript file of this repository, named from its root, in a process of its own. */
export function runTypescript(
  file: string,
  args: readonly string[],
  env: Readonly<Record<string, string>> = {},
): ChildProcessWithoutNullStreams {
  return spawn(process.execPath, [runner, `${root}${file}`, ...args], {
    cwd: root,
    // eslint-disable-next-line no-restricted-properties -- the child's environment, not a setting of ours
    env: { ...process.env, ...env },
  });
}
