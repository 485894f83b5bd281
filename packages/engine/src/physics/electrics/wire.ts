import { inRange } from '../in-range.ts';
import { oneOfChoices } from '../lists-in-range.ts';
import { CIRCULAR_MIL, FOOT, INCH } from '../us-measure.ts';
import { WIRE_SIZES, type WireSize } from './wire-sizes.data.ts';
import { wholeInRange } from '../whole-in-range.ts';

/** Resistivity of annealed copper at 20 degC [ohm.m] and its rise per kelvin: IACS. */
const COPPER = { resistivity: 1.7241e-8, perKelvin: 0.00393 };
/** Sizing constant of boat wiring practice, 10.75 ohm.cmil/ft, in ohm.m. */
const SIZING_RESISTIVITY = (10.75 * CIRCULAR_MIL) / FOOT;

/** Which family of cable a gauge number belongs to: SAE cable is thinner than AWG of the same number. */
export type CableFamily = 'AWG' | 'SAE';

/**
 * Diameter and copper area of a solid wire of an American gauge.
 *
 * @formula d = 0.005 in × 92^((36 - n)/39); A = π d²/4
 * @param gauge gauge number n; 1/0 is 0, 2/0 is -1, 4/0 is -3 [-] -3..40
 * @result diameter diameter of the copper [m]
 * @result area area of the copper [m2]
 * @throws RangeError when a parameter is outside its range
 * @source ASTM B258 geometric rule
 */
export function wireGauge(gauge: number): { diameter: number; area: number } {
  wholeInRange('gauge', gauge, -3, 40);
  const diameter = 0.005 * INCH * 92 ** ((36 - gauge) / 39);
  return { diameter, area: (Math.PI / 4) * diameter * diameter };
}

/**
 * Resistance of a copper conductor.
 *
 * @formula R = ρ L / A, ρ = 1.7241e-8 (1 + 0.00393 (t - 20))
 * @param area area of the copper [m2] 1e-9..1e-2
 * @param length length of conductor, out and back for a circuit [m] 0..1000
 * @param temperatureC temperature of the conductor; default 20 [degC] -40..150
 * @returns resistance [ohm]
 * @throws RangeError when a parameter is outside its range
 * @source International annealed copper standard: 1.7241e-8 ohm.m at 20 degC, 0.00393 per kelvin
 */
export function copperResistance(area: number, length: number, temperatureC = 20): number {
  inRange('area', area, 1e-9, 1e-2, 'm2');
  inRange('length', length, 0, 1000, 'm');
  inRange('temperatureC', temperatureC, -40, 150, 'degC');
  return (COPPER.resistivity * (1 + COPPER.perKelvin * (temperatureC - 20)) * length) / area;
}

/**
 * Voltage lost in a two-wire circuit.
 *
 * @formula ΔU = I R, R over twice the one-way length
 * @param current current [A] 0..2000
 * @param area area of the copper [m2] 1e-9..1e-2
 * @param oneWay distance from battery to load [m] 0..500
 * @param systemVoltage voltage of the system [V] 1..1000
 * @param temperatureC temperature of the conductor; default 20 [degC] -40..150
 * @result drop voltage lost [V]
 * @result share voltage lost over system voltage [-]
 * @throws RangeError when a parameter is outside its range
 * @source Ohm's law; copper by the international annealed copper standard
 */
export function cableDrop(
  current: number,
  area: number,
  oneWay: number,
  systemVoltage: number,
  temperatureC = 20,
): { drop: number; share: number } {
  inRange('current', current, 0, 2000, 'A');
  inRange('oneWay', oneWay, 0, 500, 'm');
  inRange('systemVoltage', systemVoltage, 1, 1000, 'V');
  const drop = current * copperResistance(area, 2 * oneWay, temperatureC);
  return { drop, share: drop / systemVoltage };
}

