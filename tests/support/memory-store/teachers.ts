import type { TeacherStore } from '../../../server/store/store.ts';
import { drop, need, type KeptTeacher, type Memory } from './tables.ts';

export function memoryTeachers(memory: Memory): TeacherStore {
  const keyOf = (name: string) => name.trim().normalize('NFC').toLowerCase();
  const all = () => [...memory.tables.teachers.values()];
  const named = (name: string) => all().find((teacher) => keyOf(teacher.name) === keyOf(name));
  const bare = ({ id, name }: KeptTeacher) => ({ id, name });
  return {
    count: async () => memory.tables.teachers.size,
    async create({ id, name, passphraseHash }) {
      if (named(name)) return 'name-taken';
      memory.together(({ teachers }) => teachers.set(id, { id, name, passphraseHash }));
      return 'created';
    },
    byName: async (name) => named(name),
    list: async () =>
      all()
        .sort((a, b) => (keyOf(a.name) < keyOf(b.name) ? -1 : 1))
        .map(bare),
    async setPassphrase(id, passphraseHash) {
      memory.together(({ teachers, sessions }) => {
        const teacher = teachers.get(id);
        if (teacher) teachers.set(id, { ...teacher, passphraseHash });
        drop(sessions, ({ teacherId }) => teacherId === id);
      });
    },
    async openSession({ tokenHash, teacherId, expiresAt }) {
      need(memory.tables.teachers.has(teacherId), 'The teacher');
      memory.together(({ sessions }) => sessions.set(tokenHash, { teacherId, expiresAt }));
    },
    async sessionTeacher(tokenHash, now) {
      const session = memory.tables.sessions.get(tokenHash);
      const teacher = session && session.expiresAt > now && memory.tables.teachers.get(session.teacherId);
      return teacher ? bare(teacher) : undefined;
    },
    async closeSession(tokenHash) {
      memory.together(({ sessions }) => sessions.delete(tokenHash));
    },
    async closeSessions(id) {
      memory.together(({ sessions }) => drop(sessions, ({ teacherId }) => teacherId === id));
    },
    async forgetExpired(now) {
      memory.together(({ sessions, invitations }) => {
        drop(sessions, ({ expiresAt }) => expiresAt <= now);
        drop(invitations, (expiresAt) => expiresAt <= now);
      });
    },
    async addInvitation(tokenHash, expiresAt) {
      memory.together(({ invitations }) => invitations.set(tokenHash, expiresAt));
    },
    async spendInvitation(tokenHash, now) {
      return memory.together(({ invitations }) => {
        const expiresAt = invitations.get(tokenHash);
        invitations.delete(tokenHash);
        return expiresAt !== undefined && expiresAt > now;
      });
    },
  };
}
