import type { Shop } from '@spraywright/engine/catalogue';
import type { Bill } from '@spraywright/engine/rig';
import { amountText } from '@spraywright/engine/quantity';
import type { FieldRefusal } from '../problem.ts';

/** What a role may give: the shop's floors, and its own where it has some. */
interface Floors {
  readonly leastMarginPercent: number;
  readonly mostDiscountPercent: number;
}

/**
 * Why a price may not be quoted by somebody of a role; undefined when it may. A price by the shop's own rule without a
 * discount is the owner's doing, and nobody's to refuse.
 *
 * @param role of whoever makes the quote; nobody's where one person works alone, who is the owner
 */
export function floorRefusal(
  bill: Bill,
  { pricing }: Shop,
  option: { readonly index: number; readonly name: string; readonly ownPrice: boolean },
  role: string | undefined,
): FieldRefusal | undefined {
  const asked = bill.discount?.askedPercent ?? 0;
  if (asked === 0 && !option.ownPrice) return undefined;
  const own = pricing.floorsByRole.find((f) => f.role === role);
  const floors: Floors = {
    leastMarginPercent: Math.max(pricing.leastMarginPercent, own?.leastMarginPercent ?? 0),
    mostDiscountPercent: Math.min(pricing.mostDiscountPercent, own?.mostDiscountPercent ?? 100),
  };
  const who = own === undefined ? 'the shop' : `a ${role}`;
  const beyond = own === undefined ? '' : '; an owner may give more, down to the floors of the shop';
  const refuse = (message: string): FieldRefusal => ({
    field: `options.${option.index}.pricing`,
    code: 'below-floor',
    message: `option '${option.name}': ${message}${beyond}`,
  });
  if (asked > floors.mostDiscountPercent)
    return refuse(`a discount of ${asked} % was asked, ${who} gives ${floors.mostDiscountPercent} % at most`);
  // As it was asked, not as the bill held it: a quote says a price because somebody chose it.
  const priceCents = bill.linesCents - (bill.discount?.askedCents ?? 0);
  const least = Math.ceil(bill.costCents / (1 - floors.leastMarginPercent / 100) - 1e-9);
  if (priceCents < least)
    return refuse(
      `${amountText(priceCents)} is under ${amountText(least)}, at which ${who} keeps a margin of ${floors.leastMarginPercent} %`,
    );
  return undefined;
}
