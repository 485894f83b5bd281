import { inRange } from '../physics/index.ts';
import { liquidOf } from './liquid-of.ts';
import type { LiquidId, StrengthUnit } from './liquid.ts';
import { liquidProperties } from './liquid-properties.ts';

/** A part of a recipe: how much, and at what strength. */
export interface Portion {
  readonly strength: number;
  /** [m3] */
  readonly volume: number;
  /** [kg]; undefined when the density is not known and the mix does not need it. */
  readonly mass: number | undefined;
}

/** One step a person follows; the figure stands beside its text. */
export interface RecipeStep {
  readonly text: string;
  /** The same under a table of several fills, where no single figure can stand beside it. */
  readonly underTable?: string;
  /** [m3] */
  readonly volume?: number;
  /** [kg] */
  readonly mass?: number;
}

/** A recipe card with worked numbers. */
export interface Recipe {
  readonly liquid: LiquidId;
  readonly strengthUnit: StrengthUnit;
  /** By mass for weight %, by volume for a strength in mass per volume or volume %. */
  readonly by: 'mass' | 'volume';
  readonly inTank: Portion;
  readonly stock: Portion;
  readonly water: Portion;
  readonly mix: Portion;
  /** The balance that was used, in symbols. */
  readonly formula: string;
  readonly steps: readonly RecipeStep[];
  readonly cautions: readonly string[];
}

export interface RecipeQuery {
  readonly liquid: string;
  readonly stockStrength: number;
  readonly wantedStrength: number;
  readonly strengthUnit: StrengthUnit;
  /** Finished mix [m3]. */
  readonly finalVolume: number;
  readonly temperatureC: number;
  /** What is in the tank already. */
  readonly inTank?: { readonly volume: number; readonly strength: number } | undefined;
}

export type RecipeOutcome =
  { readonly ok: true; readonly recipe: Recipe } | { readonly ok: false; readonly reason: string };

/**
 * Recipe card: how much stock and water make a tank of mix.
 *
 * Weight % is balanced by mass, with the density of each portion; trade %, g/L and volume % by volume.
 *
 * @throws RangeError for an unknown liquid, a unit it is not sold in, an impossible number.
 */
export function recipe(q: RecipeQuery): RecipeOutcome {
  inRange('finalVolume', q.finalVolume, 1e-6, 1000, 'm3');
  inRange('stockStrength', q.stockStrength, 1e-9, 2000, q.strengthUnit);
  inRange('wantedStrength', q.wantedStrength, 0, 2000, q.strengthUnit);
  const tank = q.inTank ?? { volume: 0, strength: 0 };
  inRange('inTank.volume', tank.volume, 0, q.finalVolume, 'm3');
  inRange('inTank.strength', tank.strength, 0, 2000, q.strengthUnit);
  if (q.wantedStrength > q.stockStrength)
    return refused(
      `a mix of ${q.wantedStrength} ${q.strengthUnit} cannot be made from stock of ${q.stockStrength} ${q.strengthUnit}`,
    );
  return q.strengthUnit === 'weight %' ? byMass(q, tank) : byVolume(q, tank);
}

function byMass(q: RecipeQuery, tank: { volume: number; strength: number }): RecipeOutcome {
  const mixDensity = densityAt(q, q.wantedStrength);
  const stockDensity = densityAt(q, q.stockStrength);
  const waterDensity = liquidProperties({ liquid: 'water', temperatureC: q.temperatureC }).density;
  const tankDensity = tank.volume === 0 ? waterDensity : densityAt(q, tank.strength);
  if (
    mixDensity === undefined ||
    stockDensity === undefined ||
    waterDensity === undefined ||
    tankDensity === undefined
  )
    return refused(
      `the density of ${liquidOf(q.liquid).name} is not known at these strengths and ${q.temperatureC} degC, and weight % is mixed by mass`,
    );
  const mixMass = q.finalVolume * mixDensity;
  const tankMass = tank.volume * tankDensity;
  const stockMass = (mixMass * q.wantedStrength - tankMass * tank.strength) / q.stockStrength;
  const waterMass = mixMass - tankMass - stockMass;
  return finished(q, 'mass', {
    inTank: { strength: tank.strength, volume: tank.volume, mass: tankMass },
    stock: { strength: q.stockStrength, volume: stockMass / stockDensity, mass: stockMass },
    water: { strength: 0, volume: waterMass / waterDensity, mass: waterMass },
    mix: { strength: q.wantedStrength, volume: q.finalVolume, mass: mixMass },
  });
}

