import { inRange } from '../in-range.ts';
import { BULK_SHARE, FARTHEST_SHARE } from './drop-class.ts';
import { fly } from './flight.ts';
import { dropsOfShare, jetOf } from './jet.ts';
import { reachBand } from './promise.ts';
import type { ThrowStream } from './stream.ts';
import { checkElevation } from './throw-at.ts';

/** Distance from the nozzle and height above ground [m]. */
export type ArcPoint = readonly [distance: number, height: number];

export interface ThrowArc {
  readonly farthest: readonly ArcPoint[];
  readonly bulk: readonly ArcPoint[];
  /** Path that 5 % of throws stay under, and that 5 % exceed, of the bulk. */
  readonly bulkLow: readonly ArcPoint[];
  readonly bulkHigh: readonly ArcPoint[];
  readonly farthestLow: readonly ArcPoint[];
  readonly farthestHigh: readonly ArcPoint[];
}

const MOST_POINTS = 1600;

/**
 * Path of the drops that a given share of the water outflies, written as x, y, z of one point after another.
 *
 * @formula the steps of the throw model from the nozzle to the ground
 * @param stream.jetDiameter diameter of the jet, not of the hole [m] 0.0002..0.1
 * @param stream.pressure pressure at the gun while it flows, gauge [Pa] 0..1e7
 * @param stream.quality cohesion factor, see streamQualityFactor [-] 0.01..2
 * @param elevation elevation of the gun [rad] -1.5707963..1.5707964
 * @param nozzleHeight height of the nozzle above ground [m] 0..50
 * @param share share of the water that goes farther: 0.001 farthest drops, 0.5 bulk [-] 0.001..0.99
 * @param into receives distance, drift and height of each point; its length is a multiple of three, room for 160 points is enough for a gun; a longer path ends with its last point [list of m]
 * @returns number of points written; 0 without pressure [-]
 * @throws RangeError when a parameter is outside its range or there is no room for two points
 * @source Throw model, see bestHeightAtStandoff
 */
export function writeThrowPath(
  stream: ThrowStream,
  elevation: number,
  nozzleHeight: number,
  share: number,
  into: Float64Array,
): number {
  checkElevation(elevation);
  inRange('nozzleHeight', nozzleHeight, 0, 50, 'm');
  inRange('share', share, 0.001, 0.99);
  inRange('into.length', into.length, 6, Infinity);
  if (into.length % 3 !== 0)
    throw new RangeError(`into.length is ${into.length}; it must be a multiple of 3 (x, y, z of each point)`);
  const jet = jetOf(stream);
  if (jet.exitSpeed === 0) return 0;
  const aim = { elevation, nozzleHeight, landingHeight: 0, standoff: Infinity, path: into };
  return fly(dropsOfShare(jet, share), aim).points;
}

/**
 * Arcs of farthest drops and bulk for a drawing, each with its band.
 *
 * @formula the throw model's path; the band scales it about the nozzle by exp(±1.645 σ)
 * @param stream.jetDiameter diameter of the jet, not of the hole [m] 0.0002..0.1
 * @param stream.pressure pressure at the gun while it flows, gauge [Pa] 0..1e7
 * @param stream.quality cohesion factor, see streamQualityFactor [-] 0.01..2
 * @param elevation elevation of the gun [rad] -1.5707963..1.5707964
 * @param nozzleHeight height of the nozzle above ground [m] 0..50
 * @param sigma standard deviation of the logarithm of the reach, see reachSigma [-] 0..1
 * @result farthest path of the farthest drops [list of m]
 * @result bulk path of the bulk [list of m]
 * @result bulkLow path that 5 % of throws stay under [list of m]
 * @result bulkHigh path that 5 % of throws exceed [list of m]
 * @result farthestLow path that 5 % of throws stay under [list of m]
 * @result farthestHigh path that 5 % of throws exceed [list of m]
 * @valid no pressure: all are empty
 * @throws RangeError when a parameter is outside its range
 * @source Throw model, see bestHeightAtStandoff
 */
export function throwArc(
  stream: ThrowStream,
  elevation: number,
  nozzleHeight: number,
  sigma: number,
): ThrowArc {
  const band = reachBand(sigma);
  const farthest = arcOf(stream, elevation, nozzleHeight, FARTHEST_SHARE);
  const bulk = arcOf(stream, elevation, nozzleHeight, BULK_SHARE);
  const scaled = (arc: readonly ArcPoint[], factor: number): ArcPoint[] =>
    arc.map(([x, z]) => [factor * x, Math.max(0, nozzleHeight + factor * (z - nozzleHeight))]);
  return {
    farthest,
    bulk,
    bulkLow: scaled(bulk, band.low),
    bulkHigh: scaled(bulk, band.high),
    farthestLow: scaled(farthest, band.low),
    farthestHigh: scaled(farthest, band.high),
  };
}

function arcOf(stream: ThrowStream, elevation: number, nozzleHeight: number, share: number): ArcPoint[] {
  const path = new Float64Array(3 * MOST_POINTS);
  const points = writeThrowPath(stream, elevation, nozzleHeight, share, path);
  return Array.from({ length: points }, (_, i) => [path[3 * i]!, path[3 * i + 2]!]);
}
