import { inRange } from '../in-range.ts';
import { checkBore, checkDensity } from './limits.ts';

/**
 * Speed of a pressure wave in a filled hose.
 *
 * @formula a = 1 / sqrt(ρ (1/B + D/(E s)))
 * @param density density of the liquid [kg/m3] 500..2500
 * @param bulkModulus bulk modulus of the liquid [Pa] 1e7..1e10
 * @param bore inside diameter [m] 0.0002..0.5
 * @param wallThickness wall thickness [m] 0.0001..0.1
 * @param wallModulus modulus of elasticity of the wall, along its circumference [Pa] 1e6..1e12
 * @returns wave speed [m/s]
 * @valid thin wall, no air in the liquid. The circumferential modulus of reinforced hose is unknown unless its maker gives it
 * @throws RangeError when a parameter is outside its range
 * @source Korteweg 1878, from memory
 */
export function pressureWaveSpeed(
  density: number,
  bulkModulus: number,
  bore: number,
  wallThickness: number,
  wallModulus: number,
): number {
  checkDensity(density);
  inRange('bulkModulus', bulkModulus, 1e7, 1e10, 'Pa');
  checkBore(bore);
  inRange('wallThickness', wallThickness, 0.0001, 0.1, 'm');
  inRange('wallModulus', wallModulus, 1e6, 1e12, 'Pa');
  return 1 / Math.sqrt(density * (1 / bulkModulus + bore / (wallModulus * wallThickness)));
}

/**
 * Pressure peak when a trigger is slammed shut.
 *
 * @formula Δp = ρ a Δv
 * @param density density of the liquid [kg/m3] 500..2500
 * @param waveSpeed speed of the pressure wave in the hose [m/s] 10..1600
 * @param velocityChange velocity that is stopped [m/s] 0..50
 * @returns pressure rise above the pressure before [Pa]
 * @valid shut faster than the wave's way to the pump and back (2 L/a); slower closing gives less, see triggerPeakSlow
 * @throws RangeError when a parameter is outside its range
 * @source Joukowsky 1898, from memory
 */
export function triggerPeak(density: number, waveSpeed: number, velocityChange: number): number {
  checkDensity(density);
  inRange('waveSpeed', waveSpeed, 10, 1600, 'm/s');
  inRange('velocityChange', velocityChange, 0, 50, 'm/s');
  return density * waveSpeed * velocityChange;
}

/**
 * Pressure peak when a valve takes its time to shut.
 *
 * @formula Δp = ρ a Δv min(1, (2 L/a)/t)
 * @param density density of the liquid [kg/m3] 500..2500
 * @param waveSpeed speed of the pressure wave in the hose [m/s] 10..1600
 * @param velocityChange velocity that is stopped [m/s] 0..50
 * @param length length of the hose [m] 0..1e4
 * @param closingTime time the valve takes to shut [s] 0.001..100
 * @returns pressure rise above the pressure before [Pa]
 * @valid an estimate: takes the flow to be stopped evenly over the time
 * @throws RangeError when a parameter is outside its range
 * @source Michaud's rule, from memory
 */
export function triggerPeakSlow(
  density: number,
  waveSpeed: number,
  velocityChange: number,
  length: number,
  closingTime: number,
): number {
  inRange('length', length, 0, 1e4, 'm');
  inRange('closingTime', closingTime, 0.001, 100, 's');
  const sudden = triggerPeak(density, waveSpeed, velocityChange);
  return sudden * Math.min(1, (2 * length) / (waveSpeed * closingTime));
}
