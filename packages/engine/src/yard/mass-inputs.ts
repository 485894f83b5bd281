import { massShares, TOLERANCES, type Rig, type UncertainInput } from '../rig/index.ts';

/** Items that weigh less of the rig than this share are not told apart by a scale [-]. */
const LEAST_SHARE = 0.02;

/** The mass of the empty rig as a whole, which the odds are drawn with. */
export const WHOLE_MASS = 'dry-mass:rig';

/** Item of the input for what a rig weighs beyond its list. */
export const UNLISTED = 'unlisted';

/**
 * The masses that a scale reads: of each part that weighs, and of what is on no list. A part is as doubtful as the tolerance
 * says of the whole; what the whole is then still off beyond its parts, so that it keeps its tolerance, is on no list.
 */
export function massInputs(rig: Rig): UncertainInput[] {
  const { mean, deviation, source } = TOLERANCES['dry-mass'];
  const input = (item: string, name: string, of: number): UncertainInput => ({
    id: `dry-mass:${item}`,
    kind: 'dry-mass',
    item,
    name,
    mean,
    deviation: of,
    source,
    taught: false,
  });
  const heavy = heavyShares(rig);
  const parts = [...heavy].map(([id]) => input(id, `${rig.items.get(id)!.part.name}: mass`, deviation));
  const square = [...heavy.values()].reduce((sum, share) => sum + share ** 2, 0);
  return [
    ...parts,
    input(
      UNLISTED,
      `${rig.document.title}: mass that is on no list`,
      deviation * Math.sqrt(1 - Math.min(1, square)),
    ),
  ];
}

/** Share of each input in the factor on the mass of the empty rig, by its id: what is on no list moves all of it. */
export function massWeights(rig: Rig): ReadonlyMap<string, number> {
  return new Map([
    ...[...heavyShares(rig)].map(([id, share]) => [`dry-mass:${id}`, share] as const),
    [`dry-mass:${UNLISTED}`, 1] as const,
  ]);
}

function heavyShares(rig: Rig): Map<string, number> {
  return new Map([...massShares(rig)].filter(([, share]) => share >= LEAST_SHARE));
}
