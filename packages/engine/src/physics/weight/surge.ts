import { inRange } from '../in-range.ts';
import { STANDARD_GRAVITY } from '../us-measure.ts';

/**
 * Steady liquid surface while braking.
 *
 * @formula tan θ = a / g; rise = (L/2) a / g
 * @param length inside length of the tank along the road [m] 0.01..20
 * @param deceleration deceleration [m/s2] 0..15
 * @result surfaceAngle angle of the surface to the level [rad]
 * @result frontRise rise at the front wall above the level surface [m]
 * @valid until the surface meets lid or floor; the first surge goes about twice as high
 * @throws RangeError when a parameter is outside its range
 * @source Hydrostatics in an accelerated frame; the factor of two for a sudden start is from memory
 */
export function brakingSurface(length: number, deceleration: number): BrakingSurface {
  inRange('length', length, 0.01, 20, 'm');
  inRange('deceleration', deceleration, 0, 15, 'm/s2');
  const slope = deceleration / STANDARD_GRAVITY;
  return { surfaceAngle: Math.atan(slope), frontRise: (length / 2) * slope };
}

export interface BrakingSurface {
  readonly surfaceAngle: number;
  readonly frontRise: number;
}

/**
 * Angular frequency of the first slosh of liquid in a box tank.
 *
 * @formula ω² = (π g / L) tanh(π h / L)
 * @param length inside length in the direction of the slosh, between partitions [m] 0.05..20
 * @param depth depth of liquid [m] 0.001..20
 * @returns angular frequency [rad/s]
 * @valid small waves; a solid partition at mid-length raises it 1.4 times (deep) to 2 times (shallow)
 * @throws RangeError when a parameter is outside its range
 * @source Linear wave theory, from memory
 */
export function sloshFrequency(length: number, depth: number): number {
  inRange('length', length, 0.05, 20, 'm');
  inRange('depth', depth, 0.001, 20, 'm');
  return Math.sqrt(((Math.PI * STANDARD_GRAVITY) / length) * Math.tanh((Math.PI * depth) / length));
}
