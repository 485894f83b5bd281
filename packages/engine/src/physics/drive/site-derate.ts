import { airVapourPressure, standardAtmospherePressure } from '../air/index.ts';
import { inRange } from '../in-range.ts';
import { oneOfChoices } from '../lists-in-range.ts';
import { DERATE_RULES, type DerateRule, type DerateRuleId } from './site-derate.data.ts';

/**
 * Correction of a spark-ignition engine's measured power to standard air; rated power over it is the power at the site.
 *
 * @formula CA = 1.180 (99 kPa / p_d)((t + 273)/298)^0.5 - 0.18
 * @param dryPressure pressure of the dry air, absolute [Pa] 40000..110000
 * @param temperatureC temperature of the intake air [degC] -40..60
 * @returns correction factor [-]
 * @valid a test-bed correction near reference; beyond about 7 % (validity from memory) the result is an estimate
 * @throws RangeError when a parameter is outside its range
 * @source SAE J1349 (June 1990 form) as printed in open references
 */
export function sparkIgnitionCorrectionJ1349(dryPressure: number, temperatureC: number): number {
  inRange('dryPressure', dryPressure, 40000, 110000, 'Pa');
  inRange('temperatureC', temperatureC, -40, 60, 'degC');
  return 1.18 * (99000 / dryPressure) * Math.sqrt((temperatureC + 273) / 298) - 0.18;
}

export interface Iso3046Conditions {
  readonly sitePressure: number;
  readonly siteTemperature: number;
  readonly siteVapourPressure: number;
  readonly referencePressure?: number;
  readonly referenceTemperature?: number;
  readonly referenceVapourPressure?: number;
  readonly humidityWeight?: number;
  readonly pressureExponent?: number;
  readonly temperatureExponent?: number;
  readonly mechanicalEfficiency?: number;
}

/**
 * Power adjustment of an engine to the air of its site.
 *
 * @formula k = ((p_x - a e_x)/(p_r - a e_r))^m (T_r/T_x)^n; α = k - 0.7 (1 - k)(1/η_m - 1)
 * @param p.sitePressure air pressure at the site, absolute [Pa] 40000..110000
 * @param p.siteTemperature air temperature at the site [K] 230..333
 * @param p.siteVapourPressure pressure of the water vapour at the site [Pa] 0..20000
 * @param p.referencePressure reference air pressure, absolute; default 100 kPa [Pa] 80000..110000
 * @param p.referenceTemperature reference air temperature; default 298.15 K [K] 250..330
 * @param p.referenceVapourPressure reference vapour pressure; default 30 % of 3.169 kPa [Pa] 0..20000
 * @param p.humidityWeight factor a; default 1 [-] 0..1
 * @param p.pressureExponent exponent m; default 0.86 [-] 0..2
 * @param p.temperatureExponent exponent n; default 0.55 [-] 0..3
 * @param p.mechanicalEfficiency mechanical efficiency of the engine; default 0.8 [-] 0.5..1
 * @result indicatedRatio ratio of indicated power k [-]
 * @result powerFactor power at the site over rated power α; never below 0 [-]
 * @valid exponents depend on the engine's kind; the defaults are one set, from memory
 * @throws RangeError when a parameter is outside its range
 * @source ISO 3046-1 form; equation and exponents from memory
 */
export function powerAdjustmentIso3046(p: Iso3046Conditions): {
  indicatedRatio: number;
  powerFactor: number;
} {
  const {
    referencePressure = 100000,
    referenceTemperature = 298.15,
    referenceVapourPressure = 0.3 * 3169,
    humidityWeight = 1,
    pressureExponent = 0.86,
    temperatureExponent = 0.55,
    mechanicalEfficiency = 0.8,
  } = p;
  inRange('sitePressure', p.sitePressure, 40000, 110000, 'Pa');
  inRange('siteTemperature', p.siteTemperature, 230, 333, 'K');
  inRange('siteVapourPressure', p.siteVapourPressure, 0, 20000, 'Pa');
  inRange('referencePressure', referencePressure, 80000, 110000, 'Pa');
  inRange('referenceTemperature', referenceTemperature, 250, 330, 'K');
  inRange('referenceVapourPressure', referenceVapourPressure, 0, 20000, 'Pa');
  inRange('humidityWeight', humidityWeight, 0, 1, '-');
  inRange('pressureExponent', pressureExponent, 0, 2, '-');
  inRange('temperatureExponent', temperatureExponent, 0, 3, '-');
  inRange('mechanicalEfficiency', mechanicalEfficiency, 0.5, 1, '-');
  const dry = p.sitePressure - humidityWeight * p.siteVapourPressure;
  const dryReference = referencePressure - humidityWeight * referenceVapourPressure;
  const k =
    (dry / dryReference) ** pressureExponent *
    (referenceTemperature / p.siteTemperature) ** temperatureExponent;
  return { indicatedRatio: k, powerFactor: Math.max(0, k - 0.7 * (1 - k) * (1 / mechanicalEfficiency - 1)) };
}

