import { inRange } from '../in-range.ts';
import { listInRange, sameLength } from '../lists-in-range.ts';
import { interpolatePoints, type Point } from './interpolate-points.ts';
import { checkDensity } from './limits.ts';
import { boreArea } from './velocity.ts';

/** Losses of an eductor's four passages, each on its own velocity head. */
export interface EductorLosses {
  readonly nozzleLoss?: number;
  readonly suctionLoss?: number;
  /** Mixing throat and diffuser together. */
  readonly mixingLoss?: number;
}

const NOZZLE_LOSS = 0.05;
const SUCTION_LOSS = 0.1;
const MIXING_LOSS = 0.3;

export interface Eductor extends EductorLosses {
  readonly motivePressure: number;
  readonly suctionPressure: number;
  readonly dischargePressure: number;
  readonly nozzleDiameter: number;
  readonly throatDiameter: number;
  readonly density: number;
  readonly suctionDensity?: number;
}

export interface EductorFlow {
  readonly motiveFlow: number;
  readonly suctionFlow: number;
  readonly throatPressure: number;
  readonly draws: boolean;
}

/**
 * Motive and suction flow of an eductor (liquid jet pump) between three pressures.
 *
 * @formula R = A_n/A_t, M = Q_s/Q_m, c = ρ_s/ρ_m; (p_d - p_s)/(p_m - p_s) = (2R + 2cM²R²/(1-R) - R²(1+M)(1+cM)(1+K_m) - cM²R²(1+K_s)/(1-R)²) / (1 + K_n - c(1+K_s)(MR/(1-R))²)
 * @param p.motivePressure pressure before the nozzle, gauge [Pa] 1000..1e8
 * @param p.suctionPressure pressure at the suction port, gauge [Pa] -1e5..1e7
 * @param p.dischargePressure pressure behind the diffuser, gauge [Pa] -1e5..1e8
 * @param p.nozzleDiameter diameter of the nozzle [m] 0.0002..0.5
 * @param p.throatDiameter diameter of the mixing throat [m] 0.0002..0.5
 * @param p.density density of the motive liquid [kg/m3] 500..2500
 * @param p.suctionDensity density of the liquid drawn; default that of the motive liquid [kg/m3] 500..2500
 * @param p.nozzleLoss loss coefficient of the nozzle; default 0.05 [-] 0..1
 * @param p.suctionLoss loss coefficient of the suction entry; default 0.1 [-] 0..2
 * @param p.mixingLoss loss coefficient of mixing throat and diffuser; default 0.3 [-] 0..2
 * @result motiveFlow flow through the nozzle [m3/s]
 * @result suctionFlow flow drawn in, 0 when the discharge pressure is too high for it: a check valve must hold [m3/s]
 * @result throatPressure pressure where the streams meet, gauge; below the vapour pressure the eductor cavitates and draws less [Pa]
 * @result draws whether it draws at all [yes/no]
 * @valid nozzle area 0.04 to 0.64 of the throat; the default losses are textbook values from memory, so trust a measured curve more (eductorSuctionFromCurve)
 * @throws RangeError when a parameter is outside its range
 * @source Momentum and energy balance of the liquid jet pump: Gosline and O'Brien 1934, Cunningham, Trans. ASME 79 (1957) 1807; derived anew here
 */
