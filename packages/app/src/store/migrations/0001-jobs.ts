import type { Kysely } from 'kysely';

/** Jobs, their documents and every edit made to them. */
export async function up(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('jobs')
    .addColumn('id', 'text', (c) => c.primaryKey())
    .addColumn('version', 'integer', (c) => c.notNull())
    .addColumn('title', 'text', (c) => c.notNull())
    .addColumn('customer', 'text', (c) => c.notNull())
    .addColumn('found_by', 'text', (c) => c.notNull())
    .addColumn('made_at', 'text', (c) => c.notNull())
    .addColumn('changed_at', 'text', (c) => c.notNull())
    .addColumn('changed_by', 'text', (c) => c.notNull())
    .execute();
  await db.schema.createIndex('jobs_by_change').on('jobs').columns(['changed_at', 'id']).execute();
  await db.schema
    .createTable('job_documents')
    .addColumn('job_id', 'text', (c) => c.primaryKey().references('jobs.id'))
    .addColumn('document', 'text', (c) => c.notNull())
    .execute();
  await db.schema
    .createTable('job_edits')
    .addColumn('job_id', 'text', (c) => c.notNull().references('jobs.id'))
    .addColumn('version', 'integer', (c) => c.notNull())
    .addColumn('operation', 'text', (c) => c.notNull())
    .addColumn('about', 'text', (c) => c.notNull())
    .addColumn('puts', 'text', (c) => c.notNull())
    .addColumn('inverse', 'text', (c) => c.notNull())
    .addColumn('made_by', 'text', (c) => c.notNull())
    .addColumn('made_at', 'text', (c) => c.notNull())
    .addPrimaryKeyConstraint('job_edits_by_version', ['job_id', 'version'])
    .addUniqueConstraint('job_edits_once', ['job_id', 'operation'])
    .execute();
}
