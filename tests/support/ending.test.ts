import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { expect, it } from 'vitest';
import { end, isRunning } from './ending.ts';

it.each(['SIGKILL', 'SIGTERM'] as const)(
  'a process ended by %s can be ended again, and at once',
  async (signal) => {
    const child = spawn(process.execPath, ['--eval', 'setInterval(() => {}, 1000)'], { stdio: 'ignore' });
    await once(child, 'spawn');
    expect(isRunning(child)).toBe(true);
    await Promise.all([end(child, signal), end(child, signal)]);
    expect(child.signalCode).toBe(signal);
    await end(child, signal);
    expect(isRunning(child)).toBe(false);
  },
);

it('a process that ended by itself is gone', async () => {
  const child = spawn(process.execPath, ['--eval', ''], { stdio: 'ignore' });
  await once(child, 'exit');
  await end(child);
  await end(undefined);
  expect(isRunning(child)).toBe(false);
});
