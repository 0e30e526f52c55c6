import type { GroupFields, GroupStore } from '../store.ts';
import { query, type Database } from './database.ts';
import { mergeStudents } from './merge-students.ts';
import type { Eraser } from './erase.ts';
import { deleteStudent, readStudentGroup, readStudents } from './students.ts';
import type { ChangeWriter } from './write-changes.ts';

export function groupStore(database: Database, writer: ChangeWriter, eraser: Eraser): GroupStore {
  const groups = query
    .selectFrom('groups')
    .select([
      'id',
      'teacher_id as teacherId',
      'name',
      'school',
      'instrument',
      'naming',
      'language',
      'purge_at as purgeAt',
      'created_at as createdAt',
    ]);
  return {
    async create({ id, teacherId, createdAt, name, school, instrument, naming, language, purgeAt }) {
      database.run(
        query.insertInto('groups').values({
          id,
          teacher_id: teacherId,
          name,
          school,
          instrument,
          naming,
          language,
          purge_at: purgeAt,
          created_at: createdAt,
        }),
      );
    },

    async byId(id) {
      return database.first(groups.where('id', '=', id));
    },

    async ofTeacher(teacherId) {
      return database.all(groups.where('teacher_id', '=', teacherId).orderBy('created_at').orderBy('id'));
    },

    async update(id, fields) {
      const columns = columnsOf(fields);
      if (Object.values(columns).every((value) => value === undefined)) return;
      database.run(query.updateTable('groups').set(columns).where('id', '=', id));
    },

    async remove(id) {
      database.run(query.deleteFrom('groups').where('id', '=', id));
      eraser.erase();
    },

    async purge(now) {
      const purged = database.all(
        query
          .deleteFrom('groups')
          .where('purge_at', 'is not', null)
          .where('purge_at', '<=', now)
          .returning('id'),
      );
      if (purged.length > 0) eraser.erase();
      return purged.map(({ id }) => id);
    },

    async students(id) {
      return readStudents(database, id);
    },

    async studentGroup(id) {
      return readStudentGroup(database, id);
    },

    async saveStudent(groupId, student) {
      writer.student(groupId, student);
    },

    async mergeStudents(from, into) {
      mergeStudents(database, from, into);
      eraser.erase();
    },

    async removeStudent(id) {
      deleteStudent(database, id);
      eraser.erase();
    },
  };
}

function columnsOf({ name, school, instrument, naming, language, purgeAt }: Partial<GroupFields>) {
  return { name, school, instrument, naming, language, purge_at: purgeAt };
}
