import type { Catalogue, Part, Shop } from '../../catalogue/index.ts';
import { changed, type Change, type UnitSystem } from '../../quantity/index.ts';
import { effectOf, type Effect } from '../advice/index.ts';
import { partsInstead } from '../advice/slot-alternatives.ts';
import type { RawRig } from '../design/assemble.ts';
import { putPart } from '../part-edit.ts';
import { proveRig, type Proof } from '../proof/prove.ts';
import { readRig, type Rig } from '../rig-document.ts';

/** Another part in a slot of a rig that is being built, proven before it is allowed. */
export interface Substitution {
  readonly change: Change;
  /** What has to change with the part, in words. */
  readonly also: readonly string[];
  readonly raw: RawRig;
  readonly rig: Rig;
  readonly proof: Proof;
  readonly effect: Effect;
  /** True when every promise that was kept is kept, and none that was known is in doubt. */
  readonly allowed: boolean;
}

/**
 * Proves a rig with another part in a slot.
 *
 * @param made the rig as it is being built, with its proof
 * @throws RangeError when the rig has no such slot, the part does not fit into it, or the changed rig cannot be read
 */
export function proveSubstitution(
  made: { readonly raw: RawRig; readonly rig: Rig; readonly proof: Proof },
  catalogue: Catalogue,
  shop: Shop,
  given: { readonly slot: string; readonly part: Part; readonly units?: UnitSystem },
): Substitution {
  const { slot, part, units = 'us' } = given;
  if (!partsInstead(made.rig, catalogue, slot).some(({ id }) => id === part.id))
    throw new RangeError(
      `part is '${part.id}'; the slot '${slot}' takes another part of the same kind that the catalogue has`,
    );
  const { change, also } = putPart(made.raw, catalogue, slot, part);
  const raw = changed(made.raw, change).document;
  const read = readRig(raw, catalogue);
  if (!read.ok) throw new RangeError(read.problems[0]!.message);
  const proof = proveRig(read.rig, catalogue, shop, { units });
  const effect = effectOf(made.proof, proof);
  return {
    change,
    also,
    raw,
    rig: read.rig,
    proof,
    effect,
    allowed: effect.breaks.length === 0 && effect.doubts.length === 0,
  };
}
