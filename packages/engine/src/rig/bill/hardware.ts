import type { PartOf } from '../../catalogue/index.ts';

/** Something small that must be bought beside parts and fittings. */
export interface HardwareNeed {
  /** What it is, as said when the catalogue has none: "a fuse of 30 A". */
  readonly words: () => string;
  readonly quantity: number;
  readonly unit: 'each' | 'ft';
  readonly fits: (part: PartOf<'hardware'>) => boolean;
}

interface Found {
  readonly part: PartOf<'hardware'>;
  readonly quantity: number;
  readonly unit: 'each' | 'ft';
}

/** What was found for needs: like parts on one line; what is lacking is named. */
export interface Hardware {
  readonly found: ReadonlyMap<string, Found>;
  readonly missing: ReadonlySet<string>;
}

const NONE: Hardware = { found: new Map(), missing: new Set() };

/** For each need the cheapest part of the catalogue that fits, beside what was found already. */
export function hardwareFor(
  needs: readonly HardwareNeed[],
  stock: readonly PartOf<'hardware'>[],
  already = NONE,
): Hardware {
  const found = new Map(already.found);
  const missing = new Set(already.missing);
  for (const { words, quantity, unit, fits } of needs) {
    let part: PartOf<'hardware'> | undefined;
    for (const candidate of stock)
      if ((part === undefined || candidate.priceCents < part.priceCents) && fits(candidate)) part = candidate;
    if (part === undefined) missing.add(`the catalogue has no ${words()}`);
    else found.set(part.id, { part, unit, quantity: quantity + (found.get(part.id)?.quantity ?? 0) });
  }
  return { found, missing };
}
