import type { Database as Connection } from 'better-sqlite3';
import type { Store } from '../store.ts';
import { classStore } from './classes.ts';
import { CommitQueue } from './commit-queue.ts';
import { connect } from './connect.ts';
import { Database } from './database.ts';
import { Eraser } from './erase.ts';
import { groupStore } from './groups.ts';
import { openLogSync } from './log-sync.ts';
import { migrate } from './migrate.ts';
import { planStore } from './plans.ts';
import { sayWhy } from './say-why.ts';
import { settingStore } from './settings.ts';
import { teacherStore } from './teachers.ts';
import { changeWriter } from './write-changes.ts';

export interface StoreOptions {
  /** The file, or `:memory:`. */
  readonly path: string;
  readonly log?: {
    info(details: object, message: string): void;
    warn(details: object, message: string): void;
  };
}

/** Opens the store, ready to use; throws a `StoreError` whose message says in one line why it can't be. */
export function openStore({ path, log }: StoreOptions): Store {
  return storeOn(connect(path), path, log);
}

export function storeOn(connection: Connection, path: string, log: StoreOptions['log']): Store {
  try {
    const schema = migrate(connection, path);
    const database = new Database(connection);
    const writer = changeWriter(connection);
    const queue = new CommitQueue(connection, writer, openLogSync(connection));
    const eraser = new Eraser(connection, (error) => log?.warn({ error }, 'will erase later'));
    let isClosed = false;
    log?.info({ path, schema }, 'store open');
    return {
      teachers: teacherStore(database),
      groups: groupStore(database, writer, eraser),
      plans: planStore(database),
      classes: classStore(database, queue),
      settings: settingStore(database),
      describe: () => ({ kind: 'sqlite', schema }),
      async close() {
        if (isClosed) return;
        isClosed = true;
        await queue.close();
        eraser.close();
        // Stopping does not wait for a backup that is being made.
        connection.pragma('busy_timeout = 0');
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
