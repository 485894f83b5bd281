import type { NetworkLiquid } from '../../hydraulics/index.ts';
import { agitationNeed, isLiquid, liquidOf as tableLiquid, liquidProperties } from '../../liquids/index.ts';
import { drySaltPerVolume, waterDensity, waterVapourPressure, waterViscosity } from '../../physics/index.ts';
import type { Brief } from '../brief.ts';
import type { Site } from './site.ts';

/** A liquid of the brief with what the hydraulics ask of it. */
export interface DutyLiquid extends NetworkLiquid {
  readonly id: string;
  readonly name: string;
  /** [Pa absolute] */
  readonly vapourPressure: number;
  readonly temperatureC: number;
  /** Share of the tank that must be moved in a second to keep it mixed [1/s]. */
  readonly agitationShare: number;
  /** Dry salt held by a brine of known strength [kg/m3]. */
  readonly drySalt?: number;
  /** Properties that nobody knows, with what was used in their place. */
  readonly missing: readonly string[];
  /** Estimates, in words. */
  readonly estimates: readonly string[];
}

/** For a liquid that is not in the tables: 3 %/min for solutions, 5 %/min for suspensions. */
const UNKNOWN_SOLUTION = 0.03 / 60;
const UNKNOWN_SUSPENSION = 0.05 / 60;

/**
 * Properties of one of the brief's liquids at its strength and temperature.
 *
 * A property without data is never taken in silence: the upper bound that judgement allows, or else water's value,
 * is used, and `missing` says so; the proof shows it as an unknown promise.
 */
export function liquidOf(brief: Brief, id: string, site: Site): DutyLiquid {
  let known = found.get(brief);
  if (known === undefined) {
    known = new Map<string, DutyLiquid>();
    found.set(brief, known);
  }
  let liquid = known.get(id);
  if (liquid === undefined) known.set(id, (liquid = lookUpLiquid(brief, id, site)));
  return liquid;
}

/** Looked up once per brief. */
const found = new WeakMap<Brief, Map<string, DutyLiquid>>();

function lookUpLiquid(brief: Brief, id: string, site: Site): DutyLiquid {
  const asked = brief.liquids.find((l) => l.id === id)!;
  const temperatureC = (asked.temperature ?? site.temperature) - 273.15;
  const properties = lookUp(asked, temperatureC);
  const missing: string[] = [...properties.problems];
  const estimates: string[] = [];
  for (const flag of properties.flags) {
    if (flag.kind === 'unknown' && (flag.property === 'density' || flag.property === 'viscosity'))
      missing.push(`${flag.property}: ${flag.reason}`);
    else if (flag.kind !== 'unknown') estimates.push(`${flag.property}: ${flag.reason}`);
  }
  const bound = (property: string) => properties.flags.find((f) => f.property === property)?.high;
  const warm = Math.min(60, Math.max(0, temperatureC));
  const density = properties.density ?? bound('density') ?? waterDensity(warm);
  const salt = drySaltOf(asked, density);
  return {
    id,
    name: asked.name,
    temperatureC,
    agitationShare: isLiquid(asked.liquid)
      ? agitationNeed([asked]).share
      : asked.suspension
        ? UNKNOWN_SUSPENSION
        : UNKNOWN_SOLUTION,
    density,
    viscosity: properties.viscosity ?? bound('viscosity') ?? waterViscosity(warm),
    ...(properties.powerLaw === undefined ? {} : { powerLaw: properties.powerLaw }),
    vapourPressure: properties.vapourPressure ?? waterVapourPressure(warm),
    ...(salt === undefined ? {} : { drySalt: salt }),
    missing,
    estimates,
  };
}

/** Dry salt of a brine that is told in weight %; a strength out of the tables is among what is missing already. */
function drySaltOf(
  { liquid, strength, strengthUnit }: Brief['liquids'][number],
  density: number,
): number | undefined {
  if (strength === undefined || strengthUnit !== 'weight %' || !isLiquid(liquid)) return undefined;
  if (!tableLiquid(liquid).groups.includes('chloride-brine')) return undefined;
  return strength > 45 || density > 1400 ? undefined : drySaltPerVolume(density, strength / 100);
}

interface Found extends Pick<
  ReturnType<typeof liquidProperties>,
  'density' | 'viscosity' | 'powerLaw' | 'vapourPressure' | 'flags'
> {
  readonly problems: readonly string[];
}

function lookUp(asked: Brief['liquids'][number], temperatureC: number): Found {
  try {
    const found = liquidProperties({
      liquid: asked.liquid,
      strength: asked.strength,
      strengthUnit: asked.strengthUnit,
      temperatureC,
      measured: { density: asked.density, viscosity: asked.viscosity },
    });
    return { ...found, problems: [] };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return {
      density: asked.density,
      viscosity: asked.viscosity,
      powerLaw: undefined,
      vapourPressure: undefined,
      flags: [],
      problems: [error.message],
    };
  }
}
