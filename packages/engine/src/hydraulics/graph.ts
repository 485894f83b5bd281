/** The network as a graph: what of it can carry liquid at all. */

/** Regulators that tie more than their own flow together. */
export const NOT_SPECIAL = 0;
export const RELIEF_TO_ATMOSPHERE = 1;
export const RELIEF_TO_OUTLET = 2;
export const REDUCING = 3;

export interface Graph {
  readonly nodes: number;
  readonly elements: number;
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly fixed: Uint8Array;
  readonly oneWay: Uint8Array;
  readonly pump: Uint8Array;
  readonly special: Uint8Array;
}

export interface LiveParts {
  /** Element takes part in the solve. */
  readonly live: Uint8Array;
  /** Live elements at each node; fixed nodes count none, since they are split. */
  readonly degree: Int32Array;
  readonly deadElement: Int32Array;
  readonly deadNode: Int32Array;
  readonly recirculating: readonly number[];
}

/** Node -> its elements, as one flat list. */
export interface Incidence {
  readonly start: Int32Array;
  readonly element: Int32Array;
}

export function incidenceOf(graph: Graph, keep: Uint8Array): Incidence {
  const start = new Int32Array(graph.nodes + 1);
  for (let e = 0; e < graph.elements; e++) {
    if (keep[e] === 0) continue;
    start[graph.from[e]! + 1]!++;
    start[graph.to[e]! + 1]!++;
  }
  for (let n = 0; n < graph.nodes; n++) start[n + 1]! += start[n]!;
  const fill = start.slice();
  const element = new Int32Array(start[graph.nodes]!);
  for (let e = 0; e < graph.elements; e++) {
    if (keep[e] === 0) continue;
    element[fill[graph.from[e]!]!++] = e;
    element[fill[graph.to[e]!]!++] = e;
  }
  return { start, element };
}

export function otherEnd(graph: Graph, element: number, node: number): number {
  return graph.from[element] === node ? graph.to[element]! : graph.from[element]!;
}

/** Leaves out shut elements, parts with no path to a fixed head, and dead ends. */
export function liveParts(graph: Graph, open: Uint8Array): LiveParts {
  const around = incidenceOf(graph, open);
  const reached = reachedFromFixed(graph, around);
  const live = new Uint8Array(graph.elements);
  const degree = new Int32Array(graph.nodes);
  for (let e = 0; e < graph.elements; e++) {
    if (open[e] === 0) continue;
    const a = graph.from[e]!;
    const b = graph.to[e]!;
    if (reached[a] === 0 && reached[b] === 0) continue;
    live[e] = 1;
    if (graph.fixed[a] === 0) degree[a]!++;
    if (graph.fixed[b] === 0) degree[b]!++;
  }
  const leaves: number[] = [];
  for (let n = 0; n < graph.nodes; n++) if (degree[n] === 1) leaves.push(n);
  const deadElement: number[] = [];
  const deadNode: number[] = [];
  while (leaves.length > 0) {
    const n = leaves.pop()!;
    if (degree[n] !== 1) continue;
    for (let i = around.start[n]!; i < around.start[n + 1]!; i++) {
      const e = around.element[i]!;
      if (live[e] === 0) continue;
      live[e] = 0;
      degree[n] = 0;
      deadElement.push(e);
      deadNode.push(n);
      const other = otherEnd(graph, e, n);
      if (graph.fixed[other] === 0) {
        degree[other]!--;
        if (degree[other] === 1) leaves.push(other);
      }
      break;
    }
  }
  return {
    live,
    degree,
    deadElement: new Int32Array(deadElement.reverse()),
    deadNode: new Int32Array(deadNode.reverse()),
    recirculating: recirculatingPumps(graph, open, around, reached),
  };
}

function reachedFromFixed(graph: Graph, around: Incidence): Uint8Array {
  const reached = new Uint8Array(graph.nodes);
  const queue: number[] = [];
  for (let n = 0; n < graph.nodes; n++) {
    if (graph.fixed[n] === 1) {
      reached[n] = 1;
      queue.push(n);
    }
  }
  while (queue.length > 0) {
    const n = queue.pop()!;
    for (let i = around.start[n]!; i < around.start[n + 1]!; i++) {
      const m = otherEnd(graph, around.element[i]!, n);
      if (reached[m] === 1) continue;
      reached[m] = 1;
      queue.push(m);
    }
  }
  return reached;
}

/** Pumps of unreached parts that lie on a loop: from the outlet the inlet can be reached without the pump itself. */
function recirculatingPumps(
  graph: Graph,
  open: Uint8Array,
  around: Incidence,
  reached: Uint8Array,
): number[] {
  const found: number[] = [];
  for (let e = 0; e < graph.elements; e++) {
    if (open[e] === 0 || graph.pump[e] === 0 || reached[graph.from[e]!] === 1) continue;
    const seen = new Uint8Array(graph.nodes);
    const queue = [graph.to[e]!];
    seen[graph.to[e]!] = 1;
    while (queue.length > 0) {
      const n = queue.pop()!;
      for (let i = around.start[n]!; i < around.start[n + 1]!; i++) {
        const other = around.element[i]!;
        const m = otherEnd(graph, other, n);
        if (other === e || seen[m] === 1) continue;
        seen[m] = 1;
        queue.push(m);
      }
    }
    if (seen[graph.from[e]!] === 1) found.push(e);
  }
  return found;
}
