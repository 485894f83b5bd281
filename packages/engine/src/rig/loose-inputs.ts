/**
 * What a proof reckons with and no part of a rig decides: the crew, the place, the liquid as it was bought, and what nobody
 * can read off a leaflet.
 */
export type LooseInput =
  | 'residual'
  | 'fill-flow'
  | 'crew-pace'
  | 'handling'
  | 'unit-volume'
  | 'trigger-time'
  | 'hand-timing'
  | 'pouring'
  | 'fuel-use'
  | 'charge-use'
  | 'cable'
  | 'drying'
  | 'slope'
  | 'stock-strength'
  | 'bleach-loss';

/** Factors on them, where a rig is one draw of many [-]. */
export type LooseFactors = Readonly<Partial<Record<LooseInput, number>>>;

/** How many times the figure that the proof takes one of them is [-]: 1, unless the rig is one draw of many. */
export function looseFactor({ loose }: { readonly loose?: LooseFactors }, input: LooseInput): number {
  return loose?.[input] ?? 1;
}
