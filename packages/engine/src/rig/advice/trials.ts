import type { Catalogue, Shop } from '../../catalogue/index.ts';
import { changed, type Change, type UnitSystem } from '../../quantity/index.ts';
import type { RawRig } from '../design/assemble.ts';
import { proveRig, type Proof } from '../proof/prove.ts';
import { rereader } from '../reread.ts';
import type { Rig } from '../rig-document.ts';
import { solverBeside } from './known-states.ts';

/** A rig as it is, proven, and the changes of it that are tried. */
export interface Trials {
  readonly raw: RawRig;
  readonly rig: Rig;
  readonly proof: Proof;
  readonly catalogue: Catalogue;
  readonly units: UnitSystem;
  /** The whole proof of the changed rig; undefined when it is no readable rig. */
  readonly prove: (change: Change) => Proof | undefined;
}

/** Begins trials on a rig that has been read and proven. Each is judged by the whole proof, none by a shortcut. */
export function trialsOf(
  proven: { readonly raw: RawRig; readonly rig: Rig; readonly proof: Proof },
  catalogue: Catalogue,
  shop: Shop,
  units: UnitSystem = 'us',
): Trials {
  const { raw, rig, proof } = proven;
  const reread = rereader(raw as unknown as Parameters<typeof rereader>[0], rig, catalogue);
  const solver = solverBeside(rig, proof);
  return {
    raw,
    rig,
    proof,
    catalogue,
    units,
    prove(change) {
      const read = reread(changed(raw, change).document as never);
      return read.ok ? proveRig(read.rig, catalogue, shop, { units, notes: false, solver }) : undefined;
    },
  };
}
