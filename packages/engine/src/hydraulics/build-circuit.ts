/** Lays the live part of a network out in flat arrays. */
import { findChains, isFreeRelief, isReducer } from './chains.ts';
import type { Chain } from './chains.ts';
import {
  AT,
  CUBIC,
  FROM,
  GROUP,
  GROUP_END,
  GROUP_NUMBERS,
  HAS_CURVE,
  NODE,
  NUMBERS,
  ONE_WAY,
  PLACES,
  PLAIN,
  REDUCER,
  RELIEF,
  RELIEF_CHAIN,
  SLOT,
  TO,
} from './circuit.ts';
import type { Circuit } from './circuit.ts';
import { makeRoom, settle } from './circuit-store.ts';
import { orderElimination } from './elimination.ts';
import { RELIEF_TO_OUTLET, liveParts } from './graph.ts';
import type { Graph } from './graph.ts';
import { layOutSkeleton } from './skeleton.ts';

export function buildCircuit(
  graph: Graph,
  open: Uint8Array,
  hasGroup: Uint8Array,
  hasCurve: Uint8Array,
): Circuit {
  const parts = liveParts(graph, open);
  const chains = findChains(graph, parts);
  chains.sort((a, b) => kindOf(graph, a) - kindOf(graph, b));
  const n = chains.length;
  const kind = Uint8Array.from(chains, (c) => kindOf(graph, c));

  const { headOf, unknowns, fixedCount } = numberHeads(graph, chains);
  const elimination = orderElimination(
    unknowns,
    chains
      .filter((c) => graph.fixed[c.from] === 0 && graph.fixed[c.to] === 0)
      .map((c) => [headOf[c.from]!, headOf[c.to]!] as const),
  );
  for (let i = 0; i < graph.nodes; i++) {
    if (graph.fixed[i] === 0 && headOf[i]! >= 0) headOf[i] = elimination.place[headOf[i]!]!;
  }

  const ground = unknowns + fixedCount;
  const heads = ground + 1;
  const places = new Int32Array(n * PLACES);
  const chainStart = new Int32Array(n + 1);
  const curveStart = new Int32Array(n + 1);
  const groupEnd2 = new Int32Array(n);
  const chainElement: number[] = [];
  const chainSign: number[] = [];
  const chainPart: number[] = [];
  const curveElement: number[] = [];
  const branchOf = new Int32Array(graph.elements).fill(-1);
  const signOf = new Int8Array(graph.elements);
  const heldAbsolute = new Uint8Array(n);
  let groups = 0;
  chains.forEach((chain, b) => {
    const loop = chain.from === chain.to && graph.fixed[chain.from] === 0;
    const from = loop ? ground : headOf[chain.from]!;
    const to = loop ? ground : headOf[chain.to]!;
    const special = chain.elements[chain.special];
    heldAbsolute[b] = special !== undefined && graph.special[special] !== RELIEF_TO_OUTLET ? 1 : 0;
    const o = b * PLACES;
    places[o + FROM] = from * NODE;
    places[o + TO] = to * NODE;
    places[o + SLOT] = from < unknowns && to < unknowns ? elimination.slotOf(from, to) : elimination.slots;
    places[o + GROUP] = groups;
    places[o + GROUP_END] = groups;
    places[o + ONE_WAY] = chain.oneWay ? 1 : 0;
    groupEnd2[b] = groups;
    chain.elements.forEach((e, i) => {
      chainElement.push(e);
      chainSign.push(chain.signs[i]!);
      chainPart.push(chain.special < 0 || i < chain.special ? 0 : i === chain.special ? 1 : 2);
      branchOf[e] = b;
      signOf[e] = chain.signs[i]!;
      if (hasGroup[e] === 1) groups++;
      if (hasCurve[e] === 1) curveElement.push(e);
    });
    chainStart[b + 1] = chainElement.length;
    curveStart[b + 1] = curveElement.length;
    places[o + HAS_CURVE] = curveStart[b + 1]! > curveStart[b]! ? 1 : 0;
  });

  const { start, neighbour } = elimination;
  const doubles = layOut([
    heads * NODE,
    elimination.slots + 1,
    n,
    n * NUMBERS,
    groups * GROUP_NUMBERS,
    n * CUBIC,
  ]);
  const integers = layOut([n * PLACES, n, n, groups, groups, start.length, neighbour.length]);
  const [, upperAt, flowAt, numbersAt, groupAt, cubicAt] = doubles.starts as Six;
  const [, shutAt, changedAt, tableAt, laminarAt, startAt, neighbourAt] = integers.starts as Seven;
  for (let b = 0; b < n; b++) places[b * PLACES + AT] = upperAt + places[b * PLACES + SLOT]!;
  const stored = makeRoom(doubles.size, integers.size);
  const { arena, plan } = stored;
  plan.set(places);
  plan.fill(1, changedAt, tableAt);
  plan.set(start, startAt);
  plan.set(neighbour, neighbourAt);

  return settle({
    branches: n,
    plain: kind.filter((k) => k === PLAIN).length,
    unknowns,
    symmetric: !kind.some((k) => k === RELIEF || k === REDUCER),
    elimination,
    skeleton: layOutSkeleton(graph, chains, kind, places, unknowns),
    ...stored,
    upperAt,
    flowAt,
    numbersAt,
    groupAt,
    cubicAt,
    shutAt,
    changedAt,
    tableAt,
    laminarAt,
    startAt,
    neighbourAt,
    numbers: arena.subarray(numbersAt, groupAt),
    places: plan.subarray(0, shutAt),
    kind,
    resistance: new Float64Array(n),
    usual: new Float64Array(n),
    sourceAtUsual: new Float64Array(2).fill(NaN),
    stale: new Uint8Array(n),
    blocked: new Uint8Array(chains.map((c) => (c.blocked ? 1 : 0))),
    linear2: new Float64Array(n),
    quadratic2: new Float64Array(n),
    held: new Float64Array(n),
    heldAbsolute,
    heldSlope: new Float64Array(n),
    margin: new Float64Array(n),
    marginSlope: new Float64Array(n),
    groupEnd2,
    group: arena.subarray(groupAt, cubicAt),
    groupLowW: new Float64Array(groups),
    groupTable: plan.subarray(tableAt, laminarAt),
    groupLaminar: plan.subarray(laminarAt, startAt),
    groupElement: new Int32Array(groups),
    curveStart,
    curveElement: new Int32Array(curveElement),
    cubic: arena.subarray(cubicAt),
    chainStart,
    chainElement: new Int32Array(chainElement),
    chainSign: new Int8Array(chainSign),
    chainPart: new Uint8Array(chainPart),
    chainFrom: new Int32Array(chains.map((c) => c.from)),
    chainTo: new Int32Array(chains.map((c) => c.to)),
    ...junctions(places, n, unknowns),
    flow: arena.subarray(flowAt, numbersAt),
    shut: plan.subarray(shutAt, changedAt),
    changed: plan.subarray(changedAt, tableAt),
    ruling: new Uint8Array(n),
    node: arena.subarray(0, upperAt),
    heads,
    upper: arena.subarray(upperAt, flowAt),
    lower: new Float64Array(elimination.slots + 1),
    branchOf,
    signOf,
    headOf,
    deadElement: parts.deadElement,
    deadNode: parts.deadNode,
    recirculating: parts.recirculating,
    facing: chains.filter((c) => c.blocked).map((c) => c.elements.filter((e) => graph.oneWay[e] === 1)),
  });
}

