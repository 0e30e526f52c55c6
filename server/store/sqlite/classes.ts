import type { ClassStore, ClassSummary } from '../store.ts';
import type { CommitQueue } from './commit-queue.ts';
import { query, type Database } from './database.ts';
import { toJson, toJsonOrNull } from './json.ts';
import { loadClass, readAsked } from './load-class.ts';

export function classStore(database: Database, queue: CommitQueue): ClassStore {
  return {
    async create({ id, groupId, code, openedAt, closedAt = null, settings, plan }) {
      const created = database.run(
        query
          .insertInto('classes')
          .values({
            id,
            group_id: groupId,
            code,
            opened_at: openedAt,
            closed_at: closedAt,
            settings: toJson(settings),
            plan: toJsonOrNull(plan),
            cursor: 0,
            stage: 'rest',
            show: null,
          })
          .onConflict((conflict) => conflict.column('code').where('closed_at', 'is', null).doNothing()),
      );
      return created === 1 ? 'created' : 'code-taken';
    },

    async asked(id) {
      return database.together(() => readAsked(database, id));
    },

    async load(id) {
      return database.together(() => loadClass(database, id));
    },

    async open() {
      const open = query.selectFrom('classes').select('id').where('closed_at', 'is', null);
      return database.all(open.orderBy('opened_at').orderBy('id')).map(({ id }) => id);
    },

    async byCode(code) {
      // A code may come again: the class that is open goes before those that are over, the latest of these first.
      const found = database.first(
        query
          .selectFrom('classes')
          .select('id')
          .where('code', '=', code)
          .orderBy((sql) => sql('closed_at', 'is not', null))
          .orderBy('opened_at', 'desc')
          .limit(1),
      );
      return found?.id;
    },

    async bySeatToken(tokenHash) {
      return database.first(query.selectFrom('seats').select('class_id').where('token_hash', '=', tokenHash))
        ?.class_id;
    },

    async ofGroup(groupId) {
      const summaries = database.all(
        query
          .selectFrom('classes')
          .leftJoin('rounds', (join) => join.onRef('class_id', '=', 'classes.id').on('voided', '=', 0))
          .leftJoin('counted_answers', (join) =>
            join.onRef('round_id', '=', 'rounds.id').on('rounds.phase', '=', 'revealed'),
          )
          .select(({ fn, val }) => [
            'classes.id',
            'code',
            'classes.opened_at as openedAt',
            'closed_at as closedAt',
            fn.count<number>('rounds.id').distinct().as('rounds'),
            fn.count<number>('student_id').as('of'),
            fn.coalesce(fn.sum<number>('is_right'), val(0)).as('right'),
          ])
          .where('group_id', '=', groupId)
          .groupBy('classes.id')
          .orderBy('classes.opened_at', 'desc')
          .orderBy('classes.id'),
      );
      return summaries.map(({ right, of, ...summary }): ClassSummary => ({
        ...summary,
        share: { right, of },
      }));
    },

    commit(id, changes) {
      return queue.add(id, changes);
    },
  };
}
