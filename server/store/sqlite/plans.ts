import type { PlannedExercise } from '../../classroom/state.ts';
import type { PlanStore, StoredPlan } from '../store.ts';
import { query, type Database } from './database.ts';
import { fromJson, toJson } from './json.ts';

export function planStore(database: Database): PlanStore {
  const plans = query
    .selectFrom('plans')
    .select(['id', 'group_id as groupId', 'title', 'updated_at as updatedAt']);

  function withExercises(plan: Omit<StoredPlan, 'exercises'>): StoredPlan {
    const exercises = database
      .all(
        query
          .selectFrom('exercises')
          .select(['exercise', 'seconds'])
          .where('plan_id', '=', plan.id)
          .orderBy('position'),
      )
      .map(({ exercise, seconds }): PlannedExercise => ({ exercise: fromJson(exercise), seconds }));
    return { ...plan, exercises };
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

    async save({ id, groupId, title, updatedAt, exercises }) {
      database.together(() => {
        database.run(
          query
            .insertInto('plans')
            .values({ id, group_id: groupId, title, updated_at: updatedAt })
            .onConflict((conflict) => conflict.column('id').doUpdateSet({ title, updated_at: updatedAt })),
        );
        database.run(query.deleteFrom('exercises').where('plan_id', '=', id));
        if (exercises.length === 0) return;
        const rows = exercises.map(({ exercise, seconds }, position) => ({
          plan_id: id,
          position,
          exercise: toJson(exercise),
          seconds,
        }));
        database.run(query.insertInto('exercises').values(rows));
      });
    },

    async remove(id) {
      database.run(query.deleteFrom('plans').where('id', '=', id));
    },
  };
}
