/** Each price with the cost that stands beside it, as documents name them. */
const COST_OF: Readonly<Record<string, string>> = {
  priceCents: 'costCents',
  labourRateCentsPerHour: 'labourCostCentsPerHour',
};

/**
 * A document as those get it who are not told costs, made whole for the engine: what is sold stands in for what it costs,
 * so that all is reckoned by list prices. A document that tells its costs stays as it is.
 */
export function costsAsPrices<T>(document: T): T {
  return filled(document) as T;
}

/** Whether the shop's settings, as they were sent, tell what an hour costs. */
export function tellsCosts(shop: unknown): boolean {
  return typeof shop === 'object' && shop !== null && 'labourCostCentsPerHour' in shop;
}

function filled(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(filled);
  if (typeof value !== 'object' || value === null) return value;
  const fields = Object.entries(value);
  const costs = fields.flatMap(([name, price]) => {
    const cost = COST_OF[name];
    return cost === undefined || cost in value ? [] : [[cost, price]];
  });
  return Object.fromEntries([...fields.map(([name, field]) => [name, filled(field)]), ...costs]);
}
