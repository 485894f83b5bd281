import type { PriceRule, RigPricing, Shop } from '../../catalogue/index.ts';
import type { BillLine } from './bill-line.ts';
import type { RawLine } from './part-lines.ts';

/** How a bill is priced: the shop's settings, with what one rig or quote says instead. */
export interface Pricing {
  readonly rule: PriceRule;
  /** Asked, in percent of the lines. */
  readonly discountPercent: number;
  /** No discount takes the margin below this share of the price [%]. */
  readonly leastMarginPercent: number;
  /** No discount is larger [%]. */
  readonly mostDiscountPercent: number;
  readonly tax: { readonly percent: number; readonly on: 'everything' | 'goods' } | undefined;
  /** Freight that the customer pays. */
  readonly freightCents: number | undefined;
}

/** A discount as asked and as given; money in integer cents. */
export interface Discount {
  readonly askedPercent: number;
  readonly askedCents: number;
  readonly cents: number;
  /** Why less is given than was asked. */
  readonly held?: 'least-margin' | 'most-discount';
}

export interface Tax {
  readonly percent: number;
  readonly on: 'everything' | 'goods';
  readonly cents: number;
}

/** The shop's way of pricing; a rig's own word goes before it, the floors stay the shop's. */
export function pricingOf(shop: Shop, own: RigPricing | undefined): Pricing {
  return {
    rule: own?.price ?? shop.pricing.price,
    discountPercent: own?.discountPercent ?? 0,
    leastMarginPercent: shop.pricing.leastMarginPercent,
    mostDiscountPercent: shop.pricing.mostDiscountPercent,
    tax: own?.taxFree === true ? undefined : shop.pricing.tax,
    freightCents: own?.freightCents ?? shop.pricing.freightCents,
  };
}

/** Price of something by a rule, in whole cents; with a target margin never below it. */
export function priceBy(rule: PriceRule, costCents: number, listCents: number): number {
  switch (rule.mode) {
    case 'list':
      return listCents;
    case 'cost-plus':
      return Math.round(costCents * (1 + rule.markupPercent / 100));
    case 'target-margin':
      return Math.ceil(costCents / (1 - rule.marginPercent / 100) - 1e-9);
  }
}

/** Prices every line, takes off the discount as far as the floors allow, adds tax and freight. */
export function priced(
  raw: readonly RawLine[],
  pricing: Pricing,
): {
  lines: BillLine[];
  costCents: number;
  linesCents: number;
  priceCents: number;
  discount?: Discount;
  tax?: Tax;
  freightCents?: number;
  totalCents: number;
} {
  const lines = raw.map((line): BillLine => {
    const priceCents = priceBy(pricing.rule, line.costCents, line.priceCents);
    return priceCents === line.priceCents ? line : { ...line, priceCents };
  });
  const costCents = sum(lines, (l) => l.costCents);
  const linesCents = sum(lines, (l) => l.priceCents);
  const discount = discountOf(costCents, linesCents, pricing);
  const priceCents = linesCents - (discount?.cents ?? 0);
  const goods = sum(lines, (l) => (l.sort === 'labour' ? 0 : l.priceCents));
  const { tax, freightCents } = pricing;
  const share = tax?.on === 'goods' && linesCents > 0 ? goods / linesCents : 1;
  const taxCents = tax === undefined ? 0 : Math.round((priceCents * share * tax.percent) / 100);
  return {
    lines,
    costCents,
    linesCents,
    ...(discount === undefined ? {} : { discount }),
    priceCents,
    ...(tax === undefined ? {} : { tax: { ...tax, cents: taxCents } }),
    ...(freightCents === undefined ? {} : { freightCents }),
    totalCents: priceCents + taxCents + (freightCents ?? 0),
  };
}

function discountOf(costCents: number, linesCents: number, pricing: Pricing): Discount | undefined {
  const { discountPercent, leastMarginPercent, mostDiscountPercent } = pricing;
  if (discountPercent === 0) return undefined;
  const askedCents = Math.round((linesCents * discountPercent) / 100);
  const most = Math.floor((linesCents * mostDiscountPercent) / 100 + 1e-9);
  const leastPrice = Math.ceil(costCents / (1 - leastMarginPercent / 100) - 1e-9);
  const byMargin = Math.max(0, linesCents - leastPrice);
  const cents = Math.min(askedCents, most, byMargin);
  return {
    askedPercent: discountPercent,
    askedCents,
    cents,
    ...(cents === askedCents ? {} : { held: byMargin <= most ? 'least-margin' : 'most-discount' }),
  };
}

function sum<T>(list: readonly T[], value: (entry: T) => number): number {
  return list.reduce((total, entry) => total + value(entry), 0);
}
