import { inRange } from '../in-range.ts';

/**
 * Width that a fan of straight edges covers below its tip.
 *
 * @formula W = 2 h tan(theta / 2)
 * @param angle spray angle of the tip [rad] 0.02..3
 * @param height height of the tip above the target [m] 0..10
 * @returns width at the target [m]
 * @valid The edges droop: the real width is less high above the target.
 * @throws RangeError when a parameter is outside its range
 * @source Geometry.
 */
export function boomFanWidth(angle: number, height: number): number {
  inRange('angle', angle, 0.02, 3, 'rad');
  inRange('height', height, 0, 10, 'm');
  return 2 * height * Math.tan(angle / 2);
}

/**
 * Height at which the fan of a tip is a wanted multiple of the spacing wide.
 *
 * @formula h = m S / (2 tan(theta / 2))
 * @param angle spray angle of the tip [rad] 0.02..3
 * @param spacing spacing of the tips [m] 0.05..5
 * @param multiple width over spacing; 2 is the full overlap of the trade [-] 1..5
 * @returns height above the target [m]
 * @valid 80 degree tips at 20 in need 23.8 in for full overlap, not the 20 in often printed.
 * @throws RangeError when a parameter is outside its range
 * @source Geometry.
 */
export function heightForOverlap(angle: number, spacing: number, multiple: number): number {
  inRange('angle', angle, 0.02, 3, 'rad');
  inRange('spacing', spacing, 0.05, 5, 'm');
  inRange('multiple', multiple, 1, 5);
  return (multiple * spacing) / (2 * Math.tan(angle / 2));
}

/**
 * Overlap of neighbouring fans as the trade counts it.
 *
 * @formula o = W / S - 1
 * @param width width of one fan at the target [m] 0..60
 * @param spacing spacing of the tips [m] 0.05..5
 * @returns overlap; 1 is the full overlap, below 0 a gap [-]
 * @throws RangeError when a parameter is outside its range
 * @source Geometry; common practice for the wording.
 */
export function fanOverlap(width: number, spacing: number): number {
  inRange('width', width, 0, 60, 'm');
  inRange('spacing', spacing, 0.05, 5, 'm');
  return width / spacing - 1;
}
