/** A heading of the settings with the fields that stand under it. */
export interface ShopPiece {
  readonly heading: string;
  readonly note?: string;
  readonly fields: readonly string[];
  /** The fields are those of the pricing. */
  readonly of?: 'pricing';
}

export const SHOP_PIECES: readonly ShopPiece[] = [
  {
    heading: 'Name',
    note: 'Serial numbers begin with the first letters of the name where nothing else is said. Letters to customers are kept in the folder of letters until a mail server is named where the program is started.',
    fields: ['name', 'address', 'initials', 'mailFrom'],
  },
  {
    heading: 'Prices',
    note: 'A price by this rule may always be quoted. A discount, or another rule for one job, is held to the floors.',
    of: 'pricing',
    fields: ['price', 'mostDiscountPercent', 'leastMarginPercent', 'floorsByRole', 'freightCents', 'tax'],
  },
  { heading: 'Labour', fields: ['labourCostCentsPerHour', 'labourRateCentsPerHour'] },
  { heading: 'Quotes', fields: ['validDays', 'depositPercent', 'terms'] },
  {
    heading: 'Building',
    note: 'The promised day follows from these, from the parts that are away and from what is to be built before.',
    fields: ['assemblyDays', 'hoursPerWeek'],
  },
];

export const FOLDED: readonly ShopPiece[] = [
  {
    heading: 'Work that goes into a rig',
    note: 'Hours of one rig, line, joint, thread or part. A rate of its own goes before the usual one.',
    fields: ['operations'],
  },
  {
    heading: 'Small stuff that is used up',
    note: 'In every price, not in the store.',
    fields: ['consumables'],
  },
];
