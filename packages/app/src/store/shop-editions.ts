import type { Kysely } from 'kysely';
import type { ShopEditionRow } from './catalogue-tables.ts';
import type { Doing } from './job.ts';
import { fromJsonText } from './json-text.ts';
import type { Tables } from './schema.ts';

/** The shop's settings from an edition of the catalogue on, and what stood before. */
export interface ShopEdition {
  readonly edition: number;
  readonly at: string;
  readonly by: string;
  readonly shop: unknown;
  /** Absent where these are the first that are known. */
  readonly before?: unknown;
}

/** Keeps settings and rig families as they stand from an edition on. */
export async function putShopEdition(
  db: Kysely<Tables>,
  row: Pick<ShopEditionRow, 'edition' | 'shop' | 'layouts'>,
  { by, at }: Doing,
): Promise<void> {
  await db
    .insertInto('shop_editions')
    .values({ ...row, made_at: at, made_by: by })
    .execute();
}

/** Settings and rig families as they stood in an edition. */
export async function shopIn(
  db: Kysely<Tables>,
  edition: number,
): Promise<Pick<ShopEditionRow, 'shop' | 'layouts'> | undefined> {
  return db
    .selectFrom('shop_editions')
    .select(['shop', 'layouts'])
    .where('edition', '<=', edition)
    .orderBy('edition', 'desc')
    .limit(1)
    .executeTakeFirst();
}

/**
 * Settings as they stood, the newest first.
 *
 * @param before only editions under this one
 */
export async function shopEditions(
  db: Kysely<Tables>,
  limit: number,
  before?: number,
): Promise<ShopEdition[]> {
  let query = db.selectFrom('shop_editions').selectAll();
  if (before !== undefined) query = query.where('edition', '<', before);
  const rows = await query
    .orderBy('edition', 'desc')
    // One more: what stood before the last of them.
    .limit(limit + 1)
    .execute();
  return rows.slice(0, limit).map(({ edition, shop, made_at: at, made_by: by }, i) => {
    const earlier = rows[i + 1];
    const told = earlier === undefined ? {} : { before: fromJsonText(earlier.shop) };
    return { edition, at, by, shop: fromJsonText(shop), ...told };
  });
}
