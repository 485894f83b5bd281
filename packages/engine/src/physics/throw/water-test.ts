import { inRange } from '../in-range.ts';

/** Scatter between two tests of one gun, and of what stays unknown after one [-]. */
const REPEAT_SIGMA = 0.05;
const REMAINING_SIGMA = 0.03;

export interface WaterTestCorrection {
  readonly factor: number;
  readonly weight: number;
  readonly sigma: number;
}

/**
 * Correction of the throw model for one gun and tip after the built rig was tested with water.
 *
 * @formula r = measured / computed; w = σ²/(σ² + 0.05²); factor = r^w; new σ = sqrt((1 - w) σ² + 0.03²)
 * @param measured reach measured, the same meaning (farthest or bulk) as the computed one [m] 0.1..300
 * @param computed reach that the model gives for the measured flow, pressure and elevation [m] 0.1..300
 * @param sigma uncertainty of the model before the test, see reachSigma [-] 0.01..1
 * @param windSpeed wind at gun height during the test [m/s] 0..3
 * @result factor factor on the model for this gun and tip from now on [-]
 * @result weight weight given to the test [-]
 * @result sigma uncertainty after the test, never more than before [-]
 * @valid still air only: in more than 3 m/s of wind a test says nothing and is refused; a ratio below 0.4 or above 2.5 is a wrong reading and is refused
 * @throws RangeError when a parameter is outside its range
 * @source Combination of two normal estimates; repeats of one test on one day differ by 7 % (Trettel 2020, runs at 27 psi)
 */
export function waterTestCorrection(
  measured: number,
  computed: number,
  sigma: number,
  windSpeed: number,
): WaterTestCorrection {
  inRange('measured', measured, 0.1, 300, 'm');
  inRange('computed', computed, 0.1, 300, 'm');
  inRange('sigma', sigma, 0.01, 1);
  inRange('windSpeed', windSpeed, 0, 3, 'm/s');
  const ratio = measured / computed;
  inRange('measured/computed', ratio, 0.4, 2.5);
  const variance = sigma * sigma;
  const weight = variance / (variance + REPEAT_SIGMA * REPEAT_SIGMA);
  const after = Math.sqrt((1 - weight) * variance + REMAINING_SIGMA * REMAINING_SIGMA);
  return { factor: ratio ** weight, weight, sigma: Math.min(sigma, after) };
}
