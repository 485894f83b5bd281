/**
 * Heads of pockets: parts of a solved network that nothing but shut branches joins to the rest. The laws bound their heads
 * without fixing them; where liquid got in or drains out freely, that decides.
 */
import { branchLoss, lossOut } from './branch-loss.ts';
import { PLAIN, REDUCER, RELIEF, fromHead, fromIndex, headAt, setHead, toIndex } from './circuit.ts';
import type { Circuit } from './circuit.ts';
import { elementLoss } from './element-loss.ts';
import { isNozzle } from './element-parameters.ts';
import { otherEnd } from './graph.ts';
import type { NetworkState } from './network-state.ts';
import { STILL } from './newton.ts';

/** Brings the heads of pockets to where they stand and tells which heads are defined, 1 for yes. */
export function definedHeads(network: NetworkState): Uint8Array {
  const c = network.circuit;
  const known = new Uint8Array(c.heads);
  for (let k = c.unknowns; k < c.heads; k++) known[k] = 1;
  spread(c, known);
  // Most networks have no pocket.
  if (!known.includes(0)) return known;
  while (fillPocket(network, known)) spread(c, known);
  drainPockets(network, known);
  while (fillPocket(network, known)) spread(c, known);
  return known;
}

function spread(c: Circuit, known: Uint8Array): void {
  for (let changed = true; changed;) {
    changed = false;
    for (let b = 0; b < c.branches; b++) {
      if (holdsBack(c, b)) continue;
      const i = fromIndex(c, b);
      const j = toIndex(c, b);
      if (known[i] === known[j]) continue;
      known[i] = 1;
      known[j] = 1;
      changed = true;
    }
  }
}

/** Shut, or a regulator that passes nothing: its two ends have nothing to do with each other. */
function holdsBack(c: Circuit, b: number): boolean {
  return c.shut[b] === 1 || (c.kind[b] !== PLAIN && Math.abs(c.flow[b]!) < STILL);
}

/**
 * A pocket behind closed one-way parts stands at the highest pressure that can get in through them. Finds one such
 * pocket, lifts it to that head and marks its heads known.
 */
function fillPocket(network: NetworkState, known: Uint8Array): boolean {
  const c = network.circuit;
  let entry = -1;
  let highest = -Infinity;
  for (let b = 0; b < c.branches; b++) {
    if (!holdsBack(c, b) || c.blocked[b] === 1) continue;
    if (known[fromIndex(c, b)] === 0 || known[toIndex(c, b)] === 1) continue;
    const head = headPassed(network, b);
    if (head === null || head <= highest) continue;
    highest = head;
    entry = toIndex(c, b);
  }
  if (entry < 0) return false;
  const before = headAt(c, entry);
  const pocket = new Uint8Array(c.heads);
  pocket[entry] = 1;
  spread(c, pocket);
  for (let k = 0; k < c.unknowns; k++)
    if (pocket[k] === 1) place(c, k, highest, headAt(c, k) - before, known);
  return true;
}

/** Offsets come first: the heads a pocket happens to have may be so large that a sum with them would be rounded. */
function place(c: Circuit, k: number, level: number, offset: number, known: Uint8Array): void {
  setHead(c, k, level + offset);
  known[k] = 1;
}

/** Head behind shut branch b when the part that shuts it is just about to open; null when it holds back for good. */
function headPassed(network: NetworkState, b: number): number | null {
  const c = network.circuit;
  if (c.kind[b] === REDUCER) return Math.min(c.held[b]!, fromHead(c, b));
  if (c.kind[b] !== PLAIN) return null;
  branchLoss(c, network.laws, b, 0);
  return fromHead(c, b) - lossOut[0]!;
}

/**
 * A shut-off pocket with tips or jets on it has drained through them: it stands at the highest head at which nothing
 * leaves it any more by any way, which may lead through other pockets.
 */
function drainPockets(network: NetworkState, known: Uint8Array): void {
  const c = network.circuit;
  const { pocketOf, offset, count } = labelPockets(c, known);
  if (count === 0) return;
  /** Head of the first node of each pocket; 0 stands for all that is known. */
  const level = new Float64Array(count + 1).fill(Infinity);
  level[0] = 0;
  const hasNozzle = new Uint8Array(count + 1);
  for (let round = 0, changed = true; changed && round <= count; round++) {
    changed = false;
    for (let b = 0; b < c.branches; b++) {
      const i = fromIndex(c, b);
      const from = pocketOf[i]!;
      if (from === 0 || !holdsBack(c, b) || c.blocked[b] === 1) continue;
      const j = toIndex(c, b);
      if (isDrain(network, b)) hasNozzle[from] = 1;
      const most = openingHeadFrom(network, b, level[pocketOf[j]!]! + offset[j]!) - offset[i]!;
      if (most >= level[from]!) continue;
      level[from] = most;
      changed = true;
    }
  }
  for (let k = 0; k < c.unknowns; k++) {
    const n = pocketOf[k]!;
    if (hasNozzle[n] === 1 && level[n] !== Infinity) place(c, k, level[n]!, offset[k]!, known);
  }
}

