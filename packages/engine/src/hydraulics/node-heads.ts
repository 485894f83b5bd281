/** Heads of all nodes after a solve: those inside chains, at dead ends, and those that nothing defines. */
import { PLAIN, headAt } from './circuit.ts';
import { isBackPressure, isNozzle } from './element-parameters.ts';
import { elementLoss } from './element-loss.ts';
import { otherEnd } from './graph.ts';
import type { NetworkState, NodeHeads } from './network-state.ts';
import { definedHeads, drainChain } from './pockets.ts';

const G = 9.80665;

export function newNodeHeads(): NodeHeads {
  return { solve: -1, heads: new Float64Array(0) };
}

export function nodeHead(network: NetworkState, node: number): number | null {
  const head = allHeads(network)[node];
  if (head === undefined)
    throw new RangeError(`node ${node} is not there; the network has ${network.nodeCount}`);
  return Number.isNaN(head) ? null : head;
}

function allHeads(network: NetworkState): Float64Array {
  const cache = network.heads;
  if (cache.solve === network.solves) return cache.heads;
  if (cache.heads.length !== network.nodeCount) cache.heads = new Float64Array(network.nodeCount);
  const heads = cache.heads.fill(NaN);
  for (let node = 0; node < network.nodeCount; node++) {
    if (network.graph.fixed[node] === 1) heads[node] = network.fixedHead[node]!;
  }
  // After a failure nothing but the fixed heads is known.
  if (network.solution.status === 'converged') {
    joinHeads(network, heads);
    for (let b = 0; b < network.circuit.branches; b++) {
      walkChain(network, b, heads);
      drainChain(network, b, heads);
    }
    deadEnds(network, heads);
  }
  cache.solve = network.solves;
  return heads;
}

/** Heads where chains join, as far as anything defines them. */
function joinHeads(network: NetworkState, heads: Float64Array): void {
  const c = network.circuit;
  const known = definedHeads(network);
  for (let node = 0; node < network.nodeCount; node++) {
    const k = c.headOf[node]!;
    if (k >= 0 && known[k] === 1) heads[node] = headAt(c, k);
  }
}

/**
 * Nodes inside chain b, from both its ends as far as pressure gets: through one-way parts only along their direction, and
 * not through a regulator. Where it gets from both ends the higher one stays.
 */
function walkChain(network: NetworkState, b: number, heads: Float64Array): void {
  const c = network.circuit;
  const first = c.chainStart[b]!;
  const last = c.chainStart[b + 1]! - 1;
  const still = c.shut[b] === 1;
  let node = c.chainFrom[b]!;
  let head = heads[node]!;
  for (let i = first; i < last && passes(network, b, i, 1, still); i++) {
    head -= lossAlong(network, b, i);
    node = otherEnd(network.graph, c.chainElement[i]!, node);
    heads[node] = head;
  }
  if (!still && c.kind[b] === PLAIN) return;
  node = c.chainTo[b]!;
  head = heads[node]!;
  for (let i = last; i > first && passes(network, b, i, -1, still); i--) {
    head += lossAlong(network, b, i);
    node = otherEnd(network.graph, c.chainElement[i]!, node);
    const reached = heads[node]!;
    heads[node] = still && reached > head ? reached : head;
  }
}

/** Pressure gets through element i of the chain of branch b in this direction. */
function passes(network: NetworkState, b: number, i: number, direction: number, still: boolean): boolean {
  const c = network.circuit;
  if (c.kind[b] !== PLAIN && c.chainPart[i] === 1) return false;
  return !still || network.graph.oneWay[c.chainElement[i]!] === 0 || c.chainSign[i] === direction;
}

function lossAlong(network: NetworkState, b: number, i: number): number {
  const c = network.circuit;
  const sign = c.chainSign[i]!;
  return sign * elementLoss(network.laws, c.chainElement[i]!, sign * c.flow[b]!);
}

/** Nodes on lines that lead nowhere: no flow, but the pressure gets there. */
function deadEnds(network: NetworkState, heads: Float64Array): void {
  const c = network.circuit;
  for (let i = 0; i < c.deadElement.length; i++) {
    const e = c.deadElement[i]!;
    const node = c.deadNode[i]!;
    heads[node] = headBehind(
      network,
      e,
      heads[otherEnd(network.graph, e, node)]!,
      network.graph.to[e] === node,
    );
  }
}

function headBehind(network: NetworkState, e: number, head: number, forward: boolean): number {
  const law = network.laws.laws[e]!;
  // A nozzle lets a line that is shut off drain to the pressure outside.
  if (network.graph.oneWay[e] === 1 && !forward) return isNozzle(law) ? head : NaN;
  if (isBackPressure(law)) return NaN;
  if (law.kind === 'reducing-regulator') {
    return Math.min(head, network.laws.coefficients.held[e]! + network.outletElevation[e]!);
  }
  const behind = head - elementLoss(network.laws, e, 0);
  if (law.kind !== 'demand-pump') return behind;
  const off = network.get(e, 'switchOff') / (network.liquid.density * G) + network.outletElevation[e]!;
  return Math.min(behind, Math.max(off, head));
}
