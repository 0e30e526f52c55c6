import { once } from 'node:events';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { hashPassphrase, verifyPassphrase } from '../../server/passphrases.ts';
import type { TeacherId } from '../../shared/protocol/ids.ts';
import { runTypescript } from './store/run-typescript.ts';
import { teacher, teacherId, time } from './store/samples.ts';
import { tempPlace, type TempPlace } from './store/temp-place.ts';

describe('npm run passphrase', { timeout: 30_000 }, () => {
  let where: TempPlace;

  beforeEach(async () => {
    where = tempPlace();
    const store = await where.open();
    await store.teachers.create({ ...teacher, passphraseHash: await hashPassphrase('the first one') });
    await store.teachers.openSession({ tokenHash: 'a', teacherId, expiresAt: time(100) });
    await store.close();
  });
  afterEach(async () => {
    await where.remove();
  });

  async function run(args: readonly string[], input: string) {
    const child = runTypescript('server/passphrase.ts', args, { DATA_DIR: where.dataFolder });
    const said = { output: '', complaint: '' };
    child.stdout.on('data', (text: Buffer) => (said.output += text.toString()));
    child.stderr.on('data', (text: Buffer) => (said.complaint += text.toString()));
    child.stdin.end(input);
    const [code] = (await once(child, 'close')) as [number];
    return { code, ...said };
  }

  async function verifies(passphrase: string): Promise<boolean> {
    const store = await where.open();
    const kept = await store.teachers.byName(teacher.name);
    await store.close();
    return verifyPassphrase(passphrase, kept?.passphraseHash);
  }

  async function addTeacher(): Promise<void> {
    const store = await where.open();
    await store.teachers.create({ ...teacher, id: 'teacher-2' as TeacherId, name: 'Nils Varga' });
    await store.close();
  }

  it('sets the passphrase and signs the teacher out everywhere', async () => {
    await addTeacher();
    const { code, output, complaint } = await run(['--name', 'edda lindqvist'], 'seven quiet herons\n');
    expect({ code, complaint }).toEqual({ code: 0, complaint: '' });
    expect(output).toBe('Edda Lindqvist has a new passphrase and is signed out everywhere.\n');
    expect(await verifies('seven quiet herons')).toBe(true);
    expect(await verifies('the first one')).toBe(false);
    const store = await where.open();
    expect(await store.teachers.sessionTeacher('a', time(1))).toBeUndefined();
    await store.close();
  });

  it('needs no name where there is one teacher', async () => {
    expect((await run([], 'seven quiet herons\n')).code).toBe(0);
    expect(await verifies('seven quiet herons')).toBe(true);
  });

  it('says in one line what keeps it from doing so, and changes nothing', async () => {
    expect(await run([], 'short\n')).toEqual({
      code: 1,
      output: '',
      complaint: 'Use at least 8 characters.\n',
    });
    expect((await run(['--name', 'Somebody'], 'seven quiet herons\n')).complaint).toBe(
      'No teacher has this name. Teachers: Edda Lindqvist.\n',
    );
    await addTeacher();
    expect((await run([], 'seven quiet herons\n')).complaint).toBe(
      'Say whose passphrase: --name NAME. Teachers: Edda Lindqvist, Nils Varga.\n',
    );
    expect(await verifies('the first one')).toBe(true);
  });
});
