import type { GroupId, StudentId } from '../../../shared/protocol/ids.ts';
import { nameKey } from '../../../shared/protocol/name-key.ts';
import type { Student } from '../../classroom/state.ts';
import { query, type Database } from './database.ts';

/** The register of a group, in its order. */
export function readStudents(database: Database, groupId: GroupId): readonly Student[] {
  const students = database.all(
    query
      .selectFrom('students')
      .select(['id', 'name', 'seat_number as seatNumber', 'alias', 'team', 'more_time as moreTime'])
      .where('group_id', '=', groupId),
  );
  return [...students].sort(inRegisterOrder);
}

export function readStudentGroup(database: Database, id: StudentId): GroupId | undefined {
  return database.first(query.selectFrom('students').select('group_id').where('id', '=', id))?.group_id;
}

/**
 * With seats and answers, and the seats at which the same name asked in vain. A device that was removed from a class
 * stays so, nameless.
 */
export function deleteStudent(database: Database, id: StudentId): void {
  database.together(() => {
    const nameless = database.all(
      query
        .selectFrom('seats')
        .innerJoin('classes', 'classes.id', 'seats.class_id')
        .innerJoin('students', 'students.group_id', 'classes.group_id')
        .select(['seats.id', 'seats.name as typed', 'students.name'])
        .where('students.id', '=', id)
        .where('seats.student_id', 'is', null),
    );
    const same = nameless.filter(({ typed, name }) => nameKey(typed) === nameKey(name));
    for (const seat of same) database.run(query.deleteFrom('seats').where('id', '=', seat.id));
    const sentAway = query.updateTable('seats').set({ student_id: null, name: '' });
    database.run(sentAway.where('student_id', '=', id).where('reason', '=', 'refused'));
    database.run(query.deleteFrom('students').where('id', '=', id));
  });
}

/** One order on every machine, whatever its language. */
const names = new Intl.Collator('en');

/** By seat number, those without one last and by name. */
function inRegisterOrder(a: Student, b: Student): number {
  const bySeat = (a.seatNumber ?? Number.MAX_VALUE) - (b.seatNumber ?? Number.MAX_VALUE);
  return bySeat || names.compare(a.name, b.name) || (a.id < b.id ? -1 : 1);
}
