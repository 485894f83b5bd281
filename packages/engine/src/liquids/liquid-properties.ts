import { inRange, waterVapourPressure } from '../physics/index.ts';
import { liquidOf } from './liquid-of.ts';
import type { Liquid, LiquidId, StrengthUnit } from './liquid.ts';
import { modelReadings } from './model-readings.ts';
import type { PropertyFlag } from './property-flag.ts';
import { type Reading, type Readings, estimate, known, unknown } from './reading.ts';
import type { SourceId } from './sources.data.ts';
import { countedStrength } from './strength.ts';

/** A thickened liquid: shear stress is `consistency` times shear rate to the power `index`. */
export interface PowerLaw {
  /** [Pa.s^n] */
  readonly consistency: number;
  /** [-] */
  readonly index: number;
}

/** What to look up. */
export interface LiquidQuery {
  readonly liquid: string;
  readonly strength?: number | undefined;
  readonly strengthUnit?: StrengthUnit | undefined;
  readonly temperatureC: number;
  /** What the supplier's sheet or a measurement says: it replaces ours. */
  readonly measured?:
    | {
        readonly density?: number | undefined;
        readonly viscosity?: number | undefined;
        readonly coldLimitC?: number | undefined;
        readonly powerLaw?: PowerLaw | undefined;
      }
    | undefined;
}

/** Properties of a liquid at a strength and temperature. An undefined value always has a flag that says why. */
export interface LiquidProperties {
  readonly liquid: LiquidId;
  readonly name: string;
  readonly temperatureC: number;
  /** Share by mass of what the strength counts; undefined where no strength was given or it makes no difference. */
  readonly massFraction: number | undefined;
  /** [kg/m3] */
  readonly density: number | undefined;
  /** Dynamic viscosity [Pa.s]; with a power law, the consistency stands in `powerLaw` and this is undefined. */
  readonly viscosity: number | undefined;
  readonly powerLaw: PowerLaw | undefined;
  /** Absolute [Pa]: never below the true one, so a suction margin worked with it is safe. */
  readonly vapourPressure: number | undefined;
  /** Temperature at which the first ice or salt comes out [degC]. */
  readonly coldLimitC: number | undefined;
  readonly coldLimit: 'ice' | 'salt-out';
  readonly flags: readonly PropertyFlag[];
  readonly sources: readonly SourceId[];
}

/**
 * Density, viscosity, vapour pressure and cold limit of a liquid.
 *
 * A property that no table covers comes back undefined with a flag that names the table and its limits; nothing is
 * extrapolated. Water's vapour pressure stands for all of them: dissolved matter only lowers it.
 *
 * @formula the table or model of the liquid: water, salt solution, glycol, bleach, fertiliser line or ideal mix
 * @param query.liquid id of what is in the tank, such as water, uan or cacl2_brine [text]
 * @param query.strength number of the strength, in strengthUnit [-] 0..2000
 * @param query.strengthUnit what the number counts [one of trade %, weight %, g/L, volume %]
 * @param query.temperatureC temperature [degC] -60..100
 * @param query.measured.density the supplier's density in place of ours [kg/m3] 500..3000
 * @param query.measured.viscosity the supplier's viscosity in place of ours [Pa.s] 1e-5..100
 * @param query.measured.coldLimitC the supplier's freezing or salt-out point [degC] -100..60
 * @param query.measured.powerLaw.consistency of a thickened liquid [Pa.s^n] 1e-5..1000
 * @param query.measured.powerLaw.index of a thickened liquid [-] 0.1..1.5
 * @result massFraction share by mass of what the strength counts [-]
 * @result density density [kg/m3]
 * @result viscosity dynamic viscosity [Pa.s]
 * @result vapourPressure vapour pressure, absolute, never below the true one [Pa]
 * @result coldLimitC temperature of the first ice or salt [degC]
 * @valid each liquid within its own table; outside it the property is undefined and a flag names the table
 * @throws RangeError for an unknown liquid, a unit it is not sold in, a missing strength, an impossible number
 * @source IAPWS; Laliberté 2009; Melinder 2010; extension sheets of Virginia Tech and others: the sources of the result
 */
