import { inRange } from '../in-range.ts';

/**
 * Wind speed at one height from the speed measured at another, over open ground.
 *
 * @formula u(z) = u_r ln((z - d)/z0) / ln((z_r - d)/z0), d = 2/3 h, z0 = 0.123 h, h height of the ground cover
 * @param measuredSpeed wind speed where it was measured [m/s] 0..60
 * @param measuredHeight height of the measurement [m] 0.5..100
 * @param height height asked for [m] 0.5..100
 * @param coverHeight height of grass, crop or brush; 0.12 m is mown grass [m] 0.005..5
 * @returns mean wind speed [m/s]
 * @valid neutral air over level, uniform cover; not between trees or buildings; both heights at least 1.2 times the cover
 * @throws RangeError when a parameter is outside its range or a height is inside the cover
 * @source Logarithmic wind profile with d and z0 of FAO Irrigation and Drainage Paper 56 (1998), which for 0.12 m grass gives its equation 47
 */
export function windSpeedAtHeight(
  measuredSpeed: number,
  measuredHeight: number,
  height: number,
  coverHeight = 0.12,
): number {
  inRange('measuredSpeed', measuredSpeed, 0, 60, 'm/s');
  inRange('coverHeight', coverHeight, 0.005, 5, 'm');
  const lowest = Math.max(0.5, 1.2 * coverHeight);
  inRange('measuredHeight', measuredHeight, lowest, 100, 'm');
  inRange('height', height, lowest, 100, 'm');
  const displacement = (2 / 3) * coverHeight;
  const roughness = 0.123 * coverHeight;
  return (
    (measuredSpeed * Math.log((height - displacement) / roughness)) /
    Math.log((measuredHeight - displacement) / roughness)
  );
}

/**
 * Wind speed at one height from the speed at another by the power law, a second opinion on the logarithmic profile.
 *
 * @formula u(z) = u_r (z / z_r)^a
 * @param measuredSpeed wind speed where it was measured [m/s] 0..60
 * @param measuredHeight height of the measurement [m] 0.5..100
 * @param height height asked for [m] 0.5..100
 * @param exponent profile exponent; 1/7 over open country [-] 0..0.6
 * @returns mean wind speed [m/s]
 * @valid neutral air over level open country
 * @throws RangeError when a parameter is outside its range
 * @source Power law of Hellmann (1916), exponent 1/7 for open country, from memory
 */
export function windSpeedAtHeightPowerLaw(
  measuredSpeed: number,
  measuredHeight: number,
  height: number,
  exponent = 1 / 7,
): number {
  inRange('measuredSpeed', measuredSpeed, 0, 60, 'm/s');
  inRange('measuredHeight', measuredHeight, 0.5, 100, 'm');
  inRange('height', height, 0.5, 100, 'm');
  inRange('exponent', exponent, 0, 0.6, '-');
  return measuredSpeed * (height / measuredHeight) ** exponent;
}
