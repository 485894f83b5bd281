import type { Kysely } from 'kysely';

/** Quotes with their revisions, the papers that were sent, the links for customers, and what happened to each. */
export async function up(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('quotes')
    .addColumn('number', 'text', (c) => c.primaryKey())
    .addColumn('count', 'integer', (c) => c.notNull().unique())
    .addColumn('job_id', 'text', (c) => c.notNull().references('jobs.id'))
    .addColumn('revision', 'text', (c) => c.notNull())
    .addColumn('state', 'text', (c) => c.notNull())
    .addColumn('since', 'text', (c) => c.notNull())
    .addColumn('question', 'integer', (c) => c.notNull())
    .addColumn('title', 'text', (c) => c.notNull())
    .addColumn('customer', 'text', (c) => c.notNull())
    .addColumn('price_cents', 'integer', (c) => c.notNull())
    .addColumn('option_count', 'integer', (c) => c.notNull())
    .addColumn('found_by', 'text', (c) => c.notNull())
    .addColumn('made_at', 'text', (c) => c.notNull())
    .addColumn('made_by', 'text', (c) => c.notNull())
    .execute();
  await db.schema.createIndex('quotes_by_job').on('quotes').columns(['job_id']).execute();
  await db.schema.createIndex('quotes_by_state').on('quotes').columns(['state', 'since']).execute();
  await db.schema
    .createTable('quote_revisions')
    .addColumn('quote', 'text', (c) => c.notNull().references('quotes.number'))
    .addColumn('revision', 'text', (c) => c.notNull())
    .addColumn('document', 'text', (c) => c.notNull())
    .addColumn('made_at', 'text', (c) => c.notNull())
    .addColumn('made_by', 'text', (c) => c.notNull())
    .addColumn('sent_at', 'text')
    .addColumn('paper', 'text')
    .addPrimaryKeyConstraint('quote_revisions_by_letter', ['quote', 'revision'])
    .execute();
  await db.schema
    .createTable('quote_links')
    .addColumn('id', 'text', (c) => c.primaryKey())
    .addColumn('quote', 'text', (c) => c.notNull())
    .addColumn('revision', 'text', (c) => c.notNull())
    .addColumn('token_hash', 'text', (c) => c.notNull().unique())
    .addColumn('sent_to', 'text', (c) => c.notNull())
    .addColumn('expires_at', 'text', (c) => c.notNull())
    .addColumn('revoked_at', 'text')
    .addColumn('made_at', 'text', (c) => c.notNull())
    .addColumn('made_by', 'text', (c) => c.notNull())
    .addForeignKeyConstraint('quote_links_revision', ['quote', 'revision'], 'quote_revisions', [
      'quote',
      'revision',
    ])
    .execute();
  await db.schema.createIndex('quote_links_by_quote').on('quote_links').columns(['quote']).execute();
  await db.schema
    .createTable('quote_events')
    .addColumn('quote', 'text', (c) => c.notNull().references('quotes.number'))
    .addColumn('number', 'integer', (c) => c.notNull())
    .addColumn('revision', 'text', (c) => c.notNull())
    .addColumn('kind', 'text', (c) => c.notNull())
    .addColumn('link', 'text')
    .addColumn('document', 'text', (c) => c.notNull())
    .addColumn('made_by', 'text', (c) => c.notNull())
    .addColumn('made_at', 'text', (c) => c.notNull())
    .addPrimaryKeyConstraint('quote_events_in_order', ['quote', 'number'])
    .execute();
}
