import type { PartOf } from '../catalogue/index.ts';
import { bestThrowRange } from '../physics/index.ts';
import { streamAt, type ThrowConditions } from '../rig/index.ts';

type Tip = Pick<PartOf<'tip'>, 'flowAtOneBar'>;

/** Steps at which the throw is computed beside its middle, as logarithms. */
const STEP = 0.1;

/**
 * Distance of the farthest drops over level ground with the gun at its best elevation, near one pressure and tip: a second
 * order law in the logarithms of pressure and tip flow, fitted to the throw model itself.
 *
 * @returns distance [m] for a tip pressure [Pa] and a tip; undefined when nothing worth the name leaves the tip
 */
export function throwNear(
  conditions: ThrowConditions,
  pressure: number,
): ((pressure: number, tip: Tip) => number) | undefined {
  const far = (dp: number, dk: number): number => {
    const { tip } = conditions;
    const stream = streamAt(
      { ...conditions, tip: { ...tip, flowAtOneBar: tip.flowAtOneBar * Math.exp(dk) } },
      pressure * Math.exp(dp),
    );
    return stream === undefined ? 0 : bestThrowRange(stream, conditions.tipHeight).farthest;
  };
  const middle = far(0, 0);
  if (!(middle > 0)) return undefined;
  const low = Math.log(far(-STEP, 0) / middle);
  const high = Math.log(far(STEP, 0) / middle);
  const byTip = Math.log(far(0, STEP) / far(0, -STEP)) / (2 * STEP);
  const slope = (high - low) / (2 * STEP);
  const bend = (high + low) / STEP ** 2;
  return (p, tip) => {
    const x = Math.log(Math.max(1, p) / pressure);
    const k = Math.log(tip.flowAtOneBar / conditions.tip.flowAtOneBar);
    return middle * Math.exp(slope * x + (bend / 2) * x * x + byTip * k);
  };
}
