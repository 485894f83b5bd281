import { SqliteAdapter, type Kysely } from 'kysely';

/** True for records in a file, false for those on a PostgreSQL server. */
export function isSqlite<T>(db: Kysely<T>): boolean {
  return db.getExecutor().adapter instanceof SqliteAdapter;
}