export function liquidProperties(query: LiquidQuery): LiquidProperties {
  const liquid = liquidOf(query.liquid);
  inRange('temperatureC', query.temperatureC, -60, 100, 'degC');
  checkMeasured(query.measured);
  const counted = countedStrength(query);
  const readings = counted.ok
    ? modelReadings(liquid, counted, query.temperatureC)
    : nothingKnown(counted.reason);
  const cold = entered(readings.coldLimit, query.measured?.coldLimitC);
  const frozen = cold.value !== undefined && query.temperatureC < cold.value;
  const hold = (reading: Reading): Reading =>
    frozen && reading.value !== undefined
      ? unknown(`${liquid.name} is not all liquid at ${query.temperatureC} degC`)
      : reading;
  const density = entered(hold(readings.density), query.measured?.density);
  const viscosity = entered(hold(readings.viscosity), query.measured?.viscosity);
  const powerLaw = query.measured?.powerLaw;
  const vapour = vapourReading(liquid, query.temperatureC);

  const flags: PropertyFlag[] = [];
  if (!counted.ok) flags.push({ property: 'strength', kind: 'unknown', reason: counted.reason });
  const note = (property: PropertyFlag['property'], reading: Reading) => {
    if (reading.flag !== undefined) flags.push({ property, ...reading.flag });
  };
  note('density', density);
  if (powerLaw === undefined) note('viscosity', viscosity);
  note('vapourPressure', vapour);
  note('coldLimit', cold);
  if (frozen)
    flags.push({
      property: 'coldLimit',
      kind: 'frozen',
      reason: `at ${query.temperatureC} degC ${readings.coldLimitKind === 'ice' ? 'ice forms' : 'salt comes out'}: the limit is ${cold.value} degC`,
    });
  return {
    liquid: liquid.id,
    name: liquid.name,
    temperatureC: query.temperatureC,
    massFraction: counted.ok ? counted.massFraction : undefined,
    density: density.value,
    viscosity: powerLaw === undefined ? viscosity.value : undefined,
    powerLaw,
    vapourPressure: vapour.value,
    coldLimitC: cold.value,
    coldLimit: readings.coldLimitKind,
    flags,
    sources: sourcesOf(density, viscosity, vapour, cold),
  };
}

const entered = (reading: Reading, value: number | undefined): Reading =>
  value === undefined ? reading : { value, sources: [] };

function vapourReading(liquid: Liquid, temperatureC: number): Reading {
  if (liquid.id === 'water' && temperatureC >= 0) return known(waterVapourPressure(temperatureC), 'IAPWS');
  const bound = waterVapourPressure(Math.max(0, temperatureC));
  const reason =
    temperatureC < 0
      ? 'water at 0 degC: the true pressure is lower'
      : 'water at the same temperature: what is dissolved only lowers it';
  const gas = liquid.vented ? '; gas that the liquid gives off comes on top' : '';
  return estimate(bound, 0, bound, reason + gas, 'IAPWS');
}

function sourcesOf(...readings: readonly Reading[]): SourceId[] {
  const sources: SourceId[] = [];
  for (const reading of readings)
    for (const source of reading.sources) if (!sources.includes(source)) sources.push(source);
  return sources;
}

function nothingKnown(reason: string): Readings {
  return {
    density: unknown(reason),
    viscosity: unknown(reason),
    coldLimit: unknown(reason),
    coldLimitKind: 'ice',
  };
}

function checkMeasured(measured: LiquidQuery['measured']): void {
  if (measured?.density !== undefined) inRange('measured.density', measured.density, 500, 3000, 'kg/m3');
  if (measured?.viscosity !== undefined) inRange('measured.viscosity', measured.viscosity, 1e-5, 100, 'Pa.s');
  if (measured?.coldLimitC !== undefined)
    inRange('measured.coldLimitC', measured.coldLimitC, -100, 60, 'degC');
  if (measured?.powerLaw !== undefined) {
    inRange('measured.powerLaw.consistency', measured.powerLaw.consistency, 1e-5, 1000, 'Pa.s^n');
    inRange('measured.powerLaw.index', measured.powerLaw.index, 0.1, 1.5);
  }
}
