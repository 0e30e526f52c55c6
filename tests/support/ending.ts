import type { ChildProcess } from 'node:child_process';
import { once } from 'node:events';

/** Whether a process is there. One that a signal ended has no exit code. */
export function isRunning(child: ChildProcess | undefined): child is ChildProcess {
  return child !== undefined && child.exitCode === null && child.signalCode === null;
}

/** Ends a process and resolves once it is gone; at once where it is gone already. */
export async function end(
  child: ChildProcess | undefined,
  signal: NodeJS.Signals = 'SIGKILL',
): Promise<void> {
  if (!isRunning(child)) return;
  const gone = once(child, 'exit');
  child.kill(signal);
  await gone;
}
