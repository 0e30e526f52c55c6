import { spawn, type ChildProcessWithoutNullStreams } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../..', import.meta.url));
const runner = fileURLToPath(new URL('run-typescript.mjs', import.meta.url));

/**
 * Runs a TypeScript file of this repository, named from its root, in a process of its own; where told, one whose files
 * may grow to so many kilobytes.
 */
export function runTypescript(
  file: string,
  args: readonly string[],
  env: Readonly<Record<string, string>> = {},
  largestFile?: number,
): ChildProcessWithoutNullStreams {
  const command = [process.execPath, runner, `${root}${file}`, ...args];
  // POSIX counts blocks of 512 bytes.
  const limit = `ulimit -f ${String((largestFile ?? 0) * 2)} && exec "$@"`;
  const [program = '', ...rest] = largestFile === undefined ? command : ['sh', '-c', limit, 'sh', ...command];
  return spawn(program, rest, {
    cwd: root,
    // eslint-disable-next-line no-restricted-properties -- the child's environment, not a setting of ours
    env: { ...process.env, ...env },
  });
}
