import Database from 'better-sqlite3';
import {
  CompiledQuery,
  Kysely,
  SqliteDialect,
  SqliteDriver,
  type DatabaseConnection,
  type SqliteDatabase,
  type SqliteStatement,
} from 'kysely';
import type { Tables } from './schema.ts';

/** How long a save waits for another process that is saving [ms]. */
const WAIT = 5000;

/** A transaction takes the right to write at its start: none fails half-way because another process wrote first. */
class WritingDriver extends SqliteDriver {
  override async beginTransaction(connection: DatabaseConnection): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw('begin immediate'));
  }
}

/** What the driver made: never given up, see below. */
const kept: unknown[] = [];

/**
 * Each text is prepared once and kept until the process ends. Node from 24.19 on aborts when it collects an object of
 * this driver while no script runs; as every text of the records is fixed but for the length of its lists, they are few.
 */
function withKeptStatements(database: Database.Database): SqliteDatabase {
  const statements = new Map<string, SqliteStatement>();
  kept.push(database, statements);
  return {
    prepare: (text) => {
      const known = statements.get(text);
      if (known !== undefined) return known;
      const statement = database.prepare(text) as unknown as SqliteStatement;
      statements.set(text, statement);
      return statement;
    },
    close: () => database.close(),
  };
}

/**
 * Opens a database file, made when it is not there. Only here does the program know its driver. A save is on the disk
 * before it is answered (synchronous FULL), and readers do not wait for writers (WAL).
 *
 * @throws Error when the driver is not built or the file is no database
 */
export function openSqlite(file: string): Kysely<Tables> {
  const database = new Database(file, { timeout: WAIT });
  for (const setting of ['journal_mode = WAL', 'synchronous = FULL', 'foreign_keys = ON'])
    database.exec(`pragma ${setting}`);
  const config = { database: withKeptStatements(database) };
  const dialect = new SqliteDialect(config);
  dialect.createDriver = () => new WritingDriver(config);
  return new Kysely<Tables>({ dialect });
}
