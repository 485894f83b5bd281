import { sql, type Kysely } from 'kysely';

/** The shop's settings and rig families as they stood: until now only the last ones were kept. */
export async function up(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('shop_editions')
    .addColumn('edition', 'integer', (c) => c.primaryKey())
    .addColumn('shop', 'text', (c) => c.notNull())
    .addColumn('layouts', 'text', (c) => c.notNull())
    .addColumn('made_at', 'text', (c) => c.notNull())
    .addColumn('made_by', 'text', (c) => c.notNull())
    .execute();
  // Nobody knows since when they have stood like this, so they stand for every edition before the next change.
  await sql`insert into shop_editions (edition, shop, layouts, made_at, made_by)
    select 0, shop, layouts, changed_at, '' from catalogues`.execute(db);
}
