import { inRange } from '../in-range.ts';
import { wholeInRange } from '../whole-in-range.ts';
import { POUND, US_GALLON } from '../us-measure.ts';

/**
 * Liquid per length of lane from a dose on its surface.
 *
 * @formula V' = q w
 * @param dose volume per area [m3/m2] 0..1
 * @param lane width of the lane [m] 0.5..20
 * @returns volume per length of lane [m2]
 * @valid m3 per m of lane is m2. The lane width must be stated: 10, 11 and 12 ft lanes are all in use.
 * @throws RangeError when a parameter is outside its range
 * @source Geometry; New Hampshire, Pass the Salt 2018 (rates per 1000 ft2).
 */
export function lanePerLength(dose: number, lane: number): number {
  inRange('dose', dose, 0, 1, 'm3/m2');
  inRange('lane', lane, 0.5, 20, 'm');
  return dose * lane;
}

/**
 * Flow of a spray bar that must leave a volume on each length of lane.
 *
 * @formula Q = V' n v
 * @param perLength volume per length of one lane [m2] 0..1
 * @param lanes lanes sprayed in one pass [-] 0..8
 * @param speed speed on the road [m/s] 0..40
 * @returns flow [m3/s]
 * @throws RangeError when a parameter is outside its range
 * @source Definition: gpm = gal per lane-mile x lanes x mph / 60.
 */
export function laneFlow(perLength: number, lanes: number, speed: number): number {
  inRange('perLength', perLength, 0, 1, 'm3/m');
  wholeInRange('lanes', lanes, 0, 8);
  inRange('speed', speed, 0, 40, 'm/s');
  return perLength * lanes * speed;
}

/**
 * Dry salt held by a volume of brine.
 *
 * @formula c = rho w
 * @param density density of the brine [kg/m3] 990..1400
 * @param massShare salt by mass [-] 0..0.45
 * @returns dry salt per volume of brine [kg/m3]
 * @valid 23.3 % sodium chloride at 9.81 lb/gal holds 2.29 lb a US gallon.
 * @throws RangeError when a parameter is outside its range
 * @source Definition; Turf Magazine, liquid de-icing (23.3 % example).
 */
export function drySaltPerVolume(density: number, massShare: number): number {
  inRange('density', density, 990, 1400, 'kg/m3');
  inRange('massShare', massShare, 0, 0.45);
  return density * massShare;
}

/**
 * Dry salt laid on an area by brine.
 *
 * @formula m = q rho w
 * @param dose volume of brine per area [m3/m2] 0..1
 * @param density density of the brine [kg/m3] 990..1400
 * @param massShare salt by mass [-] 0..0.45
 * @returns dry salt per area [kg/m2]
 * @throws RangeError when a parameter is outside its range
 * @source Definition; Turf Magazine, liquid de-icing (23.3 % example).
 */
export function drySaltDose(dose: number, density: number, massShare: number): number {
  inRange('dose', dose, 0, 1, 'm3/m2');
  return dose * drySaltPerVolume(density, massShare);
}

/**
 * Brine per length of lane that holds a stated dry salt rate.
 *
 * @formula V' = m' / (rho w)
 * @param drySalt dry salt per length of lane [kg/m] 0..10
 * @param density density of the brine [kg/m3] 990..1400
 * @param massShare salt by mass [-] 0.01..0.45
 * @returns volume of brine per length of lane [m2]
 * @valid Road agencies state liquid rates as dry salt per lane-mile: the basis must be stored with the number.
 * @throws RangeError when a parameter is outside its range
 * @source FHWA convention of stating rates as dry salt per lane-mile (seen); definition.
 */
export function brineForDrySalt(drySalt: number, density: number, massShare: number): number {
  inRange('drySalt', drySalt, 0, 10, 'kg/m');
  inRange('massShare', massShare, 0.01, 0.45);
  return drySalt / drySaltPerVolume(density, massShare);
}

/** Saturated-at-the-eutectic sodium chloride brine as the trade makes it. */
export const SALT_BRINE = {
  /** Salt by mass. */
  massShare: 0.233,
  /** 9.81 lb per US gallon [kg/m3]. */
  density: (9.81 * POUND) / US_GALLON,
  source: 'Turf Magazine, liquid de-icing (23.3 % brine example); density 9.81 lb/gal in the reference note',
} as const;
