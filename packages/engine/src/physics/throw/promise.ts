import { inRange } from '../in-range.ts';
import { oneOfChoices } from '../lists-in-range.ts';
import { HIGHEST_MEASURED_PRESSURE, SPRAY_PATTERNS, type SprayPattern } from './stream.ts';

/** One-sided 90 % and two-sided 5 to 95 % points of the normal distribution. */
const NINETY = 1.2816;
const NINETY_FIVE = 1.6449;

const QUALITY_KNOWN = 0.065;
/** What the doubt of a throw is made of, see reachSigma: shares, and the bore below which it grows [m]. */
export const REACH_DOUBT = {
  qualityUnknown: 0.08,
  extrapolation: 0.13,
  extrapolationRatio: 4,
  smallBore: 0.0025,
  smallBoreDoubt: 0.05,
} as const;
/** Cones and fans: a band of 30 % either way, taken as the one-sided 90 % bound. */
const SPRAY_SIGMA = -Math.log(0.7) / NINETY;

/** Whether a target must be wetted, by the bulk, or only touched, by the farthest drops. */
export const REACH_AIMS = ['wetted', 'touched'] as const;
export type ReachAim = (typeof REACH_AIMS)[number];

/**
 * Uncertainty of a computed reach, as the standard deviation of its logarithm.
 *
 * @formula σ² = s0² + sx² + sd²; s0 = 0.065 (quality known) or 0.08; sx = 0.13 min(1, max(0, ln(p / 8 bar)/ln 4)); sd = 0.05 below 2.5 mm; cones and fans 0.278 (30 %)
 * @param pressure pressure at the gun while it flows, gauge [Pa] 0..1e7
 * @param jetDiameter diameter of the jet [m] 0.0002..0.1
 * @param qualityKnown whether the stream quality of this gun and tip is known rather than assumed [yes/no]
 * @param pattern solid stream, cone or fan; default stream [one of stream, cone, fan]
 * @returns standard deviation of the logarithm of the reach [-]
 * @valid the part above 8 bar is a judgement from the spread of models that fit low pressure equally well, not a measurement; so is the band of cones and fans
 * @throws RangeError when a parameter is outside its range
 * @source Observed on 56 throws kept out of the calibration (91 % of them above the 90 % bound)
 */
export function reachSigma(
  pressure: number,
  jetDiameter: number,
  qualityKnown: boolean,
  pattern: SprayPattern = 'stream',
): number {
  inRange('pressure', pressure, 0, 1e7, 'Pa');
  inRange('jetDiameter', jetDiameter, 0.0002, 0.1, 'm');
  oneOfChoices('pattern', pattern, SPRAY_PATTERNS);
  if (pattern !== 'stream') return SPRAY_SIGMA;
  const { qualityUnknown, extrapolation, extrapolationRatio, smallBore, smallBoreDoubt } = REACH_DOUBT;
  const base = qualityKnown ? QUALITY_KNOWN : qualityUnknown;
  const above = Math.log(Math.max(1, pressure / HIGHEST_MEASURED_PRESSURE)) / Math.log(extrapolationRatio);
  const extrapolated = extrapolation * Math.min(1, above);
  const small = jetDiameter < smallBore ? smallBoreDoubt : 0;
  return Math.sqrt(base * base + extrapolated * extrapolated + small * small);
}

/**
 * Factor from a computed reach to one that is kept nine times in ten.
 *
 * @formula f = exp(-1.2816 σ)
 * @param sigma standard deviation of the logarithm of the reach, see reachSigma [-] 0..1
 * @returns promise factor [-]
 * @throws RangeError when sigma is outside its range
 * @source One-sided 90 % bound of the lognormal distribution
 */
export function promiseFactor(sigma: number): number {
  inRange('sigma', sigma, 0, 1);
  return Math.exp(-NINETY * sigma);
}

/**
 * Reach that can be promised: kept nine times in ten.
 *
 * @formula wetted: bulk · exp(-1.2816 σ); touched: farthest · exp(-1.2816 σ)
 * @param farthest reach of the farthest drops [m] 0..1000
 * @param bulk reach of the bulk, at most that of the farthest drops [m] 0..1000
 * @param sigma standard deviation of the logarithm of the reach, see reachSigma [-] 0..1
 * @param aim whether the target must be wetted or only touched; default wetted [one of wetted, touched]
 * @returns promised reach [m]
 * @valid still air up to 3 m/s; no height is promised in more wind
 * @throws RangeError when a parameter is outside its range
 * @source One-sided 90 % bound of the lognormal distribution
 */
export function promisedReach(
  farthest: number,
  bulk: number,
  sigma: number,
  aim: ReachAim = 'wetted',
): number {
  inRange('farthest', farthest, 0, 1000, 'm');
  inRange('bulk', bulk, 0, 1000, 'm');
  oneOfChoices('aim', aim, REACH_AIMS);
  return (aim === 'touched' ? farthest : Math.min(bulk, farthest)) * promiseFactor(sigma);
}

export interface ReachBand {
  readonly low: number;
  readonly high: number;
}

/**
 * Band in which nine of ten real throws fall, as factors on the computed one.
 *
 * @formula low = exp(-1.645 σ), high = exp(1.645 σ)
 * @param sigma standard deviation of the logarithm of the reach, see reachSigma [-] 0..1
 * @result low factor that 5 % of throws stay below [-]
 * @result high factor that 5 % of throws exceed [-]
 * @throws RangeError when sigma is outside its range
 * @source 5 and 95 % points of the lognormal distribution
 */
export function reachBand(sigma: number): ReachBand {
  inRange('sigma', sigma, 0, 1);
  const high = Math.exp(NINETY_FIVE * sigma);
  return { low: 1 / high, high };
}

/**
 * Chance that a computed reach is at least what is demanded.
 *
 * @formula Φ(ln(reach / demanded) / σ)
 * @param reach computed reach [m] 0..1000
 * @param demanded reach that is demanded [m] 0.01..1000
 * @param sigma standard deviation of the logarithm of the reach, see reachSigma [-] 0.001..1
 * @returns chance [-]
 * @throws RangeError when a parameter is outside its range
 * @source Lognormal distribution; error function after Abramowitz and Stegun 7.1.26, from memory, within 1.5e-7
 */
export function chanceOfReach(reach: number, demanded: number, sigma: number): number {
  inRange('reach', reach, 0, 1000, 'm');
  inRange('demanded', demanded, 0.01, 1000, 'm');
  inRange('sigma', sigma, 0.001, 1);
  if (reach === 0) return 0;
  return normalShareBelow(Math.log(reach / demanded) / sigma);
}

/** Share of a normal distribution that lies below so many deviations from its mean (Abramowitz and Stegun 7.1.26, from memory). */
export function normalShareBelow(deviations: number): number {
  const x = Math.abs(deviations) / Math.SQRT2;
  const t = 1 / (1 + 0.3275911 * x);
  const poly =
    t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  const tail = 0.5 * poly * Math.exp(-x * x);
  return deviations > 0 ? 1 - tail : tail;
}
