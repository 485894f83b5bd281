import { MOMENT } from './day-clock.ts';
import type { DayPlan } from './day-plan.ts';

/**
 * Volume worth filling: a full tank, or only what can still be sprayed before the work must end.
 *
 * Each volume costs its filling and its spraying, each place its setting out, taking up and moving; the walk
 * goes from place to place exactly as the work will, so nothing is filled that is left over by plan.
 * `time` is what remains once the rig stands ready to spray; `most` the room in the tank or the work left.
 */
export function nextLoad(
  plan: DayPlan,
  time: number,
  fillFlow: number,
  most: number,
  doneAtStop: number,
): number {
  const perVolume = 1 / fillFlow + 1 / plan.workRate;
  let left = time;
  let volume = 0;
  let atStop = plan.stopVolume - doneAtStop;
  while (left > MOMENT && volume < most) {
    const take = Math.min(atStop, most - volume, left / perVolume);
    volume += take;
    left -= take * perVolume + plan.takeUp + plan.move + plan.setOut;
    atStop = plan.stopVolume;
  }
  return volume;
}
