import type { Kysely } from 'kysely';
import { hasWord, isBehind, type Place } from './found-by.ts';
import type { Doing } from './job.ts';
import { fromJsonText, toJsonText } from './json-text.ts';
import type { QuoteRow, QuoteState } from './quote-tables.ts';
import { Refusal } from './refusal.ts';
import type { Tables } from './schema.ts';

/** A quote as lists show it. */
export interface QuoteHead {
  readonly number: string;
  readonly job: string;
  readonly revision: string;
  readonly state: QuoteState;
  readonly since: string;
  readonly question: boolean;
  readonly title: string;
  readonly customer: string;
  readonly priceCents: number;
  readonly optionCount: number;
  readonly madeAt: string;
  readonly madeBy: string;
}

/** What a revision says of itself to lists. */
interface RevisionFacts {
  readonly title: string;
  readonly customer: string;
  /** Of the first option. */
  readonly priceCents: number;
  readonly optionCount: number;
}

export interface RevisionHead {
  readonly revision: string;
  readonly madeAt: string;
  readonly madeBy: string;
  readonly sentAt?: string;
}

export interface Revision extends RevisionHead {
  readonly quote: string;
  /** Frozen: what the quote is made of and what it says. */
  readonly document: unknown;
  /** The PDF as it was sent. */
  readonly paper?: Uint8Array;
}

/** How a revision is named and dated is known only when its number is. */
export type Freeze = (name: { readonly number: string; readonly revision: string }) => {
  readonly document: unknown;
  readonly facts: RevisionFacts;
};

/** Digits of a number; more are written out. */
const DIGITS = 4;

/**
 * Makes a quote of a job with its revision A.
 *
 * @throws Refusal `no-such-job`
 */
export async function makeQuote(
  db: Kysely<Tables>,
  job: string,
  freeze: Freeze,
  { by, at }: Doing,
): Promise<QuoteHead> {
  const known = await db.selectFrom('jobs').select('id').where('id', '=', job).executeTakeFirst();
  if (known === undefined) throw new Refusal('no-such-job', `there is no job '${job}'`, { id: job });
  for (;;) {
    const { last } = await db
      .selectFrom('quotes')
      .select((e) => e.fn.max('count').as('last'))
      .executeTakeFirstOrThrow();
    const count = Number(last ?? 0) + 1;
    const number = `Q-${String(count).padStart(DIGITS, '0')}`;
    const { document, facts } = freeze({ number, revision: 'A' });
    const row: QuoteRow = {
      number,
      count,
      job_id: job,
      revision: 'A',
      state: 'drawn',
      since: at,
      question: 0,
      ...factColumns(number, job, facts),
      made_at: at,
      made_by: by,
    };
    const { numInsertedOrUpdatedRows } = await db
      .insertInto('quotes')
      .values(row)
      .onConflict((c) => c.doNothing())
      .executeTakeFirst();
    // Another process took the number between the look and the write.
    if (numInsertedOrUpdatedRows !== 1n) continue;
    await writeRevision(db, number, 'A', document, { by, at });
    return quoteHead(row);
  }
}

/**
 * Draws a quote up anew. A revision that was sent is never changed: the next letter is made; one that was not is replaced.
 *
 * @throws Refusal `no-such-quote`; `quote-closed` when it was accepted
 */
export async function reviseQuote(
  db: Kysely<Tables>,
  number: string,
  freeze: Freeze,
  { by, at }: Doing,
): Promise<QuoteHead> {
  const quote = await findQuote(db, number);
  if (quote.state === 'accepted')
    throw new Refusal('quote-closed', `${number} was accepted; make a new quote of the job instead`, {
      number,
    });
  const newest = await findRevision(db, number, quote.revision);
  const revision = newest.sentAt === undefined ? quote.revision : nextLetter(quote.revision);
  const { document, facts } = freeze({ number, revision });
  if (newest.sentAt === undefined)
    await db
      .deleteFrom('quote_revisions')
      .where('quote', '=', number)
      .where('revision', '=', revision)
      .where('sent_at', 'is', null)
      .execute();
  await writeRevision(db, number, revision, document, { by, at });
  const columns = { revision, state: 'drawn', since: at, ...factColumns(number, quote.job, facts) } as const;
  await db.updateTable('quotes').set(columns).where('number', '=', number).execute();
  return { ...quote, revision, state: 'drawn', since: at, ...facts };
}

