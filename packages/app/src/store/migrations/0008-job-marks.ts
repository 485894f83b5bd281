import type { Kysely } from 'kysely';

/** What is said of a job that nothing else tells: stopped, taken up again, handed over. */
export async function up(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('job_marks')
    .addColumn('job_id', 'text', (c) => c.notNull().references('jobs.id'))
    .addColumn('number', 'integer', (c) => c.notNull())
    .addColumn('kind', 'text', (c) => c.notNull())
    .addColumn('said', 'text', (c) => c.notNull())
    .addColumn('made_by', 'text', (c) => c.notNull())
    .addColumn('made_at', 'text', (c) => c.notNull())
    .addPrimaryKeyConstraint('job_marks_in_order', ['job_id', 'number'])
    .execute();
}
