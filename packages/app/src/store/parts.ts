import type { Kysely } from 'kysely';
import type { Kind } from '@spraywright/engine/catalogue';
import { inOrder, partHead, pricesOn, type PartDocument, type PartHead } from './catalogue.ts';
import { hasWord } from './found-by.ts';
import { fromJsonText } from './json-text.ts';
import { Refusal } from './refusal.ts';
import type { Tables } from './schema.ts';

/** Parts that have all the words, in the order of their ids. */
export interface PartQuery {
  readonly words: readonly string[];
  readonly kind?: Kind;
  /** Whether retired parts, kept ones or both are asked for. */
  readonly standing: 'kept' | 'retired' | 'both';
  readonly limit: number;
  /** The id of the last part of the page before. */
  readonly after?: string;
}

/** A part as a list shows it, with its price of the day; without one where none is known yet. */
export interface ListedPart extends PartHead {
  readonly priceCents?: number;
}

export async function listParts(
  db: Kysely<Tables>,
  { words, kind, standing, limit, after }: PartQuery,
  day: string,
): Promise<ListedPart[]> {
  let query = db.selectFrom('parts').selectAll();
  for (const word of words) query = query.where(hasWord(word));
  if (kind !== undefined) query = query.where('kind', '=', kind);
  if (standing !== 'both') query = query.where('retired', '=', standing === 'retired' ? 1 : 0);
  if (after !== undefined) query = query.where('id', '>', after);
  const rows = await query.orderBy('id').limit(limit).execute();
  const prices = await pricesOn(db, { day, ids: rows.map(({ id }) => id) });
  return rows.map((row) => {
    const price = prices.get(row.id);
    return { ...partHead(row), ...(price === undefined ? {} : { priceCents: price.priceCents }) };
  });
}

/** One price of a part, and who said it. */
interface DatedPrice {
  readonly from: string;
  readonly costCents: number;
  readonly priceCents: number;
  readonly by: string;
  readonly at: string;
}

export interface OpenedPart extends PartHead {
  /** The part with the price of the day. */
  readonly document: PartDocument;
  /** Every price that holds from some day on, the first first. */
  readonly prices: readonly DatedPrice[];
}

/**
 * A part with its price on a day and all its prices.
 *
 * @throws Refusal `no-such-part`
 */
export async function openPart(db: Kysely<Tables>, id: string, day: string): Promise<OpenedPart> {
  const row = await db
    .selectFrom('parts as p')
    .innerJoin('part_editions as e', (j) =>
      j.onRef('e.part_id', '=', 'p.id').onRef('e.edition', '=', 'p.edition'),
    )
    .selectAll('p')
    .select('e.document')
    .where('p.id', '=', id)
    .executeTakeFirst();
  if (row === undefined) throw new Refusal('no-such-part', `there is no part '${id}'`, { id });
  const head = partHead(row);
  const price = (await pricesOn(db, { day, ids: [id] })).get(id);
  const rows = await db
    .selectFrom('part_prices')
    .selectAll()
    .where('part_id', '=', id)
    .orderBy('valid_from')
    .orderBy('edition')
    .execute();
  const byDay = new Map(rows.map((r) => [r.valid_from, r]));
  return {
    ...head,
    document: inOrder(head.kind, { ...fromJsonText<PartDocument>(row.document), ...price }),
    prices: [...byDay.values()].map((r) => ({
      from: r.valid_from,
      costCents: r.cost_cents,
      priceCents: r.price_cents,
      by: r.made_by,
      at: r.made_at,
    })),
  };
}
