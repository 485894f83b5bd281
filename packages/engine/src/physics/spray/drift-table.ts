import { inRange } from '../in-range.ts';
import {
  DRIFT_TABLE,
  DRIFT_TABLE_DISTANCES,
  DRIFT_TABLE_GROUPS,
  type DriftTableGroup,
} from './drift.data.ts';

/**
 * Basic drift value of the published table for one application.
 *
 * @formula table; between two distances straight in the logarithms of both
 * @param group group of the table [one of field-crops, fruit-early, fruit-late, vines-early, vines-late, hops, area-crops-over-900-l-per-ha, railway]
 * @param distance distance downwind [m] 1..50
 * @returns deposited share of the rate [-]
 * @valid Refuses distances nearer than the first value of the group; never carried on beyond 50 m.
 * @throws RangeError when a parameter is outside its range
 * @source JKI 2010 table of basic drift values, as tabulated in the R package pfm.
 */
export function tabulatedDrift(group: DriftTableGroup, distance: number): number {
  if (!DRIFT_TABLE_GROUPS.includes(group))
    throw new RangeError(`group is '${String(group)}'; it must be one of ${DRIFT_TABLE_GROUPS.join(', ')}`);
  const points = DRIFT_TABLE[group].flatMap((percent, i) => {
    const x = DRIFT_TABLE_DISTANCES[i];
    return percent === null || x === undefined ? [] : [{ x, percent }];
  });
  inRange('distance', distance, points[0]?.x ?? 1, points.at(-1)?.x ?? 50, 'm');
  const above = points.findIndex((p) => p.x >= distance);
  const b = points[above];
  const a = points[above - 1] ?? b;
  if (a === undefined || b === undefined)
    throw new RangeError(`distance is ${distance} m; the table has no value there`);
  if (b.x === distance) return b.percent / 100;
  const t = Math.log(distance / a.x) / Math.log(b.x / a.x);
  return (a.percent * (b.percent / a.percent) ** t) / 100;
}
