/** The tree along which first guesses run: from one pump through the network to its outlets. */
import type { Chain } from './chains.ts';
import type { Graph } from './graph.ts';

export interface Skeleton {
  /** The branch with the pump, from a fixed head to the root. */
  readonly source: number;
  readonly root: number;
  /** Unknown heads after the root, each after its parent, with the branch from the parent and its direction. */
  readonly node: Int32Array;
  readonly parent: Int32Array;
  readonly branch: Int32Array;
  readonly sign: Int8Array;
  /** Branches from an unknown to a fixed head. */
  readonly outlet: Int32Array;
  readonly outletNode: Int32Array;
  /** So many of them hang on the root; the rest behind regulators. */
  readonly ahead: number;
  /** Back-pressure regulators that can limit the head, with the unknown heads before and, where one begins a tree, behind them. */
  readonly relief: Int32Array;
  readonly reliefNode: Int32Array;
  readonly reliefRoot: Int32Array;
  /** All other branches; they start with little flow. */
  readonly rest: Int32Array;
  /** Unknown heads that the tree does not reach. */
  readonly apart: Int32Array;
}

const PLACES = 8;
const NODE = 4;
const PLAIN = 0;
const RELIEF_CHAIN = 1;
const RELIEF = 2;

/** Undefined unless exactly one pump feeds the network from a fixed head. */
export function layOutSkeleton(
  graph: Graph,
  chains: readonly Chain[],
  kinds: Uint8Array,
  places: Int32Array,
  unknowns: number,
): Skeleton | undefined {
  const from = (b: number): number => places[b * PLACES]! / NODE;
  const to = (b: number): number => places[b * PLACES + 1]! / NODE;
  const source = onlyPump(graph, chains);
  if (source < 0 || kinds[source] !== PLAIN) return undefined;
  const root = to(source);
  if (root >= unknowns || from(source) < unknowns) return undefined;

  const at: number[][] = Array.from({ length: unknowns }, () => []);
  chains.forEach((_, b) => {
    if (b === source || kinds[b] !== PLAIN || chains[b]!.blocked) return;
    if (from(b) < unknowns && to(b) < unknowns) {
      at[from(b)]!.push(b);
      if (!chains[b]!.oneWay) at[to(b)]!.push(b);
    }
  });
  const seen = new Uint8Array(unknowns);
  const node: number[] = [];
  const parent: number[] = [];
  const branch: number[] = [];
  const sign: number[] = [];
  const growFrom = (start: number): void => {
    seen[start] = 1;
    const queue = [start];
    for (let i = 0; i < queue.length; i++) {
      const n = queue[i]!;
      for (const b of at[n]!) {
        const m = from(b) === n ? to(b) : from(b);
        if (seen[m] === 1) continue;
        seen[m] = 1;
        queue.push(m);
        node.push(m);
        parent.push(n);
        branch.push(b);
        sign.push(from(b) === n ? 1 : -1);
      }
    }
  };
  growFrom(root);
  const ahead = node.length;
  const roots = new Map<number, number>();
  chains.forEach((chain, b) => {
    if (kinds[b] !== RELIEF || chain.blocked || seen[from(b)] !== 1 || to(b) >= unknowns || seen[to(b)] === 1)
      return;
    roots.set(b, to(b));
    growFrom(to(b));
  });
  const used = new Uint8Array(chains.length);
  used[source] = 1;
  for (let i = 0; i < branch.length; i++) used[branch[i]!] = 1;
  const outlet: number[] = [];
  const relief: number[] = [];
  const rest: number[] = [];
  chains.forEach((chain, b) => {
    if (used[b] === 1 || chain.blocked) return;
    const reached = from(b) < unknowns && seen[from(b)] === 1;
    if (reached && kinds[b] === PLAIN && to(b) >= unknowns) outlet.push(b);
    else if (reached && (kinds[b] === RELIEF_CHAIN || kinds[b] === RELIEF)) relief.push(b);
    else rest.push(b);
  });
  return {
    source,
    root,
    node: new Int32Array(node),
    parent: new Int32Array(parent),
    branch: new Int32Array(branch),
    sign: new Int8Array(sign),
    outlet: new Int32Array(outlet),
    outletNode: new Int32Array(outlet.map(from)),
    relief: new Int32Array(relief),
    reliefNode: new Int32Array(relief.map(from)),
    reliefRoot: new Int32Array(relief.map((b) => roots.get(b) ?? -1)),
    ahead,
    rest: new Int32Array(rest),
    apart: new Int32Array(seen.keys()).filter((k) => seen[k] === 0),
  };
}

/** The branch with the network's one pump; -1 when there is none or another. */
function onlyPump(graph: Graph, chains: readonly Chain[]): number {
  let found = -1;
  for (let b = 0; b < chains.length; b++) {
    const { elements } = chains[b]!;
    for (let i = 0; i < elements.length; i++) {
      if (graph.pump[elements[i]!] === 0) continue;
      if (found >= 0 && found !== b) return -1;
      found = b;
    }
  }
  return found;
}
