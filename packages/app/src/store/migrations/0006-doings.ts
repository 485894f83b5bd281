import type { Kysely } from 'kysely';

/** Who did what; what sessions are signed with; wrong passwords counted; addresses that open once. */
export async function up(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('doings')
    .addColumn('id', 'text', (c) => c.primaryKey())
    .addColumn('at', 'text', (c) => c.notNull())
    .addColumn('who', 'text', (c) => c.notNull())
    .addColumn('email', 'text', (c) => c.notNull())
    .addColumn('role', 'text', (c) => c.notNull())
    .addColumn('did', 'text', (c) => c.notNull())
    .addColumn('about_kind', 'text', (c) => c.notNull())
    .addColumn('about_id', 'text', (c) => c.notNull())
    .addColumn('what', 'text', (c) => c.notNull())
    .execute();
  await db.schema.createIndex('doings_by_person').on('doings').columns(['email', 'id']).execute();
  await db.schema.createIndex('doings_by_about').on('doings').columns(['about_id', 'id']).execute();
  await db.schema
    .createTable('sign_in_secrets')
    .addColumn('name', 'text', (c) => c.primaryKey())
    .addColumn('secret', 'text', (c) => c.notNull())
    .execute();
  await db.schema
    .createTable('sign_in_tries')
    .addColumn('address', 'text', (c) => c.primaryKey())
    .addColumn('count', 'integer', (c) => c.notNull())
    .addColumn('last', 'text', (c) => c.notNull())
    .execute();
  await db.schema
    .createTable('one_time_links')
    .addColumn('token', 'text', (c) => c.primaryKey())
    .addColumn('person_id', 'text', (c) => c.notNull())
    .addColumn('expires_at', 'text', (c) => c.notNull())
    .execute();
}
