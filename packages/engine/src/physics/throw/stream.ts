import { inRange } from '../in-range.ts';
import { oneOfChoices } from '../lists-in-range.ts';

export const SPRAY_PATTERNS = ['stream', 'cone', 'fan'] as const;
export type SprayPattern = (typeof SPRAY_PATTERNS)[number];

/** What leaves the tip and the air it flies through: everything a throw is computed from. */
export interface ThrowStream {
  /** Diameter of the jet, not of the hole: see jetDiameterFromFlow and jetDiameterFromBore [m]. */
  readonly jetDiameter: number;
  /** Pressure at the gun while it flows, gauge; never the gauge at the pump [Pa]. */
  readonly pressure: number;
  /** Cohesion factor, see streamQualityFactor; not used for cones and fans [-]. */
  readonly quality: number;
  readonly velocityCoefficient?: number;
  readonly pattern?: SprayPattern;
  /** Full angle of a cone or fan [rad]. */
  readonly sprayAngle?: number;
  /** Drop size that a tenth of the spray volume exceeds (DV0.9), when the maker gives it [m]. */
  readonly dropDiameter90?: number;
  /** Volume median drop size (DV0.5), when the maker gives it [m]. */
  readonly dropDiameter50?: number;
  readonly density?: number;
  readonly surfaceTension?: number;
  readonly airDensity?: number;
  readonly airViscosity?: number;
  /** Wind at gun height along the throw: tail wind positive, head wind negative [m/s]. */
  readonly windAlong?: number;
  /** Wind at gun height across the throw [m/s]. */
  readonly windAcross?: number;
}

/** Water and air at 20 degC at sea level, and the velocity coefficient the throw model was calibrated with. */
export const THROW_DEFAULTS = {
  velocityCoefficient: 0.97,
  density: 998.2,
  surfaceTension: 0.0728,
  airDensity: 1.204,
  airViscosity: 1.81e-5,
} as const;

/** Highest pressure at which throws were measured; above it the model is an extrapolation [Pa]. */
export const HIGHEST_MEASURED_PRESSURE = 8e5;

export function checkStream(stream: ThrowStream): void {
  inRange('jetDiameter', stream.jetDiameter, 0.0002, 0.1, 'm');
  inRange('pressure', stream.pressure, 0, 1e7, 'Pa');
  inRange('quality', stream.quality, 0.01, 2);
  const d = THROW_DEFAULTS;
  inRange('velocityCoefficient', stream.velocityCoefficient ?? d.velocityCoefficient, 0.3, 1);
  inRange('density', stream.density ?? d.density, 500, 2500, 'kg/m3');
  inRange('surfaceTension', stream.surfaceTension ?? d.surfaceTension, 0.01, 0.1, 'N/m');
  inRange('airDensity', stream.airDensity ?? d.airDensity, 1e-9, 2, 'kg/m3');
  inRange('airViscosity', stream.airViscosity ?? d.airViscosity, 1e-5, 3e-5, 'Pa.s');
  inRange('windAlong', stream.windAlong ?? 0, -20, 20, 'm/s');
  inRange('windAcross', stream.windAcross ?? 0, -20, 20, 'm/s');
  checkPattern(stream);
}

function checkPattern(stream: ThrowStream): void {
  const pattern = stream.pattern ?? 'stream';
  oneOfChoices('pattern', pattern, SPRAY_PATTERNS);
  if (stream.dropDiameter90 !== undefined) inRange('dropDiameter90', stream.dropDiameter90, 1e-5, 0.006, 'm');
  if (stream.dropDiameter50 !== undefined)
    inRange('dropDiameter50', stream.dropDiameter50, 1e-5, stream.dropDiameter90 ?? 0.006, 'm');
  if (stream.sprayAngle !== undefined) inRange('sprayAngle', stream.sprayAngle, 0, 2.9, 'rad');
  if (pattern === 'stream') {
    if ((stream.sprayAngle ?? 0) > 0)
      throw new RangeError(
        `sprayAngle is ${stream.sprayAngle} rad; it must be 0 or left out for a solid stream (pattern cone or fan takes one)`,
      );
    return;
  }
  if (stream.sprayAngle === undefined)
    throw new RangeError(`sprayAngle is missing; it must be given for a ${pattern}`);
  inRange('sprayAngle', stream.sprayAngle, 0.01, 2.9, 'rad');
}
