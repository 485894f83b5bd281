import { withFrozenParts, type Catalogue, type FrozenPart } from '../../catalogue/index.ts';
import { changed, type Change, type Problem } from '../../quantity/index.ts';
import type { RawRig } from '../design/assemble.ts';
import { readRig, type Rig } from '../rig-document.ts';

/** A part that was put into a slot after the machine was begun, as it is written down. */
export interface PutInstead {
  readonly slot: string;
  readonly part: FrozenPart;
  readonly puts: Change['puts'];
}

/** A machine as it stands: the rig it was begun as, and every part that was put in instead since. */
export interface AsBuilt {
  readonly raw: RawRig;
  readonly rig: Rig;
  /** In which the machine's parts stand as they were when they went in. */
  readonly catalogue: Catalogue;
}

/**
 * Reads a machine as it was built.
 *
 * @param begun rig and parts as they were when the machine was begun
 * @param instead what was put in since, in order
 * @param catalogue of today, for what the machine keeps no copy of: fittings and small things
 */
export function asBuilt(
  begun: { readonly rig: unknown; readonly parts: readonly unknown[] },
  instead: readonly PutInstead[],
  catalogue: Catalogue,
): ({ ok: true } & AsBuilt) | { ok: false; problems: Problem[] } {
  const frozen = withFrozenParts(catalogue, [...begun.parts, ...instead.map((i) => i.part)]);
  if (!frozen.ok) return frozen;
  let raw = begun.rig as RawRig;
  for (const { slot, puts } of instead) {
    try {
      raw = changed(raw, { about: slot, puts }).document;
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      return {
        ok: false,
        problems: [
          {
            path: ['items'],
            code: 'contradiction',
            message: `the part put into '${slot}': ${error.message}`,
          },
        ],
      };
    }
  }
  const read = readRig(raw, frozen.catalogue);
  return read.ok ? { ok: true, raw, rig: read.rig, catalogue: frozen.catalogue } : read;
}
