import type { Store } from '../store.ts';
import { classStore } from './classes.ts';
import { CommitQueue } from './commit-queue.ts';
import { connect } from './connect.ts';
import { Database } from './database.ts';
import { groupStore } from './groups.ts';
import { migrate } from './migrate.ts';
import { planStore } from './plans.ts';
import { sayWhy } from './say-why.ts';
import { settingStore } from './settings.ts';
import { teacherStore } from './teachers.ts';
import { changeWriter } from './write-changes.ts';

export interface StoreOptions {
  /** The file, or `:memory:`. */
  readonly path: string;
  readonly log?: { info(details: object, message: string): void };
}

/** Opens the store, ready to use; throws a `StoreError` whose message says in one line why it can't be. */
export function openStore({ path, log }: StoreOptions): Store {
  const connection = connect(path);
  try {
    const schema = migrate(connection, path);
    const database = new Database(connection);
    const writer = changeWriter(connection);
    const queue = new CommitQueue(connection, writer);
    log?.info({ path, schema }, 'store open');
    return {
      teachers: teacherStore(database),
      groups: groupStore(database, writer),
      plans: planStore(database),
      classes: classStore(database, queue),
      settings: settingStore(database),
      describe: () => ({ kind: 'sqlite', schema }),
      async close() {
        if (!connection.open) return;
        queue.close();
        connection.pragma('wal_checkpoint(truncate)');
        connection.close();
        log?.info({ path }, 'store closed');
      },
    };
  } catch (error) {
    connection.close();
    throw sayWhy(error, path);
  }
}
