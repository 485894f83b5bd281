import type { Part } from '../../catalogue/index.ts';
import { flushDemand, isMaterial, type FlushDemand } from '../../liquids/index.ts';
import type { Rig } from '../rig-document.ts';

/**
 * What must be done between the liquid that a rig carried last and the next one: flush, and every meeting of the two that
 * an incomplete flush would bring about.
 *
 * @param next absent when nobody has said what comes next
 * @throws RangeError when a liquid is not known
 */
export function betweenLiquids(rig: Rig, last: string, next?: string): FlushDemand {
  return flushDemand(last, next, wettedMaterials(rig));
}

/** Materials that liquid touches in the parts of a rig, by id; materials that nobody knows are left to the proof. */
function wettedMaterials(rig: Rig): string[] {
  const parts: readonly Part[] = [...rig.items.values()].map(({ part }) => part);
  return [...new Set(parts.flatMap((p) => p.wetted.map(({ material }) => material)))].filter(isMaterial);
}
