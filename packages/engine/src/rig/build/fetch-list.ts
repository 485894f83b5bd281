import type { Part } from '../../catalogue/index.ts';
import { ordersFor, type Order } from '../bill/index.ts';
import type { Pick } from './pick-list.ts';

/** One thing that is fetched for one machine, by what the store really has and what the machine was given already. */
export interface Fetch extends Omit<Pick, 'stock'> {
  /** Given to this machine already. */
  readonly taken: number;
  /** In the store for this line: what lines before it need is not counted twice. */
  readonly onHand: number;
}

/**
 * The pick list of one machine that is being built. What it needs and was not given is fetched as far as the store has
 * it; the rest is short.
 *
 * @param onHand pieces or feet of a part in the store now; below nought counts as none
 * @param takenFor pieces or feet of a part that this machine was given
 */
export function fetchList(
  picks: readonly Pick[],
  onHand: (part: string) => number,
  takenFor: (part: string) => number,
): Fetch[] {
  const left = new Map<string, { store: number; given: number }>();
  return picks.map(({ stock: _, ...pick }) => {
    const { part, need } = pick;
    const rest = left.get(part) ?? {
      store: Math.max(0, onHand(part)),
      given: Math.max(0, takenFor(part)),
    };
    const taken = Math.min(need, rest.given);
    const take = Math.min(need - taken, rest.store);
    left.set(part, { store: rest.store - take, given: rest.given - taken });
    return { ...pick, taken, onHand: rest.store, take, short: need - taken - take };
  });
}

/**
 * What must be bought for a machine that is being built, by supplier and the last day to order it.
 *
 * @param partOf finds a part of the list in the catalogue or among the rig's own
 * @param buildDate day on which building begins; a lead time is counted in working days before it
 * @throws RangeError when the build date is not a day of the calendar
 */
export function ordersToFetch(
  list: readonly Fetch[],
  partOf: (id: string) => Part | undefined,
  buildDate?: string,
): Order[] {
  return ordersFor(
    list.map(({ part, need, short, unit }) => ({ part, quantity: need, short, unit })),
    partOf,
    buildDate,
  );
}
