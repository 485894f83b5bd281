import { createHash, randomBytes } from 'node:crypto';
import type { Kysely } from 'kysely';
import type { Doing } from './job.ts';
import { addQuoteEvent } from './quote-events.ts';
import type { QuoteLinkRow } from './quote-tables.ts';
import { Refusal } from './refusal.ts';
import type { Tables } from './schema.ts';

/** A link as the shop sees it: never with what opens it. */
export interface QuoteLink {
  readonly id: string;
  readonly revision: string;
  readonly sentTo: string;
  readonly expiresAt: string;
  readonly revokedAt?: string;
  readonly madeAt: string;
  readonly madeBy: string;
}

/** Letters of a token: 32 random bytes. */
const TOKEN = /^[\w-]{43}$/;

/** What opens a link; only its hash is kept. */
export function newToken(): string {
  return randomBytes(32).toString('base64url');
}

/** Makes a link to one revision of one quote. */
export async function makeQuoteLink(
  db: Kysely<Tables>,
  to: {
    readonly quote: string;
    readonly revision: string;
    readonly sentTo: string;
    readonly expiresAt: string;
  },
  token: string,
  { by, at }: Doing,
): Promise<QuoteLink> {
  const row: QuoteLinkRow = {
    id: randomBytes(6).toString('hex'),
    quote: to.quote,
    revision: to.revision,
    token_hash: digest(token),
    sent_to: to.sentTo,
    expires_at: to.expiresAt,
    revoked_at: null,
    made_at: at,
    made_by: by,
  };
  await db.insertInto('quote_links').values(row).execute();
  const { quote, revision, sentTo } = to;
  await addQuoteEvent(db, { quote, revision, kind: 'sent', link: row.id }, { said: sentTo }, { by, at });
  return linkOfRow(row);
}

/** What a token opens; nothing when it is forged, expired or revoked, and the same nothing each time. */
export async function openedBy(
  db: Kysely<Tables>,
  token: string,
  now: string,
): Promise<{ readonly id: string; readonly quote: string; readonly revision: string } | undefined> {
  if (!TOKEN.test(token)) return undefined;
  return db
    .selectFrom('quote_links')
    .select(['id', 'quote', 'revision'])
    .where('token_hash', '=', digest(token))
    .where('expires_at', '>', now)
    .where('revoked_at', 'is', null)
    .executeTakeFirst();
}

export async function linksOf(db: Kysely<Tables>, quote: string): Promise<QuoteLink[]> {
  const rows = await db
    .selectFrom('quote_links')
    .selectAll()
    .where('quote', '=', quote)
    .orderBy('made_at')
    .orderBy('id')
    .execute();
  return rows.map(linkOfRow);
}

/** A link opens nothing from now on. @throws Refusal `no-such-quote` when the quote has no such link */
export async function revokeLink(db: Kysely<Tables>, quote: string, id: string, doing: Doing): Promise<void> {
  const row = await db
    .selectFrom('quote_links')
    .select(['revision', 'sent_to', 'revoked_at'])
    .where('quote', '=', quote)
    .where('id', '=', id)
    .executeTakeFirst();
  if (row === undefined)
    throw new Refusal('no-such-quote', `${quote} has no link '${id}'`, { number: quote });
  if (row.revoked_at !== null) return;
  await db.updateTable('quote_links').set({ revoked_at: doing.at }).where('id', '=', id).execute();
  const about = { quote, revision: row.revision, kind: 'link-revoked', link: id } as const;
  await addQuoteEvent(db, about, { said: row.sent_to }, doing);
}

/** Writes down that a link was opened for the first time. */
export async function firstOpened(
  db: Kysely<Tables>,
  link: { readonly id: string; readonly quote: string; readonly revision: string },
  at: string,
): Promise<void> {
  const known = await db
    .selectFrom('quote_events')
    .select('number')
    .where('quote', '=', link.quote)
    .where('link', '=', link.id)
    .where('kind', '=', 'opened')
    .executeTakeFirst();
  if (known !== undefined) return;
  const { quote, revision, id } = link;
  await addQuoteEvent(db, { quote, revision, kind: 'opened', link: id }, {}, { by: '', at });
}

function linkOfRow(row: QuoteLinkRow): QuoteLink {
  return {
    id: row.id,
    revision: row.revision,
    sentTo: row.sent_to,
    expiresAt: row.expires_at,
    ...(row.revoked_at === null ? {} : { revokedAt: row.revoked_at }),
    madeAt: row.made_at,
    madeBy: row.made_by,
  };
}

function digest(token: string): string {
  return createHash('sha256').update(token).digest('hex');
}
