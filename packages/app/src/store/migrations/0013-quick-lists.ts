import { sql, type Kysely } from 'kysely';
import { isSqlite } from '../dialect.ts';

/** Lists of quotes by time, and jobs by three letters in a row of what a search looks through. */
export async function up(db: Kysely<unknown>): Promise<void> {
  // A search that goes through the last changed reads the index alone.
  await db.schema.dropIndex('jobs_by_change').execute();
  await db.schema
    .createIndex('jobs_by_change')
    .on('jobs')
    .columns(['changed_at', 'id', 'found_by'])
    .execute();
  await db.schema.createIndex('quotes_by_time').on('quotes').columns(['since', 'number']).execute();
  await (isSqlite(db) ? onSqlite(db) : onPostgres(db));
}

/** Rows are only added: the text of before leads to a job too, which is then read as it is now. */
async function onSqlite(db: Kysely<unknown>): Promise<void> {
  await sql`create virtual table jobs_found using fts5(id unindexed, found_by, tokenize = 'trigram')`.execute(
    db,
  );
  await sql`insert into jobs_found (id, found_by) select id, found_by from jobs`.execute(db);
  await sql`create trigger jobs_found_made after insert on jobs begin
    insert into jobs_found (id, found_by) values (new.id, new.found_by); end`.execute(db);
  await sql`create trigger jobs_found_named after update of found_by on jobs when new.found_by <> old.found_by begin
    insert into jobs_found (id, found_by) values (new.id, new.found_by); end`.execute(db);
}

/** Where the server has no such index, or may not be given it, a search reads every job as before. */
async function onPostgres(db: Kysely<unknown>): Promise<void> {
  await sql`do $$ begin
    create extension if not exists pg_trgm;
    create index jobs_found on jobs using gin (found_by gin_trgm_ops);
  exception when others then
    raise notice 'jobs are searched without an index: %', sqlerrm;
  end $$`.execute(db);
}
