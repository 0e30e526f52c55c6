import type { SettingStore } from '../store.ts';
import { query, type Database } from './database.ts';

export function settingStore(database: Database): SettingStore {
  return {
    async read(key) {
      return database.first(query.selectFrom('settings').select('value').where('key', '=', key))?.value;
    },

    async write(key, value) {
      const row = query.insertInto('settings').values({ key, value });
      database.run(row.onConflict((conflict) => conflict.column('key').doUpdateSet({ value })));
    },
  };
}
