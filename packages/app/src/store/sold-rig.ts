import type { Kysely } from 'kysely';
import { quoteEvents } from './quote-events.ts';
import { findRevision } from './quotes.ts';
import type { Tables } from './schema.ts';

/** The revision of a quote that was accepted, and which of its options. */
export interface SoldRig {
  readonly quote: string;
  readonly revision: string;
  /** Name of the option that was chosen; absent where there was but one. */
  readonly option?: string;
  readonly acceptedAt: string;
  /** The revision as it was frozen. */
  readonly document: unknown;
}

/** The rig that was sold by an accepted quote. */
export async function soldBy(
  db: Kysely<Tables>,
  { number, revision, since }: { readonly number: string; readonly revision: string; readonly since: string },
): Promise<SoldRig> {
  const { document } = await findRevision(db, number, revision);
  const accepted = (await quoteEvents(db, number)).findLast((e) => e.kind === 'accepted');
  const { option } = accepted ?? {};
  return {
    quote: number,
    revision,
    acceptedAt: accepted?.at ?? since,
    document,
    ...(option === undefined ? {} : { option }),
  };
}

/** The rig that was sold of a job by the quote that was accepted last; undefined where none was. */
export async function soldRigOf(db: Kysely<Tables>, job: string): Promise<SoldRig | undefined> {
  const row = await db
    .selectFrom('quotes')
    .select(['number', 'revision', 'since'])
    .where('job_id', '=', job)
    .where('state', '=', 'accepted')
    .orderBy('since', 'desc')
    .orderBy('count', 'desc')
    .limit(1)
    .executeTakeFirst();
  return row === undefined ? undefined : soldBy(db, row);
}
