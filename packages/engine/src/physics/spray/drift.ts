import { inRange } from '../in-range.ts';
import { wholeInRange } from '../whole-in-range.ts';
import { DRIFT_CROPS, DRIFT_ROWS, type DriftCrop, type DriftRow } from './drift.data.ts';

/** Nearest distance the tables have for a crop [m]. */
export const nearestDistance = (crop: DriftCrop): number => (crop === 'arable' || crop === 'aerial' ? 1 : 3);

/** Row of the regression table; throws naming what the table has. */
export function driftRow(crop: DriftCrop, applications: number): DriftRow {
  if (!DRIFT_CROPS.includes(crop))
    throw new RangeError(`crop is '${String(crop)}'; it must be one of ${DRIFT_CROPS.join(', ')}`);
  wholeInRange('applications', applications, 1, 8);
  const row = DRIFT_ROWS.find((r) => r.crop === crop && r.applications === applications);
  if (row === undefined)
    throw new RangeError(`applications is ${applications}; the table for ${crop} has no such number`);
  return row;
}

/** Drift share by one row, the branch taken by the hinge. */
export function driftByRow(row: DriftRow, distance: number): number {
  const { beyond } = row;
  return beyond !== undefined && distance >= beyond.hinge
    ? (beyond.c * distance ** beyond.d) / 100
    : (row.a * distance ** row.b) / 100;
}

/**
 * Drift that lands at a distance from the last tip, as a share of the applied rate.
 *
 * @formula D% = A x^B up to the hinge, C x^D beyond it (x in m)
 * @param crop crop group of the trials [one of arable, hops, vines-late, vines-early, fruit-late, fruit-early, aerial]
 * @param applications applications in a season [-] 1..8
 * @param distance distance downwind [m] 1..250
 * @returns deposited share of the rate [-]
 * @valid From 1 m (arable, aerial) or 3 m (others); wind up to 5 m/s, 8 km/h, no drift reduction. Beyond 50 m the regression is carried on. Not for a high jet into trees.
 * @throws RangeError when a parameter is outside its range
 * @source FOCUS SWS Appendix B, Table B.1 (Rautmann et al. 2001).
 */
export function basicDrift(crop: DriftCrop, applications: number, distance: number): number {
  const row = driftRow(crop, applications);
  inRange('distance', distance, nearestDistance(crop), 250, 'm');
  return driftByRow(row, distance);
}

/** Integral of k x^n over from..to. */
function powerIntegral(k: number, n: number, from: number, to: number): number {
  return Math.abs(n + 1) < 1e-12
    ? k * Math.log(to / from)
    : (k * (to ** (n + 1) - from ** (n + 1))) / (n + 1);
}

/**
 * Mean drift over a strip, such as a water body, that begins at a distance.
 *
 * @formula D = (1 / w) integral of D(x) from x to x + w, piecewise at the hinge
 * @param crop crop group of the trials [one of arable, hops, vines-late, vines-early, fruit-late, fruit-early, aerial]
 * @param applications applications in a season [-] 1..8
 * @param distance distance of the near edge [m] 1..250
 * @param width width of the strip [m] 0.01..100
 * @returns mean deposited share of the rate [-]
 * @valid As the basic drift.
 * @throws RangeError when a parameter is outside its range
 * @source FOCUS SWS Appendix B (Rautmann et al. 2001), integrated.
 */
export function meanDrift(crop: DriftCrop, applications: number, distance: number, width: number): number {
  const row = driftRow(crop, applications);
  inRange('distance', distance, nearestDistance(crop), 250, 'm');
  inRange('width', width, 0.01, 100, 'm');
  const far = distance + width;
  const hinge = row.beyond?.hinge ?? Infinity;
  let sum = 0;
  if (distance < hinge) sum += powerIntegral(row.a, row.b, distance, Math.min(far, hinge));
  if (row.beyond !== undefined && far > hinge)
    sum += powerIntegral(row.beyond.c, row.beyond.d, Math.max(distance, hinge), far);
  return sum / width / 100;
}

/**
 * Concentration that drift leaves in a ditch with upright sides.
 *
 * @formula c = m D / h
 * @param rate mass of active matter applied per area [kg/m2] 0..0.1
 * @param drift deposited share of the rate [-] 0..1
 * @param depth depth of the water [m] 0.01..100
 * @returns concentration [kg/m3]
 * @throws RangeError when a parameter is outside its range
 * @source FOCUS SWS Appendix B; worked examples of the R package pfm.
 */
export function ditchConcentration(rate: number, drift: number, depth: number): number {
  inRange('rate', rate, 0, 0.1, 'kg/m2');
  inRange('drift', drift, 0, 1);
  inRange('depth', depth, 0.01, 100, 'm');
  return (rate * drift) / depth;
}
