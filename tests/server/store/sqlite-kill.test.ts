import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { expect, it } from 'vitest';
import { known } from '../../../shared/lib/assert.ts';
import { classId } from './samples.ts';
import { runTypescript } from './run-typescript.ts';
import { tempPlace } from './temp-place.ts';

/** This shows that nothing is acknowledged from memory; against a power cut stands the check on `synchronous`. */
it('keeps every acknowledged commit when the process is killed', { timeout: 30_000 }, async () => {
  const where = tempPlace();
  try {
    const child = runTypescript('tests/server/store/commit-until-killed.ts', [where.path]);
    let complaints = '';
    child.stderr.on('data', (text: Buffer) => (complaints += text.toString()));
    const ended = once(child, 'close');
    const acknowledged: string[] = [];
    for await (const line of createInterface(child.stdout)) {
      acknowledged.push(line);
      if (acknowledged.length === 500) child.kill('SIGKILL');
    }
    await ended;
    expect(complaints).toBe('');
    expect(child.signalCode).toBe('SIGKILL');
    expect(acknowledged.length).toBeGreaterThanOrEqual(500);

    const store = await where.open();
    const state = known(await store.classes.load(classId), 'class');
    const answers = new Set<string>(state.rounds[0]?.answers.keys());
    expect(acknowledged.filter((id) => !answers.has(id))).toEqual([]);
    expect(answers.size).toBe(state.students.size);
    await store.close();
  } finally {
    await where.remove();
  }
});
