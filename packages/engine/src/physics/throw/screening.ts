import { inRange } from '../in-range.ts';
import { STANDARD_GRAVITY } from '../us-measure.ts';
import { BULK_HEIGHT, FARTHEST_HEIGHT, FARTHEST_RANGE, type ScreeningFit } from './screening.data.ts';

export interface ScreenedReach {
  readonly farthest: number;
  readonly bulk: number;
  readonly farthestRange: number;
}

/**
 * Quick estimate of the near-vertical heights and the best range of a water stream, to rank thousands of candidates.
 *
 * @formula ln(h/H0) = Σ c_i a^j b^k c^l (14 terms to the third order); a = ln(d/5 mm), b = ln(p/10 bar), c = ln(q/0.75), H0 = p/(ρ g)
 * @param jetDiameter diameter of the jet, not of the hole [m] 0.0015..0.02
 * @param pressure pressure at the gun while it flows, gauge [Pa] 1.5e5..5.5e6
 * @param quality cohesion factor, see streamQualityFactor [-] 0.1..1.4
 * @result farthest height of the farthest drops above the nozzle [m]
 * @result bulk height of half of the water above the nozzle [m]
 * @result farthestRange best range of the farthest drops, nozzle at the ground [m]
 * @valid still air, water, solid stream; within 11, 18 and 10 % of the throw model (3 to 6 % rms): a ranking aid only, never a promise
 * @throws RangeError when a parameter is outside its range
 * @source Least-squares fit to the throw model
 */
export function screenedReach(jetDiameter: number, pressure: number, quality: number): ScreenedReach {
  inRange('jetDiameter', jetDiameter, 0.0015, 0.02, 'm');
  inRange('pressure', pressure, 1.5e5, 5.5e6, 'Pa');
  inRange('quality', quality, 0.1, 1.4);
  const a = Math.log(jetDiameter / 0.005);
  const b = Math.log(pressure / 1e6);
  const c = Math.log(quality / 0.75);
  const head = pressure / (998.2 * STANDARD_GRAVITY);
  const farthest = head * Math.exp(logRatio(FARTHEST_HEIGHT, a, b, c));
  return {
    farthest,
    bulk: Math.min(farthest, head * Math.exp(logRatio(BULK_HEIGHT, a, b, c))),
    farthestRange: 2 * head * Math.exp(logRatio(FARTHEST_RANGE, a, b, c)),
  };
}

function logRatio(f: ScreeningFit, a: number, b: number, c: number): number {
  const [k, ka, kb, kc, kaa, kab, kbb, kac, kbc, kcc, kaaa, kaab, kabb, kbbb] = f;
  return (
    k +
    c * (kc + kac * a + kbc * b + kcc * c) +
    a * (ka + a * (kaa + kaaa * a)) +
    b * (kb + b * (kbb + kbbb * b)) +
    a * b * (kab + kaab * a + kabb * b)
  );
}
