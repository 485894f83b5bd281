import { inRange } from '../in-range.ts';
import { STANDARD_GRAVITY } from '../us-measure.ts';
import { MEASURED_DIAMETERS, MEASURED_VELOCITIES } from './fall-velocity.data.ts';
import { monotoneCubic } from './monotone-cubic.ts';

const measured = monotoneCubic(MEASURED_DIAMETERS, MEASURED_VELOCITIES);

/**
 * Fall velocity of a water drop in still air as measured.
 *
 * @formula table, monotone cubic between the points
 * @param diameter diameter of the drop [m] 1e-4..6.5e-3
 * @returns fall velocity [m/s]
 * @valid 20 degC and 101.325 kPa.
 * @throws RangeError when a parameter is outside its range
 * @source Gunn & Kinzer 1949 (table in an instrument manual).
 */
export function fallVelocityMeasured(diameter: number): number {
  inRange('diameter', diameter, 1e-4, 6.5e-3, 'm');
  return measured(diameter);
}

/**
 * Fall velocity of a drop taken as a rigid ball.
 *
 * @formula C_D = max(24/Re (1 + 0.15 Re^0.687), 0.44), weight = drag
 * @param diameter diameter of the drop [m] 1e-6..6.5e-3
 * @param density density of the drop [kg/m3] 500..2000
 * @param airDensity density of the air [kg/m3] 0.3..1.6
 * @param airViscosity viscosity of the air [Pa.s] 1e-5..3e-5
 * @returns fall velocity [m/s]
 * @valid Defaults: water 998.2, air 1.204 and 1.82e-5 at 20 degC. Within 9 % of the measured table to 1.6 mm, 12 % fast at 4 mm, where drops flatten.
 * @throws RangeError when a parameter is outside its range
 * @source Schiller & Naumann 1933, drag of a sphere; Newton's constant 0.44 above Re 1000.
 */
export function fallVelocitySphere(
  diameter: number,
  density = 998.2,
  airDensity = 1.204,
  airViscosity = 1.82e-5,
): number {
  inRange('diameter', diameter, 1e-6, 6.5e-3, 'm');
  inRange('density', density, 500, 2000, 'kg/m3');
  inRange('airDensity', airDensity, 0.3, 1.6, 'kg/m3');
  inRange('airViscosity', airViscosity, 1e-5, 3e-5, 'Pa.s');
  // Both sides told by the Reynolds number: 24 Re (1 + 0.15 Re^0.687) = g, rising in Re, so Newton from above converges.
  const g =
    (4 / 3) * airDensity * (density - airDensity) * STANDARD_GRAVITY * (diameter ** 3 / airViscosity ** 2);
  let re = g / 24;
  for (let i = 0; i < 60; i++) {
    const f = 24 * re * (1 + 0.15 * re ** 0.687) - g;
    const step = f / (24 + 24 * 0.15 * 1.687 * re ** 0.687);
    re -= step;
    if (Math.abs(step) < 1e-13 * re) break;
  }
  // Above Re of about 1000 the drag coefficient of a ball no longer falls.
  const newton = Math.sqrt(g / 0.44);
  return (Math.min(re, newton) * airViscosity) / (airDensity * diameter);
}

/**
 * Fall velocity of a water drop by the exponential fit.
 *
 * @formula v = 9.58 (1 - exp(-(d / 1.77 mm)^1.147))
 * @param diameter diameter of the drop [m] 2e-4..6e-3
 * @returns fall velocity [m/s]
 * @valid Within 5 % of the measured table from 0.2 to 6 mm at sea level.
 * @throws RangeError when a parameter is outside its range
 * @source Best 1950, fit from memory, checked against Gunn & Kinzer 1949.
 */
export function fallVelocityBest(diameter: number): number {
  inRange('diameter', diameter, 2e-4, 6e-3, 'm');
  return 9.58 * (1 - Math.exp(-((diameter / 1.77e-3) ** 1.147)));
}

/**
 * Time a drop takes to fall at its steady velocity.
 *
 * @formula t = h / v_t
 * @param diameter diameter of the drop [m] 1e-5..6.5e-3
 * @param height height of the fall [m] 0..100
 * @returns time [s]
 * @valid Still air, no evaporation; measured table from 0.1 mm, ball below.
 * @throws RangeError when a parameter is outside its range
 * @source Gunn & Kinzer 1949; Schiller & Naumann 1933; checked with Hanna, Iowa State Univ.
 */
export function fallTime(diameter: number, height: number): number {
  inRange('diameter', diameter, 1e-5, 6.5e-3, 'm');
  inRange('height', height, 0, 100, 'm');
  return height / (diameter < 1e-4 ? fallVelocitySphere(diameter) : fallVelocityMeasured(diameter));
}

/**
 * How far wind carries a single drop while it falls.
 *
 * @formula x = u h / v_t
 * @param diameter diameter of the drop [m] 1e-5..2e-4
 * @param height height of release [m] 0..20
 * @param wind wind over the height [m/s] 0..30
 * @returns distance [m]
 * @valid Right near 100 um; about twice too far at 200 um, as the drop leaves the tip with speed. Says nothing of how much drifts.
 * @throws RangeError when a parameter is outside its range
 * @source Definition; Deveau, OMAFRA 2013 (16 m for 100 um from 1 m at 15 km/h).
 */
export function singleDropDrift(diameter: number, height: number, wind: number): number {
  inRange('diameter', diameter, 1e-5, 2e-4, 'm');
  inRange('height', height, 0, 20, 'm');
  inRange('wind', wind, 0, 30, 'm/s');
  return wind * fallTime(diameter, height);
}
