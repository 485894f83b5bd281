import { portName, type Port } from '../../catalogue/index.ts';
import { pressureBetween, type Plan, type Side } from './plan.ts';
import { cheapest, priceOf } from './supply.ts';

/** Sizes that cam and groove couplings are made in (A-A-59326) [m]. */
const CAM_SIZES = [0.5, 0.75, 1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6].map((inches) => inches * 0.0254);

/**
 * Ends a port in a cam and groove coupling, for what is coupled on from outside: the tank that a transfer hose fills, the
 * hopper of an eductor. A port that is such a coupling already stays as it is.
 */
export function coupleOutside(
  plan: Plan,
  side: Side,
  line: string,
  to: string,
  theirs: Port['gender'],
): void {
  if (side.at?.joint === 'cam-lock') {
    plan.leaveOpen(side, to);
    return;
  }
  const outside = (size: number): Side => ({
    of: 'outside',
    port: to,
    words: to,
    at: { id: 'cam', joint: 'cam-lock', size, gender: theirs },
    pressure: Infinity,
    count: 1,
  });
  const from = side.at;
  if (from === undefined) {
    plan.gaps.push(`${side.words}: the part lists no such port`);
    return;
  }
  const best = cheapest(
    CAM_SIZES.filter((size) => size >= from.size - 1e-4).flatMap((size) => {
      const there = outside(size);
      const joint = plan.supply.join(from, there.at!, pressureBetween(side, there));
      return joint.ok ? [{ there, priceCents: priceOf(joint.pieces), joints: joint.pieces.length }] : [];
    }),
  );
  if (best === undefined)
    plan.gaps.push(`no cam-lock in the catalogue goes on ${side.words} (${portName(from)})`);
  else plan.join(side, best.there, line);
}
