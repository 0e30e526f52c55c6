import type { Database as Connection } from 'better-sqlite3';
import { migrations as released } from '../migrations/list.ts';
import type { Migration } from '../migrations/migration.ts';
import { StoreError } from '../store-error.ts';

/** Brings the tables up to date and gives back the schema's number; each step is kept as a whole, or not at all. */
export function migrate(
  connection: Connection,
  path: string,
  migrations: readonly Migration[] = released,
): number {
  const newest = migrations.length;
  const found = schemaOf(connection);
  if (found > newest) {
    throw new StoreError(
      `${path} was written by a newer Rootcall (schema ${String(found)}; this one knows ${String(newest)}). Start the newer version, or put a backup in its place.`,
    );
  }
  if (found === newest) return newest;
  connection.pragma('foreign_keys = off');
  for (const migration of migrations.slice(found)) step(connection, path, migration);
  connection.pragma('foreign_keys = on');
  return newest;
}

function step(connection: Connection, path: string, { number, up }: Migration): void {
  const take = connection.transaction(() => {
    // Another process may have taken the step while this one waited for the lock.
    if (schemaOf(connection) >= number) return;
    up(connection);
    connection.pragma(`user_version = ${String(number)}`);
    const [broken] = connection.pragma('foreign_key_check') as readonly unknown[];
    if (broken)
      throw new StoreError(`${path} could not be brought to schema ${String(number)}; it is as it was.`);
  });
  take.immediate();
}

function schemaOf(connection: Connection): number {
  return connection.pragma('user_version', { simple: true }) as number;
}
