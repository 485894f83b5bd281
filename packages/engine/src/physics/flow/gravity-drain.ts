import { inRange } from '../in-range.ts';
import { STANDARD_GRAVITY } from '../us-measure.ts';
import { checkBore } from './limits.ts';
import { boreArea } from './velocity.ts';

/**
 * Time in which an upright tank of the same section all the way up runs down through an outlet by its own weight.
 *
 * @formula t = 2 A (sqrt(h1) - sqrt(h2)) / (Cd a sqrt(2 g))
 * @param section area of the tank seen from above [m2] 0.01..100
 * @param level liquid above the outlet at the start [m] 0..10
 * @param leftLevel liquid above the outlet at the end [m] 0..10
 * @param outlet inside diameter of the outlet [m] 0.0002..0.5
 * @param dischargeCoefficient share of the ideal flow; about 0.6 for a bare hole, less with a valve and hose behind it [-] 0.05..1
 * @returns time [s]
 * @valid vented tank, free outlet, thin liquid; with a hose behind the outlet use a coefficient found by a bucket and a clock
 * @throws RangeError when a parameter is outside its range
 * @source Torricelli with a discharge coefficient, integrated over the falling level
 */
export function drainTimeUpright(
  section: number,
  level: number,
  leftLevel: number,
  outlet: number,
  dischargeCoefficient: number,
): number {
  inRange('section', section, 0.01, 100, 'm2');
  checkLevels(level, leftLevel, 10);
  return (
    (2 * section * (Math.sqrt(level) - Math.sqrt(leftLevel))) / flowAtOneMetre(outlet, dischargeCoefficient)
  );
}

/**
 * Time in which a lying round tank runs down through an outlet at its bottom by its own weight.
 *
 * @formula t = 4/3 L ((D - h2)^1.5 - (D - h1)^1.5) / (Cd a sqrt(2 g))
 * @param diameter inside diameter of the tank [m] 0.05..5
 * @param length inside length of the tank, flat ends [m] 0.05..20
 * @param level depth at the start [m] 0..5
 * @param leftLevel depth at the end [m] 0..5
 * @param outlet inside diameter of the outlet [m] 0.0002..0.5
 * @param dischargeCoefficient share of the ideal flow; about 0.6 for a bare hole, less with a valve and hose behind it [-] 0.05..1
 * @returns time [s]
 * @valid vented tank that stands level, free outlet at the lowest line; with a hose behind the outlet use a coefficient found by a bucket and a clock
 * @throws RangeError when a parameter is outside its range
 * @source Torricelli with a discharge coefficient, integrated over the falling level
 */
export function drainTimeLyingRound(
  diameter: number,
  length: number,
  level: number,
  leftLevel: number,
  outlet: number,
  dischargeCoefficient: number,
): number {
  inRange('diameter', diameter, 0.05, 5, 'm');
  inRange('length', length, 0.05, 20, 'm');
  checkLevels(level, leftLevel, diameter);
  return (
    ((4 / 3) * length * ((diameter - leftLevel) ** 1.5 - (diameter - level) ** 1.5)) /
    flowAtOneMetre(outlet, dischargeCoefficient)
  );
}

function checkLevels(level: number, leftLevel: number, most: number): void {
  inRange('level', level, 0, most, 'm');
  inRange('leftLevel', leftLevel, 0, level, 'm');
}

/** Flow out of the outlet over the square root of the level above it. */
function flowAtOneMetre(outlet: number, dischargeCoefficient: number): number {
  checkBore(outlet, 'outlet');
  inRange('dischargeCoefficient', dischargeCoefficient, 0.05, 1, '-');
  return dischargeCoefficient * boreArea(outlet) * Math.sqrt(2 * STANDARD_GRAVITY);
}
