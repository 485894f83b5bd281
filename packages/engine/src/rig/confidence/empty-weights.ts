import { rinseWaterAboard, type SupportLoads } from '../placement/index.ts';
import type { ProofContext } from '../proof/context.ts';
import { loadedOf } from '../proof/loaded.ts';
import type { Proof } from '../proof/prove.ts';
import type { Rig } from '../rig-document.ts';
import { contextOf } from './context-of.ts';
import { inPlace } from './in-place.ts';

/** What a scale shows of an empty rig, and how that follows from the masses of its items. */
export interface EmptyWeight {
  /** Of the support; `whole` for the rig as a whole. */
  readonly id: string;
  readonly name: string;
  /** With every item as its catalogue says [kg]. */
  readonly mass: number;
  /** How much of it each item brings by its own mass; what lies behind the axle takes from the coupler [kg]. */
  readonly ofItem: ReadonlyMap<string, number>;
}

/**
 * What a scale shows of a proven rig with an empty tank: the whole of it with empty hoses and full of fuel, and what rests on
 * wheels and coupler with full hoses. Loads are linear in the masses, so each item is left out once.
 *
 * @returns the whole first; nothing for a rig without a carrier, and no support of a vehicle, whose own weight is unknown
 */
export function emptyWeights(rig: Rig, proof: Proof): EmptyWeight[] {
  const context = contextOf(inPlace(rig, proof), proof);
  const all = loadsOf(context);
  const without = new Map([...rig.items.keys()].map((id) => [id, loadsOf(weightless(context, id))]));
  return all.map(({ id, name, mass }, i) => ({
    id,
    name,
    mass,
    ofItem: new Map([...without].map(([item, loads]) => [item, mass - (loads[i]?.mass ?? mass)])),
  }));
}

type Load = Pick<EmptyWeight, 'id' | 'name' | 'mass'>;

function loadsOf(context: ProofContext): Load[] {
  const full = loadedOf(context);
  const dry = loadedOf(emptied(context));
  if (full === undefined || dry === undefined) return [];
  const own = (s: SupportLoads) => !s.id.startsWith('vehicle');
  return [
    {
      id: 'whole',
      name: 'The whole rig',
      mass: dry.rig.dry.mass - rinseWaterAboard(context.rig.brief),
    },
    ...full.supports.filter(own).map(({ id, name, empty }) => ({ id, name, mass: empty })),
  ];
}

/** The same rig with nothing in its hoses. */
function emptied(context: ProofContext): ProofContext {
  return {
    ...context,
    duties: context.duties.map((d) => ({ ...d, liquid: { ...d.liquid, density: 0 } })),
  };
}

function weightless(context: ProofContext, id: string): ProofContext {
  const items = new Map(context.rig.items);
  const entry = items.get(id)!;
  items.set(id, { ...entry, part: { ...entry.part, mass: 0 } });
  // Where things stand is remembered by the duties, with their masses: these are others.
  return { ...context, rig: { ...context.rig, items }, duties: [...context.duties] };
}
