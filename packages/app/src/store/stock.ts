import type { Kysely } from 'kysely';
import type { Doing } from './job.ts';
import { Refusal } from './refusal.ts';
import type { Tables } from './schema.ts';
import type { StockMovementRow } from './stock-tables.ts';

/** Why a part moves: into the store, or out of it. A count may do either. */
export const STOCK_REASONS = {
  received: 'in',
  'put-back': 'in',
  taken: 'out',
  scrapped: 'out',
  counted: 'either',
} as const;
export type StockReason = keyof typeof STOCK_REASONS;

/** A movement as it is sent, under a name of its own, so that it counts once however often it arrives. */
export interface StockMovement {
  readonly operation: string;
  readonly part: string;
  readonly quantity: number;
  readonly why: StockReason;
  readonly serial: string;
  readonly note: string;
}

export interface MadeMovement extends StockMovement {
  readonly by: string;
  readonly at: string;
}

/** What all movements of a part come to. */
export interface Moved {
  readonly part: string;
  readonly quantity: number;
}

/**
 * Writes movements, all or none; those that are known already are passed over.
 *
 * @throws Refusal `bad-movement` when a quantity goes the wrong way for its reason, or a known name comes with another movement
 */
export async function moveStock(
  db: Kysely<Tables>,
  movements: readonly StockMovement[],
  { by, at }: Doing,
): Promise<void> {
  for (const movement of movements) {
    checkWay(movement);
    const { numInsertedOrUpdatedRows } = await db
      .insertInto('stock_movements')
      .values({ ...movement, made_by: by, made_at: at })
      .onConflict((c) => c.column('operation').doNothing())
      .executeTakeFirst();
    if (numInsertedOrUpdatedRows !== 1n) await checkSame(db, movement);
  }
}

/** What the movements of every part come to, or only those made for one machine, by part. */
export async function movedStock(db: Kysely<Tables>, serial?: string): Promise<Moved[]> {
  let query = db
    .selectFrom('stock_movements')
    .select((e) => ['part', e.fn.sum<number>('quantity').as('quantity')])
    .groupBy('part')
    .orderBy('part');
  if (serial !== undefined) query = query.where('serial', '=', serial);
  const rows = await query.execute();
  // A sum of integers comes from PostgreSQL as text.
  return rows.map(({ part, quantity }) => ({ part, quantity: Number(quantity) }));
}

/** What the movements of one part come to. */
export async function movedOf(db: Kysely<Tables>, part: string): Promise<number> {
  const { quantity } = await db
    .selectFrom('stock_movements')
    .select((e) => e.fn.sum<number>('quantity').as('quantity'))
    .where('part', '=', part)
    .executeTakeFirstOrThrow();
  return Number(quantity ?? 0);
}

/** How many movements there are. */
export async function countMovements(db: Kysely<Tables>): Promise<number> {
  const { count } = await db
    .selectFrom('stock_movements')
    .select((e) => e.fn.countAll<number>().as('count'))
    .executeTakeFirstOrThrow();
  return Number(count);
}

/** Movements of one part, the newest first. */
export async function movementsOf(db: Kysely<Tables>, part: string, limit: number): Promise<MadeMovement[]> {
  const rows = await db
    .selectFrom('stock_movements')
    .selectAll()
    .where('part', '=', part)
    .orderBy('made_at', 'desc')
    .orderBy('operation', 'desc')
    .limit(limit)
    .execute();
  return rows.map(madeMovement);
}

function madeMovement({ made_by, made_at, ...row }: StockMovementRow): MadeMovement {
  return { ...row, why: row.why as StockReason, by: made_by, at: made_at };
}

function checkWay({ part, quantity, why }: StockMovement): void {
  const way = STOCK_REASONS[why];
  if (quantity === 0 || (way === 'in' && quantity < 0) || (way === 'out' && quantity > 0))
    throw new Refusal(
      'bad-movement',
      `quantity of '${part}' is ${quantity}; ${why} takes ${way === 'in' ? 'more than 0' : way === 'out' ? 'less than 0' : 'anything but 0'}`,
      { part, why },
    );
}

async function checkSame(db: Kysely<Tables>, movement: StockMovement): Promise<void> {
  const { operation, part, quantity, why, serial } = movement;
  const known = await db
    .selectFrom('stock_movements')
    .selectAll()
    .where('operation', '=', operation)
    .executeTakeFirstOrThrow();
  if (known.part !== part || known.quantity !== quantity || known.why !== why || known.serial !== serial)
    throw new Refusal(
      'bad-movement',
      `operation '${operation}' is the name of another movement: ${known.quantity} of '${known.part}', ${known.why}`,
      { operation },
    );
}
