/** What an on-demand pump that switches on and off delivers. */
import type { CompiledNetwork } from './compiled-network.ts';
import type { NetworkModel } from './network-model.ts';
import type { NetworkState } from './network-state.ts';
import { presentModel } from './present-model.ts';
import { stateOf } from './readings.ts';
import type { CyclingBand } from './solution.ts';

const G = 9.80665;

/** `compile` makes a network of a model known to be sound. */
export function cyclingBandOf(
  network: NetworkState,
  pump: number,
  outlet: number,
  compile: (model: NetworkModel) => CompiledNetwork,
): CyclingBand | null {
  if (stateOf(network, pump) !== 'cycling') return null;
  const flowAt = (pressure: number): number => {
    const standIn = compile(withPumpAt(network, pump, pressure));
    standIn.solve();
    return standIn.flow(outlet);
  };
  return {
    flowAtSwitchOn: flowAt(network.get(pump, 'switchOn')),
    flowAtSwitchOff: flowAt(network.get(pump, 'switchOff')),
  };
}

/** The network with the pump's outlet held at a gauge pressure: a tank at that head takes its place. */
function withPumpAt(network: NetworkState, pump: number, pressure: number): NetworkModel {
  const model = presentModel(network);
  const { id, to } = network.elements[pump]!;
  const rise = pressure / (network.liquid.density * G);
  return {
    ...model,
    elements: model.elements.map((e) => (e.id === id ? { ...e, open: false } : e)),
    nodes: model.nodes.map((n) =>
      n.id === to ? { id: n.id, elevation: n.elevation, surface: n.elevation + rise } : n,
    ),
  };
}
