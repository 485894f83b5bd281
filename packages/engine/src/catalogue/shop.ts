import {
  flag,
  identifier,
  integer,
  list,
  number,
  object,
  oneOf,
  optional,
  tagged,
  text,
  withDefault,
  type Infer,
} from '../quantity/index.ts';
import { KINDS } from './part.ts';

/** What a rig is counted by when labour and consumables are reckoned. */
const per = () => oneOf('rig', 'part', 'joint', 'thread', 'line');
const rate = () => integer({ min: 0, max: 100_000 });
const kinds = () => optional(list(oneOf(...KINDS), { max: KINDS.length }));

/** How a price is made: the list's, cost with a markup, or cost with a share of the price left over. */
const priceRule = tagged('mode', {
  list: object({}),
  'cost-plus': object({ markupPercent: number({ min: 0, max: 900 }) }),
  'target-margin': object({ marginPercent: number({ min: 0, max: 90 }) }),
});

export type PriceRule = Infer<typeof priceRule>;

/** What one rig or quote says instead of the shop's own pricing. */
export const rigPricingShape = object({
  price: optional(priceRule),
  discountPercent: optional(number({ min: 0, max: 100 })),
  /** What bringing it to the customer costs them; no discount and no tax is reckoned on it. */
  freightCents: optional(integer({ min: 0, max: 10_000_000 })),
  /** The customer pays no sales tax: an exemption that the shop has seen. */
  taxFree: optional(flag()),
});

export type RigPricing = Infer<typeof rigPricingShape>;

const shopPricing = object({
  price: priceRule,
  /** No discount takes the margin below this share of the price. */
  leastMarginPercent: withDefault(number({ min: 0, max: 90 }), 0),
  /** No discount is larger than this share of the lines. */
  mostDiscountPercent: withDefault(number({ min: 0, max: 100 }), 100),
  /** Roles that may give less than the shop's floors allow: their own floors, held beside the shop's. */
  floorsByRole: withDefault(
    list(
      object({
        role: identifier(),
        leastMarginPercent: number({ min: 0, max: 90 }),
        mostDiscountPercent: number({ min: 0, max: 100 }),
      }),
      { max: 10 },
    ),
    [],
  ),
  /** Freight that the customer of a rig pays where the job says nothing else; absent where freight is not the shop's matter. */
  freightCents: optional(integer({ min: 0, max: 10_000_000 })),
  /** Absent where no tax is reckoned: the quote then says that it is without. */
  tax: optional(object({ percent: number({ min: 0, max: 50 }), on: oneOf('everything', 'goods') })),
});

const LIST_PRICE: Infer<typeof shopPricing> = {
  price: { mode: 'list' },
  leastMarginPercent: 0,
  mostDiscountPercent: 100,
  floorsByRole: [],
};

/** The shop that builds: its rates, operations, small stuff and terms of trade. */
export const shopShape = object({
  name: text({ min: 1, max: 80 }),
  address: text({ max: 120 }),
  /** What serial numbers begin with; made of the shop's name when absent. */
  initials: optional(
    text({
      max: 4,
      like: { pattern: /^[A-Z0-9]{1,4}$/, expected: "1 to 4 capital letters or figures such as 'LFR'" },
    }),
  ),
  /** Address that letters come from. */
  mailFrom: optional(
    text({
      max: 200,
      like: {
        pattern: /^[^\s@<>,;:"]+@[^\s@<>,;:"]+$/,
        expected: "an e-mail address such as 'office@shop.example'",
      },
    }),
  ),
  currency: oneOf('USD'),
  labourCostCentsPerHour: rate(),
  labourRateCentsPerHour: rate(),
  operations: list(
    object({
      id: identifier(),
      name: text({ min: 1, max: 60 }),
      hours: number({ min: 0, max: 200 }),
      per: per(),
      /** With `per: part`: the kinds of part it is done to. */
      kinds: kinds(),
      /** Of this kind of work, where it is not the shop's usual rate. */
      costCentsPerHour: optional(rate()),
      rateCentsPerHour: optional(rate()),
    }),
    { max: 60 },
  ),
  consumables: list(
    object({
      id: identifier(),
      name: text({ min: 1, max: 60 }),
      costCents: integer({ min: 0, max: 1_000_000 }),
      priceCents: integer({ min: 0, max: 1_000_000 }),
      per: per(),
      kinds: kinds(),
    }),
    { max: 60 },
  ),
  pricing: withDefault(shopPricing, LIST_PRICE),
  depositPercent: number({ min: 0, max: 100 }),
  validDays: integer({ min: 1, max: 365 }),
  /** Working days from parts in hand to a tested rig. */
  assemblyDays: integer({ min: 1, max: 365 }),
  /** Hours that the shop builds in a week, all hands together; absent when it does not plan by hours. */
  hoursPerWeek: optional(number({ min: 1, max: 2000 })),
  terms: list(text({ min: 1, max: 200 }), { max: 20 }),
});

export type Shop = Infer<typeof shopShape>;
