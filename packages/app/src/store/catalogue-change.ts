import type { Kysely } from 'kysely';
import type { Kind } from '@spraywright/engine/catalogue';
import {
  ALWAYS,
  catalogueEdition,
  inOrder,
  pricesOn,
  THE_SHOP,
  type KeptCatalogue,
  type PartDocument,
  type PartPrice,
} from './catalogue.ts';
import type { Doing } from './job.ts';
import { fromJsonText, toJsonText } from './json-text.ts';
import { Refusal } from './refusal.ts';
import type { PartRow } from './catalogue-tables.ts';
import type { Tables } from './schema.ts';
import { putShopEdition } from './shop-editions.ts';

/** What becomes of one part; what is not named stays. */
interface PartChange {
  readonly id: string;
  readonly kind: Kind;
  /** The whole part with its prices, checked by the engine's shape. */
  readonly document?: PartDocument;
  readonly retired?: boolean;
  /** Edition of the part that the change was made on; 0 says that there is no such part yet. */
  readonly madeOn?: number;
}

export interface CatalogueChange {
  readonly parts?: readonly PartChange[];
  /** Edition of the whole catalogue that the change was made on, where it rests on more than its own parts. */
  readonly madeOn?: number;
  /** The day from which prices in `parts` hold. */
  readonly pricesFrom?: string;
  readonly shop?: unknown;
  /** All rig families of the shop's own, in place of those there were. */
  readonly layouts?: readonly unknown[];
  readonly about?: Readonly<Partial<Record<Kind, string>>>;
}

/** What a change did: ids of the parts that differ now. */
export interface CatalogueChanged {
  readonly edition: number;
  readonly added: readonly string[];
  readonly changed: readonly string[];
}

/**
 * Lays a first catalogue into records that have none.
 *
 * @returns false when there is one already; nothing was changed then
 */
export async function layFirstCatalogue(
  db: Kysely<Tables>,
  { name, edition, shop, parts, about, layouts }: KeptCatalogue,
  doing: Doing,
): Promise<boolean> {
  const row = {
    id: THE_SHOP,
    name,
    edition,
    shop: toJsonText(shop),
    layouts: toJsonText(layouts),
    ...changedBy(doing),
  };
  const { numInsertedOrUpdatedRows } = await db
    .insertInto('catalogues')
    .values(row)
    .onConflict((c) => c.column('id').doNothing())
    .executeTakeFirst();
  if (numInsertedOrUpdatedRows !== 1n) return false;
  await putShopEdition(db, { edition, shop: row.shop, layouts: row.layouts }, doing);
  await putAbout(db, about);
  for (const part of parts) await addPart(db, part, edition, doing);
  return true;
}

/**
 * Changes parts, prices and the shop's settings, all or nothing; what differs gets the next edition.
 *
 * @throws Refusal `no-such-catalogue`; `no-such-part`; `part-exists`; `stale-part` when somebody changed a part since
 */
export async function changeCatalogue(
  db: Kysely<Tables>,
  { parts = [], madeOn, pricesFrom, shop, layouts, about = {} }: CatalogueChange,
  doing: Doing,
): Promise<CatalogueChanged> {
  // The row is taken first: of two changes at once one waits here, and then finds the parts as the other left them.
  const { numUpdatedRows } = await db
    .updateTable('catalogues')
    .set((e) => ({ edition: e('edition', '+', 1) }))
    .where('id', '=', THE_SHOP)
    .executeTakeFirst();
  if (numUpdatedRows !== 1n) throw new Refusal('no-such-catalogue', 'the records have no catalogue yet');
  const edition = (await catalogueEdition(db))!;
  if (madeOn !== undefined && madeOn !== edition - 1)
    throw new Refusal(
      'stale-part',
      `the catalogue is at edition ${edition - 1}; the change was made on ${madeOn}`,
      { edition: edition - 1 },
    );
  const added: string[] = [];
  const changed: string[] = [];
  for (const change of parts) {
    const done = await changePart(db, change, edition, pricesFrom ?? doing.at.slice(0, 10), doing);
    if (done === 'added') added.push(change.id);
    else if (done === 'changed') changed.push(change.id);
  }
  const told = shop === undefined ? false : await putWhole(db, 'shop', shop);
  const built = layouts === undefined ? false : await putWhole(db, 'layouts', layouts);
  await putAbout(db, about);
  if (added.length + changed.length > 0 || told || built) {
    await db.updateTable('catalogues').set(changedBy(doing)).where('id', '=', THE_SHOP).execute();
    if (told || built) await keepShop(db, edition, doing);
    return { edition, added, changed };
  }
  await db
    .updateTable('catalogues')
    .set({ edition: edition - 1 })
    .where('id', '=', THE_SHOP)
    .execute();
  return { edition: edition - 1, added, changed };
}

async function keepShop(db: Kysely<Tables>, edition: number, doing: Doing): Promise<void> {
  const kept = await db
    .selectFrom('catalogues')
    .select(['shop', 'layouts'])
    .where('id', '=', THE_SHOP)
    .executeTakeFirstOrThrow();
  await putShopEdition(db, { edition, ...kept }, doing);
}

