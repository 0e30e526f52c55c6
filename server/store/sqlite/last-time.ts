import { sql } from 'kysely';
import { exerciseAt } from '../../../shared/exercise/levels.ts';
import { scoreKeyOf } from '../../../shared/exercise/score.ts';
import type { ClassId, GroupId, Time } from '../../../shared/protocol/ids.ts';
import type { Share } from '../../../shared/protocol/views.ts';
import { query, type Database } from './database.ts';
import { fromJson } from './json.ts';

/** By score key, the group's share right in the latest earlier class in which somebody answered such an exercise, each level by its own. */
export function readLastTime(database: Database, groupId: GroupId, before: Time): ReadonlyMap<string, Share> {
  const rounds = database.all(
    query
      .selectFrom('classes')
      .innerJoin('rounds', 'rounds.class_id', 'classes.id')
      .innerJoin('counted_answers', 'counted_answers.round_id', 'rounds.id')
      .select(({ fn, selectFrom }) => [
        'classes.id as classId',
        'rounds.exercise',
        'rounds.harder',
        selectFrom('answers')
          .select(sql<2 | 3 | null>`besides ->> 'level'`.as('level'))
          .whereRef('answers.round_id', '=', 'rounds.id')
          .whereRef('answers.student_id', '=', 'counted_answers.student_id')
          .where('counted', '=', 1)
          .orderBy('late', 'desc')
          .limit(1)
          .as('level'),
        fn.countAll<number>().as('of'),
        fn.sum<number>('is_right').as('right'),
      ])
      .where('classes.group_id', '=', groupId)
      .where('classes.opened_at', '<', before)
      .where('rounds.phase', '=', 'revealed')
      .where('rounds.voided', '=', 0)
      .groupBy(['rounds.id', 'level'])
      .orderBy('classes.opened_at', 'desc')
      .orderBy('classes.id')
      .orderBy('rounds.number'),
  );
  const found = new Map<string, Share & { readonly classId: ClassId }>();
  for (const { classId, right, of, ...round } of rounds) {
    const asked = { exercise: fromJson(round.exercise), harder: fromJson(round.harder) };
    const key = scoreKeyOf(exerciseAt(asked, round.level ?? 1));
    const sum = found.get(key) ?? { classId, right: 0, of: 0 };
    if (sum.classId === classId) found.set(key, { classId, right: sum.right + right, of: sum.of + of });
  }
  return new Map([...found].map(([key, { right, of }]) => [key, { right, of }]));
}
