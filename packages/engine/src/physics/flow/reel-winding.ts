import { inRange } from '../in-range.ts';

/**
 * Diameter of the pack when a length of hose is wound on a reel.
 *
 * @formula D = sqrt(D_hub² + 4 L d² / (π w))
 * @param hubDiameter diameter of the empty drum [m] 0.0003..3
 * @param drumWidth width between the flanges [m] 0.02..3
 * @param hoseOutside outside diameter of the hose [m] 0.0003..0.5
 * @param length length of hose wound [m] 0..1e4
 * @returns outside diameter of the wound pack [m]
 * @valid every turn takes a square of the hose's outside diameter: careful winding in layers; turns that settle into each other take less, a loose wind more
 * @throws RangeError when a parameter is outside its range
 * @source Geometry
 */
export function reelPackDiameter(
  hubDiameter: number,
  drumWidth: number,
  hoseOutside: number,
  length: number,
): number {
  checkReel(hubDiameter, drumWidth, hoseOutside);
  inRange('length', length, 0, 1e4, 'm');
  return Math.sqrt(hubDiameter ** 2 + (4 * length * hoseOutside ** 2) / (Math.PI * drumWidth));
}

/**
 * Length of hose that fills a reel to the edge of its flanges.
 *
 * @formula L = π w (D_flange² - D_hub²) / (4 d²)
 * @param flangeDiameter diameter of the flanges [m] 0.02..5
 * @param hubDiameter diameter of the empty drum [m] 0.0003..3
 * @param drumWidth width between the flanges [m] 0.02..3
 * @param hoseOutside outside diameter of the hose [m] 0.0003..0.5
 * @returns length of hose [m]
 * @valid filled to the flange's edge: leave a hose's thickness of flange, so that no turn falls off. Every turn takes a square of the hose's outside diameter
 * @throws RangeError when a parameter is outside its range
 * @source Geometry
 */
export function reelHoseLength(
  flangeDiameter: number,
  hubDiameter: number,
  drumWidth: number,
  hoseOutside: number,
): number {
  checkReel(hubDiameter, drumWidth, hoseOutside);
  inRange('flangeDiameter', flangeDiameter, hubDiameter, 5, 'm');
  return ((flangeDiameter ** 2 - hubDiameter ** 2) * Math.PI * drumWidth) / (4 * hoseOutside ** 2);
}

function checkReel(hubDiameter: number, drumWidth: number, hoseOutside: number): void {
  inRange('hubDiameter', hubDiameter, 0.0003, 3, 'm');
  inRange('drumWidth', drumWidth, 0.02, 3, 'm');
  inRange('hoseOutside', hoseOutside, 0.0003, 0.5, 'm');
}