type Six = readonly [number, number, number, number, number, number];
type Seven = readonly [number, number, number, number, number, number, number];

/** Where each of several arrays begins when they lie one behind the other, and how long they are together. */
function layOut(sizes: readonly number[]): { readonly starts: readonly number[]; readonly size: number } {
  const starts: number[] = [];
  let size = 0;
  for (const one of sizes) {
    starts.push(size);
    size += one;
  }
  return { starts, size };
}

function kindOf(graph: Graph, chain: Chain): number {
  if (chain.special < 0) return PLAIN;
  if (isReducer(graph, chain)) return REDUCER;
  return isFreeRelief(graph, chain) ? RELIEF : RELIEF_CHAIN;
}

function numberHeads(
  graph: Graph,
  chains: readonly Chain[],
): { headOf: Int32Array; unknowns: number; fixedCount: number } {
  const headOf = new Int32Array(graph.nodes).fill(-1);
  let unknowns = 0;
  for (const chain of chains) {
    for (const node of [chain.from, chain.to]) {
      if (graph.fixed[node] === 0 && headOf[node] === -1) headOf[node] = unknowns++;
    }
  }
  let fixedCount = 0;
  for (let node = 0; node < graph.nodes; node++) {
    if (graph.fixed[node] === 1) headOf[node] = unknowns + fixedCount++;
  }
  return { headOf, unknowns, fixedCount };
}

function junctions(
  places: Int32Array,
  branches: number,
  unknowns: number,
): Pick<Circuit, 'junctionStart' | 'junctionBranch'> {
  const limit = unknowns * NODE;
  const start = new Int32Array(unknowns + 1);
  for (let b = 0; b < branches; b++) {
    const i = places[b * PLACES + FROM]!;
    const j = places[b * PLACES + TO]!;
    if (i < limit) start[i / NODE + 1]!++;
    if (j < limit) start[j / NODE + 1]!++;
  }
  for (let k = 0; k < unknowns; k++) start[k + 1]! += start[k]!;
  const fill = start.slice();
  const at = new Int32Array(start[unknowns]!);
  for (let b = 0; b < branches; b++) {
    const i = places[b * PLACES + FROM]!;
    const j = places[b * PLACES + TO]!;
    if (i < limit) at[fill[i / NODE]!++] = b;
    if (j < limit) at[fill[j / NODE]!++] = b;
  }
  return { junctionStart: start, junctionBranch: at };
}
