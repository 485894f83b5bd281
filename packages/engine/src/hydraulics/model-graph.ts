import { isBackPressure, isOneWay, isPump } from './element-parameters.ts';
import { NOT_SPECIAL, REDUCING, RELIEF_TO_ATMOSPHERE, RELIEF_TO_OUTLET } from './graph.ts';
import type { Graph } from './graph.ts';
import type { ElementLaw, NetworkModel } from './network-model.ts';

export function graphOf(model: NetworkModel, nodeByName: ReadonlyMap<string, number>): Graph {
  const { nodes, elements } = model;
  const graph: Graph = {
    nodes: nodes.length,
    elements: elements.length,
    from: new Int32Array(elements.length),
    to: new Int32Array(elements.length),
    fixed: new Uint8Array(nodes.length),
    oneWay: new Uint8Array(elements.length),
    pump: new Uint8Array(elements.length),
    special: new Uint8Array(elements.length),
  };
  for (let i = 0; i < nodes.length; i++) {
    const node = nodes[i]!;
    if (node.surface !== undefined || node.atmosphere === true) graph.fixed[i] = 1;
  }
  for (let e = 0; e < elements.length; e++) {
    const { from, to, law } = elements[e]!;
    graph.from[e] = nodeByName.get(from)!;
    graph.to[e] = nodeByName.get(to)!;
    if (isOneWay(law)) graph.oneWay[e] = 1;
    if (isPump(law)) graph.pump[e] = 1;
    graph.special[e] = specialOf(law);
  }
  return graph;
}

function specialOf(law: ElementLaw): number {
  if (law.kind === 'reducing-regulator') return REDUCING;
  if (!isBackPressure(law)) return NOT_SPECIAL;
  return 'reference' in law && law.reference === 'outlet' ? RELIEF_TO_OUTLET : RELIEF_TO_ATMOSPHERE;
}
