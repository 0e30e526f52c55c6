import { describe, expect, it } from 'vitest';
import type { TeacherId } from '../../../../shared/protocol/ids.ts';
import type { StoreAt } from '../../../support/store-contract.ts';
import { teacher, teacherId, time } from '../samples.ts';

/** Who may sit at a Desk. */
export function describeTeachers(at: StoreAt): void {
  describe('teachers', () => {
    it('keeps a teacher and finds the name in any case', async () => {
      expect(await at.store.teachers.count()).toBe(0);
      expect(await at.store.teachers.create({ ...teacher, name: 'Ärla Lindqvist' })).toBe('created');
      await at.reopen();
      expect(await at.store.teachers.count()).toBe(1);
      expect(await at.store.teachers.list()).toEqual([{ id: teacherId, name: 'Ärla Lindqvist' }]);
      expect(await at.store.teachers.byName('ÄRLA lindqvist')).toEqual({
        id: teacherId,
        name: 'Ärla Lindqvist',
        passphraseHash: 'hash-1',
      });
      expect(await at.store.teachers.byName('Arla Lindqvist')).toBeUndefined();
    });

    it('refuses a name that is taken, in any case, and keeps the first teacher', async () => {
      await at.store.teachers.create(teacher);
      const second = { ...teacher, id: 'teacher-2' as TeacherId, name: teacher.name.toUpperCase() };
      expect(await at.store.teachers.create(second)).toBe('name-taken');
      expect(await at.store.teachers.list()).toEqual([{ id: teacherId, name: teacher.name }]);
    });

    it('knows a session until it is closed or too old', async () => {
      await at.store.teachers.create(teacher);
      await at.store.teachers.openSession({ tokenHash: 'a', teacherId, expiresAt: time(100) });
      await at.store.teachers.openSession({ tokenHash: 'b', teacherId, expiresAt: time(100) });
      await at.reopen();
      expect(await at.store.teachers.sessionTeacher('a', time(99))).toEqual({
        id: teacherId,
        name: teacher.name,
      });
      expect(await at.store.teachers.sessionTeacher('a', time(100))).toBeUndefined();
      await at.store.teachers.closeSession('a');
      expect(await at.store.teachers.sessionTeacher('a', time(50))).toBeUndefined();
      expect(await at.store.teachers.sessionTeacher('b', time(50))).toBeDefined();
      expect(await at.store.teachers.sessionTeacher('c', time(50))).toBeUndefined();
    });

    it("ends every session of the teacher, and nobody else's, with a new passphrase", async () => {
      const other = { ...teacher, id: 'teacher-2' as TeacherId, name: 'Nils Varga' };
      await at.store.teachers.create(teacher);
      await at.store.teachers.create(other);
      await at.store.teachers.openSession({ tokenHash: 'a', teacherId, expiresAt: time(100) });
      await at.store.teachers.openSession({ tokenHash: 'b', teacherId: other.id, expiresAt: time(100) });
      await at.store.teachers.setPassphrase(teacherId, 'hash-2');
      expect(await at.store.teachers.sessionTeacher('a', time(1))).toBeUndefined();
      expect((await at.store.teachers.sessionTeacher('b', time(1)))?.id).toBe(other.id);
      expect((await at.store.teachers.byName(teacher.name))?.passphraseHash).toBe('hash-2');
      expect((await at.store.teachers.byName(other.name))?.passphraseHash).toBe('hash-1');
    });

    it('closes all sessions of one teacher, and forgets what is too old', async () => {
      const other = { ...teacher, id: 'teacher-2' as TeacherId, name: 'Nils Varga' };
      await at.store.teachers.create(teacher);
      await at.store.teachers.create(other);
      for (const [tokenHash, whose, end] of [
        ['a', teacherId, 100],
        ['b', teacherId, 100],
        ['c', other.id, 100],
        ['d', other.id, 10],
      ] as const)
        await at.store.teachers.openSession({ tokenHash, teacherId: whose, expiresAt: time(end) });
      await at.store.teachers.addInvitation('fresh', time(100));
      await at.store.teachers.addInvitation('old', time(10));
      await at.store.teachers.closeSessions(teacherId);
      await at.store.teachers.forgetExpired(time(10));
      // Asked as of an earlier time, what is there still answers.
      const known = ['a', 'b', 'c', 'd'].map((hash) => at.store.teachers.sessionTeacher(hash, time(1)));
      expect((await Promise.all(known)).map((found) => found?.id)).toEqual([
        undefined,
        undefined,
        other.id,
        undefined,
      ]);
      expect(await at.store.teachers.spendInvitation('old', time(1))).toBe(false);
      expect(await at.store.teachers.spendInvitation('fresh', time(1))).toBe(true);
    });

    it('lets an invitation be spent once, and in time', async () => {
      await at.store.teachers.addInvitation('fresh', time(100));
      await at.store.teachers.addInvitation('old', time(10));
      await at.reopen();
      expect(await at.store.teachers.spendInvitation('old', time(10))).toBe(false);
      expect(await at.store.teachers.spendInvitation('unknown', time(50))).toBe(false);
      expect(await at.store.teachers.spendInvitation('fresh', time(50))).toBe(true);
      expect(await at.store.teachers.spendInvitation('fresh', time(50))).toBe(false);
    });
  });
}
