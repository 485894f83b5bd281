import { Kysely, PostgresDialect } from 'kysely';
import pg from 'pg';
import type { Tables } from './schema.ts';

/** Connections that one process holds at most; saves share one, reads take the rest. */
const MOST = 8;
/** How long a connection may take to be made [ms]. */
const PATIENCE = 5000;
/** PostgreSQL's number for the type bigint, which counts and sums have. */
const BIGINT = 20;

/** True for a place of the records that is a database server, not a folder. */
export function isServerAddress(place: string): boolean {
  return /^postgres(ql)?:\/\//.test(place);
}

/**
 * Opens the records on a PostgreSQL server. Only here does the program know its driver. Every statement is of the plain
 * kind that SQLite reads alike; counts come as numbers, as they do there.
 */
export function openPostgres(address: string): Kysely<Tables> {
  const pool = new pg.Pool({
    connectionString: address,
    max: MOST,
    connectionTimeoutMillis: PATIENCE,
    types: {
      getTypeParser: (type: number, format?: 'text' | 'binary') =>
        type === BIGINT && format !== 'binary' ? Number : (pg.types.getTypeParser(type, format) as never),
    },
  });
  // A connection that the server drops is replaced at the next question, and whoever was using it is told by the failed
  // question; unheard, the event of its own would end the process.
  pool.on('error', () => undefined);
  pool.on('connect', (client) => client.on('error', () => undefined));
  return new Kysely<Tables>({ dialect: new PostgresDialect({ pool }) });
}
