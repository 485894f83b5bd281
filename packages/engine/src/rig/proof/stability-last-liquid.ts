import { looseFactor } from '../loose-inputs.ts';
import { unusableLiquid } from '../placement/index.ts';
import { compared, type RigPromise } from '../promise.ts';
import { say, type ProofContext } from './context.ts';
import type { Loaded } from './loaded.ts';

/** Slope on which the tank is drawn low when the brief names none: start value of ours [rad]. */
const PARKED_START = (5 * Math.PI) / 180;

/** Liquid below the outlet on a slope cannot be drawn: it must be less than what a duty still counts on. */
export function lastLiquidPromises(context: ProofContext, { rig }: Loaded): RigPromise[] {
  const given = context.rig.brief.site.slope;
  const slope = (given ?? PARKED_START) * looseFactor(context.rig, 'slope');
  const lowest = context.duties.reduce((a, b) => (b.duty.tankLevel < a.duty.tankLevel ? b : a)).duty;
  const left = unusableLiquid(rig.tank, slope);
  return [
    compared(
      {
        id: 'stability:last-liquid',
        kind: 'stability',
        sentence: 'Pump still draws at the lowest tank level on the slope',
        cause: `"${lowest.name}" counts on the tank at ${Math.round(lowest.tankLevel * 100)} %; on ${say(context, slope, 'angle')} ${say(context, left, 'volume')} lie below the outlet${given === undefined ? '; the slope is a start value of ours' : ''}`,
        items: [rig.tankAt.item],
        method: 'liquid below the outlet of the tilted tank, worst of uphill, downhill and across',
        source: 'hydrostatics; outlet in the middle of the floor is an assumption of ours',
      },
      { value: lowest.tankLevel * rig.tank.volume, dimension: 'volume' },
      { value: left, dimension: 'volume' },
      'at-most',
    ),
  ];
}
