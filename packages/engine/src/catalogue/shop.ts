import {
  identifier,
  integer,
  list,
  number,
  object,
  oneOf,
  optional,
  text,
  type Infer,
} from '../quantity/index.ts';
import { KINDS } from './part.ts';

/** What a rig is counted by when labour and consumables are reckoned. */
const per = () => oneOf('rig', 'part', 'joint', 'line');

/** The shop that builds: its rates, operations, small stuff and terms of trade. */
export const shopShape = object({
  name: text({ min: 1, max: 80 }),
  address: text({ max: 120 }),
  currency: oneOf('USD'),
  labourCostCentsPerHour: integer({ min: 0, max: 100_000 }),
  labourRateCentsPerHour: integer({ min: 0, max: 100_000 }),
  operations: list(
    object({
      id: identifier(),
      name: text({ min: 1, max: 60 }),
      hours: number({ min: 0, max: 200 }),
      per: per(),
      /** With `per: part`: the kinds of part it is done to. */
      kinds: optional(list(oneOf(...KINDS), { max: KINDS.length })),
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
    }),
    { max: 60 },
  ),
  depositPercent: number({ min: 0, max: 100 }),
  validDays: integer({ min: 1, max: 365 }),
  /** Working days from parts in hand to a tested rig. */
  assemblyDays: integer({ min: 1, max: 365 }),
  terms: list(text({ min: 1, max: 200 }), { max: 20 }),
});

export type Shop = Infer<typeof shopShape>;
