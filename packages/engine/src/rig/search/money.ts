import type { Kind, Part, Shop } from '../../catalogue/index.ts';
import { priceBy, pricingOf } from '../bill/index.ts';

/** What something adds to a rig: price [cents], dry mass [kg], and working days until the slowest of it is there. */
export interface Adds {
  readonly cents: number;
  readonly mass: number;
  readonly late: number;
}

export const NOTHING: Adds = { cents: 0, mass: 0, late: 0 };

export function plus(...adds: readonly Adds[]): Adds {
  let [cents, mass, late] = [0, 0, 0];
  for (const a of adds) {
    cents += a.cents;
    mass += a.mass;
    late = Math.max(late, a.late);
  }
  return { cents, mass, late };
}

/** The same some times over. */
export function timesOver({ cents, mass, late }: Adds, times: number): Adds {
  return { cents: cents * times, mass: mass * times, late };
}

/**
 * The lines of a bill taken apart: what each part, joint and hour adds by itself. A bill rounds each of its lines, so
 * that the sum of what is added may be above the bill by half a cent a line; `slack` is the most that can come to.
 */
export class Money {
  /** Cents by which sums of what is added may be above a bill. */
  readonly slack: number;
  readonly perJoint: number;
  readonly perThread: number;
  readonly #shop: Shop;

  constructor(shop: Shop) {
    this.#shop = shop;
    this.perJoint = this.per('joint');
    this.perThread = this.per('thread');
    const whole = (n: number) => Math.abs(n - Math.round(n)) < 1e-9;
    let slack = pricingOf(shop, undefined).rule.mode === 'list' ? 0 : 100;
    for (const op of shop.operations) {
      const rate = op.rateCentsPerHour ?? shop.labourRateCentsPerHour;
      // Whole hundredths of an hour at whole cents a hundredth round nothing.
      if (!whole(op.hours * 100) || !whole(rate / 100)) slack += 0.005 * rate + 1;
    }
    this.slack = slack;
  }

  /** Price of some of a part, bought on one line of the bill. */
  part(part: Part, quantity = 1): number {
    const { rule } = pricingOf(this.#shop, undefined);
    return priceBy(rule, part.costCents * quantity, part.priceCents * quantity);
  }

  /** A part of the bill; it comes late where its stock is too small for this alone: other lines only ask for more. */
  bought(part: Part, quantity = 1): Adds {
    return {
      cents: this.part(part, quantity),
      mass: part.mass * quantity,
      late: quantity > part.stock ? part.leadTimeDays : 0,
    };
  }

  /** Labour and small stuff that come once per rig, line, joint, thread, or part of a kind. */
  per(per: Shop['operations'][number]['per'], kind?: Kind): number {
    const counts = (op: { readonly per: string; readonly kinds?: readonly Kind[] | undefined }) =>
      op.per === per && (per !== 'part' || op.kinds === undefined || op.kinds.includes(kind!));
    const { rule } = pricingOf(this.#shop, undefined);
    let cents = 0;
    for (const op of this.#shop.operations) {
      if (!counts(op)) continue;
      const cost = op.hours * (op.costCentsPerHour ?? this.#shop.labourCostCentsPerHour);
      const list = op.hours * (op.rateCentsPerHour ?? this.#shop.labourRateCentsPerHour);
      cents += priceBy(rule, cost, list);
    }
    for (const c of this.#shop.consumables) if (counts(c)) cents += priceBy(rule, c.costCents, c.priceCents);
    return cents;
  }
}
