import type { TeacherStore } from '../store.ts';
import { query, type Database } from './database.ts';

export function teacherStore(database: Database): TeacherStore {
  return {
    async count() {
      const counted = database.first(
        query.selectFrom('teachers').select((sql) => sql.fn.countAll<number>().as('n')),
      );
      return counted?.n ?? 0;
    },

    async create({ id, name, passphraseHash, createdAt }) {
      const created = database.run(
        query
          .insertInto('teachers')
          .values({ id, name, name_key: keyOf(name), passphrase_hash: passphraseHash, created_at: createdAt })
          .onConflict((conflict) => conflict.column('name_key').doNothing()),
      );
      return created === 1 ? 'created' : 'name-taken';
    },

    async byName(name) {
      return database.first(
        query
          .selectFrom('teachers')
          .select(['id', 'name', 'passphrase_hash as passphraseHash'])
          .where('name_key', '=', keyOf(name)),
      );
    },

    async list() {
      return database.all(query.selectFrom('teachers').select(['id', 'name']).orderBy('name_key'));
    },

    async setPassphrase(id, passphraseHash) {
      database.together(() => {
        database.run(
          query.updateTable('teachers').set({ passphrase_hash: passphraseHash }).where('id', '=', id),
        );
        database.run(query.deleteFrom('sessions').where('teacher_id', '=', id));
      });
    },

    async openSession({ tokenHash, teacherId, expiresAt }) {
      database.run(
        query
          .insertInto('sessions')
          .values({ token_hash: tokenHash, teacher_id: teacherId, expires_at: expiresAt }),
      );
    },

    async sessionTeacher(tokenHash, now) {
      return database.first(
        query
          .selectFrom('sessions')
          .innerJoin('teachers', 'teachers.id', 'sessions.teacher_id')
          .select(['teachers.id', 'teachers.name'])
          .where('token_hash', '=', tokenHash)
          .where('expires_at', '>', now),
      );
    },

    async closeSession(tokenHash) {
      database.run(query.deleteFrom('sessions').where('token_hash', '=', tokenHash));
    },

    async closeSessions(id) {
      database.run(query.deleteFrom('sessions').where('teacher_id', '=', id));
    },

    async forgetExpired(now) {
      database.run(query.deleteFrom('sessions').where('expires_at', '<=', now));
      database.run(query.deleteFrom('invitations').where('expires_at', '<=', now));
    },

    async addInvitation(tokenHash, expiresAt) {
      database.run(query.insertInto('invitations').values({ token_hash: tokenHash, expires_at: expiresAt }));
    },

    async spendInvitation(tokenHash, now) {
      const spent = database.first(
        query.deleteFrom('invitations').where('token_hash', '=', tokenHash).returning('expires_at'),
      );
      return spent !== undefined && spent.expires_at > now;
    },
  };
}

/** SQLite's own case folding stops at ASCII. */
function keyOf(name: string): string {
  return name.trim().normalize('NFC').toLowerCase();
}
