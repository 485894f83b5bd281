import { rangeProblem, waterDensity, waterViscosity, WATER_RANGE_C } from '../physics/index.ts';
import { brineReadings } from './brine-readings.ts';
import {
  FERTILISER_TABLE_RANGE,
  ammoniumPolyphosphateDensity,
  ammoniumPolyphosphateSaltOutC,
  ureaAmmoniumNitrateDensity,
  ureaAmmoniumNitrateSaltOut,
} from './fertiliser.ts';
import { bleachDensity } from './hypochlorite-strength.ts';
import { dispersionViscosityEinstein } from './ideal-mix.ts';
import type { Liquid, PropertyModel } from './liquid.ts';
import { type Reading, type Readings, estimate, known, readingOf, unknown } from './reading.ts';
import { densityMelinder, freezingPointMelinder, viscosityMelinder } from './secondary-fluid.ts';
import { dilutedDensity } from './strength.ts';

/** How far past the ends of a straight published line its end value is still held [K]. */
const HOLD = 20;
const NO_CURVE = 'no freezing or salt-out point was found';

/** Strength in the measure that a model needs. */
interface Counted {
  readonly massFraction: number | undefined;
  readonly tradePercent: number | undefined;
}

/** What a liquid's model says; every gap comes back as unknown with its reason. */
export function modelReadings(liquid: Liquid, counted: Counted, temperatureC: number): Readings {
  const { model } = liquid;
  const fraction = counted.massFraction;
  switch (model.kind) {
    case 'water':
      return {
        density: ofWater(temperatureC, () => known(waterDensity(temperatureC), 'IAPWS')),
        viscosity: ofWater(temperatureC, () => known(waterViscosity(temperatureC), 'IAPWS')),
        coldLimit: known(0, 'IAPWS'),
        coldLimitKind: 'ice',
      };
    case 'hypochlorite':
      return bleachReadings(liquid, model.viscosity, counted.tradePercent ?? NaN, temperatureC);
    case 'salt':
      return brineReadings(model.salt, fraction ?? NaN, temperatureC);
    case 'glycol':
      return {
        density: readingOf(() =>
          known(densityMelinder('propylene glycol', fraction ?? NaN, temperatureC), 'MELINDER'),
        ),
        viscosity: readingOf(() =>
          known(viscosityMelinder('propylene glycol', fraction ?? NaN, temperatureC), 'MELINDER'),
        ),
        coldLimit: readingOf(() =>
          known(freezingPointMelinder('propylene glycol', fraction ?? NaN), 'MELINDER'),
        ),
        coldLimitKind: 'ice',
      };
    case 'urea-ammonium-nitrate':
      return {
        density: readingOf(() =>
          heldLine((t) => ureaAmmoniumNitrateDensity(fraction ?? NaN, t), temperatureC),
        ),
        viscosity: judgedViscosity(liquid, temperatureC),
        coldLimit: readingOf(() => known(ureaAmmoniumNitrateSaltOut(fraction ?? NaN), 'UNIDO_1998')),
        coldLimitKind: 'salt-out',
      };
    case 'ammonium-polyphosphate':
      return {
        density: readingOf(() => heldLine(ammoniumPolyphosphateDensity, temperatureC)),
        viscosity: judgedViscosity(liquid, temperatureC),
        coldLimit: known(ammoniumPolyphosphateSaltOutC, 'FERT_PHYS'),
        coldLimitKind: 'salt-out',
      };
    case 'one-grade':
      return {
        density: estimate(
          model.density.value,
          model.density.low,
          model.density.high,
          `${liquid.propertyNote} No temperature dependence was published.`,
          ...liquid.sources,
        ),
        viscosity: judgedViscosity(liquid, temperatureC),
        coldLimit: unknown(NO_CURVE),
        coldLimitKind: 'salt-out',
      };
    case 'ideal-mix':
      return mixReadings(liquid, model, fraction, temperatureC);
    case 'dilute':
      return diluteReadings(liquid, model, temperatureC);
  }
}

function bleachReadings(
  liquid: Liquid,
  viscosity: 'near-water' | 'unknown',
  tradePercent: number,
  t: number,
): Readings {
  const share = tradePercent <= 4 ? 0.01 : 0.03;
  return {
    density: readingOf(() => {
      const value = bleachDensity(tradePercent);
      const reason = `specific gravity line of bleach, within ${100 * share} %: ask the supplier`;
      return estimate(value, value * (1 - share), value * (1 + share), reason, 'HYPO_POOL', 'HYPO_SPEC');
    }),
    viscosity: viscosity === 'near-water' ? nearWaterViscosity(t) : judgedViscosity(liquid, t),
    coldLimit:
      tradePercent <= 4
        ? estimate(0, -4, 0, 'thin solution: ice from just below 0 degC', 'JUDGEMENT')
        : unknown(
            'no freezing point of bleach was found (recalled: about -14 degC at 10 weight %, low confidence)',
            [-30, 0],
          ),
    coldLimitKind: 'ice',
  };
}

