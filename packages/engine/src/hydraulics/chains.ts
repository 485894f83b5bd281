/** Series chains: runs of elements with nothing joining in between, which carry one flow. */
import { REDUCING, RELIEF_TO_ATMOSPHERE, incidenceOf, otherEnd } from './graph.ts';
import type { Graph, Incidence, LiveParts } from './graph.ts';

export interface Chain {
  /** End nodes in the direction of the branch. */
  from: number;
  to: number;
  elements: number[];
  /** +1 when the element's from -> to runs along the branch. */
  signs: number[];
  oneWay: boolean;
  blocked: boolean;
  /** Place of a regulator in `elements`, or -1. */
  special: number;
}

export function findChains(graph: Graph, parts: LiveParts): Chain[] {
  const around = incidenceOf(graph, parts.live);
  const joins = joinNodes(graph, parts, around);
  const used = new Uint8Array(graph.elements);
  const chains: Chain[] = [];
  for (let n = 0; n < graph.nodes; n++) {
    if (joins[n] === 0) continue;
    for (let i = around.start[n]!; i < around.start[n + 1]!; i++) {
      const e = around.element[i]!;
      if (used[e] === 0) chains.push(walk(graph, around, joins, used, n, e));
    }
  }
  return chains;
}

/** Nodes where chains end: fixed heads, junctions of three and more, ends of regulators that cannot be taken into a chain. */
function joinNodes(graph: Graph, parts: LiveParts, around: Incidence): Uint8Array {
  const joins = new Uint8Array(graph.nodes);
  for (let n = 0; n < graph.nodes; n++) {
    if (graph.fixed[n] === 1 || parts.degree[n]! > 2) joins[n] = 1;
  }
  for (let e = 0; e < graph.elements; e++) {
    if (parts.live[e] === 0 || graph.special[e] === 0) continue;
    if (graph.special[e] === RELIEF_TO_ATMOSPHERE && endsAtFixedHead(graph, parts, around, e)) continue;
    joins[graph.from[e]!] = 1;
    joins[graph.to[e]!] = 1;
  }
  return joins;
}

/** From its outlet the regulator's line runs without a junction or another regulator to a tank or the atmosphere. */
function endsAtFixedHead(graph: Graph, parts: LiveParts, around: Incidence, regulator: number): boolean {
  let node = graph.to[regulator]!;
  let element = regulator;
  while (graph.fixed[node] === 0) {
    if (parts.degree[node] !== 2) return false;
    element = nextElement(around, node, element);
    if (graph.special[element]! !== 0) return false;
    node = otherEnd(graph, element, node);
  }
  return true;
}

function nextElement(around: Incidence, node: number, before: number): number {
  const first = around.element[around.start[node]!]!;
  return first === before ? around.element[around.start[node]! + 1]! : first;
}

function walk(
  graph: Graph,
  around: Incidence,
  joins: Uint8Array,
  used: Uint8Array,
  start: number,
  first: number,
): Chain {
  const elements: number[] = [];
  const signs: number[] = [];
  let node = start;
  let element = first;
  for (;;) {
    used[element] = 1;
    elements.push(element);
    signs.push(graph.from[element] === node ? 1 : -1);
    node = otherEnd(graph, element, node);
    if (joins[node] === 1) break;
    element = nextElement(around, node, element);
  }
  const chain = { from: start, to: node, elements, signs, oneWay: false, blocked: false, special: -1 };
  return oriented(graph, chain);
}

/** Turns a chain so that its one-way elements point along it. */
function oriented(graph: Graph, chain: Chain): Chain {
  let along = 0;
  let against = 0;
  chain.elements.forEach((e, i) => {
    if (graph.oneWay[e] === 0) return;
    if (chain.signs[i] === 1) along++;
    else against++;
  });
  chain.oneWay = along + against > 0;
  chain.blocked = along > 0 && against > 0;
  const regulator = chain.elements.findIndex((e) => graph.special[e] !== 0);
  const turn = regulator >= 0 ? chain.signs[regulator] === -1 : against > along;
  if (turn) {
    [chain.from, chain.to] = [chain.to, chain.from];
    chain.elements.reverse();
    chain.signs = chain.signs.reverse().map((s) => -s);
  }
  chain.special = chain.elements.findIndex((e) => graph.special[e] !== 0);
  return chain;
}

/** The branch kind a chain's regulator asks for is decided by what is special about it. */
export function isFreeRelief(graph: Graph, chain: Chain): boolean {
  const e = chain.elements[chain.special];
  return e !== undefined && graph.special[e] === RELIEF_TO_ATMOSPHERE && graph.fixed[chain.to] === 0;
}

export function isReducer(graph: Graph, chain: Chain): boolean {
  const e = chain.elements[chain.special];
  return e !== undefined && graph.special[e] === REDUCING;
}
