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
  void loading.then(
    (inputs) => answer(inputs, data),
    () => (loading = undefined),
  );
};

/** Tells the odds by what is known soon, and once more when the records then teach something else. */
async function answer(inputs: Inputs, asked: ToOdds): Promise<void> {
  const soon = await learning.soon(asked.address);
  // Waits a turn, so that of several questions only the newest is worked on.
  await new Promise((resolve) => setTimeout(resolve, 0));
  if (newest !== asked) return;
  scope.postMessage(toldOf(inputs, soon, asked));
  const latest = await learning.latest();
  if (latest !== soon && newest === asked) scope.postMessage(toldOf(inputs, latest, asked));
}

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
