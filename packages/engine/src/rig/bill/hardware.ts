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

/** For each need the cheapest part of the catalogue that fits; like parts on one line; what is lacking is named. */
export function hardwareFor(
  needs: readonly HardwareNeed[],
  stock: readonly PartOf<'hardware'>[],
): { readonly found: readonly Found[]; readonly missing: readonly string[] } {
  const found = new Map<string, Found>();
  const missing: string[] = [];
  for (const { words, quantity, unit, fits } of needs) {
    let part: PartOf<'hardware'> | undefined;
    for (const candidate of stock)
      if (fits(candidate) && (part === undefined || candidate.priceCents < part.priceCents)) part = candidate;
    if (part === undefined) missing.push(`the catalogue has no ${words()}`);
    else found.set(part.id, { part, unit, quantity: quantity + (found.get(part.id)?.quantity ?? 0) });
  }
  return { found: [...found.values()], missing: [...new Set(missing)] };
}
