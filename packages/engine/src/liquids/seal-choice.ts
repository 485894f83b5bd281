import { liquidOf, materialOf } from './liquid-of.ts';
import type { MaterialId } from './materials.data.ts';
import { type LiquidContact, RATINGS, type WorstResistance, worstResistance } from './resistance.ts';

/** Rubber seals and diaphragms that pumps and valves are sold with. */
export const RUBBER_SEALS = ['epdm', 'fkm', 'nbr', 'hnbr'] as const satisfies readonly MaterialId[];
/** Not a rubber: for seats, static rings and faced diaphragms, where a part is made with it. */
export const PLASTIC_SEAL: MaterialId = 'ptfe';

export interface SealOption extends WorstResistance {
  readonly seal: MaterialId;
}

/** Which seals stand a set of liquids. */
export interface SealChoice {
  /** Best first. */
  readonly options: readonly SealOption[];
  /** Rubber seals that are suited to every liquid of the set. */
  readonly suited: readonly MaterialId[];
  /** True when no single rubber seal is suited to all. */
  readonly conflict: boolean;
  /** Rubber seals suited to each liquid by itself. */
  readonly perLiquid: readonly { readonly liquid: string; readonly suited: readonly MaterialId[] }[];
  /** What to tell the builder, in plain words. */
  readonly statement: string;
}

/**
 * Seal material for a set of liquids, flush and winterising liquids included.
 *
 * @throws RangeError for an unknown liquid or an empty list.
 */
export function sealChoice(liquids: readonly LiquidContact[]): SealChoice {
  const optionOf = (seal: MaterialId): SealOption => ({ seal, ...worstResistance([seal], liquids) });
  const candidates: readonly MaterialId[] = [...RUBBER_SEALS, PLASTIC_SEAL];
  const options = candidates
    .map(optionOf)
    .sort((a, b) => RATINGS.indexOf(a.rating) - RATINGS.indexOf(b.rating));
  const suited = RUBBER_SEALS.filter((seal) => optionOf(seal).rating === 'suited');
  const perLiquid = liquids.map((l) => ({
    liquid: l.liquid,
    suited: RUBBER_SEALS.filter((seal) => worstResistance([seal], [l]).rating === 'suited'),
  }));
  return {
    options,
    suited,
    conflict: suited.length === 0,
    perLiquid,
    statement: statementOf(options, suited, perLiquid),
  };
}

function statementOf(
  options: readonly SealOption[],
  suited: readonly MaterialId[],
  perLiquid: SealChoice['perLiquid'],
): string {
  const name = (id: string) => materialOf(id).name;
  if (suited.length > 0) return `Suited to all the liquids of this rig: ${suited.map(name).join(' or ')}.`;
  const each = perLiquid
    .map(
      ({ liquid, suited: own }) =>
        `${liquidOf(liquid).name}: ${own.length > 0 ? own.map(name).join(' or ') : 'none is known to be suited'}`,
    )
    .join('; ');
  const plastic = options.find((o) => o.seal === PLASTIC_SEAL);
  const way =
    plastic?.rating === 'suited'
      ? 'Use two sets of seals and change them between liquids, a second rig, or parts sealed with PTFE throughout.'
      : 'Use two sets of seals and change them between liquids, or a second rig.';
  return `No single rubber seal stands all the liquids of this rig. ${each}. ${way}`;
}
