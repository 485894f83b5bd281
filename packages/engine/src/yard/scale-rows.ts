import { emptyWeights, type EmptyWeight, type Proof, type Rig } from '../rig/index.ts';
import { UNLISTED } from './mass-inputs.ts';
import type { YardRow } from './yard-row.ts';

/** Doubt of where the masses stand along the rig, as a share of a load: judgement, no source. */
const PLACING = { of: 'where the parts stand', deviation: 0.03 } as const;

/** Row of the whole rig, as a scale ticket has it. */
export const SCALE_WHOLE = 'scale:whole';

/** Row that adds up what rests on all supports: where the parts stand has no say in it. */
export const SCALE_SUM = 'scale:all-supports';

/** What a scale shows with the tank empty: the whole rig, and what rests on wheels and coupler. */
export function scaleRows(rig: Rig, proof: Proof): YardRow[] {
  const [whole, ...supports] = emptyWeights(rig, proof);
  if (whole === undefined) return [];
  const row = (of: EmptyWeight): YardRow => ({
    id: `scale:${of.id}`,
    instrument: 'scale',
    line: of.name,
    needed: false,
    read: ({ factor }) => weightOf(of, factor),
  });
  const standing = supports.filter((s) => s.mass > 0);
  const lifted = standing.length < supports.length;
  return [
    row(whole),
    ...standing.map((s) => ({ ...row(s), besides: PLACING })),
    // Where a support carries nothing a scale under the others does not show the whole.
    ...(standing.length === 0 || lifted
      ? []
      : [
          {
            id: SCALE_SUM,
            instrument: 'scale' as const,
            needed: false,
            sumOf: standing.map((s) => `scale:${s.id}`),
            read: ({ factor }: Parameters<YardRow['read']>[0]) =>
              standing.reduce((sum, s) => sum + weightOf(s, factor), 0),
          },
        ]),
  ];
}

/** With every item off by its own factor, and all of them by what is on no list. */
function weightOf({ mass, ofItem }: EmptyWeight, factor: (input: string) => number): number {
  const unlisted = factor(`dry-mass:${UNLISTED}`);
  let weight = mass;
  for (const [item, own] of ofItem) weight += own * (factor(`dry-mass:${item}`) * unlisted - 1);
  return weight;
}
