import { inRange } from '../physics/index.ts';
import { bleachLossRate } from './hypochlorite-decay.ts';

const GAS_CONSTANT = 8.314;
const CELSIUS_ZERO = 273.15;
/** Three hypochlorite to a chlorate on a path 8.7 times as fast, two to an oxygen: (3 × 8.7 + 2) per O2. */
const HYPOCHLORITE_PER_OXYGEN = 28.1;

/**
 * Oxygen that bleach gives off without any metal in it.
 *
 * @formula r_O2 = f k2 C² / 28.1
 * @param tradePercent strength, grams of available chlorine in 100 mL [-] 5..21
 * @param temperatureC temperature [degC] 15..55
 * @param fieldFactor 1 is the published law [-] 1..3
 * @returns oxygen released [mol/(m3.s)]
 * @valid copper, nickel and iron make it many times faster; no number is published for a rig's metals
 * @throws RangeError when a parameter is outside its range
 * @source Adam L.C., Gordon G., Inorg. Chem. 38(6), 1999 (chlorate path 8.7 times the oxygen path)
 */
export function bleachOxygenRate(tradePercent: number, temperatureC: number, fieldFactor = 1): number {
  return bleachLossRate(tradePercent, temperatureC, fieldFactor) / HYPOCHLORITE_PER_OXYGEN;
}

/**
 * How fast the pressure rises in a closed vessel of bleach.
 *
 * @formula dp/dt = R T (V_liquid / V_gas) f k2 C² / 28.1
 * @param tradePercent strength, grams of available chlorine in 100 mL [-] 5..21
 * @param temperatureC temperature [degC] 15..55
 * @param fillFraction share of the vessel that liquid fills [-] 0..0.999
 * @param fieldFactor 1 is the published law [-] 1..3
 * @returns pressure rise [Pa/s]
 * @valid a lower bound: metals make it faster, a vessel quite full (a hose, a ball valve) has no gas room and bursts sooner
 * @throws RangeError when a parameter is outside its range
 * @source Ideal gas on the oxygen release of Adam and Gordon, 1999; bottles burst when their vent cap failed (HSDB)
 */
export function closedBleachPressureRate(
  tradePercent: number,
  temperatureC: number,
  fillFraction: number,
  fieldFactor = 1,
): number {
  inRange('fillFraction', fillFraction, 0, 0.999);
  const kelvin = temperatureC + CELSIUS_ZERO;
  const ratio = fillFraction / (1 - fillFraction);
  return GAS_CONSTANT * kelvin * ratio * bleachOxygenRate(tradePercent, temperatureC, fieldFactor);
}
