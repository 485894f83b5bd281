import type { Kysely } from 'kysely';
import { hasWord, isBehind, type Place } from './found-by.ts';
import { headOf, type Doing, type Job, type JobDocument, type JobHead } from './job.ts';
import { jobsFound } from './job-index.ts';
import { fromJsonText, toJsonText } from './json-text.ts';
import { Refusal } from './refusal.ts';
import type { JobRow, Tables } from './schema.ts';

/** Jobs that have all the words, the last changed first. */
export interface JobQuery {
  readonly words: readonly string[];
  readonly limit: number;
  /** Where the last job of the page before stands: `changedAt` and `id`. */
  readonly after?: Place;
}

export async function listJobs(db: Kysely<Tables>, { words, limit, after }: JobQuery): Promise<JobHead[]> {
  let query = db.selectFrom('jobs').selectAll();
  for (const word of words) query = query.where(hasWord(word));
  const found = await jobsFound(db, words);
  if (found !== undefined) query = query.where(found);
  if (after !== undefined) query = query.where(isBehind(after, { at: 'changed_at', name: 'id' }));
  const rows = await query.orderBy('changed_at', 'desc').orderBy('id', 'desc').limit(limit).execute();
  return rows.map(jobHead);
}

/** @throws Refusal `job-exists` when the id is taken */
export async function makeJob(
  db: Kysely<Tables>,
  id: string,
  document: JobDocument,
  { by, at }: Doing,
): Promise<Job> {
  const row: JobRow = {
    id,
    version: 1,
    ...headOf(id, document),
    made_at: at,
    changed_at: at,
    changed_by: by,
  };
  const { numInsertedOrUpdatedRows } = await db
    .insertInto('jobs')
    .values(row)
    .onConflict((c) => c.column('id').doNothing())
    .executeTakeFirst();
  if (numInsertedOrUpdatedRows !== 1n)
    throw new Refusal('job-exists', `there is already a job '${id}'`, { id });
  await db
    .insertInto('job_documents')
    .values({ job_id: id, document: toJsonText(document) })
    .execute();
  return { ...jobHead(row), document };
}

/** @throws Refusal `no-such-job` */
export async function openJob(db: Kysely<Tables>, id: string): Promise<Job> {
  const row = await db
    .selectFrom('jobs')
    .innerJoin('job_documents', 'job_documents.job_id', 'jobs.id')
    .selectAll('jobs')
    .select('job_documents.document')
    .where('jobs.id', '=', id)
    .executeTakeFirst();
  if (row === undefined) throw new Refusal('no-such-job', `there is no job '${id}'`, { id });
  return { ...jobHead(row), document: fromJsonText<JobDocument>(row.document) };
}

export function jobHead(row: JobRow): JobHead {
  const { id, version, title, customer } = row;
  return {
    id,
    version,
    title,
    customer,
    madeAt: row.made_at,
    changedAt: row.changed_at,
    changedBy: row.changed_by,
  };
}
