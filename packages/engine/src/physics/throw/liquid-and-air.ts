import { airViscosity, dryAirDensity, standardAtmospherePressure } from '../air/index.ts';
import { inRange } from '../in-range.ts';
import { THROW_DEFAULTS } from './stream.ts';

const SURFACTANT_TENSION = 0.04;

/**
 * Surface tension to compute a throw with.
 *
 * @formula σ = 0.0728 N/m; 0.04 N/m for the promise when a surfactant is in the tank
 * @param surfactant whether a surfactant (soap, spreader, wetting agent) is in the tank [yes/no]
 * @param forPromise whether a promise is computed rather than the likeliest throw [yes/no]
 * @returns surface tension [N/m]
 * @valid a fresh surface is milliseconds old and most surfactants act like water there, so the likeliest value is that of water; thickeners and drift retardants are unknown
 * @source Judgement on dynamic surface tension, no measurement of throw; in the throw model of a gun 0.05 N/m lowers the farthest drops by 3 to 6 %, 0.03 N/m by 5 to 13 %
 */
export function surfaceTensionForThrow(surfactant: boolean, forPromise: boolean): number {
  return surfactant && forPromise ? SURFACTANT_TENSION : THROW_DEFAULTS.surfaceTension;
}

export interface ThrowAir {
  readonly airDensity: number;
  readonly airViscosity: number;
}

/**
 * Air that a stream flies through, at an altitude and a temperature.
 *
 * @formula ρ = p / (R T), p of the standard atmosphere; μ by Sutherland's law
 * @param altitude altitude above sea level [m] -600..5000
 * @param temperature air temperature [K] 240..325
 * @result airDensity density of the air [kg/m3]
 * @result airViscosity dynamic viscosity of the air [Pa.s]
 * @valid thin air throws farther: some 11 % at 1600 m; cold air shorter: some 4 % at 0 degC
 * @throws RangeError when a parameter is outside its range
 * @source U.S. Standard Atmosphere 1976 and the ideal gas law
 */
export function throwAir(altitude: number, temperature: number): ThrowAir {
  inRange('altitude', altitude, -600, 5000, 'm');
  inRange('temperature', temperature, 240, 325, 'K');
  return {
    airDensity: dryAirDensity(standardAtmospherePressure(altitude), temperature),
    airViscosity: airViscosity(temperature),
  };
}
