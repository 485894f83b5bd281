/// <reference lib="webworker" />
import { confidenceOf, oddsOf, proveRig, readRig } from '@spraywright/engine/rig';
import type { OddsTold, ToOdds } from './protocol.ts';
import { loadInputs, type Inputs } from './worker/inputs.ts';

/** Draws that a person can wait for while they think; the command line draws more. */
const DRAWS = 512;

const scope = self as unknown as DedicatedWorkerGlobalScope;

let loading: Promise<Inputs> | undefined;
let newest: ToOdds | undefined;

scope.onmessage = ({ data }: MessageEvent<ToOdds>) => {
  newest = data;
  loading ??= loadInputs(data.address);
  // Waits a turn, so that of several questions only the newest is worked on.
  void loading.then(
    (inputs) =>
      setTimeout(() => {
        if (newest === data) scope.postMessage(toldOf(inputs, data));
      }, 0),
    () => (loading = undefined),
  );
};

/** How sure every promise of a rig is, in words; none where the rig cannot be read. */
function toldOf({ catalogue, shop }: Inputs, { version, rig: raw, units }: ToOdds): OddsTold {
  const read = readRig(raw, catalogue);
  if (!read.ok) return { version, draws: DRAWS, odds: {} };
  const proof = proveRig(read.rig, catalogue, shop, { units, notes: false });
  const confidence = confidenceOf(read.rig, proof, { draws: DRAWS });
  return {
    version,
    draws: DRAWS,
    odds: Object.fromEntries(
      proof.promises.flatMap((p) => {
        const odds = oddsOf(confidence, p, units);
        return odds === undefined ? [] : [[p.id, odds]];
      }),
    ),
  };
}