async function putWhole(db: Kysely<Tables>, column: 'shop' | 'layouts', document: unknown): Promise<boolean> {
  const text = toJsonText(document);
  const { numUpdatedRows } = await db
    .updateTable('catalogues')
    .set({ [column]: text })
    .where('id', '=', THE_SHOP)
    .where(column, '!=', text)
    .executeTakeFirst();
  return numUpdatedRows === 1n;
}

async function putAbout(db: Kysely<Tables>, about: KeptCatalogue['about']): Promise<void> {
  for (const [kind, text] of Object.entries(about))
    await db
      .insertInto('part_kinds')
      .values({ kind, about: text })
      .onConflict((c) => c.column('kind').doUpdateSet({ about: text }))
      .execute();
}

async function changePart(
  db: Kysely<Tables>,
  { id, kind, document, retired, madeOn }: PartChange,
  edition: number,
  pricesFrom: string,
  doing: Doing,
): Promise<'added' | 'changed' | undefined> {
  const row = await db.selectFrom('parts').selectAll().where('id', '=', id).executeTakeFirst();
  if (row === undefined) {
    if (document === undefined || (madeOn ?? 0) > 0)
      throw new Refusal('no-such-part', `there is no part '${id}'`, { id });
    await addPart(db, { id, kind, document, retired: retired ?? false }, edition, doing);
    return 'added';
  }
  if (madeOn === 0 || row.kind !== kind)
    throw new Refusal('part-exists', `there is already a part '${id}', a ${row.kind}`, { id });
  if (madeOn !== undefined && madeOn !== row.edition)
    throw new Refusal(
      'stale-part',
      `part '${id}' was changed in edition ${row.edition}${row.changed_by === '' ? '' : ` by ${row.changed_by}`}; the change was made on ${madeOn}`,
      { id, edition: row.edition },
    );
  const priced =
    document === undefined ? false : await putPrice(db, id, document, edition, pricesFrom, doing);
  const kept = await db
    .selectFrom('part_editions')
    .select('document')
    .where('part_id', '=', id)
    .where('edition', '=', row.edition)
    .executeTakeFirstOrThrow();
  const bare =
    document === undefined ? fromJsonText<PartDocument>(kept.document) : withoutPrice(kind, document);
  const gone = retired ?? row.retired === 1;
  const same = toJsonText(bare) === kept.document && gone === (row.retired === 1);
  if (same && !priced) return undefined;
  await db
    .updateTable('parts')
    .set({ ...headOf(id, kind, bare), edition, retired: gone ? 1 : 0, ...changedBy(doing) })
    .where('id', '=', id)
    .execute();
  await putEdition(db, id, edition, bare, gone, doing);
  return 'changed';
}

async function addPart(
  db: Kysely<Tables>,
  { id, kind, document, retired }: { id: string; kind: Kind; document: PartDocument; retired: boolean },
  edition: number,
  doing: Doing,
): Promise<void> {
  const bare = withoutPrice(kind, document);
  const flag = retired ? 1 : 0;
  const row: PartRow = { id, kind, ...headOf(id, kind, bare), edition, retired: flag, ...changedBy(doing) };
  await db.insertInto('parts').values(row).execute();
  await putEdition(db, id, edition, bare, retired, doing);
  await db
    .insertInto('part_prices')
    .values({ ...priceRow(id, priceOf(document), edition, doing), valid_from: ALWAYS })
    .execute();
}

async function putEdition(
  db: Kysely<Tables>,
  id: string,
  edition: number,
  bare: PartDocument,
  retired: boolean,
  { by, at }: Doing,
): Promise<void> {
  await db
    .insertInto('part_editions')
    .values({
      part_id: id,
      edition,
      document: toJsonText(bare),
      retired: retired ? 1 : 0,
      made_at: at,
      made_by: by,
    })
    .execute();
}

/** Puts down a price from a day on where it differs from what holds then. */
async function putPrice(
  db: Kysely<Tables>,
  id: string,
  document: PartDocument,
  edition: number,
  from: string,
  doing: Doing,
): Promise<boolean> {
  const price = priceOf(document);
  const before = (await pricesOn(db, { day: from, ids: [id] })).get(id);
  if (before?.costCents === price.costCents && before.priceCents === price.priceCents) return false;
  await db
    .insertInto('part_prices')
    .values({ ...priceRow(id, price, edition, doing), valid_from: from })
    .execute();
  return true;
}

function priceRow(id: string, { costCents, priceCents }: PartPrice, edition: number, { by, at }: Doing) {
  return { part_id: id, edition, cost_cents: costCents, price_cents: priceCents, made_at: at, made_by: by };
}

function priceOf({ costCents, priceCents }: PartDocument): PartPrice {
  return { costCents: Number(costCents), priceCents: Number(priceCents) };
}

/** In the order of its kind, so that the same part is the same text. */
function withoutPrice(kind: Kind, { costCents: _, priceCents: __, ...bare }: PartDocument): PartDocument {
  return inOrder(kind, bare);
}

function headOf(id: string, kind: Kind, document: PartDocument): { name: string; found_by: string } {
  const name = typeof document.name === 'string' ? document.name : id;
  return { name, found_by: [kind, id, ...textsOf(document)].join(' ').toLowerCase() };
}

/** Every text in a part, such as names, materials and quantities as they were typed. */
function textsOf(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(textsOf) : [];
}

const changedBy = ({ by, at }: Doing) => ({ changed_at: at, changed_by: by });
