import { registers } from './registers.ts';

/** Steepness with which the loss climbs from the laminar law to the turbulent one just below the critical Re. */
const CLIMB = 6;
/** White's law is 64/Re up to this Dean number; exponent of its Dean number. */
const CREEPING_DEAN = 11.6;
const WHITE = 0.45;

/** Result of the last evaluation: [Darcy friction factor, d ln f / d ln Re]. */
export const coilOut = registers();

/** What the laws make of one winding; solves ask for the same one many times over. */
interface Winding {
  readonly coilRatio: number;
  readonly critical: number;
  readonly dean: number;
  /** Schmidt's two ranges: 1 + low / Re, 1 + high Re^0.25; and the larger of them at the critical Reynolds number. */
  readonly low: number;
  readonly high: number;
  readonly atCritical: number;
}

let winding: Winding | undefined;

/**
 * Darcy friction factor in a hose wound on a drum: White's laminar law up to Schmidt's critical Reynolds number,
 * Schmidt's turbulent law above. Schmidt's law starts with a step up; the step is spread over the few percent below the
 * critical Reynolds number, so that loss rises continuously with flow, and never falls below the straight hose's.
 *
 * @param straight friction factor of the hose laid straight, and `straightSlope` its d ln f / d ln Re
 * @returns in `coilOut`
 */
export function coilFriction(re: number, coilRatio: number, straight: number, straightSlope: number): void {
  if (winding?.coilRatio !== coilRatio) winding = windingOf(coilRatio);
  const { critical, dean, low, high, atCritical } = winding;
  coilOut[0] = straight;
  coilOut[1] = straightSlope;
  const creeping = CREEPING_DEAN / (re * dean);
  if (creeping < 1) {
    const u = creeping ** WHITE;
    const t = (1 - u) ** (1 / WHITE);
    const white = 64 / (re * (1 - t));
    if (white > straight) {
      coilOut[0] = white;
      coilOut[1] = -1 + (u * t) / ((1 - u) * (1 - t));
    }
  } else if (64 / re > straight) {
    coilOut[0] = 64 / re;
    coilOut[1] = -1;
  }
  if (re >= critical) {
    const falling = low / re;
    const rising = high * Math.sqrt(Math.sqrt(re));
    if (rising > falling) raise(straight * (1 + rising), straightSlope + (0.25 * rising) / (1 + rising));
    else raise(straight * (1 + falling), straightSlope - falling / (1 + falling));
  } else if (re >= 0.3 * critical)
    raise(straight * atCritical * (re / critical) ** CLIMB, straightSlope + CLIMB);
}

function raise(factor: number, slope: number): void {
  if (factor <= coilOut[0]!) return;
  coilOut[0] = factor;
  coilOut[1] = slope;
}

function windingOf(coilRatio: number): Winding {
  const critical = 2300 * (1 + 8.6 * coilRatio ** 0.45);
  const low = 2.88e4 * coilRatio ** 0.62;
  const high = 0.0823 * (1 + coilRatio) * coilRatio ** 0.53;
  const atCritical = 1 + Math.max(low / critical, high * critical ** 0.25);
  return { coilRatio, critical, dean: Math.sqrt(coilRatio), low, high, atCritical };
}