/** Quotes of a state, a job or with all the words; those that changed their state last first. */
export interface QuoteQuery {
  readonly words: readonly string[];
  readonly limit: number;
  readonly state?: QuoteState;
  readonly job?: string;
  /** Where the last quote of the page before stands: `since` and `number`. */
  readonly after?: Place;
}

export async function listQuotes(
  db: Kysely<Tables>,
  { words, limit, state, job, after }: QuoteQuery,
): Promise<QuoteHead[]> {
  let query = db.selectFrom('quotes').selectAll();
  for (const word of words) query = query.where(hasWord(word));
  if (after !== undefined) query = query.where(isBehind(after, { at: 'since', name: 'number' }));
  if (state !== undefined) query = query.where('state', '=', state);
  if (job !== undefined) query = query.where('job_id', '=', job);
  const rows = await query.orderBy('since', 'desc').orderBy('number', 'desc').limit(limit).execute();
  return rows.map(quoteHead);
}

/** @throws Refusal `no-such-quote` */
export async function findQuote(db: Kysely<Tables>, number: string): Promise<QuoteHead> {
  const row = await db.selectFrom('quotes').selectAll().where('number', '=', number).executeTakeFirst();
  if (row === undefined) throw new Refusal('no-such-quote', `there is no quote '${number}'`, { number });
  return quoteHead(row);
}

/** The revisions of a quote, the first first; the documents stay where they are. */
export async function listRevisions(db: Kysely<Tables>, number: string): Promise<RevisionHead[]> {
  const rows = await db
    .selectFrom('quote_revisions')
    .select(['revision', 'made_at', 'made_by', 'sent_at'])
    .where('quote', '=', number)
    .orderBy('made_at')
    .orderBy('revision')
    .execute();
  return rows.map(revisionHead);
}

/** @throws Refusal `no-such-quote` when the quote has no such revision */
export async function findRevision(db: Kysely<Tables>, number: string, revision: string): Promise<Revision> {
  const row = await db
    .selectFrom('quote_revisions')
    .selectAll()
    .where('quote', '=', number)
    .where('revision', '=', revision)
    .executeTakeFirst();
  if (row === undefined)
    throw new Refusal('no-such-quote', `there is no quote '${number}' with a revision '${revision}'`, {
      number,
      revision,
    });
  return {
    ...revisionHead(row),
    quote: number,
    document: fromJsonText<unknown>(row.document),
    ...(row.paper === null ? {} : { paper: new Uint8Array(Buffer.from(row.paper, 'base64')) }),
  };
}

async function writeRevision(
  db: Kysely<Tables>,
  quote: string,
  revision: string,
  document: unknown,
  { by, at }: Doing,
): Promise<void> {
  await db
    .insertInto('quote_revisions')
    .values({
      quote,
      revision,
      document: toJsonText(document),
      made_at: at,
      made_by: by,
      sent_at: null,
      paper: null,
    })
    .execute();
}

/** A, B ... Z, AA, AB ... */
export function nextLetter(letter: string): string {
  const last = letter.charCodeAt(letter.length - 1);
  const head = letter.slice(0, -1);
  if (last < 90) return head + String.fromCharCode(last + 1);
  return `${head === '' ? 'A' : nextLetter(head)}A`;
}

function factColumns(
  number: string,
  job: string,
  { title, customer, priceCents, optionCount }: RevisionFacts,
) {
  return {
    title,
    customer,
    price_cents: priceCents,
    option_count: optionCount,
    found_by: `${number} ${title} ${customer} ${job}`.toLowerCase(),
  };
}

function quoteHead(row: QuoteRow): QuoteHead {
  const { number, revision, since, title, customer } = row;
  return {
    number,
    job: row.job_id,
    revision,
    state: row.state as QuoteState,
    since,
    question: row.question === 1,
    title,
    customer,
    priceCents: row.price_cents,
    optionCount: row.option_count,
    madeAt: row.made_at,
    madeBy: row.made_by,
  };
}

function revisionHead(row: {
  revision: string;
  made_at: string;
  made_by: string;
  sent_at: string | null;
}): RevisionHead {
  return {
    revision: row.revision,
    madeAt: row.made_at,
    madeBy: row.made_by,
    ...(row.sent_at === null ? {} : { sentAt: row.sent_at }),
  };
}
