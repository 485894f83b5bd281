import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Kysely } from 'kysely';
import { GroupCommit } from './group-commit.ts';
import { migrate } from './migrate.ts';
import type { Tables } from './schema.ts';
import { isServerAddress, openPostgres } from './postgres.ts';
import { openSqlite } from './sqlite.ts';

/** The shop's records: reads go to `db`, every write through `save`. */
export interface Records {
  readonly db: Kysely<Tables>;
  readonly save: GroupCommit['save'];
  /** Address of the database server they are on; absent where they are a file. */
  readonly server?: string;
  /** Closes the file when every save that was asked for has been written. */
  readonly close: () => Promise<void>;
}

/** The one file in the records' folder; while the program runs, two more with the same beginning stand beside it. */
const FILE = 'records.sqlite';

function fileIn(folder: string): string {
  mkdirSync(folder, { recursive: true });
  return join(folder, FILE);
}

/**
 * Opens the records in a folder, made when it is not there, or on a PostgreSQL server.
 *
 * @param place a folder, or an address such as postgres://user@host/database
 * @throws Error when the folder cannot be written, the file is no database, the server is not reached, or the records
 *   were written by a newer program
 */
export async function openRecords(place: string): Promise<Records> {
  const server = isServerAddress(place) ? { server: place } : {};
  const db = isServerAddress(place) ? openPostgres(place) : openSqlite(fileIn(place));
  try {
    await migrate(db);
  } catch (error) {
    await db.destroy();
    throw error;
  }
  const commits = new GroupCommit(db);
  return {
    ...server,
    db,
    save: (work) => commits.save(work),
    close: () => commits.idle().then(() => db.destroy()),
  };
}
