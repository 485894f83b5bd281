import type { Laws } from './branch-loss.ts';
import { CORRECTION, FROM, HEAD, NODE, PLACES, TO } from './circuit.ts';
import type { Circuit } from './circuit.ts';
import { guessFlows } from './first-guess.ts';
import { TOLERANCE, cautiousNewton, newton } from './newton.ts';
import type { NetworkState } from './network-state.ts';
import { clampHeads, solveNodal } from './nodal.ts';

/** Steps of each attempt: plain Newton, the fallback on heads, Newton again to polish. */
const FIRST_TRY = 14;
const FALLBACK = 200;
const POLISH = 14;
const CAUTIOUS = 40;
const PART = 0.4;
/** What the fallback must reach before each polish, as a share of the largest flow. */
const COARSE = [1e-4, 1e-7, TOLERANCE];

/** Solves the present circuit and writes the network's solution. */
export function solveCircuit(network: NetworkState, warm: boolean): void {
  const c = network.circuit;
  const solution = network.solution;
  solution.reason = undefined;
  if (c.recirculating.length > 0) return failRecirculating(network);
  if (!warm) guessFlows(c, network.laws);
  const steps = newton(c, network.laws, FIRST_TRY, warm);
  if (steps > 0) {
    solution.status = 'converged';
    solution.iterations = steps;
    return;
  }
  fallBack(network, -steps);
}

function fallBack(network: NetworkState, before: number): void {
  const { circuit: c, laws, solution } = network;
  let iterations = before;
  resetNonFinite(c, laws);
  for (let round = 0; round < COARSE.length; round++) {
    clampHeads(c);
    const coarse = solveNodal(c, laws, FALLBACK, COARSE[round]!);
    iterations += Math.abs(coarse) + (round > 0 ? CAUTIOUS : 0);
    if (round > 0) cautiousNewton(c, laws, CAUTIOUS, PART);
    const fine = newton(c, laws, POLISH);
    iterations += Math.abs(fine);
    if (fine > 0) {
      solution.status = 'converged';
      solution.iterations = iterations;
      return;
    }
    resetNonFinite(c, laws);
  }
  solution.status = 'failed';
  solution.iterations = iterations;
  const worst = worstJunction(network);
  solution.reason = {
    code: 'no-convergence',
    message: `no steady state was found in ${iterations} steps; the worst balance is at ${worst.join(', ')}`,
    ids: worst,
  };
}

/** A step that left the numbers must not be the start of the next attempt. */
function resetNonFinite(c: Circuit, laws: Laws): void {
  let finite = true;
  for (let b = 0; b < c.branches; b++) finite &&= Number.isFinite(c.flow[b]!);
  for (let k = 0; k < c.unknowns; k++) finite &&= Number.isFinite(c.node[k * NODE + HEAD]!);
  if (!finite) guessFlows(c, laws);
}

/** Largest net flow into a junction over the largest flow. */
export function imbalance(c: Circuit): number {
  const largest = netFlows(c);
  let worst = 0;
  for (let k = 0; k < c.unknowns; k++) worst = Math.max(worst, Math.abs(c.node[k * NODE + CORRECTION]!));
  return largest > 0 ? worst / largest : 0;
}

/** Net inflow of every junction into CORRECTION; returns the largest flow. */
function netFlows(c: Circuit): number {
  const { node, places } = c;
  for (let k = 0; k < c.heads; k++) node[k * NODE + CORRECTION] = 0;
  let largest = 0;
  for (let b = 0; b < c.branches; b++) {
    const q = c.flow[b]!;
    node[places[b * PLACES + FROM]! + CORRECTION]! -= q;
    node[places[b * PLACES + TO]! + CORRECTION]! += q;
    largest = Math.max(largest, Math.abs(q));
  }
  return largest;
}

/** The junction whose balance is worst, and the elements that meet there. */
function worstJunction(network: NetworkState): string[] {
  const c = network.circuit;
  netFlows(c);
  let worst = 0;
  for (let k = 0; k < c.unknowns; k++) {
    if (Math.abs(c.node[k * NODE + CORRECTION]!) > Math.abs(c.node[worst * NODE + CORRECTION]!)) worst = k;
  }
  const node = c.headOf.indexOf(worst);
  const named = network.nodes[node];
  const elements = network.elements.filter(
    (e) => named !== undefined && (e.from === named.id || e.to === named.id),
  );
  return named === undefined
    ? network.elements.map((e) => e.id).slice(0, 3)
    : [named.id, ...elements.map((e) => e.id)];
}

function failRecirculating(network: NetworkState): void {
  const { solution } = network;
  const ids = network.circuit.recirculating.map((e) => network.elements[e]!.id);
  solution.status = 'failed';
  solution.iterations = 0;
  solution.reason = {
    code: 'pump-recirculates',
    message: `pump ${ids.join(', ')} feeds back to its own inlet with no path to a tank or the atmosphere`,
    ids,
  };
}
