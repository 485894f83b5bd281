import { inRange } from '../in-range.ts';
import { isAsCoarseAs } from './droplet-class.ts';
import type { DropletClass } from './droplet-class.data.ts';
import { DELIVERIES, DOSE_BANDS, EXCLUSION_RULES, type Delivery } from './exclusion-zone.data.ts';

/**
 * Distance from the point of discharge that people must be kept out of while spraying.
 *
 * @formula table of the edition
 * @param edition edition of the rule [one of us-2024]
 * @param delivery how the spray is made [one of aerial, air-blast, fog, spray]
 * @param droplets droplet class of the spray [one of extremely-fine, very-fine, fine, medium, coarse, very-coarse, extremely-coarse, ultra-coarse]
 * @param height height of the outlet above the ground [m] 0..60
 * @returns exclusion distance [m]
 * @valid A finer tip quadruples the distance. Label and local law may ask for more.
 * @throws RangeError when a parameter is outside its range
 * @source 40 CFR 170.405(a)(1), kept as data with its edition.
 */
export function exclusionDistance(
  edition: string,
  delivery: Delivery,
  droplets: DropletClass,
  height: number,
): number {
  const rule = EXCLUSION_RULES.find((r) => r.id === edition);
  if (rule === undefined)
    throw new RangeError(
      `edition is '${edition}'; it must be one of ${EXCLUSION_RULES.map((r) => r.id).join(', ')}`,
    );
  if (!DELIVERIES.includes(delivery))
    throw new RangeError(`delivery is '${String(delivery)}'; it must be one of ${DELIVERIES.join(', ')}`);
  inRange('height', height, 0, 60, 'm');
  const finer = !isAsCoarseAs(droplets, 'medium');
  const row = rule.rows.find(
    (r) =>
      r.deliveries.includes(delivery) &&
      (r.finerThanMedium === undefined || finer) &&
      (r.above === undefined || height > r.above),
  );
  if (row === undefined)
    throw new RangeError(`delivery is '${delivery}'; edition ${edition} has no line for it`);
  return row.distance;
}

/**
 * Share of the full label dose, rounded up to the bands of the buffer scheme.
 *
 * @formula s = dose / full; next of 1/4, 1/2, 3/4, 1
 * @param dose dose used [m3/m2] 0..1
 * @param fullDose greatest dose of the label [m3/m2] 1e-9..1
 * @result share share of the full dose [-]
 * @result band band it falls into [-]
 * @throws RangeError when the dose is above the full dose of the label
 * @source Defra PB5621, how to carry out a LERAP.
 */
export function doseBand(dose: number, fullDose: number): { share: number; band: number } {
  inRange('fullDose', fullDose, 1e-9, 1, 'm3/m2');
  inRange('dose', dose, 0, fullDose, 'm3/m2');
  const share = dose / fullDose;
  return { share, band: DOSE_BANDS.bands.find((b) => share <= b + 1e-12) ?? 1 };
}
