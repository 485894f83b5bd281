import type { Kysely } from 'kysely';
import { changed, type Change } from '@spraywright/engine/quantity';
import { headOf, type Doing, type Job, type JobDocument } from './job.ts';
import { fromJsonText, toJsonText } from './json-text.ts';
import { openJob } from './jobs.ts';
import { Refusal } from './refusal.ts';
import type { Tables } from './schema.ts';

/** A change as it is sent: under a name of its own, so that it is made once however often it arrives. */
export interface Edit extends Change {
  readonly operation: string;
}

/** An edit that was made. */
export interface MadeEdit extends Edit {
  readonly version: number;
  readonly inverse: Change['puts'];
  readonly by: string;
  readonly at: string;
}

/**
 * Makes edits on the version they were made on, all or none. Edits that are known already are passed over.
 *
 * @param base version of the job that the first edit was made on
 * @throws Refusal `no-such-job`; `bad-change` when a path leads nowhere; `stale-version` with the job as it stands and
 *   the edits that came between, when somebody else was first
 */
export async function editJob(
  db: Kysely<Tables>,
  id: string,
  base: number,
  edits: readonly Edit[],
  { by, at }: Doing,
): Promise<Job> {
  const job = await openJob(db, id);
  const known = await knownOperations(db, id, edits);
  const fresh = edits.filter((edit) => !known.has(edit.operation));
  if (fresh.length === 0) return job;
  const expected = base + (edits.length - fresh.length);
  if (job.version !== expected) throw await stale(db, job, base);
  let { document, version } = job;
  const rows = fresh.map(({ operation, about, puts }) => {
    const made = changeMade(document, { about, puts });
    document = made.document;
    version++;
    return {
      job_id: id,
      version,
      operation,
      about,
      puts: toJsonText(puts),
      inverse: toJsonText(made.inverse.puts),
      made_by: by,
      made_at: at,
    };
  });
  // The job's row goes first: of two processes one waits here, and then finds the version taken.
  const head = headOf(id, document);
  const { numUpdatedRows } = await db
    .updateTable('jobs')
    .set({ version, ...head, changed_at: at, changed_by: by })
    .where('id', '=', id)
    .where('version', '=', expected)
    .executeTakeFirst();
  // Another process was first between the look and the write.
  if (numUpdatedRows !== 1n) throw await stale(db, await openJob(db, id), base);
  for (const row of rows) await db.insertInto('job_edits').values(row).execute();
  await db
    .updateTable('job_documents')
    .set({ document: toJsonText(document) })
    .where('job_id', '=', id)
    .execute();
  const { title, customer } = head;
  return { ...job, version, title, customer, changedAt: at, changedBy: by, document };
}

/** What was done to a job after a version, in order. */
export async function editsAfter(
  db: Kysely<Tables>,
  id: string,
  version: number,
  limit: number,
): Promise<MadeEdit[]> {
  const rows = await db
    .selectFrom('job_edits')
    .selectAll()
    .where('job_id', '=', id)
    .where('version', '>', version)
    .orderBy('version')
    .limit(limit)
    .execute();
  return rows.map((row) => ({
    version: row.version,
    operation: row.operation,
    about: row.about,
    puts: fromJsonText<Change['puts']>(row.puts),
    inverse: fromJsonText<Change['puts']>(row.inverse),
    by: row.made_by,
    at: row.made_at,
  }));
}

/**
 * A job as it stood at one of its versions, by taking back the edits that came after.
 *
 * @throws Refusal `no-such-job`, `no-such-version`
 */
export async function jobAtVersion(db: Kysely<Tables>, id: string, version: number): Promise<Job> {
  const job = await openJob(db, id);
  if (version > job.version)
    throw new Refusal(
      'no-such-version',
      `the job '${id}' is at version ${job.version}, not yet at ${version}`,
      {
        id,
        version: job.version,
      },
    );
  // An edit that arrives meanwhile is not in the document yet.
  const later = (await editsAfter(db, id, version, job.version)).filter((e) => e.version <= job.version);
  const document = later.reduceRight(
    (then, { inverse }) => changed<JobDocument>(then, { about: '', puts: inverse }).document,
    job.document,
  );
  const { title, customer } = headOf(id, document);
  return { ...job, version, title, customer, document };
}

/** Edits told with a refusal; the history has the rest. */
const MOST_TOLD = 50;

async function stale(db: Kysely<Tables>, job: Job, base: number): Promise<Refusal> {
  const since = await editsAfter(db, job.id, base, MOST_TOLD);
  const names = [...new Set(since.map((edit) => edit.by).filter((by) => by !== ''))].join(', ');
  const told = since.map(({ version, about, by, at }) => ({ version, about, by, at }));
  return new Refusal(
    'stale-version',
    `the job is at version ${job.version}, the edit was made on ${base}${names === '' ? '' : `; changed by ${names}`}`,
    { job, since: told },
  );
}

async function knownOperations(db: Kysely<Tables>, id: string, edits: readonly Edit[]): Promise<Set<string>> {
  const names = edits.map((edit) => edit.operation);
  const rows = await db
    .selectFrom('job_edits')
    .select('operation')
    .where('job_id', '=', id)
    .where('operation', 'in', names)
    .execute();
  return new Set(rows.map((row) => row.operation));
}

function changeMade(document: JobDocument, change: Change): { document: JobDocument; inverse: Change } {
  try {
    const made = changed<JobDocument>(document, change);
    const { rig, notes } = made.document;
    if (typeof rig !== 'object' || rig === null || Array.isArray(rig) || typeof notes !== 'string')
      throw new RangeError('a job keeps its rig and its notes');
    return made;
  } catch (error) {
    if (error instanceof RangeError) throw new Refusal('bad-change', error.message);
    throw error;
  }
}
