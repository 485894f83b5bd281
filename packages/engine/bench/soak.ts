/**
 * Solves random networks by the million and checks each from outside:
 *   node --conditions=source --import tsx packages/engine/bench/soak.ts [count] [first seed]
 * Exit code 1 when any of them complains. A seed that does becomes a fixture of the tests.
 */
import { checkBatch, checkChangedNetwork, checkOrder, checkRandomNetwork } from '../test/network-checks.ts';

const count = Number(process.argv[2] ?? 1_000_000);
const first = Number(process.argv[3] ?? 1_000_000);
/** One in so many is also solved after changes, and a tree of its seed checked for order; one in ten of those in a batch. */
const OTHERS_EVERY = 10;
const SHOWN = 30;

const statuses = new Map<string, number>();
const iterations: number[] = [];
let [complaining, shown, worstLaw, worstImbalance] = [0, 0, 0, 0];
const began = performance.now();

function complain(seed: number, complaints: readonly string[]): void {
  if (complaints.length === 0) return;
  complaining++;
  if (shown++ < SHOWN) console.log(`seed ${seed}: ${complaints.join('; ')}`);
}

for (let seed = first; seed < first + count; seed++) {
  const outcome = checkRandomNetwork(seed);
  statuses.set(outcome.status, (statuses.get(outcome.status) ?? 0) + 1);
  iterations.push(outcome.iterations);
  worstLaw = Math.max(worstLaw, outcome.lawError);
  worstImbalance = Math.max(worstImbalance, outcome.imbalance);
  complain(seed, outcome.complaints);
  if (seed % OTHERS_EVERY !== 0) continue;
  complain(seed, checkChangedNetwork(seed));
  complain(seed, checkOrder(seed));
  if (seed % (10 * OTHERS_EVERY) === 0) complain(seed, checkBatch(seed));
}

iterations.sort((a, b) => a - b);
const share = (part: number): number =>
  iterations[Math.min(Math.floor(iterations.length * part), iterations.length - 1)]!;
console.log(
  `${count} networks in ${((performance.now() - began) / 1000).toFixed(0)} s, ${complaining} complaints`,
);
console.log([...statuses].map(([status, n]) => `${status}: ${n}`).join(', '));
console.log(
  `iterations: median ${share(0.5)}, 90 % ${share(0.9)}, 99 % ${share(0.99)}, worst ${share(1)}; ` +
    `worst imbalance ${worstImbalance.toExponential(1)}, worst law ${worstLaw.toExponential(1)}`,
);
process.exitCode = complaining === 0 ? 0 : 1;
