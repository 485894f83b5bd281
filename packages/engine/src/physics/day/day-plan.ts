import type { WholeDayInput } from './day-input.ts';

/** The times and volumes that a day's steps are made of. */
export interface DayPlan {
  readonly usable: number;
  /** Mean flow while at work, pauses between units taken in [m3/s]. */
  readonly workRate: number;
  /** Share of the time at work with the trigger open. */
  readonly triggerShare: number;
  /** Volume that one place of the rig serves; endless when it sprays while it drives. */
  readonly stopVolume: number;
  /** From parked to spraying, and back. */
  readonly setOut: number;
  readonly takeUp: number;
  readonly move: number;
  readonly moveDistance: number;
  readonly travel: number;
  /** Whether the hose must come in before the rig can go for water. */
  readonly mustTakeUp: boolean;
  readonly wantedVolume: number;
}

/** Derives the plan; the one place where the layout of stops is decided. */
export function dayPlan(p: WholeDayInput): DayPlan {
  const secondsPerVolume = 1 / p.flow + p.pauseTime / p.unitVolume;
  const onHose = p.hoseLength > 0;
  const served = Math.PI * p.hoseLength ** 2 * p.hoseShare;
  const unitsAtStop = onHose ? Math.max(1, Math.floor(served / p.unitArea + 1e-9)) : Infinity;
  const oneWay = p.hoseLength / p.hoseSpeed;
  // Neighbouring places lie as far apart as the sides of the squares they serve.
  const moveDistance = onHose ? Math.sqrt(unitsAtStop * p.unitArea) : 0;
  return {
    usable: p.tank - p.unusable,
    workRate: 1 / secondsPerVolume,
    triggerShare: 1 / p.flow / secondsPerVolume,
    stopVolume: unitsAtStop * p.unitVolume,
    setOut: onHose ? p.stopTime + oneWay : 0,
    takeUp: onHose ? oneWay : 0,
    move: moveDistance / p.moveSpeed,
    moveDistance,
    travel: p.fillDistance / p.roadSpeed,
    mustTakeUp: onHose && p.fillDistance > 0,
    wantedVolume: p.wantedUnits * p.unitVolume,
  };
}
