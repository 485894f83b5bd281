import type { Kysely } from 'kysely';
import type { Tables } from './schema.ts';
import { soldBy } from './sold-rig.ts';

/** An accepted quote whose rig is not tested yet. */
export interface BuildToDo {
  readonly quote: string;
  readonly job: string;
  readonly title: string;
  readonly customer: string;
  readonly acceptedAt: string;
  /** The revision that was accepted, frozen. */
  readonly document: unknown;
  /** Name of the option that was chosen. */
  readonly option: string | undefined;
  /** Machines that were begun for the job. */
  readonly serials: readonly string[];
}

/** Builds that are kept in view; a shop with more plans them elsewhere. */
const MOST = 200;

/** What is to be built, in the order in which it was accepted; jobs that are tested, handed over or stopped are done. */
export async function buildsToDo(db: Kysely<Tables>): Promise<BuildToDo[]> {
  const rows = await db
    .selectFrom('quotes')
    .select(['number', 'revision', 'job_id', 'title', 'customer', 'since'])
    .where('state', '=', 'accepted')
    .orderBy('since')
    .orderBy('count')
    .limit(MOST)
    .execute();
  const builds: BuildToDo[] = [];
  for (const row of rows) {
    const mark = await db
      .selectFrom('job_marks')
      .select('kind')
      .where('job_id', '=', row.job_id)
      .orderBy('number', 'desc')
      .limit(1)
      .executeTakeFirst();
    if (mark !== undefined && mark.kind !== 'taken-up') continue;
    const machines = await db
      .selectFrom('machines')
      .leftJoin('machine_entries', (join) =>
        join
          .onRef('machine_entries.serial', '=', 'machines.serial')
          .on('machine_entries.kind', '=', 'yard-finished'),
      )
      .select(['machines.serial', 'machine_entries.number as tested'])
      .where('machines.job_id', '=', row.job_id)
      .execute();
    if (machines.some((m) => m.tested !== null)) continue;
    const { document, option } = await soldBy(db, row);
    builds.push({
      quote: row.number,
      job: row.job_id,
      title: row.title,
      customer: row.customer,
      acceptedAt: row.since,
      document,
      option,
      serials: machines.map((m) => m.serial),
    });
  }
  return builds;
}
