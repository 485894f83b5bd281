import { inRange } from '../in-range.ts';
import { STANDARD_GRAVITY } from '../us-measure.ts';

/**
 * Forces on the pins of a rig that hangs on a three-point hitch.
 *
 * @formula F_top = m g x / h; F_low = f sqrt((m g)² + F_top²) / 2
 * @param mass mass of the rig [kg] 0..1e5
 * @param behindHitch centre of its mass behind the lower hitch points [m] 0..50
 * @param mastHeight height of the top pin above the lower pins [m] 0.2..1.5
 * @param dynamicFactor factor for bumps on the lower pins; default 2.5 [-] 1..6
 * @result topLink pull of the top link, standing [N]
 * @result lowerPin force on each lower pin, over bumps [N]
 * @valid level top link, both lower pins carry alike; what a pin may carry is the word of its maker
 * @throws RangeError when a parameter is outside its range
 * @source Statics; factor for bumps: common practice, no source
 */
export function hitchPinForces(
  mass: number,
  behindHitch: number,
  mastHeight: number,
  dynamicFactor = 2.5,
): HitchPinForces {
  inRange('mass', mass, 0, 1e5, 'kg');
  inRange('behindHitch', behindHitch, 0, 50, 'm');
  inRange('mastHeight', mastHeight, 0.2, 1.5, 'm');
  inRange('dynamicFactor', dynamicFactor, 1, 6, '-');
  const weight = mass * STANDARD_GRAVITY;
  const topLink = (weight * behindHitch) / mastHeight;
  return { topLink, lowerPin: (dynamicFactor * Math.hypot(weight, topLink)) / 2 };
}

export interface HitchPinForces {
  readonly topLink: number;
  readonly lowerPin: number;
}
