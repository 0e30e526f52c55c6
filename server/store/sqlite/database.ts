import type { Database as Connection } from 'better-sqlite3';
import {
  DummyDriver,
  Kysely,
  SqliteAdapter,
  SqliteIntrospector,
  SqliteQueryCompiler,
  type Compilable,
} from 'kysely';
import type { Tables } from './tables.ts';

/** Builds typed queries; it runs none. */
export const query = new Kysely<Tables>({
  dialect: {
    createAdapter: () => new SqliteAdapter(),
    createDriver: () => new DummyDriver(),
    createIntrospector: (db) => new SqliteIntrospector(db),
    createQueryCompiler: () => new SqliteQueryCompiler(),
  },
});

/**
 * Runs queries on the one connection, each without giving way to other work. A transaction that awaited in its
 * midst would take in the commits that arrive meanwhile, and they would be acknowledged before they are durable.
 */
export class Database {
  readonly connection: Connection;

  constructor(connection: Connection) {
    this.connection = connection;
  }

  all<Row>(built: Compilable<Row>): readonly Row[] {
    const { sql, parameters } = built.compile();
    return this.connection.prepare<unknown[], Row>(sql).all(...parameters);
  }

  first<Row>(built: Compilable<Row>): Row | undefined {
    const { sql, parameters } = built.compile();
    return this.connection.prepare<unknown[], Row>(sql).get(...parameters);
  }

  /** The number of rows that it changed. */
  run(built: Compilable): number {
    const { sql, parameters } = built.compile();
    return this.connection.prepare(sql).run(...parameters).changes;
  }

  /** All of it on one state of the store; kept as a whole, or not at all. */
  together<T>(work: () => T): T {
    return this.connection.transaction(work).deferred();
  }
}
