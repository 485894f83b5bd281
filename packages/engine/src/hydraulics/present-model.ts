import { COUNT, PARAMETERS, SLOTS } from './element-parameters.ts';
import type { NetworkState } from './network-state.ts';
import type { ElementLaw, NetworkModel } from './network-model.ts';

/** The model as it stands after changes of parameters, heights, levels, liquid and valves. */
export function presentModel(network: NetworkState): NetworkModel {
  return {
    liquid: network.liquid,
    friction: network.laws.context.frictionLaw,
    nodes: network.nodes.map((node, i) => ({
      ...node,
      elevation: network.elevation[i]!,
      ...(node.surface === undefined ? {} : { surface: network.fixedHead[i]! }),
    })),
    elements: network.elements.map((element, e) => ({
      ...element,
      open: network.openState[e] === 1,
      count: network.values[e * SLOTS + COUNT]!,
      law: presentLaw(network, e),
    })),
  };
}

function presentLaw(network: NetworkState, e: number): ElementLaw {
  const law = network.laws.laws[e]!;
  const fields: Record<string, number> = {};
  PARAMETERS[law.kind].forEach((parameter, slot) => {
    const value = network.values[e * SLOTS + slot]!;
    const none = value === 0 && (parameter === 'coilDiameter' || parameter === 'ratedPressure');
    if (!none) fields[parameter] = value;
  });
  return { ...law, ...fields };
}
