import { inRange } from '../in-range.ts';
import { oneOfChoices } from '../lists-in-range.ts';
import { STANDARD_GRAVITY } from '../us-measure.ts';
import { HAND_FORCE_GUIDE } from './rolling-resistance.data.ts';

/**
 * Force that moves a cart over ground and up a grade.
 *
 * @formula F = m g (c cos t + sin t), t = atan(grade)
 * @param mass mass of cart and liquid [kg] 0..1e6
 * @param rollingCoefficient rolling resistance over weight [-] 0..0.6
 * @param grade rise over run; default 0 [-] -0.6..0.6
 * @result rolling force against rolling [N]
 * @result grade force against the slope [N]
 * @result total force to keep it moving; negative when it runs away [N]
 * @valid steady movement; starting takes more. HSE: 2 % of the load on a level smooth floor, up to 10 % on uneven ground
 * @throws RangeError when a parameter is outside its range
 * @source Statics; rolling coefficients in GROUND_RESISTANCE
 */
export function pullForce(mass: number, rollingCoefficient: number, grade = 0): PullForce {
  inRange('mass', mass, 0, 1e6, 'kg');
  inRange('rollingCoefficient', rollingCoefficient, 0, 0.6, '-');
  inRange('grade', grade, -0.6, 0.6, '-');
  const angle = Math.atan(grade);
  const weight = mass * STANDARD_GRAVITY;
  const rolling = weight * rollingCoefficient * Math.cos(angle);
  const slope = weight * Math.sin(angle);
  return { rolling, grade: slope, total: rolling + slope };
}

export interface PullForce {
  readonly rolling: number;
  readonly grade: number;
  readonly total: number;
}

/**
 * Guideline force for a person who pushes or pulls a cart.
 *
 * @formula table
 * @param phase phase of the movement [one of start, sustained]
 * @param people who moves it [one of men, women]
 * @returns guideline force [N]
 * @valid a guideline, not a limit; hands between knuckle and shoulder height, about 20 m without a break
 * @throws RangeError when a choice is unknown
 * @source HSE (UK) push and pull guideline: start or stop 20/15 kgf, keep moving 10/7 kgf
 */
export function handForceGuide(phase: 'start' | 'sustained', people: 'men' | 'women'): number {
  oneOfChoices('phase', phase, ['start', 'sustained']);
  oneOfChoices('people', people, ['men', 'women']);
  return HAND_FORCE_GUIDE[phase][people] * STANDARD_GRAVITY;
}

/**
 * Largest mass that a force keeps moving.
 *
 * @formula m = F / (g (c cos t + sin t))
 * @param force force available [N] 0..1e5
 * @param rollingCoefficient rolling resistance over weight [-] 0.001..0.6
 * @param grade rise over run, uphill; default 0 [-] 0..0.6
 * @returns mass of cart and liquid [kg]
 * @throws RangeError when a parameter is outside its range
 * @source Inverse of pullForce
 */
export function largestPulledMass(force: number, rollingCoefficient: number, grade = 0): number {
  inRange('force', force, 0, 1e5, 'N');
  inRange('rollingCoefficient', rollingCoefficient, 0.001, 0.6, '-');
  inRange('grade', grade, 0, 0.6, '-');
  return force / pullForce(1, rollingCoefficient, grade).total;
}
