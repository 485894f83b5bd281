import type { Catalogue, Shop } from '../../catalogue/index.ts';
import type { Problem, UnitSystem } from '../../quantity/index.ts';
import type { RawRig } from '../design/assemble.ts';
import { proveRig, type Proof } from '../proof/prove.ts';
import { rereader } from '../reread.ts';
import { readRig, type Rig } from '../rig-document.ts';
import { solverBeside } from './known-states.ts';

/** A document of a rig, as it was read, with its whole proof. */
export interface ProvenRig {
  readonly raw: RawRig;
  readonly rig: Rig;
  readonly proof: Proof;
}

type Proven =
  | { readonly ok: true; readonly proven: ProvenRig }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * Makes a prover of documents that mostly differ from a proven one by a change or two. What is the same object in both
 * is not read again, and a duty is not solved again where nothing that its liquid meets has changed; the proof is the
 * whole one all the same, that of `readRig` and `proveRig` without the solver's notes.
 *
 * @param beside absent for the first of its documents
 */
export function proverBeside(
  beside: ProvenRig | undefined,
  catalogue: Catalogue,
  shop: Shop,
  units: UnitSystem,
): (raw: RawRig) => Proven {
  const reread = beside && rereader(asFields(beside.raw), beside.rig, catalogue);
  const solver = beside && solverBeside(beside.rig, beside.proof);
  return (raw) => {
    const read = reread === undefined ? readRig(raw, catalogue) : reread(asFields(raw));
    if (!read.ok) return read;
    const options = { units, notes: false, ...(solver === undefined ? {} : { solver }) };
    return { ok: true, proven: { raw, rig: read.rig, proof: proveRig(read.rig, catalogue, shop, options) } };
  };
}

const asFields = (raw: RawRig) => raw as unknown as Parameters<typeof rereader>[0];
