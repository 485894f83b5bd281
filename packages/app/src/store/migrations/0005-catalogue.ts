import type { Kysely } from 'kysely';

/** The shop's catalogue: parts as they stand and as they stood, dated prices, the shop's own settings. */
export async function up(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('catalogues')
    .addColumn('id', 'text', (c) => c.primaryKey())
    .addColumn('name', 'text', (c) => c.notNull())
    .addColumn('edition', 'integer', (c) => c.notNull())
    .addColumn('shop', 'text', (c) => c.notNull())
    .addColumn('layouts', 'text', (c) => c.notNull())
    .addColumn('changed_at', 'text', (c) => c.notNull())
    .addColumn('changed_by', 'text', (c) => c.notNull())
    .execute();
  await db.schema
    .createTable('part_kinds')
    .addColumn('kind', 'text', (c) => c.primaryKey())
    .addColumn('about', 'text', (c) => c.notNull())
    .execute();
  await db.schema
    .createTable('parts')
    .addColumn('id', 'text', (c) => c.primaryKey())
    .addColumn('kind', 'text', (c) => c.notNull())
    .addColumn('name', 'text', (c) => c.notNull())
    .addColumn('found_by', 'text', (c) => c.notNull())
    .addColumn('edition', 'integer', (c) => c.notNull())
    .addColumn('retired', 'integer', (c) => c.notNull())
    .addColumn('changed_at', 'text', (c) => c.notNull())
    .addColumn('changed_by', 'text', (c) => c.notNull())
    .execute();
  await db.schema
    .createTable('part_editions')
    .addColumn('part_id', 'text', (c) => c.notNull().references('parts.id'))
    .addColumn('edition', 'integer', (c) => c.notNull())
    .addColumn('document', 'text', (c) => c.notNull())
    .addColumn('retired', 'integer', (c) => c.notNull())
    .addColumn('made_at', 'text', (c) => c.notNull())
    .addColumn('made_by', 'text', (c) => c.notNull())
    .addPrimaryKeyConstraint('part_editions_by_edition', ['part_id', 'edition'])
    .execute();
  await db.schema
    .createTable('part_prices')
    .addColumn('part_id', 'text', (c) => c.notNull().references('parts.id'))
    .addColumn('valid_from', 'text', (c) => c.notNull())
    .addColumn('edition', 'integer', (c) => c.notNull())
    .addColumn('cost_cents', 'integer', (c) => c.notNull())
    .addColumn('price_cents', 'integer', (c) => c.notNull())
    .addColumn('made_at', 'text', (c) => c.notNull())
    .addColumn('made_by', 'text', (c) => c.notNull())
    .addPrimaryKeyConstraint('part_prices_by_day', ['part_id', 'valid_from', 'edition'])
    .execute();
}
