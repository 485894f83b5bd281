import { inRange } from '../in-range.ts';
import { DRIFTABLE_SHARE, DROPLET_CLASSES, type DropletClass } from './droplet-class.data.ts';

const rank = (name: string, droplets: string): number => {
  const at = DROPLET_CLASSES.indexOf(droplets as DropletClass);
  if (at < 0)
    throw new RangeError(`${name} is '${droplets}'; it must be one of ${DROPLET_CLASSES.join(', ')}`);
  return at;
};

/**
 * Droplet class of a tip at a pressure, from the tip's own measured data.
 *
 * @formula table; between two measured pressures of different class the finer one
 * @param pressures pressures at which the class of the tip is known, rising [list of Pa] 0..1e8
 * @param classes class at each of these pressures [list of text]
 * @param pressure pressure at the tip [Pa] 0..1e8
 * @returns droplet class, or unknown outside the measured pressures [text]
 * @valid Nothing is guessed from a median diameter: outside the data the answer is 'unknown'.
 * @throws RangeError when a parameter is outside its range
 * @source ASABE S572.1 / ISO 25358: the class is a measured property of a tip at a pressure (scope seen).
 */
export function dropletClassAt(
  pressures: readonly number[],
  classes: readonly DropletClass[],
  pressure: number,
): DropletClass | 'unknown' {
  inRange('pressure', pressure, 0, 1e8, 'Pa');
  if (pressures.length !== classes.length)
    throw new RangeError(
      `classes has ${classes.length} entries; it must have one for each of the ${pressures.length} pressures`,
    );
  pressures.forEach((p, i) =>
    inRange(`pressures[${i}]`, p, i === 0 ? 0 : (pressures[i - 1] ?? 0), 1e8, 'Pa'),
  );
  const ranks = classes.map((c, i) => rank(`classes[${i}]`, c));
  const above = pressures.findIndex((p) => p >= pressure);
  const upper = ranks[above];
  if (upper === undefined) return 'unknown';
  if (pressures[above] === pressure) return DROPLET_CLASSES[upper] ?? 'unknown';
  const lower = ranks[above - 1];
  return lower === undefined ? 'unknown' : (DROPLET_CLASSES[Math.min(lower, upper)] ?? 'unknown');
}

/**
 * Whether a droplet class is at least as coarse as another.
 *
 * @formula order of the classes
 * @param droplets class of the spray [one of extremely-fine, very-fine, fine, medium, coarse, very-coarse, extremely-coarse, ultra-coarse]
 * @param than class asked for [one of extremely-fine, very-fine, fine, medium, coarse, very-coarse, extremely-coarse, ultra-coarse]
 * @returns it is as coarse or coarser [yes/no]
 * @throws RangeError when a parameter is outside its range
 * @source ASABE S572.1 / ISO 25358, order of the classes.
 */
export function isAsCoarseAs(droplets: DropletClass, than: DropletClass): boolean {
  return rank('droplets', droplets) >= rank('than', than);
}

/**
 * Most of the spray volume that may be in drops below 150 um.
 *
 * @formula table
 * @param droplets class of the spray [one of extremely-fine, very-fine, fine, medium, coarse, very-coarse, extremely-coarse, ultra-coarse]
 * @returns share of the volume, or null where none is published [-]
 * @valid Published for medium, coarse and very coarse only; coarser classes take the very coarse figure as an upper limit.
 * @throws RangeError when a parameter is outside its range
 * @source GRDC Spray Application Manual 2025, module 4.2.
 */
export function driftableShare(droplets: DropletClass): number | null {
  const at = rank('droplets', droplets);
  const rows = DRIFTABLE_SHARE.filter((row) => rank('row', row.droplets) <= at);
  return rows.at(-1)?.share ?? null;
}

/**
 * Number of drops against before when only their diameter changes.
 *
 * @formula n2 / n1 = (d1 / d2)^3
 * @param diameter first diameter [m] 1e-6..1e-2
 * @param newDiameter second diameter [m] 1e-6..1e-2
 * @returns ratio of the numbers at equal volume [-]
 * @throws RangeError when a parameter is outside its range
 * @source Grisso et al., Virginia Cooperative Extension 442-032.
 */
export function dropCountRatio(diameter: number, newDiameter: number): number {
  inRange('diameter', diameter, 1e-6, 1e-2, 'm');
  inRange('newDiameter', newDiameter, 1e-6, 1e-2, 'm');
  return (diameter / newDiameter) ** 3;
}

/**
 * Trend of the median diameter of a hydraulic tip with pressure.
 *
 * @formula D2 = D1 (p2 / p1)^-0.3
 * @param diameter median diameter at the first pressure [m] 1e-6..1e-2
 * @param pressure first pressure [Pa] 1e4..1e8
 * @param newPressure second pressure [Pa] 1e4..1e8
 * @returns median diameter at the second pressure [m]
 * @valid A trend, never a class.
 * @throws RangeError when a parameter is outside its range
 * @source Exponent -0.3 for fan and hollow cone; from memory.
 */
export function medianDiameterTrend(diameter: number, pressure: number, newPressure: number): number {
  inRange('diameter', diameter, 1e-6, 1e-2, 'm');
  inRange('pressure', pressure, 1e4, 1e8, 'Pa');
  inRange('newPressure', newPressure, 1e4, 1e8, 'Pa');
  return diameter * (newPressure / pressure) ** -0.3;
}
