import type { Migration } from './migration.ts';

/**
 * An answer may carry more than places; two causes of slips go by names that fit any instrument; and an answer
 * that was taken back whole no longer counts.
 */
export const moreInAnswers: Migration = {
  number: 2,
  up(database) {
    database.exec(`
      alter table answers add column besides text check (json_valid(besides));
      ${rename('string-6-map', 'low-string-map')}
      ${rename('string-3-to-2-step', 'short-step')}

      drop view counted_answers;
      -- The one answer of each student that counts in a round: a late one that the teacher lets count goes
      -- before the one in time. With nothing placed and nothing named it is no answer.
      create view counted_answers as
        select round_id, student_id, accepted or verdict ->> 'kind' = 'right' as is_right
        from answers
        where ((late = 1 and counted = 1) or (late = 0 and not exists (
          select 1 from answers other
          where other.round_id = answers.round_id and other.student_id = answers.student_id
            and other.late = 1 and other.counted = 1
        ))) and (places <> '[]' or besides ->> 'named' is not null);
    `);
  },
};

/** A verdict names one cause, or the two between which it is unclear. */
function rename(old: string, cause: string): string {
  return ['$.cause', '$.causes[0]', '$.causes[1]']
    .map(
      (path) => `update answers set verdict = json_set(verdict, '${path}', '${cause}')
        where verdict ->> '${path}' = '${old}';`,
    )
    .join('\n');
}