export function eductorFlow(p: Eductor): EductorFlow {
  checkEductor(p);
  const areaRatio = (p.nozzleDiameter / p.throatDiameter) ** 2;
  const densityRatio = (p.suctionDensity ?? p.density) / p.density;
  const nozzle = 1 + (p.nozzleLoss ?? NOZZLE_LOSS);
  const suction = 1 + (p.suctionLoss ?? SUCTION_LOSS);
  const mixing = 1 + (p.mixingLoss ?? MIXING_LOSS);
  const available = p.motivePressure - p.suctionPressure;
  const target = (p.dischargePressure - p.suctionPressure) / available;
  const entry = (m: number): number => densityRatio * suction * ((m * areaRatio) / (1 - areaRatio)) ** 2;
  const headRatio = (m: number): number => {
    const momentum = 2 * areaRatio + (2 * densityRatio * (m * areaRatio) ** 2) / (1 - areaRatio);
    const mixed = areaRatio ** 2 * (1 + m) * (1 + densityRatio * m) * mixing;
    return (momentum - mixed - entry(m)) / (nozzle - entry(m));
  };
  // Beyond this flow ratio the entry would eat the whole motive pressure.
  let high = ((1 - areaRatio) / areaRatio) * Math.sqrt(nozzle / (densityRatio * suction)) * (1 - 1e-12);
  let low = 0;
  const draws = headRatio(0) > target;
  if (draws)
    for (let i = 0; i < 200 && high - low > 1e-14 * high; i++) {
      const middle = (low + high) / 2;
      if (headRatio(middle) > target) low = middle;
      else high = middle;
    }
  const flowRatio = low;
  // Half ρ v² of the motive jet.
  const jetPressure = available / (nozzle - entry(flowRatio));
  const motiveFlow = boreArea(p.nozzleDiameter) * Math.sqrt((2 * jetPressure) / p.density);
  return {
    motiveFlow,
    suctionFlow: flowRatio * motiveFlow,
    throatPressure: p.suctionPressure - entry(flowRatio) * jetPressure,
    draws,
  };
}

function checkEductor(p: Eductor): void {
  inRange('motivePressure', p.motivePressure, 1000, 1e8, 'Pa');
  inRange('suctionPressure', p.suctionPressure, -1e5, Math.min(1e7, p.motivePressure - 1000), 'Pa');
  inRange('dischargePressure', p.dischargePressure, -1e5, Math.min(1e8, p.motivePressure), 'Pa');
  inRange('throatDiameter', p.throatDiameter, 0.0002, 0.5, 'm');
  inRange(
    'nozzleDiameter',
    p.nozzleDiameter,
    Math.max(0.0002, 0.2 * p.throatDiameter),
    0.8 * p.throatDiameter,
    'm',
  );
  checkDensity(p.density);
  inRange('suctionDensity', p.suctionDensity ?? p.density, 500, 2500, 'kg/m3');
  inRange('nozzleLoss', p.nozzleLoss ?? NOZZLE_LOSS, 0, 1, '-');
  inRange('suctionLoss', p.suctionLoss ?? SUCTION_LOSS, 0, 2, '-');
  inRange('mixingLoss', p.mixingLoss ?? MIXING_LOSS, 0, 2, '-');
}

/**
 * Suction flow of an eductor or proportioner from its measured curve.
 *
 * @formula straight lines between the points; nothing drawn below the first one
 * @param pressureDifferences differences between inlet and outlet pressure of the curve, rising [list of Pa] 0..1e8
 * @param suctionFlows suction flows of the curve [list of m3/s] 0..1
 * @param pressureDifference difference between inlet and outlet pressure [Pa] 0..1e8
 * @returns suction flow [m3/s]
 * @valid liquid, suction lift and viscosity as in the measurement; refuses a difference beyond the last point
 * @throws RangeError when a parameter is outside its range or the lists differ in length
 * @source Form of the test of ISO 15873, differential pressure and injection rate
 */
export function eductorSuctionFromCurve(
  pressureDifferences: readonly number[],
  suctionFlows: readonly number[],
  pressureDifference: number,
): number {
  inRange('number of points', pressureDifferences.length, 1, 1000);
  sameLength('pressureDifferences', pressureDifferences, 'suctionFlows', suctionFlows);
  listInRange('pressureDifferences', pressureDifferences, 0, 1e8, 'Pa');
  listInRange('suctionFlows', suctionFlows, 0, 1, 'm3/s');
  const points = pressureDifferences.map((at, i): Point => {
    const before = pressureDifferences[i - 1];
    if (before !== undefined && at <= before)
      throw new RangeError(
        `pressureDifferences[${i}] is ${at} Pa; it must be more than the one before, ${before} Pa`,
      );
    return [at, suctionFlows[i]!];
  });
  inRange('pressureDifference', pressureDifference, 0, points[points.length - 1]![0], 'Pa');
  return pressureDifference < points[0]![0] ? 0 : interpolatePoints(points, pressureDifference);
}
