import { dropsOfShare, jetOf } from './jet.ts';
import type { ThrowStream } from './stream.ts';

export interface JetState {
  readonly exitSpeed: number;
  readonly weber: number;
  readonly cohesionLength: number;
  readonly farthestDropDiameter: number;
  readonly bulkDropDiameter: number;
}

/**
 * How a stream leaves its tip: speed, Weber number, how long it holds together and what drops it becomes.
 *
 * @formula We = ρa U0² dj/σ; Lc = 200 q dj We^0.4; D0 = 4.5 sqrt(dj σ/ρa)/U0; D = D0 Dmax/(D0⁴ + Dmax⁴)^(1/4), Dmax 6 mm
 * @param stream.jetDiameter diameter of the jet, not of the hole [m] 0.0002..0.1
 * @param stream.pressure pressure at the gun while it flows, gauge [Pa] 0..1e7
 * @param stream.quality cohesion factor, see streamQualityFactor [-] 0.01..2
 * @param stream.pattern solid stream, cone or fan; default stream [one of stream, cone, fan]
 * @param stream.sprayAngle full angle of a cone or fan [rad] 0.01..2.9
 * @param stream.velocityCoefficient velocity coefficient of the tip; default 0.97 [-] 0.3..1
 * @param stream.density density of the liquid; default 998.2 [kg/m3] 500..2500
 * @param stream.surfaceTension surface tension; default 0.0728 [N/m] 0.01..0.1
 * @param stream.airDensity density of the air; default 1.204 [kg/m3] 1e-9..2
 * @result exitSpeed exit speed [m/s]
 * @result weber Weber number with the density of the air [-]
 * @result cohesionLength length over which drag stays small [m]
 * @result farthestDropDiameter size of the farthest drops [m]
 * @result bulkDropDiameter size of the drops that half of the water outflies [m]
 * @valid as bestHeightAtStandoff; effective values of the throw model, not measured drop sizes
 * @throws RangeError when a parameter is outside its range
 * @source Throw model, see bestHeightAtStandoff
 */
export function jetState(stream: ThrowStream): JetState {
  const jet = jetOf(stream);
  return {
    exitSpeed: jet.exitSpeed,
    weber: jet.weber,
    cohesionLength: jet.cohesionLength,
    farthestDropDiameter: jet.dropDiameter,
    bulkDropDiameter: dropsOfShare(jet, 0.5).diameter,
  };
}
