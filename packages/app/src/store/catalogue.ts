import type { Kysely } from 'kysely';
import { KINDS, PART_SHAPES, type Kind } from '@spraywright/engine/catalogue';
import { fromJsonText } from './json-text.ts';
import type { PartRow } from './catalogue-tables.ts';
import type { Tables } from './schema.ts';
import { shopIn } from './shop-editions.ts';

/** The key of the one row of the catalogue. */
export const THE_SHOP = 'shop';
/** The day from which a first price holds: always. */
export const ALWAYS = '0000-01-01';

/** A part as its file has it, prices too. */
export type PartDocument = Readonly<Record<string, unknown>>;

interface KeptPart {
  readonly id: string;
  readonly kind: Kind;
  readonly document: PartDocument;
  readonly retired: boolean;
}

/** The whole catalogue as it stood in an edition, with the prices of a day. */
export interface KeptCatalogue {
  readonly name: string;
  readonly edition: number;
  readonly shop: unknown;
  /** What is said of all parts of a kind. */
  readonly about: Readonly<Partial<Record<Kind, string>>>;
  readonly parts: readonly KeptPart[];
  /** Rig families of the shop's own, as their files have them. */
  readonly layouts: readonly unknown[];
}

/** A part as lists show it. */
export interface PartHead {
  readonly id: string;
  readonly kind: Kind;
  readonly name: string;
  /** Edition of the catalogue in which it was last changed. */
  readonly edition: number;
  readonly retired: boolean;
  readonly changedAt: string;
  readonly changedBy: string;
}

/** The edition that the catalogue is at; undefined when none has been laid in. */
export async function catalogueEdition(db: Kysely<Tables>): Promise<number | undefined> {
  const row = await db
    .selectFrom('catalogues')
    .select('edition')
    .where('id', '=', THE_SHOP)
    .executeTakeFirst();
  return row?.edition;
}

/**
 * The catalogue with the prices of a day.
 *
 * @param edition the edition asked for; the one that stands when absent
 * @returns undefined when no catalogue has been laid in
 */
export async function catalogueOn(
  db: Kysely<Tables>,
  day: string,
  edition?: number,
): Promise<KeptCatalogue | undefined> {
  const head = await db.selectFrom('catalogues').selectAll().where('id', '=', THE_SHOP).executeTakeFirst();
  if (head === undefined) return undefined;
  const until = edition ?? head.edition;
  const rows = await db
    .selectFrom('part_editions as e')
    .innerJoin('parts as p', 'p.id', 'e.part_id')
    .select(['p.id', 'p.kind', 'e.document', 'e.retired'])
    .where((x) =>
      x(
        'e.edition',
        '=',
        x
          .selectFrom('part_editions as later')
          .select((y) => y.fn.max('later.edition').as('edition'))
          .whereRef('later.part_id', '=', 'e.part_id')
          .where('later.edition', '<=', until),
      ),
    )
    .orderBy('p.id')
    .execute();
  const prices = await pricesOn(db, { day, edition: until });
  const kinds = await db.selectFrom('part_kinds').selectAll().execute();
  const { shop, layouts } = (edition === undefined ? undefined : await shopIn(db, edition)) ?? head;
  return {
    name: head.name,
    edition: until,
    shop: fromJsonText(shop),
    layouts: fromJsonText<unknown[]>(layouts),
    about: Object.fromEntries(kinds.map(({ kind, about }) => [kind, about])),
    parts: rows.map(({ id, kind, document, retired }) => ({
      id,
      kind: kind as Kind,
      document: inOrder(kind as Kind, { ...fromJsonText<PartDocument>(document), ...prices.get(id) }),
      retired: retired === 1,
    })),
  };
}

export interface PartPrice {
  readonly costCents: number;
  readonly priceCents: number;
}

/** What parts cost on a day, all or those named: of each the last price that began by then, as it was last said. */
export async function pricesOn(
  db: Kysely<Tables>,
  {
    day,
    edition,
    ids,
  }: { readonly day: string; readonly edition?: number; readonly ids?: readonly string[] },
): Promise<ReadonlyMap<string, PartPrice>> {
  if (ids?.length === 0) return new Map();
  let query = db
    .selectFrom('part_prices')
    .select(['part_id', 'cost_cents', 'price_cents'])
    .where('valid_from', '<=', day);
  if (edition !== undefined) query = query.where('edition', '<=', edition);
  if (ids !== undefined) query = query.where('part_id', 'in', ids);
  const rows = await query.orderBy('valid_from').orderBy('edition').execute();
  return new Map(rows.map((r) => [r.part_id, { costCents: r.cost_cents, priceCents: r.price_cents }]));
}

/** The fields of a part in the order in which its kind declares them; what the kind does not know comes last. */
export function inOrder(kind: Kind, document: PartDocument): PartDocument {
  const order = KINDS.includes(kind) ? Object.keys(PART_SHAPES[kind].fields) : [];
  const place = (name: string) => (order.includes(name) ? order.indexOf(name) : order.length);
  return Object.fromEntries(Object.entries(document).sort(([a], [b]) => place(a) - place(b)));
}

export function partHead(row: PartRow): PartHead {
  return {
    id: row.id,
    kind: row.kind as Kind,
    name: row.name,
    edition: row.edition,
    retired: row.retired === 1,
    changedAt: row.changed_at,
    changedBy: row.changed_by,
  };
}
