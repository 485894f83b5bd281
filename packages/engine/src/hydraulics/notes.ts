/** What a person should know about a solution that no number says by itself. */
import { COUNT, SLOTS, isNozzle, isPump } from './element-parameters.ts';
import { FRICTION_POWER_LAW } from './friction-kernel.ts';
import type { NetworkState } from './network-state.ts';
import { boreOf, stateOf } from './readings.ts';
import type { Note } from './solution.ts';

export function notesOf(network: NetworkState): Note[] {
  const notes: Note[] = [];
  if (network.solution.status === 'failed') return notes;
  const undefinedNodes = network.nodes.filter((_, i) => network.head(i) === null).map((n) => n.id);
  if (undefinedNodes.length > 0)
    notes.push({
      code: 'isolated',
      message: `shut off from every tank and the atmosphere, pressure undefined: ${undefinedNodes.join(', ')}`,
      ids: undefinedNodes,
    });
  for (const facing of network.circuit.facing) {
    // Tips at both ends of a shut-off line are no mistake.
    if (facing.every((e) => isNozzle(network.laws.laws[e]!))) continue;
    const ids = facing.map((e) => network.elements[e]!.id);
    notes.push({
      code: 'check-valves-facing',
      message: `one-way parts face each other, nothing passes: ${ids.join(', ')}`,
      ids,
    });
  }
  network.elements.forEach((element, e) => {
    if (network.openState[e] === 0) return;
    if (isPump(element.law)) notes.push(...pumpNotes(network, e));
    if (element.law.kind === 'fitting' && element.law.guess !== undefined)
      notes.push(guessNote(element.id, element.law.lossCoefficient, element.law.guess));
    if (element.law.kind === 'pipe') notes.push(...pipeNotes(network, e));
    notes.push(...curveNotes(network, e));
  });
  return notes;
}

function guessNote(id: string, lossCoefficient: number, [low, high]: readonly [number, number]): Note {
  return {
    code: 'guessed-loss',
    message: `nobody has measured what ${id} loses: K ${lossCoefficient} is a guess between ${low} and ${high}, so measure it or try both ends`,
    ids: [id],
  };
}

function pumpNotes(network: NetworkState, e: number): Note[] {
  const notes: Note[] = [];
  const { id, law } = network.elements[e]!;
  const state = stateOf(network, e);
  const pressure = network.pressure(network.graph.to[e]!);
  const shown = pressure === null ? 'an undefined pressure' : `${(pressure / 1e5).toFixed(2)} bar`;
  if (state === 'dead-head')
    notes.push({
      code: 'dead-head',
      message: `pump ${id} turns against a shut line, at ${shown}`,
      ids: [id],
    });
  if (state === 'cycling')
    notes.push({
      code: 'cycling',
      message: `pump ${id} switches on and off: it would run steadily only at ${shown}`,
      ids: [id],
    });
  const rated = law.kind === 'demand-pump' ? 0 : network.get(e, 'ratedPressure');
  if (rated > 0 && pressure !== null && pressure > rated)
    notes.push({
      code: 'above-rating',
      message: `pump ${id} is at ${shown}, above its rating of ${(rated / 1e5).toFixed(2)} bar`,
      ids: [id],
    });
  if (law.kind === 'centrifugal-pump') {
    const kinematic = network.liquid.viscosity / network.liquid.density;
    const limit = law.viscosityLimit ?? 1e-5;
    if (kinematic > limit)
      notes.push({
        code: 'viscosity-above-curve',
        message: `the curve of pump ${id} holds up to ${limit} m2/s; the liquid has ${kinematic.toPrecision(3)} m2/s and is pumped worse`,
        ids: [id],
      });
  }
  return notes;
}

function pipeNotes(network: NetworkState, e: number): Note[] {
  const { id } = network.elements[e]!;
  const { coefficients } = network.laws;
  const key = coefficients.friction[e]!;
  const w = Math.abs(network.flow(e)) * coefficients.frictionW[e]!;
  if (w > 23 && w < 40 && key.coilRatio === 0 && key.law !== FRICTION_POWER_LAW)
    return [
      {
        code: 'transitional-flow',
        message: `flow in ${id} is between laminar and turbulent (Re ${(w * 100).toFixed(0)}): laws differ by 25 %`,
        ids: [id],
      },
    ];
  return [...coilNotes(network, e), ...shearNotes(network, e)];
}

function coilNotes(network: NetworkState, e: number): Note[] {
  const { id, law } = network.elements[e]!;
  if (network.liquid.powerLaw === undefined || law.kind !== 'pipe' || !(network.get(e, 'coilDiameter') > 0))
    return [];
  return [
    {
      code: 'no-coil-law',
      message: `no law is known for a thickened mix in a wound hose: ${id} is reckoned as if it lay straight, and loses more`,
      ids: [id],
    },
  ];
}

function shearNotes(network: NetworkState, e: number): Note[] {
  const power = network.liquid.powerLaw;
  const bore = boreOf(network, e);
  if (power === undefined || bore === null || network.flow(e) === 0) return [];
  const { id } = network.elements[e]!;
  const velocity =
    Math.abs(network.flow(e)) / network.values[e * SLOTS + COUNT]! / ((Math.PI / 4) * bore * bore);
  const rate = ((8 * velocity) / bore) * ((3 * power.index + 1) / (4 * power.index));
  if (rate >= (power.shearRateMin ?? 0) && rate <= (power.shearRateMax ?? Infinity)) return [];
  return [
    {
      code: 'shear-rate-outside-fit',
      message: `the wall shear rate in ${id} is ${rate.toPrecision(3)} 1/s, outside the range the liquid was measured in`,
      ids: [id],
    },
  ];
}

function curveNotes(network: NetworkState, e: number): Note[] {
  const curve = network.laws.context.curves[e];
  if (curve === undefined || !Number.isFinite(curve.lastFlow)) return [];
  const { id, law } = network.elements[e]!;
  const speed = law.kind === 'centrifugal-pump' || law.kind === 'demand-pump' ? network.get(e, 'speed') : 1;
  const end = curve.lastFlow * speed * network.values[e * SLOTS + COUNT]!;
  if (Math.abs(network.flow(e)) <= end * (1 + 1e-9)) return [];
  return [
    {
      code: 'curve-extended',
      message: `${id} carries more than its curve was measured to; the curve is extended straight`,
      ids: [id],
    },
  ];
}
