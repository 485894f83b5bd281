import {
  isLiquid,
  MATERIALS,
  materialResistance,
  sealChoice,
  type LiquidContact,
  type Resistance,
  type SealChoice,
} from '../liquids/index.ts';
import type { Brief } from './brief.ts';
import type { Site } from './proof/site.ts';

/** How each material stands the liquids of one brief, at their strength and temperature. */
export interface BriefContacts {
  /** Known liquids of the brief: those sprayed, to flush and to winterise. */
  readonly contacts: readonly LiquidContact[];
  /** One entry per liquid, by material. */
  readonly resistances: ReadonlyMap<string, readonly Resistance[]>;
  /** Materials that one of the liquids destroys. */
  readonly unsuited: ReadonlySet<string>;
  /** Absent when the brief has fewer than two known liquids. */
  readonly seals: SealChoice | undefined;
}

const known = new WeakMap<Brief, BriefContacts>();
/** By the liquids themselves: most changes of a brief leave them alone. */
const knownByLiquids = new Map<string, BriefContacts>();
const MOST_KNOWN = 100;

/** Looked up once per set of liquids: it is the same for every rig that meets them. */
export function contactsOf(brief: Brief, site: Site): BriefContacts {
  let found = known.get(brief);
  if (found === undefined) known.set(brief, (found = recall(brief, site)));
  return found;
}

function recall(brief: Brief, site: Site): BriefContacts {
  const contacts = brief.liquids
    .filter((l) => isLiquid(l.liquid))
    .map(({ liquid, strength, strengthUnit, temperature }) => ({
      liquid,
      strength,
      strengthUnit,
      temperatureC: (temperature ?? site.temperature) - 273.15,
    }));
  const key = JSON.stringify(contacts);
  let found = knownByLiquids.get(key);
  if (found === undefined) {
    if (knownByLiquids.size >= MOST_KNOWN) knownByLiquids.clear();
    knownByLiquids.set(key, (found = lookUp(contacts)));
  }
  return found;
}

function lookUp(contacts: readonly LiquidContact[]): BriefContacts {
  const resistances = new Map<string, readonly Resistance[]>(
    MATERIALS.map(({ id: material }) => [
      material,
      contacts.map((c) => materialResistance({ ...c, material })),
    ]),
  );
  return {
    contacts,
    resistances,
    unsuited: new Set(
      [...resistances].filter(([, list]) => list.some((r) => r.rating === 'not-suited')).map(([id]) => id),
    ),
    seals: contacts.length < 2 ? undefined : sealChoice(contacts),
  };
}