/**
 * Share of an engine's rated power that is left at the site, under the rule that was chosen.
 *
 * @formula linear rules: (1 - a (z - z0))(1 - b (t - t0)); SAE J1349: 1/CA; ISO 3046: α
 * @param rule rule to use; kept with the result because the rules differ by up to 15 % [one of sae-j1349, extension-3pct, gas-engine, small-engine, generator-set, msha-diesel, iso-3046]
 * @param altitude altitude of the site [m] -500..5000
 * @param temperatureC air temperature at the site [degC] -40..55
 * @param relativeHumidity relative humidity of the air; default 0.4 [-] 0..1
 * @result factor share of the rated power left; never above 1: a cold day is not sold as power [-]
 * @result altitudeFactor share left by the altitude alone [-]
 * @result temperatureFactor further share left by heat [-]
 * @result estimate whether the rule is used outside the range in which it was meant [yes/no]
 * @valid naturally aspirated engines; carburetted engines also need other jets above about 5000 ft (from memory)
 * @throws RangeError when a parameter is outside its range or the rule is unknown
 * @source The rule's own source in DERATE_RULES; standard atmosphere 1976 and Magnus vapour pressure for the two laws with pressure
 */
export function siteDerate(
  rule: DerateRuleId,
  altitude: number,
  temperatureC: number,
  relativeHumidity = 0.4,
): SiteDerate {
  oneOfChoices('rule', rule, Object.keys(DERATE_RULES));
  inRange('altitude', altitude, -500, 5000, 'm');
  inRange('temperatureC', temperatureC, -40, 55, 'degC');
  inRange('relativeHumidity', relativeHumidity, 0, 1, '-');
  const { linear }: DerateRule = DERATE_RULES[rule];
  if (linear) {
    const altitudeFactor = 1 - linear.lossPerMetre * Math.max(0, altitude - linear.aboveAltitude);
    const heat = Math.max(0, temperatureC - linear.aboveTemperatureC);
    const temperatureFactor = 1 - linear.lossPerKelvin * heat;
    return {
      rule,
      factor: altitudeFactor * temperatureFactor,
      altitudeFactor,
      temperatureFactor,
      estimate: false,
    };
  }
  const raw = factorFromAir(rule, altitude, temperatureC, relativeHumidity);
  const altitudeFactor = Math.min(1, factorFromAir(rule, altitude, 25, 0.3));
  const factor = Math.min(1, raw);
  return {
    rule,
    factor,
    altitudeFactor,
    temperatureFactor: factor / altitudeFactor,
    estimate: rule === 'iso-3046' || Math.abs(1 / raw - 1) > 0.07,
  };
}

export interface SiteDerate {
  readonly rule: DerateRuleId;
  readonly factor: number;
  readonly altitudeFactor: number;
  readonly temperatureFactor: number;
  readonly estimate: boolean;
}

function factorFromAir(
  rule: DerateRuleId,
  altitude: number,
  temperatureC: number,
  relativeHumidity: number,
): number {
  const pressure = standardAtmospherePressure(altitude);
  const temperature = temperatureC + 273.15;
  const vapour = airVapourPressure(temperature, relativeHumidity);
  if (rule === 'sae-j1349') return 1 / sparkIgnitionCorrectionJ1349(pressure - vapour, temperatureC);
  return powerAdjustmentIso3046({
    sitePressure: pressure,
    siteTemperature: temperature,
    siteVapourPressure: vapour,
  }).powerFactor;
}
