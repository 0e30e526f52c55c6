import type { GroupId, StudentId } from '../../../shared/protocol/ids.ts';
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

/** One order on every machine, whatever its language. */
const names = new Intl.Collator('en');

/** By seat number, those without one last and by name. */
function inRegisterOrder(a: Student, b: Student): number {
  const bySeat = (a.seatNumber ?? Number.MAX_VALUE) - (b.seatNumber ?? Number.MAX_VALUE);
  return bySeat || names.compare(a.name, b.name) || (a.id < b.id ? -1 : 1);
}
