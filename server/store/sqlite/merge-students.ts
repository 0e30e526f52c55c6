import type { StudentId } from '../../../shared/protocol/ids.ts';
import type { Database } from './database.ts';

/** In one transaction; rows of answers go over as they are, so that what was counted still is. */
export function mergeStudents(database: Database, from: StudentId, into: StudentId): void {
  const { connection } = database;
  const students = { from, into };
  database.together(() => {
    // Whose answer of a round stays: the one that counts later, and before all one that counts at all.
    connection
      .prepare(
        `with held as (
          select round_id, student_id,
            max(case when counted = 1 and (places <> '[]' or besides ->> 'heard' is not null
              or besides ->> 'named' is not null or besides ->> 'teacherSays' is not null) then at else -1 end)
              as counted_at,
            max(at) as at
          from answers where student_id in (:from, :into)
          group by round_id, student_id
        ), kept as (
          select round_id, student_id, row_number() over (
            partition by round_id order by counted_at desc, at desc, student_id = :into desc
          ) as place from held
        )
        delete from answers where (round_id, student_id) in (
          select round_id, student_id from kept where place > 1
        )`,
      )
      .run(students);
    connection.prepare('update answers set student_id = :into where student_id = :from').run(students);
    // One device for each student and class: the one that came later.
    connection
      .prepare(
        `update seats set status = 'gone', reason = 'moved'
        where status = 'in' and student_id in (:from, :into) and exists (
          select 1 from seats other
          where other.class_id = seats.class_id and other.status = 'in'
            and other.student_id in (:from, :into)
            and (other.joined_at, other.id) > (seats.joined_at, seats.id)
        )`,
      )
      .run(students);
    connection.prepare('update seats set student_id = :into where student_id = :from').run(students);
    connection.prepare('update classes set turn = :into where turn = :from').run(students);
    connection.prepare('delete from students where id = :from').run({ from });
  });
}
