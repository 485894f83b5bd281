import type { Catalogue, Shop } from '../catalogue/index.ts';
import type { RawRig } from './design/assemble.ts';
import { around, carried, pinsOf, withPins } from './pins.ts';
import { searchRigs, type Choice, type Choices, type SearchOptions } from './search/index.ts';

/**
 * Searches for the brief of a rig every rig that no other beats, around what is pinned in it. Those found have its id,
 * title and own parts; their figures are at the shop's usual prices.
 */
export function searchAround(
  rig: RawRig,
  catalogue: Catalogue,
  shop: Shop,
  { onProgress, ...options }: SearchOptions = {},
): Choices {
  const pins = pinsOf(rig, catalogue);
  const known = new Map<RawRig, Choice>();
  const asKept = (choices: readonly Choice[]): Choice[] =>
    choices.map((choice) => {
      const kept = known.get(choice.rig) ?? {
        ...choice,
        rig: withPins({ ...choice.rig, id: rig.id, title: rig.title, ...carried(rig) }, rig, pins, catalogue),
      };
      known.set(choice.rig, kept);
      return kept;
    });
  const found = searchRigs(rig.brief, pins.size === 0 ? catalogue : around(pins, catalogue), shop, {
    ...options,
    ...(onProgress === undefined
      ? {}
      : { onProgress: (progress, choices) => onProgress(progress, asKept(choices)) }),
  });
  return found.ok ? { ...found, choices: asKept(found.choices) } : found;
}