/**
 * Copper area that keeps the voltage drop of a circuit within what is allowed.
 *
 * @formula CM = K I L / E, K = 10.75 ohm.cmil/ft, L out and back
 * @param current current [A] 0..2000
 * @param loopLength length of wire out and back [m] 0..1000
 * @param allowedDrop voltage that may be lost [V] 0.01..100
 * @param resistivity copper with its allowance for warmth and joints; default 10.75 ohm.cmil/ft [ohm.m] 1.6e-8..3e-8
 * @returns area of copper [m2]
 * @valid drop alone: ampacity and fuse are checked beside it
 * @throws RangeError when a parameter is outside its range
 * @source ABYC E-11 method, equation from memory
 */
export function copperAreaForDrop(
  current: number,
  loopLength: number,
  allowedDrop: number,
  resistivity = SIZING_RESISTIVITY,
): number {
  inRange('current', current, 0, 2000, 'A');
  inRange('loopLength', loopLength, 0, 1000, 'm');
  inRange('allowedDrop', allowedDrop, 0.01, 100, 'V');
  inRange('resistivity', resistivity, 1.6e-8, 3e-8, 'ohm.m');
  return (resistivity * current * loopLength) / allowedDrop;
}

/**
 * Thinnest cable of a family that has the copper and carries the current.
 *
 * @formula least size with area ≥ area asked and ampacity ≥ current
 * @param area area of copper asked [m2] 0..1e-2
 * @param family family the cable is sold under [one of AWG, SAE]
 * @param current current it must carry; default 0, drop alone [A] 0..2000
 * @param engineSpace whether it runs in a hot engine space; default no [yes/no]
 * @result gauge gauge number; 1/0 is 0, 2/0 is -1, 4/0 is -3 [-]
 * @result label gauge as printed on the cable [text]
 * @result area area of its copper by the printed table [m2]
 * @result ampacity current it carries [A]
 * @throws RangeError when a parameter is outside its range or no size of the table does
 * @source ABYC E-11 table as reprinted: copper of both families, ampacity of single 105 degC conductors
 */
export function cableFor(area: number, family: CableFamily, current = 0, engineSpace = false): CableChoice {
  inRange('area', area, 0, 1e-2, 'm2');
  oneOfChoices('family', family, ['AWG', 'SAE']);
  inRange('current', current, 0, 2000, 'A');
  const found = WIRE_SIZES.find(
    (s) => copperOf(s, family) >= area * (1 - 1e-9) && ampacityOf(s, engineSpace) >= current,
  );
  if (!found)
    throw new RangeError(
      `area is ${area} m2 and current ${current} A; the thickest cable of the table has ${copperOf(WIRE_SIZES.at(-1)!, family)} m2 and carries ${ampacityOf(WIRE_SIZES.at(-1)!, engineSpace)} A`,
    );
  return {
    gauge: found.gauge,
    label: found.label,
    area: copperOf(found, family),
    ampacity: ampacityOf(found, engineSpace),
  };
}

export interface CableChoice {
  readonly gauge: number;
  readonly label: string;
  readonly area: number;
  readonly ampacity: number;
}

/**
 * Current that a single 105 degC conductor of a gauge carries.
 *
 * @formula table; 0.85 in an engine space
 * @param gauge gauge number of the table; 1/0 is 0, 2/0 is -1, 4/0 is -3 [-] -3..18
 * @param engineSpace whether it runs in a hot engine space [yes/no]
 * @returns ampacity [A]
 * @valid single conductors in air; a bundle carries less
 * @throws RangeError when the gauge is not in the table
 * @source ABYC E-11 table for 105 degC single conductors, as reprinted
 */
export function wireAmpacity(gauge: number, engineSpace: boolean): number {
  const found = WIRE_SIZES.find((s) => s.gauge === gauge);
  if (!found)
    throw new RangeError(`gauge is ${gauge}; it must be one of ${WIRE_SIZES.map((s) => s.gauge).join(', ')}`);
  return ampacityOf(found, engineSpace);
}

function copperOf(size: WireSize, family: CableFamily): number {
  return (family === 'AWG' ? size.awgCmil : size.saeCmil) * CIRCULAR_MIL;
}

function ampacityOf(size: WireSize, engineSpace: boolean): number {
  return engineSpace ? size.ampacityEngineSpace : size.ampacityOutside;
}
