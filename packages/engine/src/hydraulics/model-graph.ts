import { isBackPressure, isOneWay, isPump } from './element-parameters.ts';
import { NOT_SPECIAL, REDUCING, RELIEF_TO_ATMOSPHERE, RELIEF_TO_OUTLET } from './graph.ts';
import type { Graph } from './graph.ts';
import type { ElementLaw, NetworkModel } from './network-model.ts';

export function graphOf(model: NetworkModel, nodeByName: ReadonlyMap<string, number>): Graph {
  const { nodes, elements } = model;
  return {
    nodes: nodes.length,
    elements: elements.length,
    from: Int32Array.from(elements, (e) => nodeByName.get(e.from)!),
    to: Int32Array.from(elements, (e) => nodeByName.get(e.to)!),
    fixed: Uint8Array.from(nodes, (n) => (n.surface !== undefined || n.atmosphere === true ? 1 : 0)),
    oneWay: Uint8Array.from(elements, (e) => (isOneWay(e.law) ? 1 : 0)),
    pump: Uint8Array.from(elements, (e) => (isPump(e.law) ? 1 : 0)),
    special: Uint8Array.from(elements, (e) => specialOf(e.law)),
  };
}

function specialOf(law: ElementLaw): number {
  if (law.kind === 'reducing-regulator') return REDUCING;
  if (!isBackPressure(law)) return NOT_SPECIAL;
  return 'reference' in law && law.reference === 'outlet' ? RELIEF_TO_OUTLET : RELIEF_TO_ATMOSPHERE;
}