function byVolume(q: RecipeQuery, tank: { volume: number; strength: number }): RecipeOutcome {
  const stockVolume = (q.finalVolume * q.wantedStrength - tank.volume * tank.strength) / q.stockStrength;
  const waterVolume = q.finalVolume - tank.volume - stockVolume;
  const portion = (volume: number, strength: number): Portion => {
    const density =
      strength === 0
        ? liquidProperties({ liquid: 'water', temperatureC: q.temperatureC }).density
        : densityAt(q, strength);
    return { strength, volume, mass: density === undefined ? undefined : volume * density };
  };
  return finished(q, 'volume', {
    inTank: portion(tank.volume, tank.strength),
    stock: portion(stockVolume, q.stockStrength),
    water: portion(waterVolume, 0),
    mix: portion(q.finalVolume, q.wantedStrength),
  });
}

type Portions = Pick<Recipe, 'inTank' | 'stock' | 'water' | 'mix'>;

function finished(q: RecipeQuery, by: 'mass' | 'volume', portions: Portions): RecipeOutcome {
  if (portions.stock.volume < 0)
    return refused('the tank already holds more than the mix needs: it cannot be made weaker in this volume');
  if (portions.water.volume < -1e-12)
    return refused(
      'the tank holds too much that is too weak: even stock alone does not bring this volume to strength',
    );
  const liquid = liquidOf(q.liquid);
  const formula =
    by === 'mass'
      ? 'stock = (mix mass × wanted − tank mass × its strength) / stock strength; water = the rest, by mass'
      : 'stock = (mix volume × wanted − tank volume × its strength) / stock strength; water = the rest, by volume';
  return {
    ok: true,
    recipe: {
      liquid: liquid.id,
      strengthUnit: q.strengthUnit,
      by,
      ...portions,
      formula,
      steps: stepsOf(q, portions),
      cautions: cautionsOf(q),
    },
  };
}

/** Share of the water that stands in the tank before the stock comes: common practice, no source. */
const FIRST_WATER = 0.6;

function stepsOf(q: RecipeQuery, { stock, water, mix }: Portions): RecipeStep[] {
  const liquid = liquidOf(q.liquid);
  const first = FIRST_WATER * water.volume;
  const measured = (volume: number, mass: number | undefined) =>
    mass === undefined ? { volume } : { volume, mass };
  return [
    { text: 'Check what the tank held last, and that it was rinsed.' },
    {
      text: `Measure the strength of the stock: this card is worked for ${shown(stock.strength)} ${q.strengthUnit}.`,
    },
    { text: 'Put on the protection that the label and the safety sheet ask for.' },
    {
      text: 'Run this much water into the tank first.',
      underTable: `Run ${FIRST_WATER * 10} tenths of the water of the table into the tank first.`,
      volume: first,
    },
    { text: liquid.agitation === 'none' ? 'Let it circulate slowly.' : 'Start the agitation.' },
    {
      text: 'Add the stock to the water, never water to the stock.',
      underTable: 'Add the stock of the table to the water, never water to the stock.',
      ...measured(stock.volume, stock.mass),
    },
    { text: 'Add the rest of the water.', volume: water.volume - first },
    {
      text: 'The tank must now stand at this volume.',
      underTable: 'The tank must now stand at the volume of the mix.',
      volume: mix.volume,
    },
    { text: `Mix until even, then measure: it must read ${shown(mix.strength)} ${q.strengthUnit}.` },
  ];
}

function cautionsOf(q: RecipeQuery): string[] {
  const liquid = liquidOf(q.liquid);
  const cautions = liquid.hazards.map((h) => `${liquid.name}: ${h}`);
  if (liquid.model.kind === 'hypochlorite')
    cautions.push('Mix for the day only and measure: wash mixes lose strength faster than stock.');
  if (liquid.groups.includes('caustic')) cautions.push('It grows hot: add slowly and let it cool.');
  return cautions;
}

/** Bleach of any strength shares one law, so a wash mix may be worked from stock. */
function densityAt(q: RecipeQuery, strength: number): number | undefined {
  if (strength === 0) return liquidProperties({ liquid: 'water', temperatureC: q.temperatureC }).density;
  return liquidProperties({
    liquid: q.liquid,
    strength,
    strengthUnit: q.strengthUnit,
    temperatureC: q.temperatureC,
  }).density;
}

/** A strength as it can be measured. */
const shown = (strength: number): number => Number(strength.toPrecision(3));

const refused = (reason: string): RecipeOutcome => ({ ok: false, reason });
