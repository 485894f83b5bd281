import { inRange, waterDensity } from '../physics/index.ts';
import { ureaAmmoniumNitrateDensity } from './fertiliser.ts';
import {
  hypochloriteMassFraction,
  bleachSpecificGravity,
  tradePercentOfMassFraction,
} from './hypochlorite-strength.ts';
import { liquidOf } from './liquid-of.ts';
import type { Liquid, PropertyModel, StrengthUnit } from './liquid.ts';
import { SALTS } from './salt-solution.data.ts';
import { saltSolutionDensity } from './salt-solution.ts';
import { SECONDARY_FLUIDS } from './secondary-fluid.data.ts';
import { densityMelinder } from './secondary-fluid.ts';

/** Temperature at which mass per volume is counted [degC]. */
const COUNTING_C = 20;

/** A strength in one common measure, or the reason why there is none. */
export type CountedStrength =
  | {
      readonly ok: true;
      readonly massFraction: number | undefined;
      readonly tradePercent: number | undefined;
    }
  | { readonly ok: false; readonly reason: string };

const TOPS: Readonly<Record<StrengthUnit, number>> = {
  'trade %': 25,
  'weight %': 100,
  'g/L': 2000,
  'volume %': 100,
};

/**
 * The strength of a liquid as a mass fraction of what it counts, and as trade % for bleach.
 *
 * Trade % and g/L are mass per volume; weight % is mass per mass; the density between them is the liquid's own, at
 * 20 degC. A strength beyond the liquid's table comes back with the table's name, never extrapolated.
 *
 * @throws RangeError for a unit the liquid is not sold in, a missing or impossible number.
 */
export function countedStrength(p: {
  readonly liquid: string;
  readonly strength?: number | undefined;
  readonly strengthUnit?: StrengthUnit | undefined;
}): CountedStrength {
  const liquid = liquidOf(p.liquid);
  const rule = liquid.strength;
  if (rule === undefined) {
    if (p.strength !== undefined)
      throw new RangeError(`strength is ${p.strength}; ${liquid.name} is one grade and takes none`);
    return { ok: true, massFraction: undefined, tradePercent: undefined };
  }
  if (p.strength === undefined) {
    if (rule.required)
      throw new RangeError(
        `strength is missing: ${liquid.name} needs ${rule.units[0]} (usual ${rule.usual.min} to ${rule.usual.max})`,
      );
    return { ok: true, massFraction: undefined, tradePercent: undefined };
  }
  const unit = p.strengthUnit;
  if (unit === undefined)
    throw new RangeError(
      `strengthUnit is missing: strength ${p.strength} needs one of ${rule.units.join(', ')}`,
    );
  if (!rule.units.includes(unit))
    throw new RangeError(
      `strengthUnit is '${unit}'; ${liquid.name} is given in ${rule.units.join(' or ')} (it counts ${rule.counts})`,
    );
  inRange('strength', p.strength, 0, TOPS[unit], unit);
  return liquid.model.kind === 'hypochlorite'
    ? countedBleach(p.strength, unit)
    : countedMass(liquid, p.strength, unit);
}

function countedBleach(strength: number, unit: StrengthUnit): CountedStrength {
  if (unit === 'weight %' && strength > 13.11)
    return {
      ok: false,
      reason: `${strength} weight % NaOCl is beyond the published bleach strengths (to 15 trade %, about 13.1 weight %)`,
    };
  const tradePercent =
    unit === 'trade %'
      ? strength
      : unit === 'g/L'
        ? strength / 10
        : tradePercentOfMassFraction(strength / 100);
  if (tradePercent > 15)
    return {
      ok: false,
      reason: `${tradePercent.toPrecision(3)} trade % is beyond the published bleach strengths (to 15 trade %)`,
    };
  return {
    ok: true,
    tradePercent,
    massFraction: hypochloriteMassFraction(tradePercent, bleachSpecificGravity(tradePercent)),
  };
}

function countedMass(liquid: Liquid, strength: number, unit: StrengthUnit): CountedStrength {
  const found =
    unit === 'weight %'
      ? strength / 100
      : unit === 'g/L'
        ? fractionOfConcentration(liquid.model, strength)
        : fractionOfVolume(liquid.model, strength / 100);
  const [low, high] = fractionLimits(liquid.model);
  if (found === undefined || found < low - 1e-9 || found > high + 1e-9)
    return {
      ok: false,
      reason:
        `${strength} ${unit} is outside the table of ${liquid.name}: ${percent(low)} to ${percent(high)} weight % ${liquid.strength?.counts ?? ''}`.trim(),
    };
  return { ok: true, massFraction: Math.min(high, Math.max(low, found)), tradePercent: undefined };
}

/** Mass fractions that a liquid's density law covers. */
function fractionLimits(model: PropertyModel): readonly [number, number] {
  switch (model.kind) {
    case 'salt':
      return [0, SALTS[model.salt].maxFraction];
    case 'glycol':
      return [0, SECONDARY_FLUIDS['propylene glycol'].maxFraction];
    case 'urea-ammonium-nitrate':
      return [0.28, 0.32];
    case 'ideal-mix':
      return [0, model.stockFraction];
    default:
      return [0, 1];
  }
}

function densityAtCounting(model: PropertyModel, massFraction: number): number {
  switch (model.kind) {
    case 'salt':
      return saltSolutionDensity(model.salt, massFraction, COUNTING_C);
    case 'glycol':
      return densityMelinder('propylene glycol', massFraction, COUNTING_C);
    case 'urea-ammonium-nitrate':
      return ureaAmmoniumNitrateDensity(massFraction, COUNTING_C);
    case 'ideal-mix':
      return dilutedDensity(model, model.stockDensity.value, massFraction, COUNTING_C);
    default:
      return waterDensity(COUNTING_C);
  }
}

/** Density of a stock thinned with water to a mass fraction of the counted substance, volumes adding up. */
export function dilutedDensity(
  model: Extract<PropertyModel, { kind: 'ideal-mix' }>,
  stockDensity: number,
  massFraction: number,
  temperatureC: number,
): number {
  const stock = massFraction / model.stockFraction;
  return 1 / ((1 - stock) / waterDensity(temperatureC) + stock / stockDensity);
}

/** The mass fraction w with w ρ(w) = c: w ρ(w) rises with w, so halving finds it. */
function fractionOfConcentration(model: PropertyModel, concentration: number): number | undefined {
  let [low, high] = fractionLimits(model);
  const excess = (w: number) => w * densityAtCounting(model, w) - concentration;
  if (excess(low) > 1e-9 || excess(high) < -1e-9) return undefined;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (excess(middle) < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function fractionOfVolume(model: PropertyModel, volumeFraction: number): number {
  if (model.kind !== 'ideal-mix') return volumeFraction;
  const stock = volumeFraction * model.stockDensity.value;
  const water = (1 - volumeFraction) * waterDensity(COUNTING_C);
  return (model.stockFraction * stock) / (stock + water);
}

const percent = (fraction: number): string => String(Number((100 * fraction).toPrecision(4)));
