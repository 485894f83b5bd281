/// <reference lib="webworker" />
import { confidenceOf, oddsOf, proveRig, readRig } from '@spraywright/engine/rig';
import { correctionsOf, sharperLines } from '@spraywright/engine/yard';
import type { OddsTold, ToOdds } from './protocol.ts';
import { loadInputs, type Inputs } from './worker/inputs.ts';
import { ShopLearning, type LearnedDocument } from './worker/shop-learning.ts';

/** Draws that a person can wait for while they think; the command line draws more. */
const DRAWS = 512;

const scope = self as unknown as DedicatedWorkerGlobalScope;

let loading: Promise<Inputs> | undefined;
let newest: ToOdds | undefined;

const learning = new ShopLearning();

scope.onmessage = ({ data }: MessageEvent<ToOdds>) => {
  newest = data;
  loading ??= loadInputs(data.address);
  // Waits a turn, so that of several questions only the newest is worked on.
  void Promise.all([loading, learning.now(data.address)]).then(
    ([inputs, learned]) =>
      setTimeout(() => {
        if (newest === data) scope.postMessage(toldOf(inputs, learned, data));
      }, 0),
    () => (loading = undefined),
  );
};

/** How sure every promise of a rig is, in words; none where the rig cannot be read. */
function toldOf(
  { catalogue, shop }: Inputs,
  learned: LearnedDocument | undefined,
  { version, rig: raw, units }: ToOdds,
): OddsTold {
  const read = readRig(raw, catalogue);
  if (!read.ok) return { version, draws: DRAWS, odds: {}, sharper: [] };
  const proof = proveRig(read.rig, catalogue, shop, { units, notes: false });
  const corrections = learned === undefined ? [] : (correctionsOf(read.rig, learned) ?? []);
  const confidence = confidenceOf(read.rig, proof, { draws: DRAWS, corrections });
  return {
    version,
    draws: DRAWS,
    odds: Object.fromEntries(proof.promises.map((p) => [p.id, oddsOf(confidence, p, units)])),
    sharper: corrections.length === 0 ? [] : sharperLines(confidence),
  };
}
