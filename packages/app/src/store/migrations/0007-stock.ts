import type { Kysely } from 'kysely';

/** What was taken from the store, brought to it and counted; nothing in it is ever changed. */
export async function up(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('stock_movements')
    .addColumn('operation', 'text', (c) => c.primaryKey())
    .addColumn('part', 'text', (c) => c.notNull())
    .addColumn('quantity', 'integer', (c) => c.notNull())
    .addColumn('why', 'text', (c) => c.notNull())
    .addColumn('serial', 'text', (c) => c.notNull())
    .addColumn('note', 'text', (c) => c.notNull())
    .addColumn('made_by', 'text', (c) => c.notNull())
    .addColumn('made_at', 'text', (c) => c.notNull())
    .execute();
  await db.schema
    .createIndex('stock_movements_by_part')
    .on('stock_movements')
    .columns(['part', 'made_at'])
    .execute();
  await db.schema.createIndex('stock_movements_by_serial').on('stock_movements').column('serial').execute();
}
