/// <reference lib="webworker" />
import { searchAround, type Choice } from '@spraywright/engine/rig';
import type { FromSearch, ToSearch } from './protocol.ts';
import { loadInputs } from './worker/inputs.ts';

/** Rigs proven and sets of parts looked at before the search ends by itself: beyond this a page runs short of memory. */
const MOST = { mostProofs: 5_000, mostNodes: 300_000 };
/** Time between two tellings [ms]. */
const TELL = 250;

const scope = self as unknown as DedicatedWorkerGlobalScope;
const say = (message: FromSearch) => scope.postMessage(message);

scope.onmessage = ({ data }: MessageEvent<ToSearch>) => {
  search(data).catch((error: unknown) =>
    say({ type: 'failed', message: error instanceof Error ? error.message : String(error) }),
  );
};

/** Searches without a pause: whoever wants it stopped ends the worker, and has what was told. */
async function search({ address, rig, units }: ToSearch): Promise<void> {
  const { catalogue, shop } = await loadInputs(address);
  let toldAt = -Infinity;
  let told: readonly Choice[] = [];
  const found = searchAround(rig, catalogue, shop, {
    ...MOST,
    units,
    onProgress: (progress, rigs) => {
      const now = performance.now();
      if (now - toldAt < TELL) return true;
      toldAt = now;
      const same = rigs.length === told.length && rigs.every((r, i) => r === told[i]);
      say({ type: 'progress', progress, ...(same ? {} : { rigs }) });
      told = rigs;
      return true;
    },
  });
  if (!found.ok)
    return say({ type: 'failed', message: found.problems[0]?.message ?? 'the brief cannot be read' });
  const { choices, complete, progress, refused } = found;
  say({ type: 'ended', progress, found: { rigs: choices, complete }, refused: refused.map((r) => r.why) });
}