/** The same for the nodes inside shut chain b: those that no pressure gets in to, between parts that let liquid out of it. */
export function drainChain(network: NetworkState, b: number, heads: Float64Array): void {
  const c = network.circuit;
  if (c.shut[b] !== 1 || c.kind[b] !== PLAIN) return;
  const first = c.chainStart[b]!;
  const count = c.chainStart[b + 1]! - first;
  const element = (i: number): number => c.chainElement[first + i]!;
  /** +1: passes along the chain only, -1: against it only, 0: both ways. */
  const way = (i: number): number => (network.graph.oneWay[element(i)] === 1 ? c.chainSign[first + i]! : 0);
  const nodes = [c.chainFrom[b]!];
  for (let i = 0; i < count; i++) nodes.push(otherEnd(network.graph, element(i), nodes[i]!));
  const open = (i: number): boolean => i > 0 && i < count && Number.isNaN(heads[nodes[i]!]!);
  if (!nodes.some((_, i) => open(i))) return;

  const most = nodes.map((n, i) => (open(i) || Number.isNaN(heads[n]!) ? Infinity : heads[n]!));
  const rest = (i: number): number => elementLoss(network.laws, element(i), 0);
  for (let i = 1; i < count; i++) {
    if (open(i) && way(i - 1) <= 0) most[i] = Math.min(most[i]!, most[i - 1]! + rest(i - 1));
  }
  for (let i = count - 1; i > 0; i--) {
    if (open(i) && way(i) >= 0) most[i] = Math.min(most[i]!, most[i + 1]! + rest(i));
  }
  const nozzle = (i: number, direction: number): boolean =>
    way(i) === direction && isNozzle(network.laws.laws[element(i)]!);
  for (let from = 1; from < count; from++) {
    if (!open(from) || way(from - 1) === 0) continue;
    let to = from;
    while (to < count - 1 && way(to) === 0) to++;
    // A stretch that reaches the end of the chain is part of a pocket beyond it.
    if (way(to) !== 0 && (nozzle(from - 1, -1) || nozzle(to, 1))) {
      for (let i = from; i <= to; i++) if (most[i] !== Infinity) heads[nodes[i]!] = most[i]!;
    }
    from = to;
  }
}

interface Pockets {
  /** Head -> number of its pocket from 1; 0 where it is known. */
  readonly pocketOf: Int32Array;
  /** Head above the first of its pocket; the head itself where it is known. */
  readonly offset: Float64Array;
  readonly count: number;
}

function labelPockets(c: Circuit, known: Uint8Array): Pockets {
  const pocketOf = new Int32Array(c.heads);
  const offset = Float64Array.from({ length: c.heads }, (_, k) => headAt(c, k));
  let count = 0;
  for (let k = 0; k < c.unknowns; k++) {
    if (known[k] === 1 || pocketOf[k] !== 0) continue;
    const pocket = new Uint8Array(c.heads);
    pocket[k] = 1;
    spread(c, pocket);
    count++;
    for (let i = 0; i < c.unknowns; i++) {
      if (pocket[i] === 0) continue;
      pocketOf[i] = count;
      offset[i] = headAt(c, i) - headAt(c, k);
    }
  }
  return { pocketOf, offset, count };
}

/** Nothing but nozzles keeps liquid from coming back through branch b. */
function isDrain(network: NetworkState, b: number): boolean {
  const c = network.circuit;
  if (c.kind[b] !== PLAIN) return false;
  for (let i = c.chainStart[b]!; i < c.chainStart[b + 1]!; i++) {
    const e = c.chainElement[i]!;
    if (network.graph.oneWay[e] === 1 && !isNozzle(network.laws.laws[e]!)) return false;
  }
  return true;
}

/** Head before shut branch b at which it opens, with this head behind it. */
function openingHeadFrom(network: NetworkState, b: number, behind: number): number {
  const c = network.circuit;
  const held = c.held[b]!;
  if (c.kind[b] === RELIEF) return Math.max(held, behind);
  if (c.kind[b] === REDUCER) return held > behind ? behind : Infinity;
  branchLoss(c, network.laws, b, 0);
  const head = behind + lossOut[0]!;
  if (c.kind[b] === PLAIN) return head;
  // A chain with a regulator ends at a fixed head.
  return head + Math.max(c.heldAbsolute[b] === 1 ? held - behind : held, 0);
}
