import type { Migration } from './migration.ts';

/** An answer may be what was heard, without a place; and a class knows whose turn it is to play. */
export const heardAnswers: Migration = {
  number: 6,
  up(database) {
    database.exec(`
      alter table classes add column turn text references students on delete set null;

      drop view counted_answers;
      -- The one answer of each student that counts in a round: a late one that the teacher lets count goes
      -- before the one in time. With nothing placed, heard, named or marked by the teacher it is no answer.
      create view counted_answers as
        select round_id, student_id, accepted or verdict ->> 'kind' = 'right' as is_right
        from answers
        where ((late = 1 and counted = 1) or (late = 0 and not exists (
          select 1 from answers other
          where other.round_id = answers.round_id and other.student_id = answers.student_id
            and other.late = 1 and other.counted = 1
        ))) and (places <> '[]' or besides ->> 'heard' is not null or besides ->> 'named' is not null
          or besides ->> 'teacherSays' is not null);
    `);
  },
};
