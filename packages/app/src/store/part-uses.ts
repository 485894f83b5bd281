import { sql, type Kysely } from 'kysely';
import type { Tables } from './schema.ts';

/** Where a part stands: jobs, quotes that wait for an answer, and machines that were begun. */
export interface PartUses {
  readonly jobs: readonly { readonly id: string; readonly title: string; readonly customer: string }[];
  readonly quotes: readonly { readonly number: string; readonly title: string; readonly customer: string }[];
  readonly machines: readonly {
    readonly serial: string;
    readonly title: string;
    readonly customer: string;
  }[];
}

/** Quotes that may still be accepted. */
const OPEN_STATES = ['drawn', 'sent'] as const;
/** Of each sort, the last changed first. */
const MOST_TOLD = 100;

/** Documents that name the part among their rig's items or as a part of their own copy. */
export async function usesOfPart(db: Kysely<Tables>, id: string): Promise<PartUses> {
  const jobs = await db
    .selectFrom('job_documents as d')
    .innerJoin('jobs as j', 'j.id', 'd.job_id')
    .select(['j.id', 'j.title', 'j.customer'])
    .where(names('d.document', 'part', id))
    .orderBy('j.changed_at', 'desc')
    .limit(MOST_TOLD)
    .execute();
  const quotes = await db
    .selectFrom('quotes as q')
    .innerJoin('quote_revisions as r', (j) =>
      j.onRef('r.quote', '=', 'q.number').onRef('r.revision', '=', 'q.revision'),
    )
    .select(['q.number', 'q.title', 'q.customer'])
    .where('q.state', 'in', OPEN_STATES)
    .where((e) => e.or([names('r.document', 'part', id), names('r.document', 'id', id)]))
    .orderBy('q.since', 'desc')
    .limit(MOST_TOLD)
    .execute();
  const machines = await db
    .selectFrom('machines as m')
    .select(['m.serial', 'm.title', 'm.customer'])
    .where(names('m.document', 'part', id))
    .orderBy('m.made_at', 'desc')
    .limit(MOST_TOLD)
    .execute();
  return { jobs, quotes, machines };
}

/** The documents are written by one program without spaces: a field and its value stand side by side. */
function names(column: string, field: string, id: string) {
  const pattern = `%"${field}":"${id}"%`;
  return sql<boolean>`${sql.ref(column)} like ${pattern}`;
}
