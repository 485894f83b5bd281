import { laneFlow } from '../physics/index.ts';
import { groundDose } from './application.ts';
import type { Duty } from './brief.ts';
import type { DutyLiquid } from './proof/liquid.ts';

/**
 * Flow that a duty asks at each outlet [m3/s]: said outright, or following from rate, speed and width, or from the dry
 * salt that a road gets. Undefined when the duty asks none, or asks salt of a liquid whose salt nobody knows.
 */
export function askedFlow(duty: Duty, { drySalt }: Pick<DutyLiquid, 'drySalt'>): number | undefined {
  if (duty.flow !== undefined) return duty.flow;
  const { application: a, lane } = duty;
  if (a !== undefined) return groundDose(a) * a.speed * a.width;
  if (lane === undefined || drySalt === undefined) return undefined;
  return laneFlow(lane.drySalt / drySalt, lane.lanes, lane.speed);
}
