import type { Kysely } from 'kysely';

/** Built machines by serial number, and what was written down of each, in order and never changed. */
export async function up(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('machines')
    .addColumn('serial', 'text', (c) => c.primaryKey())
    .addColumn('job_id', 'text', (c) => c.notNull().references('jobs.id'))
    .addColumn('job_version', 'integer', (c) => c.notNull())
    .addColumn('title', 'text', (c) => c.notNull())
    .addColumn('customer', 'text', (c) => c.notNull())
    .addColumn('found_by', 'text', (c) => c.notNull())
    .addColumn('document', 'text', (c) => c.notNull())
    .addColumn('made_at', 'text', (c) => c.notNull())
    .addColumn('made_by', 'text', (c) => c.notNull())
    .execute();
  await db.schema.createIndex('machines_by_time').on('machines').columns(['made_at', 'serial']).execute();
  await db.schema.createIndex('machines_by_job').on('machines').columns(['job_id']).execute();
  await db.schema
    .createTable('machine_entries')
    .addColumn('serial', 'text', (c) => c.notNull().references('machines.serial'))
    .addColumn('number', 'integer', (c) => c.notNull())
    .addColumn('operation', 'text', (c) => c.notNull())
    .addColumn('kind', 'text', (c) => c.notNull())
    .addColumn('document', 'text', (c) => c.notNull())
    .addColumn('made_by', 'text', (c) => c.notNull())
    .addColumn('made_at', 'text', (c) => c.notNull())
    .addPrimaryKeyConstraint('machine_entries_by_number', ['serial', 'number'])
    .addUniqueConstraint('machine_entries_once', ['serial', 'operation'])
    .execute();
  await db.schema
    .createIndex('machine_entries_by_kind')
    .on('machine_entries')
    .columns(['kind', 'serial', 'number'])
    .execute();
}
