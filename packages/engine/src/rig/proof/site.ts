import { dryAirDensity, standardAtmospherePressure, type DerateRuleId } from '../../physics/index.ts';
import type { Brief } from '../brief.ts';

/** Where the rig works; a value that the brief leaves out is a start value of ours. */
export interface Site {
  readonly altitude: number;
  /** [K] */
  readonly temperature: number;
  readonly wind: number;
  readonly humidity: number;
  /** Rule by which engines are derated: the rules differ by several percent, so it is stored with the result. */
  readonly derating: DerateRuleId;
  /** Atmospheric pressure [Pa absolute] and density of the air [kg/m3] at that altitude and temperature. */
  readonly airPressure: number;
  readonly airDensity: number;
}

/** Start values of the site for what a brief leaves out: sea level, 20 °C, still air, half humidity. */
export function siteOf(brief: Brief): Site {
  const altitude = brief.site.altitude ?? 0;
  const temperature = brief.site.temperature ?? 293.15;
  const airPressure = standardAtmospherePressure(altitude);
  return {
    altitude,
    temperature,
    wind: brief.site.wind ?? 0,
    humidity: brief.site.humidity ?? 0.5,
    derating: brief.site.derating,
    airPressure,
    airDensity: dryAirDensity(airPressure, temperature),
  };
}
