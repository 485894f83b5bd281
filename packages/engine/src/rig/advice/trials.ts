import type { Catalogue, Shop } from '../../catalogue/index.ts';
import { changed, type Change, type UnitSystem } from '../../quantity/index.ts';
import type { Proof } from '../proof/prove.ts';
import { proverBeside, type ProvenRig } from './prove-again.ts';

/** A rig as it is, proven, and the changes of it that are tried. */
export interface Trials extends ProvenRig {
  readonly catalogue: Catalogue;
  readonly units: UnitSystem;
  /** The whole proof of the changed rig; undefined when it is no readable rig. */
  readonly prove: (change: Change) => Proof | undefined;
}

/** Begins trials on a rig that has been read and proven. Each is judged by the whole proof, none by a shortcut. */
export function trialsOf(
  { raw, rig, proof }: ProvenRig,
  catalogue: Catalogue,
  shop: Shop,
  units: UnitSystem = 'us',
): Trials {
  const prove = proverBeside({ raw, rig, proof }, catalogue, shop, units);
  return {
    raw,
    rig,
    proof,
    catalogue,
    units,
    prove(change) {
      const again = prove(changed(raw, change).document);
      return again.ok ? again.proven.proof : undefined;
    },
  };
}
