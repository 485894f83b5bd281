/** What a solved network says about its elements. */
import { HOLDING, PLAIN } from './circuit.ts';
import type { NetworkState } from './network-state.ts';
import { COUNT, SLOTS, isPump } from './element-parameters.ts';
import type { ElementReading, ElementState } from './solution.ts';

const G = 9.80665;

export function stateOf(network: NetworkState, e: number): ElementState {
  const c = network.circuit;
  const law = network.laws.laws[e]!;
  if (network.openState[e] === 0) return 'shut';
  const pump = isPump(law);
  const b = c.branchOf[e]!;
  if (law.kind === 'demand-pump' && aboveSwitchOff(network, e)) return 'cycling';
  if (b < 0) return pump ? 'dead-head' : 'idle';
  if (c.kind[b] !== PLAIN && c.chainPart[placeOf(network, b, e)] === 1) {
    if (network.flow(e) === 0) return 'shut';
    return c.ruling[b] === HOLDING ? 'holding' : 'wide-open';
  }
  if (network.flow(e) !== 0) return 'flowing';
  if (pump) return 'dead-head';
  return network.graph.oneWay[e] === 1 ? 'shut' : 'idle';
}

function placeOf(network: NetworkState, b: number, e: number): number {
  return network.circuit.chainElement.indexOf(e, network.circuit.chainStart[b]);
}

/** The gauge pressure the pump would run against steadily lies above the one that switches it off. */
function aboveSwitchOff(network: NetworkState, e: number): boolean {
  const pressure = network.pressure(network.graph.to[e]!);
  if (pressure === null) return false;
  const off = network.get(e, 'switchOff');
  // At a dead end the pressure is capped at switch-off: there it has got as far as it can.
  return network.circuit.branchOf[e]! < 0 ? pressure >= off * (1 - 1e-12) : pressure > off;
}

export function boreOf(network: NetworkState, e: number): number | null {
  const kind = network.laws.laws[e]!.kind;
  return kind === 'pipe' || kind === 'fitting' || kind === 'check-valve' ? network.get(e, 'bore') : null;
}

export function readingOf(network: NetworkState, e: number): ElementReading {
  const flow = network.flow(e);
  const bore = boreOf(network, e);
  const velocity =
    bore === null ? null : flow / network.values[e * SLOTS + COUNT]! / ((Math.PI / 4) * bore * bore);
  const from = network.head(network.graph.from[e]!);
  const to = network.head(network.graph.to[e]!);
  const weight = network.liquid.density * G;
  const dynamic = velocity === null ? 0 : (network.liquid.density * velocity * velocity) / 2;
  const pressureAt = (head: number | null, z: number): number | null =>
    head === null ? null : (head - z) * weight - dynamic;
  return {
    flow,
    velocity,
    pressureDrop: from === null || to === null ? null : (from - to) * weight,
    pressureIn: pressureAt(from, network.inletElevation[e]!),
    pressureOut: pressureAt(to, network.outletElevation[e]!),
    state: stateOf(network, e),
  };
}

export function suctionFlowOf(network: NetworkState, e: number): number {
  const law = network.laws.laws[e]!;
  if (law.kind !== 'eductor' || law.suction === undefined || network.flow(e) <= 0) return 0;
  const drop = readingOf(network, e).pressureDrop;
  const points = law.suction;
  if (drop === null || points.length === 0 || drop < points[0]!.pressure) return 0;
  const count = network.values[e * SLOTS + COUNT]!;
  for (let i = 1; i < points.length; i++) {
    const a = points[i - 1]!;
    const b = points[i]!;
    if (drop > b.pressure) continue;
    return count * (a.flow + ((b.flow - a.flow) * (drop - a.pressure)) / (b.pressure - a.pressure));
  }
  return count * points[points.length - 1]!.flow;
}