/** A straight line published between two temperatures: just past its ends the end value is held and flagged. */
function heldLine(line: (temperatureC: number) => number, temperatureC: number): Reading {
  const [first, last] = FERTILISER_TABLE_RANGE;
  const inside = Math.min(last, Math.max(first, temperatureC));
  if (Math.abs(temperatureC - inside) > HOLD) return known(line(temperatureC));
  const value = line(inside);
  if (inside === temperatureC) return known(value, 'VT199', 'FERT_PHYS');
  const reason = `the published line runs from ${first} to ${last} degC: its end value is held`;
  return estimate(value, value * 0.99, value * 1.01, reason, 'VT199', 'FERT_PHYS');
}

function mixReadings(
  liquid: Liquid,
  model: Extract<PropertyModel, { kind: 'ideal-mix' }>,
  fraction: number | undefined,
  t: number,
): Readings {
  const usual = liquid.strength?.usual.max ?? 0;
  const strongest = fraction ?? Math.min(model.stockFraction, usual / 100);
  const weakest = fraction ?? 0;
  const shown = fraction ?? strongest / 2;
  const density = ofWater(t, () => {
    const at = (stock: number, w: number) => dilutedDensity(model, stock, w, t);
    const { low, high } = model.stockDensity;
    const reason =
      fraction === undefined ? `no strength given: anywhere up to ${usual} %` : 'volumes taken to add up';
    const value = dilutedDensity(model, model.stockDensity.value, shown, t);
    return estimate(
      value,
      Math.min(at(low, weakest), at(low, strongest)),
      Math.max(at(high, weakest), at(high, strongest)),
      reason,
      ...liquid.sources,
    );
  });
  return {
    density,
    viscosity: mixViscosity(liquid, model, shown, t),
    coldLimit: thinIce(strongest),
    coldLimitKind: 'ice',
  };
}

function mixViscosity(
  liquid: Liquid,
  model: Extract<PropertyModel, { kind: 'ideal-mix' }>,
  fraction: number,
  t: number,
): Reading {
  if (model.viscosity === 'unknown') return judgedViscosity(liquid, t);
  if (model.viscosity === 'near-water') return nearWaterViscosity(t);
  return ofWater(t, () => {
    const carrier = waterViscosity(t);
    const byVolume =
      (fraction * dilutedDensity(model, model.stockDensity.value, fraction, t)) / model.stockDensity.value;
    const value = dispersionViscosityEinstein(carrier, byVolume);
    return estimate(
      value,
      carrier,
      carrier * (1 + 6 * byVolume),
      'thin dispersion of round particles',
      'EINSTEIN_1906',
    );
  });
}

/** Thin in water: it cannot freeze above 0 degC, nor far below. */
const thinIce = (fraction: number): Reading =>
  fraction <= 0.06
    ? estimate(0, -3, 0, 'thin in water: ice from just below 0 degC', 'JUDGEMENT')
    : unknown(NO_CURVE);

function diluteReadings(
  liquid: Liquid,
  model: Extract<PropertyModel, { kind: 'dilute' }>,
  t: number,
): Readings {
  const density =
    model.density === 'unknown'
      ? unknown(liquid.propertyNote, liquid.densityJudgement)
      : ofWater(t, () => {
          const water = waterDensity(t);
          return estimate(water, water * 0.99, water * 1.01, 'thin in water: taken as water', 'JUDGEMENT');
        });
  const viscosity = model.viscosity === 'near-water' ? nearWaterViscosity(t) : judgedViscosity(liquid, t);
  const coldLimit = model.density === 'near-water' ? thinIce(0) : unknown(NO_CURVE);
  return { density, viscosity, coldLimit, coldLimitKind: 'ice' };
}

/** A reading of water; asked beforehand whether it is liquid, for many a query is about frost. */
function ofWater(temperatureC: number, law: () => Reading): Reading {
  const problem = rangeProblem('temperatureC', temperatureC, WATER_RANGE_C[0], WATER_RANGE_C[1], 'degC');
  return problem === undefined ? readingOf(law) : unknown(problem);
}

const nearWaterViscosity = (t: number): Reading =>
  ofWater(t, () => {
    const water = waterViscosity(t);
    return estimate(
      water,
      water * 0.95,
      water * 1.1,
      'thin in water: taken as water, within 10 % (low confidence)',
      'JUDGEMENT',
    );
  });

/** No viscosity was found: only the bracket that judgement gives, as a multiple of water's. */
function judgedViscosity(liquid: Liquid, t: number): Reading {
  const reason = `no viscosity of ${liquid.name} was found: enter the supplier's value`;
  const times = liquid.viscosityJudgement;
  if (times === undefined) return unknown(reason);
  const water = waterViscosity(Math.max(0, t));
  return unknown(`${reason}; the bracket is judgement`, [times[0] * water, times[1] * water]);
}
