import type { Kysely } from 'kysely';

/** Rounds in which the open quotes are proven again, and what each found. */
export async function up(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('reproofs')
    .addColumn('id', 'text', (c) => c.primaryKey())
    .addColumn('edition', 'integer', (c) => c.notNull())
    .addColumn('state', 'text', (c) => c.notNull())
    .addColumn('total', 'integer', (c) => c.notNull())
    .addColumn('done', 'integer', (c) => c.notNull())
    .addColumn('changed', 'integer', (c) => c.notNull())
    .addColumn('trouble', 'text', (c) => c.notNull())
    .addColumn('asked_at', 'text', (c) => c.notNull())
    .addColumn('asked_by', 'text', (c) => c.notNull())
    .addColumn('moved_at', 'text', (c) => c.notNull())
    .execute();
  await db.schema
    .createTable('reproof_findings')
    .addColumn('reproof_id', 'text', (c) => c.notNull().references('reproofs.id'))
    .addColumn('quote', 'text', (c) => c.notNull())
    .addColumn('document', 'text', (c) => c.notNull())
    .addPrimaryKeyConstraint('reproof_findings_by_quote', ['reproof_id', 'quote'])
    .execute();
}
