import type { Shop } from '../../catalogue/index.ts';
import { moneyText } from '../../quantity/index.ts';
import type { Bill } from './bill.ts';

/**
 * Why a price may not be quoted by somebody of a role; undefined when it may. A price by the shop's own rule without a
 * discount is the owner's doing, and nobody's to refuse.
 *
 * @param ownPrice whether the rig or the quote names a rule of its own
 * @param role of whoever makes the quote; nobody's where one person works alone, who is the owner
 */
export function belowFloor(
  bill: Bill,
  { pricing }: Shop,
  ownPrice: boolean,
  role: string | undefined,
): string | undefined {
  const asked = bill.discount?.askedPercent ?? 0;
  if (asked === 0 && !ownPrice) return undefined;
  const own = pricing.floorsByRole.find((f) => f.role === role);
  const leastMargin = Math.max(pricing.leastMarginPercent, own?.leastMarginPercent ?? 0);
  const mostDiscount = Math.min(pricing.mostDiscountPercent, own?.mostDiscountPercent ?? 100);
  const who = own === undefined ? 'the shop' : `a ${role}`;
  const beyond = own === undefined ? '' : '; an owner may give more, down to the floors of the shop';
  if (asked > mostDiscount)
    return `a discount of ${asked} % was asked, ${who} gives ${mostDiscount} % at most${beyond}`;
  // As it was asked, not as the bill held it: a quote says a price because somebody chose it.
  const priceCents = bill.linesCents - (bill.discount?.askedCents ?? 0);
  const least = Math.ceil(bill.costCents / (1 - leastMargin / 100) - 1e-9);
  return priceCents < least
    ? `${moneyText(priceCents)} is under ${moneyText(least)}, at which ${who} keeps a margin of ${leastMargin} %${beyond}`
    : undefined;
}
