import { arcsOf } from './gun-throw.ts';
import { liquidOf } from './proof/liquid.ts';
import type { DutyProof } from './proof/prove.ts';
import { siteOf } from './proof/site.ts';
import { throwerOf } from './proof/thrower.ts';
import type { Rig } from './rig-document.ts';

/** The duty with the paths of its throw, for one that is to be drawn and was proven without them. */
export function withArcs(rig: Rig, proven: DutyProof): DutyProof {
  const { duty, open, reach } = proven;
  if (reach === undefined || reach.arcBulk.length > 0) return proven;
  const site = siteOf(rig.brief);
  const thrower = throwerOf(rig, site, { duty, open, liquid: liquidOf(rig.brief, duty.liquid, site) });
  return thrower === undefined
    ? proven
    : {
        ...proven,
        reach: { ...reach, ...arcsOf(thrower.conditions, thrower.pressure, reach.elevation, reach.sigma) },
      };
}
