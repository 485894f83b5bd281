import { inRange } from '../in-range.ts';
import { listInRange, sameLength } from '../lists-in-range.ts';
import { interpolatePoints, type Point } from './interpolate-points.ts';

/**
 * Flow of a centrifugal pump at another speed.
 *
 * @formula Q2 = Q1 n2/n1
 * @param flow volume flow at the first speed [m3/s] 0..1
 * @param speedRatio second speed over first [-] 0.3..2
 * @returns volume flow at the second speed [m3/s]
 * @throws RangeError when a parameter is outside its range
 * @source Affinity laws
 */
export function affinityFlow(flow: number, speedRatio: number): number {
  inRange('flow', flow, 0, 1, 'm3/s');
  checkSpeedRatio(speedRatio);
  return flow * speedRatio;
}

/**
 * Head of a centrifugal pump at another speed, at the flow moved along with it.
 *
 * @formula H2 = H1 (n2/n1)²
 * @param head head at the first speed [m] 0..2000
 * @param speedRatio second speed over first [-] 0.3..2
 * @returns head at the second speed [m]
 * @throws RangeError when a parameter is outside its range
 * @source Affinity laws
 */
export function affinityHead(head: number, speedRatio: number): number {
  inRange('head', head, 0, 2000, 'm');
  checkSpeedRatio(speedRatio);
  return head * speedRatio * speedRatio;
}

/**
 * Power of a centrifugal pump at another speed, at the flow moved along with it.
 *
 * @formula P2 = P1 (n2/n1)³
 * @param power shaft power at the first speed [W] 0..1e6
 * @param speedRatio second speed over first [-] 0.3..2
 * @returns shaft power at the second speed [W]
 * @throws RangeError when a parameter is outside its range
 * @source Affinity laws
 */
export function affinityPower(power: number, speedRatio: number): number {
  inRange('power', power, 0, 1e6, 'W');
  checkSpeedRatio(speedRatio);
  return power * speedRatio ** 3;
}

/**
 * Head of a centrifugal pump at a flow, from points of its curve and its speed.
 *
 * @formula H = r² H_curve(Q/r), straight lines between the points
 * @param flows flows of the curve, rising [list of m3/s] 0..1
 * @param heads heads of the curve [list of m] 0..2000
 * @param flow volume flow [m3/s] 0..1
 * @param speedRatio speed over that of the curve; default 1 [-] 0.3..2
 * @returns head [m]
 * @valid water-like liquids; refuses a flow beyond the end of the curve at this speed
 * @throws RangeError when a parameter is outside its range or the lists differ in length
 * @source Affinity laws on a measured curve
 */
export function pumpCurveHead(
  flows: readonly number[],
  heads: readonly number[],
  flow: number,
  speedRatio = 1,
): number {
  checkSpeedRatio(speedRatio);
  const points = curvePoints(flows, heads);
  inRange('flow', flow, points[0]![0] * speedRatio, points[points.length - 1]![0] * speedRatio, 'm3/s');
  return interpolatePoints(points, flow / speedRatio) * speedRatio * speedRatio;
}

/** Whether a pump curve always falls, and how far it droops toward shut-off when it does not. */
export interface PumpCurveShape {
  readonly falling: boolean;
  readonly droop: number;
}

/**
 * Shape of a centrifugal pump's curve: whether it gives one duty point or several.
 *
 * @formula droop = largest rise of head from any point to a later one
 * @param flows flows of the curve, rising [list of m3/s] 0..1
 * @param heads heads of the curve [list of m] 0..2000
 * @result falling whether head falls strictly with flow everywhere [yes/no]
 * @result droop largest rise of head with flow [m]
 * @valid a curve that is not falling can run at several flows at the same head and hunt between them
 * @throws RangeError when a parameter is outside its range or the lists differ in length
 * @source Stability of a falling pump characteristic; textbook
 */
export function pumpCurveShape(flows: readonly number[], heads: readonly number[]): PumpCurveShape {
  curvePoints(flows, heads);
  let lowest = Infinity;
  let droop = 0;
  let falling = true;
  for (const head of heads) {
    if (head >= lowest) falling = false;
    droop = Math.max(droop, head - lowest);
    lowest = Math.min(lowest, head);
  }
  return { falling, droop };
}

function curvePoints(flows: readonly number[], heads: readonly number[]): Point[] {
  inRange('number of points', flows.length, 2, 1000);
  sameLength('flows', flows, 'heads', heads);
  listInRange('flows', flows, 0, 1, 'm3/s');
  listInRange('heads', heads, 0, 2000, 'm');
  return flows.map((flow, i): Point => {
    const before = flows[i - 1];
    if (before !== undefined && flow <= before)
      throw new RangeError(
        `flows[${i}] is ${flow} m3/s; it must be more than flows[${i - 1}], ${before} m3/s`,
      );
    return [flow, heads[i]!];
  });
}

function checkSpeedRatio(speedRatio: number): void {
  inRange('speedRatio', speedRatio, 0.3, 2, '-');
}
