import { afterAll, beforeAll } from 'vitest';
import { postgresServer, type PostgresServer } from './postgres-server.ts';

/** What the records may stand in. */
export const DATABASES = ['SQLite', 'PostgreSQL'] as const;
export type DatabaseName = (typeof DATABASES)[number];

/** New, empty records in either database, for a file of tests; undefined is a folder of the test's own. */
export function newRecords(): (name: DatabaseName) => Promise<string | undefined> {
  let server: PostgresServer;
  beforeAll(async () => {
    server = await postgresServer();
  }, 60_000);
  afterAll(() => server.remove());
  return (name) => (name === 'SQLite' ? Promise.resolve(undefined) : server.newDatabase());
}
