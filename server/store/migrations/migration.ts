import type { Database } from 'better-sqlite3';

/** One step of the schema. Once released it is never edited: the next step mends it. */
export interface Migration {
  readonly number: number;
  /** Runs in a transaction, without foreign keys enforced, so that tables can be rebuilt. */
  up(database: Database): void;
}
