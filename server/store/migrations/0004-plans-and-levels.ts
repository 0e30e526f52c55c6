import type { Migration } from './migration.ts';

/**
 * A plan has an aim, things to say and a number that grows with each save; its exercises have a name of their own, a
 * part of the lesson and harder levels, which a round asks together.
 */
export const plansAndLevels: Migration = {
  number: 4,
  up(database) {
    database.exec(`
      alter table plans add column aim text not null default '';
      alter table plans add column points text not null default '[]' check (json_valid(points));
      alter table plans add column revision integer not null default 1;

      alter table exercises add column id text not null default '';
      alter table exercises add column part text not null default 'new' check (part in ('warm-up', 'new', 'check'));
      alter table exercises add column harder text not null default '[]' check (json_valid(harder));
      update exercises set id = 'e' || position;

      alter table rounds add column harder text not null default '[]' check (json_valid(harder));

      update classes set plan = json_set(plan, '$.exercises', (
        select json_group_array(json_object(
          'id', 'e' || key, 'part', 'new', 'exercise', json(value -> '$.exercise'), 'harder', json('[]'),
          'seconds', value -> '$.seconds'
        )) from json_each(plan, '$.exercises')
      )) where plan is not null;
    `);
  },
};
