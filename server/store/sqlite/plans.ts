import type { PlannedExercise } from '../../../shared/plans/plan.ts';
import type { PlanStore, StoredPlan } from '../store.ts';
import { query, type Database } from './database.ts';
import { fromJson, toJson } from './json.ts';
import type { Tables } from './tables.ts';

export function planStore(database: Database): PlanStore {
  const plans = query
    .selectFrom('plans')
    .select(['id', 'group_id as groupId', 'title', 'aim', 'points', 'revision', 'updated_at as updatedAt']);

  type PlanRow = Omit<StoredPlan, 'exercises' | 'points'> & Pick<Tables['plans'], 'points'>;

  function withExercises(plan: PlanRow): StoredPlan {
    const exercises = database
      .all(
        query
          .selectFrom('exercises')
          .select(['id', 'part', 'exercise', 'harder', 'seconds'])
          .where('plan_id', '=', plan.id)
          .orderBy('position'),
      )
      .map((row): PlannedExercise => ({
        ...row,
        exercise: fromJson(row.exercise),
        harder: fromJson(row.harder),
      }));
    return { ...plan, points: fromJson(plan.points), exercises };
  }

  return {
    async ofGroup(groupId) {
      return database.together(() =>
        database.all(plans.where('group_id', '=', groupId).orderBy('title').orderBy('id')).map(withExercises),
      );
    },

    async byId(id) {
      return database.together(() => {
        const plan = database.first(plans.where('id', '=', id));
        return plan && withExercises(plan);
      });
    },

    async save({ id, groupId, title, aim, points, revision, updatedAt, exercises }) {
      return database.together(() => {
        const held = database.first(query.selectFrom('plans').select('revision').where('id', '=', id));
        if ((held?.revision ?? 0) !== revision - 1) return 'changed';
        const columns = { title, aim, points: toJson(points), revision, updated_at: updatedAt };
        database.run(
          query
            .insertInto('plans')
            .values({ id, group_id: groupId, ...columns })
            .onConflict((conflict) => conflict.column('id').doUpdateSet(columns)),
        );
        database.run(query.deleteFrom('exercises').where('plan_id', '=', id));
        if (exercises.length === 0) return 'saved';
        const rows = exercises.map((planned, position) => ({
          plan_id: id,
          position,
          id: planned.id,
          part: planned.part,
          exercise: toJson(planned.exercise),
          harder: toJson(planned.harder),
          seconds: planned.seconds,
        }));
        database.run(query.insertInto('exercises').values(rows));
        return 'saved';
      });
    },

    async remove(id) {
      database.run(query.deleteFrom('plans').where('id', '=', id));
    },
  };
}
