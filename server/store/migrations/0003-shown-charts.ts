import type { Migration } from './migration.ts';

/** What is shown may be several charts, of which one is on the stage. */
export const shownCharts: Migration = {
  number: 3,
  up(database) {
    database.exec(`
      update classes set show = json_object(
        'kind', 'charts', 'charts', json_array(json(show -> '$.exercise')), 'at', 0
      ) where show ->> 'kind' = 'chart';
    `);
  },
};
