import { inRange } from '../in-range.ts';
import { POUND } from '../us-measure.ts';
import { wholeInRange } from '../whole-in-range.ts';

/**
 * Load that a skid adds to each axle of the pickup or utility vehicle that carries it.
 *
 * @formula rear = m (w + e)/w; front = -m e/w, e behind the rear axle
 * @param mass mass of the loaded skid [kg] 0..1e5
 * @param wheelbase wheelbase of the vehicle [m] 0.5..10
 * @param behindRearAxle centre of mass behind the rear axle; negative ahead of it [m] -10..5
 * @result front load added to the front axle; negative when it is relieved [kg]
 * @result rear load added to the rear axle [kg]
 * @valid level ground. The rear axle's rating and its tyres usually govern before the gross rating; a load behind the axle takes weight off the steering
 * @throws RangeError when a parameter is outside its range
 * @source Statics
 */
export function addedAxleLoads(
  mass: number,
  wheelbase: number,
  behindRearAxle: number,
): { front: number; rear: number } {
  inRange('mass', mass, 0, 1e5, 'kg');
  inRange('wheelbase', wheelbase, 0.5, 10, 'm');
  inRange('behindRearAxle', behindRearAxle, -10, 5, 'm');
  const moved = (mass * behindRearAxle) / wheelbase;
  return { front: -moved, rear: mass + moved };
}

/**
 * Load that a pickup may carry as cargo.
 *
 * @formula cargo = gross rating - empty weight - 150 lb per seat
 * @param grossRating gross vehicle weight rating [kg] 1..1e5
 * @param emptyMass weight of the vehicle as it stands, fuel in [kg] 1..1e5
 * @param seats designated seats [-] 1..9
 * @returns cargo; negative when people alone overload it [kg]
 * @valid the tow vehicle's tongue load counts as cargo
 * @throws RangeError when a parameter is outside its range
 * @source 49 CFR 575.103: 150 lb for each designated seat
 */
export function pickupCargoRating(grossRating: number, emptyMass: number, seats: number): number {
  inRange('grossRating', grossRating, 1, 1e5, 'kg');
  inRange('emptyMass', emptyMass, 1, 1e5, 'kg');
  wholeInRange('seats', seats, 1, 9);
  return grossRating - emptyMass - seats * 150 * POUND;
}
