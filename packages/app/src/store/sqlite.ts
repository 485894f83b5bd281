import Database, { type Statement } from 'better-sqlite3';
import {
  CompiledQuery,
  Kysely,
  SqliteAdapter,
  SqliteDialect,
  SqliteDriver,
  type DatabaseConnection,
  type QueryResult,
} from 'kysely';
import type { Tables } from './schema.ts';

/** How long a save waits for another process that is saving [ms]. */
const WAIT = 5000;

/** What the driver made: never given up, see below. */
const kept: unknown[] = [];

/**
 * Each text is prepared once and kept until the process ends. Node from 24.19 on aborts when it collects an object of
 * this driver while no script runs; as every text of the records is fixed but for the length of its lists, they are few.
 */
function withKeptStatements(database: Database.Database): (text: string) => Statement<readonly unknown[]> {
  const statements = new Map<string, Statement<readonly unknown[]>>();
  kept.push(database, statements);
  return (text) => {
    const known = statements.get(text);
    if (known !== undefined) return known;
    const statement = database.prepare<readonly unknown[]>(text);
    statements.set(text, statement);
    return statement;
  };
}

/** A file opened twice: saves take turns at one, reads go to the other at once and see what was committed. */
class File {
  readonly #writing: Database.Database;
  readonly #reading: Database.Database;
  readonly toWrite: ReturnType<typeof withKeptStatements>;
  readonly toRead: ReturnType<typeof withKeptStatements>;
  #last = Promise.resolve();

  constructor(path: string) {
    this.#writing = new Database(path, { timeout: WAIT });
    for (const setting of ['journal_mode = WAL', 'synchronous = FULL', 'foreign_keys = ON'])
      this.#writing.exec(`pragma ${setting}`);
    this.#reading = new Database(path, { timeout: WAIT });
    this.#reading.exec('pragma query_only = ON');
    this.toWrite = withKeptStatements(this.#writing);
    this.toRead = withKeptStatements(this.#reading);
  }

  /** The turn to write, in the order in which it was asked for. @returns what ends it */
  async turn(): Promise<() => void> {
    const before = this.#last;
    let end!: () => void;
    this.#last = new Promise((done) => (end = done));
    await before;
    return end;
  }

  close(): void {
    this.#reading.close();
    this.#writing.close();
  }
}

/** What one question, or one transaction, is put through. */
class Connection implements DatabaseConnection {
  readonly #file: File;
  #endTurn: (() => void) | undefined;

  constructor(file: File) {
    this.#file = file;
  }

  async executeQuery<R>({ sql, parameters }: CompiledQuery): Promise<QueryResult<R>> {
    // Prepared where it would be written, which knows the tables as they are at the moment.
    const statement = this.#file.toWrite(sql);
    if (this.#endTurn !== undefined) return answered(statement, parameters);
    if (statement.readonly) return answered(this.#file.toRead(sql), parameters);
    const end = await this.#file.turn();
    try {
      return answered(statement, parameters);
    } finally {
      end();
    }
  }

  async *streamQuery<R>(query: CompiledQuery): AsyncGenerator<QueryResult<R>> {
    yield await this.executeQuery<R>(query);
  }

  async begin(): Promise<void> {
    this.#endTurn = await this.#file.turn();
    try {
      // A transaction takes the right to write at its start: none fails half-way because another process wrote first.
      await this.executeQuery(CompiledQuery.raw('begin immediate'));
    } catch (error) {
      this.end();
      throw error;
    }
  }

  end(): void {
    this.#endTurn?.();
    this.#endTurn = undefined;
  }
}

function answered<R>(
  statement: Statement<readonly unknown[]>,
  parameters: readonly unknown[],
): QueryResult<R> {
  if (statement.reader) return { rows: statement.all(parameters) as R[] };
  const { changes, lastInsertRowid } = statement.run(parameters);
  return { numAffectedRows: BigInt(changes), insertId: BigInt(lastInsertRowid), rows: [] };
}

class Driver extends SqliteDriver {
  readonly #file: File;

  constructor(file: File) {
    super({ database: undefined as never });
    this.#file = file;
  }

  override init(): Promise<void> {
    return Promise.resolve();
  }

  override acquireConnection(): Promise<Connection> {
    return Promise.resolve(new Connection(this.#file));
  }

  override beginTransaction(connection: Connection): Promise<void> {
    return connection.begin();
  }

  override async commitTransaction(connection: Connection): Promise<void> {
    await super.commitTransaction(connection);
    connection.end();
  }

  override async rollbackTransaction(connection: Connection): Promise<void> {
    try {
      await super.rollbackTransaction(connection);
    } finally {
      connection.end();
    }
  }

  override releaseConnection(): Promise<void> {
    return Promise.resolve();
  }

  override destroy(): Promise<void> {
    this.#file.close();
    return Promise.resolve();
  }
}

/** Steps of the schema are made together or not at all here too. */
class Adapter extends SqliteAdapter {
  override get supportsTransactionalDdl(): boolean {
    return true;
  }
}

/**
 * Opens a database file, made when it is not there. Only here does the program know its driver. A save is on the disk
 * before it is answered (synchronous FULL), and readers do not wait for writers (WAL).
 *
 * @throws Error when the driver is not built or the file is no database
 */
export function openSqlite(file: string): Kysely<Tables> {
  const opened = new File(file);
  const dialect = new SqliteDialect({ database: undefined as never });
  dialect.createDriver = () => new Driver(opened);
  dialect.createAdapter = () => new Adapter();
  return new Kysely<Tables>({ dialect });
}
