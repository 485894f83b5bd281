import type { Kysely } from 'kysely';
import type { Doing } from './job.ts';
import { fromJsonText, toJsonText } from './json-text.ts';
import { Refusal } from './refusal.ts';
import { findQuote, findRevision } from './quotes.ts';
import type { QuoteState } from './quote-tables.ts';
import type { Tables } from './schema.ts';

/** What happens to a quote, beside its being drawn up. */
export type QuoteEventKind =
  'sent' | 'opened' | 'accepted' | 'declined' | 'asked' | 'answered' | 'withdrawn' | 'link-revoked';

/** One thing that happened, by whom and when; `said` is what was typed. */
export interface QuoteEvent {
  readonly number: number;
  readonly revision: string;
  readonly kind: QuoteEventKind;
  /** Name of the option that was chosen. */
  readonly option?: string;
  readonly said?: string;
  readonly link?: string;
  readonly by: string;
  readonly at: string;
}

/** What happened to a quote, in order. */
export async function quoteEvents(db: Kysely<Tables>, quote: string): Promise<QuoteEvent[]> {
  const rows = await db
    .selectFrom('quote_events')
    .selectAll()
    .where('quote', '=', quote)
    .orderBy('number')
    .execute();
  return rows.map((row) => ({
    number: row.number,
    revision: row.revision,
    kind: row.kind as QuoteEventKind,
    ...fromJsonText<{ option?: string; said?: string }>(row.document),
    ...(row.link === null ? {} : { link: row.link }),
    by: row.made_by,
    at: row.made_at,
  }));
}

/** What an event says beside its kind. */
export interface EventWords {
  readonly option?: string;
  readonly said?: string;
}

export async function addQuoteEvent(
  db: Kysely<Tables>,
  about: {
    readonly quote: string;
    readonly revision: string;
    readonly kind: QuoteEventKind;
    readonly link?: string;
  },
  words: EventWords,
  { by, at }: Doing,
): Promise<void> {
  const { quote, revision, kind, link = null } = about;
  for (;;) {
    const { last } = await db
      .selectFrom('quote_events')
      .select((e) => e.fn.max('number').as('last'))
      .where('quote', '=', quote)
      .executeTakeFirstOrThrow();
    const { numInsertedOrUpdatedRows } = await db
      .insertInto('quote_events')
      .values({
        quote,
        number: Number(last ?? 0) + 1,
        revision,
        kind,
        link,
        document: toJsonText(words),
        made_by: by,
        made_at: at,
      })
      .onConflict((c) => c.doNothing())
      .executeTakeFirst();
    // Another process took the number between the look and the write.
    if (numInsertedOrUpdatedRows === 1n) return;
  }
}

/** States in which a customer may take or refuse a quote. */
const OPEN: readonly QuoteState[] = ['sent'];

/**
 * The customer takes or refuses the newest revision; of two answers at once one stands.
 *
 * @throws Refusal `quote-closed` when it was answered, withdrawn or revised since
 */
export async function settleQuote(
  db: Kysely<Tables>,
  quote: string,
  revision: string,
  kind: 'accepted' | 'declined',
  words: EventWords & { readonly link?: string },
  doing: Doing,
): Promise<void> {
  const { numUpdatedRows } = await db
    .updateTable('quotes')
    .set({ state: kind, since: doing.at })
    .where('number', '=', quote)
    .where('revision', '=', revision)
    .where('state', 'in', OPEN)
    .executeTakeFirst();
  if (numUpdatedRows !== 1n)
    throw new Refusal('quote-closed', `${quote} ${revision} was answered, withdrawn or revised already`, {
      number: quote,
    });
  const { link, ...said } = words;
  await addQuoteEvent(db, { quote, revision, kind, ...(link === undefined ? {} : { link }) }, said, doing);
}

/** Questions of a link that may wait for an answer. */
const MOST_QUESTIONS = 10;

/** The customer asks. @throws Refusal `too-many` when ten questions of the link wait already */
export async function askAboutQuote(
  db: Kysely<Tables>,
  at: { readonly quote: string; readonly revision: string; readonly link: string },
  said: string,
  doing: Doing,
): Promise<void> {
  const events = await quoteEvents(db, at.quote);
  const answered = events.findLastIndex((e) => e.kind === 'answered');
  const waiting = events.slice(answered + 1).filter((e) => e.kind === 'asked' && e.link === at.link);
  if (waiting.length >= MOST_QUESTIONS)
    throw new Refusal(
      'too-many',
      `${MOST_QUESTIONS} questions wait for an answer; the shop reads them first`,
    );
  await addQuoteEvent(db, { ...at, kind: 'asked' }, { said }, doing);
  await db.updateTable('quotes').set({ question: 1 }).where('number', '=', at.quote).execute();
}

/** The shop answers what was asked last; whoever holds that link reads it. @throws Refusal `no-such-quote` */
export async function answerQuestion(
  db: Kysely<Tables>,
  quote: string,
  said: string,
  doing: Doing,
): Promise<void> {
  const { revision } = await findQuote(db, quote);
  const asked = (await quoteEvents(db, quote)).findLast((e) => e.kind === 'asked');
  const link = asked?.link === undefined ? {} : { link: asked.link };
  await addQuoteEvent(db, { quote, revision, kind: 'answered', ...link }, { said }, doing);
  await db.updateTable('quotes').set({ question: 0 }).where('number', '=', quote).execute();
}

/** The shop takes a quote back. @throws Refusal `no-such-quote`; `quote-closed` when it was accepted */
export async function withdrawQuote(
  db: Kysely<Tables>,
  quote: string,
  said: string,
  doing: Doing,
): Promise<void> {
  const { revision } = await findQuote(db, quote);
  const { numUpdatedRows } = await db
    .updateTable('quotes')
    .set({ state: 'withdrawn', since: doing.at })
    .where('number', '=', quote)
    .where('state', 'not in', ['accepted', 'withdrawn'])
    .executeTakeFirst();
  if (numUpdatedRows !== 1n)
    throw new Refusal('quote-closed', `${quote} was accepted or withdrawn already`, { number: quote });
  await addQuoteEvent(db, { quote, revision, kind: 'withdrawn' }, { said }, doing);
}

/**
 * The newest revision is sent: from now on it is never changed, and its paper is kept as it went out. Sent again, it
 * stays as it is.
 *
 * @throws Refusal `no-such-quote`; `quote-closed` when a newer revision is there, or it was withdrawn
 */
export async function markSent(
  db: Kysely<Tables>,
  number: string,
  revision: string,
  paper: Uint8Array,
  { at }: Doing,
): Promise<void> {
  const quote = await findQuote(db, number);
  const { sentAt } = await findRevision(db, number, revision);
  if (quote.revision !== revision)
    throw new Refusal('quote-closed', `${number} has a newer revision ${quote.revision}; send that one`, {
      number,
    });
  if (quote.state === 'withdrawn')
    throw new Refusal('quote-closed', `${number} was withdrawn; revise it first`, { number });
  if (sentAt === undefined)
    await db
      .updateTable('quote_revisions')
      .set({ sent_at: at, paper: Buffer.from(paper).toString('base64') })
      .where('quote', '=', number)
      .where('revision', '=', revision)
      .execute();
  if (quote.state === 'drawn')
    await db.updateTable('quotes').set({ state: 'sent', since: at }).where('number', '=', number).execute();
}
