import type { Kysely } from 'kysely';

/** How often an address asked lately, so that all processes on the records slow it together. */
export async function up(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('asks')
    .addColumn('asker', 'text', (c) => c.primaryKey())
    .addColumn('count', 'integer', (c) => c.notNull())
    .addColumn('since', 'text', (c) => c.notNull())
    .addColumn('until', 'text', (c) => c.notNull())
    .execute();
  await db.schema.createIndex('asks_by_end').on('asks').column('until').execute();
}
