import { inRange } from '../physics/index.ts';
import { liquidOf } from './liquid-of.ts';
import type { StrengthUnit } from './liquid.ts';
import { type LiquidProperties, liquidProperties } from './liquid-properties.ts';

/** A liquid thinned with water. */
export interface Thinned {
  /** In the unit that was given. */
  readonly strength: number;
  readonly massFraction: number;
  /** [kg/m3] */
  readonly density: number;
  /** [m3] */
  readonly volume: number;
  /** [kg] */
  readonly mass: number;
  /** First ice or salt of the mixture [degC]; undefined when no curve is known. */
  readonly coldLimitC: number | undefined;
}

export type ThinnedOutcome =
  { readonly ok: true; readonly thinned: Thinned } | { readonly ok: false; readonly reason: string };

/**
 * What a volume of liquid becomes with a volume of water, such as what is left in the plumbing.
 *
 * Masses are balanced, then the mixture's own density gives its volume, which is a little less than the sum. Bleach has
 * no such density law, so its volumes are taken to add up.
 *
 * @throws RangeError for an unknown liquid, a unit it is not sold in, an impossible number.
 */
export function thinnedWithWater(q: {
  readonly liquid: string;
  readonly strength: number;
  readonly strengthUnit: StrengthUnit;
  readonly volume: number;
  readonly waterVolume: number;
  readonly temperatureC: number;
}): ThinnedOutcome {
  inRange('volume', q.volume, 1e-9, 1000, 'm3');
  inRange('waterVolume', q.waterVolume, 0, 1000, 'm3');
  const stock = liquidProperties(q);
  const water = liquidProperties({ liquid: 'water', temperatureC: q.temperatureC });
  if (stock.density === undefined || stock.massFraction === undefined) return noDensity(stock);
  if (water.density === undefined) return noDensity(water);

  const stockMass = q.volume * stock.density;
  const mass = stockMass + q.waterVolume * water.density;
  const massFraction = (stockMass * stock.massFraction) / mass;
  if (liquidOf(q.liquid).model.kind === 'hypochlorite') {
    const volume = q.volume + q.waterVolume;
    const strength = q.strengthUnit === 'weight %' ? 100 * massFraction : (q.strength * q.volume) / volume;
    const { coldLimitC } = liquidProperties({ ...q, strength });
    return {
      ok: true,
      thinned: { strength, massFraction, density: mass / volume, volume, mass, coldLimitC },
    };
  }
  const mixed = liquidProperties({
    liquid: q.liquid,
    strength: 100 * massFraction,
    strengthUnit: 'weight %',
    temperatureC: q.temperatureC,
  });
  if (mixed.density === undefined) return noDensity(mixed);
  const volume = mass / mixed.density;
  const strength = strengthOf(q, massFraction, mixed.density, volume);
  return {
    ok: true,
    thinned: { strength, massFraction, density: mixed.density, volume, mass, coldLimitC: mixed.coldLimitC },
  };
}

function strengthOf(
  q: { readonly strength: number; readonly strengthUnit: StrengthUnit; readonly volume: number },
  massFraction: number,
  density: number,
  volume: number,
): number {
  switch (q.strengthUnit) {
    case 'weight %':
      return 100 * massFraction;
    case 'g/L':
      return massFraction * density;
    case 'volume %':
    case 'trade %':
      return (q.strength * q.volume) / volume;
  }
}

function noDensity({ name, flags }: LiquidProperties): ThinnedOutcome {
  const flag = flags.find((f) => f.property === 'density');
  return { ok: false, reason: flag?.reason ?? `the density of ${name} is not known here` };
}
