import Database from 'better-sqlite3';
import { CompiledQuery, Kysely, SqliteDialect, SqliteDriver, type DatabaseConnection } from 'kysely';
import type { Tables } from './schema.ts';

/** How long a save waits for another process that is saving [ms]. */
const WAIT = 5000;

/** A transaction takes the right to write at its start: none fails half-way because another process wrote first. */
class WritingDriver extends SqliteDriver {
  override async beginTransaction(connection: DatabaseConnection): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw('begin immediate'));
  }
}

/**
 * Opens a database file, made when it is not there. Only here does the program know its driver. A save is on the disk
 * before it is answered (synchronous FULL), and readers do not wait for writers (WAL).
 *
 * @throws Error when the driver is not built or the file is no database
 */
export function openSqlite(file: string): Kysely<Tables> {
  const database = new Database(file, { timeout: WAIT });
  database.pragma('journal_mode = WAL');
  database.pragma('synchronous = FULL');
  database.pragma('foreign_keys = ON');
  const config = { database };
  const dialect = new SqliteDialect(config);
  dialect.createDriver = () => new WritingDriver(config);
  return new Kysely<Tables>({ dialect });
}
