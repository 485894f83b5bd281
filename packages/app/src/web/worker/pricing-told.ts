import type { Shop } from '@spraywright/engine/catalogue';
import { moneyText } from '@spraywright/engine/quantity';
import { belowFloor, type Bill, type Proof, type Rig } from '@spraywright/engine/rig';
import type { Given, PricingTold } from '../protocol.ts';
import type { Givens } from './given.ts';

/** How the rig is priced: what can be set, and what comes of it from the lines to what is to be paid. */
export function pricingTold(g: Givens, rig: Rig, { bill }: Proof, shop: Shop): PricingTold {
  const own = rig.document.pricing;
  const { price } = own ?? {};
  const margin = bill.priceCents === 0 ? 0 : 1 - bill.costCents / bill.priceCents;
  const refusals = [undefined, ...shop.pricing.floorsByRole.map((f) => f.role)].flatMap((role) => {
    const why = belowFloor(bill, shop, price !== undefined, role);
    return why === undefined ? [] : [[role ?? '', why] as const];
  });
  const { tax } = shop.pricing;
  return {
    mode: price?.mode ?? 'shop',
    shopMode: shop.pricing.price.mode,
    // A rule that is chosen begins where the price stands now.
    markup: bill.costCents === 0 ? 0 : rounded((bill.linesCents / bill.costCents - 1) * 100),
    margin: bill.linesCents === 0 ? 0 : rounded((1 - bill.costCents / bill.linesCents) * 100),
    ...percentOf(g, price?.mode),
    discount: g.number('pricing.discountPercent', 'Discount, percent', '0'),
    freight: g.money('pricing.freightCents', 'Freight', '$0'),
    ...(tax === undefined ? {} : { tax: { percent: tax.percent, on: tax.on, free: own?.taxFree === true } }),
    rows: rowsOf(bill),
    kept: `${(margin * 100).toFixed(1)} % of the price, ${moneyText(bill.priceCents - bill.costCents)}`,
    refusals: Object.fromEntries(refusals),
  };
}

function percentOf(g: Givens, mode: string | undefined): { percent?: Given } {
  if (mode === 'cost-plus')
    return { percent: g.number('pricing.price.markupPercent', 'Markup on cost, percent') };
  if (mode === 'target-margin')
    return { percent: g.number('pricing.price.marginPercent', 'Margin, percent of the price') };
  return {};
}

function rowsOf(bill: Bill): PricingTold['rows'] {
  const { discount, tax, freightCents } = bill;
  const more = discount !== undefined || tax !== undefined || freightCents !== undefined;
  if (!more) return [];
  const held =
    discount?.held === undefined ? '' : `, held at ${moneyText(discount.cents)} by the shop's floor`;
  return [
    { name: 'Lines together', figure: moneyText(bill.linesCents) },
    ...(discount === undefined
      ? []
      : [{ name: `Discount of ${discount.askedPercent} %${held}`, figure: moneyText(-discount.cents) }]),
    ...(discount === undefined ? [] : [{ name: 'Price', figure: moneyText(bill.priceCents) }]),
    ...(tax === undefined
      ? []
      : [
          {
            name: `Sales tax, ${tax.percent} % on ${tax.on === 'goods' ? 'parts and hose' : 'everything'}`,
            figure: moneyText(tax.cents),
          },
        ]),
    ...(freightCents === undefined
      ? []
      : [{ name: 'Freight, no sales tax reckoned on it', figure: moneyText(freightCents) }]),
  ];
}

function rounded(percent: number): number {
  return Math.round(percent * 10) / 10;
}
