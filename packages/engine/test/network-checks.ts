/** What must hold for every network, tried on random ones: by the tests on some thousands, by the soak on any number. */
import {
  compileNetwork,
  type CompiledNetwork,
  type NetworkElement,
  type NetworkModel,
} from '../src/hydraulics/index.ts';
import { randomNetwork } from './random-network.ts';
import { randomSource, type RandomSource } from './random-source.ts';
import { verifySolution } from './verify-solution.ts';

/** Imbalance over the largest flow; error of a law over the largest head; flows against each other over the largest. */
const MOST_IMBALANCE = 1e-9;
const MOST_LAW_ERROR = 1e-6;
const MOST_FLOW_DIFFERENCE = 2e-6;
const MOST_BATCH_DIFFERENCE = 1e-6;
/** Flows are told apart on this scale at least [m3/s]: 0.3 L/min; below it the rounding of heads may show. */
const LEAST_FLOW = 5e-6;

export interface NetworkOutcome {
  readonly status: string;
  readonly iterations: number;
  readonly imbalance: number;
  readonly lawError: number;
  /** Empty when everything holds. */
  readonly complaints: readonly string[];
}

/** A random network of this seed, with valves shut everywhere for every fourth. */
function randomModel(seed: number): NetworkModel {
  const r = randomSource(seed);
  const { model } = randomNetwork(r);
  if (seed % 4 !== 0) return model;
  return { ...model, elements: model.elements.map((e) => (r.chance(0.25) ? { ...e, open: false } : e)) };
}

/** Solves a random network from nothing and again from there, and checks both from outside. */
export function checkRandomNetwork(seed: number): NetworkOutcome {
  const model = randomModel(seed);
  const network = compiled(model);
  const complaints: string[] = [];
  const cold = network.solve({ start: 'cold' });
  const { status, iterations } = cold;
  if (status === 'failed') {
    const { reason } = cold;
    // The one way in which a sound model has no steady state.
    if (reason?.code !== 'pump-recirculates' || reason.ids.length === 0)
      complaints.push(`failed: ${reason?.code ?? 'no reason'}: ${reason?.message ?? ''}`);
    return { status: reason?.code ?? 'failed', iterations, imbalance: 0, lawError: 0, complaints };
  }
  complaints.push(...readingComplaints(network));
  if (complaints.length > 0) return { status, iterations, imbalance: 0, lawError: 0, complaints };
  const { imbalance, lawError, worst, finite } = verifySolution(model, network);
  if (!finite) complaints.push('a head is not finite');
  if (!(imbalance <= MOST_IMBALANCE)) complaints.push(`imbalance ${imbalance}`);
  if (!(lawError <= MOST_LAW_ERROR)) complaints.push(`law of ${worst} missed by ${lawError}`);
  const flows = flowsOf(network);
  const warm = network.solve({ start: 'warm' });
  if (warm.status !== 'converged') complaints.push(`failed when solved again: ${warm.reason?.message ?? ''}`);
  else complaints.push(...differing(model, flows, flowsOf(network), 'solved again'));
  return { status, iterations, imbalance, lawError, complaints };
}

function readingComplaints(network: CompiledNetwork): string[] {
  const complaints: string[] = [];
  for (let e = 0; e < network.elementCount; e++) {
    const reading = network.reading(e);
    for (const [name, value] of Object.entries(reading)) {
      if (typeof value === 'number' && !Number.isFinite(value))
        complaints.push(`${name} of element ${e} is ${value}`);
    }
    if (reading.state === 'shut' && reading.flow !== 0) complaints.push(`element ${e} is shut and flows`);
  }
  for (const note of network.notes())
    if (/NaN|Infinity|undefined,/.test(note.message)) complaints.push(note.message);
  return complaints;
}

/** Changes numbers of a compiled network and compares it with one compiled with those numbers, and with a batch. */
export function checkChangedNetwork(seed: number): string[] {
  const r = randomSource(seed ^ 0x5bd1e995);
  const model = randomModel(seed);
  const changed = changedModel(model, r);
  if (changed.changes.length === 0) return [];
  const fresh = compiled(changed.model);
  if (fresh.solve({ start: 'cold' }).status !== 'converged') return [];
  const expected = flowsOf(fresh);
  const kept = compiled(model);
  kept.solve({ start: 'cold' });
  for (const { element, parameter, value } of changed.changes) kept.set(element, parameter, value);
  const solution = kept.solve();
  if (solution.status !== 'converged') return [`failed after changes: ${solution.reason?.message ?? ''}`];
  const complaints = differing(model, expected, flowsOf(kept), 'after changes');

  const batch = compiled(model);
  const outputs = model.elements.map((_, i) => i);
  const flows = new Float64Array(2 * outputs.length);
  const first = changed.changes.map(({ element, parameter }) => batch.get(element, parameter));
  const values = Float64Array.from([...changed.changes.map((c) => c.value), ...first]);
  const missed = batch.solveMany(changed.changes, values, outputs, flows);
  if (missed > 0) return [...complaints, `${missed} rows of the batch failed`];
  complaints.push(...differing(model, expected, flows.slice(0, outputs.length), 'first row of a batch'));
  const before = compiled(model);
  before.solve({ start: 'cold' });
  complaints.push(...differing(model, flowsOf(before), flows.slice(outputs.length), 'second row of a batch'));
  return complaints;
}

const ROWS = 240;
const COMPARED_EVERY = 5;

/**
 * A batch of many rows, in which regulators open and shut and tips run dry, against exact solves of its rows: outputs within
 * 1e-6 of the row's largest flow, and the network left as it was.
 */
export function checkBatch(seed: number): string[] {
  const r = randomSource(seed ^ 0x2c1b3c6d);
  const model = randomModel(seed);
  const variables = changedModel(model, r).changes.slice(0, r.whole(1, 4));
  if (variables.length === 0) return [];
  const network = compiled(model);
  if (network.solve({ start: 'cold' }).status !== 'converged') return [];
  const before = flowsOf(network);
  const width = variables.length;
  const values = Float64Array.from({ length: ROWS * width }, (_, i) => {
    const { element, parameter } = variables[i % width]!;
    return network.get(element, parameter) * r.between(0.6, 1.5);
  });
  const outputs = model.elements.map((_, e) => e);
  const flows = new Float64Array(ROWS * outputs.length);
  const failed = new Uint8Array(ROWS);
  if (network.solveMany(variables, values, outputs, flows, failed) > 0) return ['rows of a batch failed'];
  const exact = compiled(model);
  const complaints: string[] = [];
  for (let row = 0; row < ROWS; row += COMPARED_EVERY) {
    variables.forEach(({ element, parameter }, k) => exact.set(element, parameter, values[row * width + k]!));
    if (exact.solve({ start: 'cold' }).status !== 'converged') return [`row ${row} alone failed`];
    const got = flows.subarray(row * outputs.length, (row + 1) * outputs.length);
    complaints.push(...differing(model, flowsOf(exact), got, `row ${row} of a batch`, MOST_BATCH_DIFFERENCE));
  }
  network.solve();
  return [...complaints, ...differing(model, before, flowsOf(network), 'after a batch')].slice(0, 3);
}

interface Change {
  readonly element: number;
  readonly parameter: 'length' | 'bore' | 'lossCoefficient' | 'k' | 'speed' | 'setPressure';
  readonly value: number;
}

function changedModel(model: NetworkModel, r: RandomSource): { model: NetworkModel; changes: Change[] } {
  const changes: Change[] = [];
  const elements = model.elements.map((e, element): NetworkElement => {
    if (!r.chance(0.3)) return e;
    const factor = r.scale(0.7, 1.4);
    const to = (parameter: Change['parameter'], before: number): NetworkElement => {
      changes.push({ element, parameter, value: before * factor });
      return { ...e, law: { ...e.law, [parameter]: before * factor } };
    };
    const { law } = e;
    switch (law.kind) {
      case 'pipe':
        return law.coilDiameter !== undefined || r.chance(0.4)
          ? to('length', law.length)
          : to('bore', law.bore);
      case 'fitting':
      case 'check-valve':
        return to('lossCoefficient', law.lossCoefficient);
      case 'orifice':
      case 'jet-agitator':
      case 'flow-factor':
      case 'strainer':
        return to('k', law.k);
      case 'positive-displacement-pump':
        return to('speed', law.speed);
      case 'unloader':
      case 'relief-valve':
      case 'back-pressure-regulator':
      case 'reducing-regulator':
        return to('setPressure', law.setPressure);
      default:
        return e;
    }
  });
  return { model: { ...model, elements }, changes };
}

/**
 * Order that holds on trees (an element that passes more at every head difference): a tip's flow never rises when a hose
 * on its path gets longer or narrower or when another tip grows, and never falls when the pump gets bigger.
 */
export function checkOrder(seed: number): string[] {
  const r = randomSource(seed);
  const { model, pumps, tips } = randomNetwork(r, { tree: true });
  const network = compiled(model);
  if (network.solve({ start: 'cold' }).status !== 'converged') return ['a tree failed'];
  const tip = network.elementIndex(r.pick(tips));
  const before = network.flow(tip);
  const slack = 1e-7 * largest(flowsOf(network)) + 1e-15;
  const complaints: string[] = [];
  const tried = (
    what: string,
    element: number,
    parameter: Parameters<CompiledNetwork['set']>[1],
    factor: number,
    way: 1 | -1,
  ): void => {
    const value = network.get(element, parameter);
    network.set(element, parameter, value * factor);
    const solution = network.solve();
    const after = network.flow(tip);
    if (solution.status !== 'converged') complaints.push(`failed with ${what}`);
    else if (way * (after - before) < -slack)
      complaints.push(
        `${what} (${model.elements[element]!.id} ${parameter} x ${factor}) took the tip from ${before} to ${after}`,
      );
    network.set(element, parameter, value);
  };
  const onPath = pathTo(model, tip).filter((e) => model.elements[e]!.law.kind === 'pipe');
  for (const hose of onPath) {
    tried('a longer hose', hose, 'length', r.between(1.01, 3), -1);
    tried('a narrower hose', hose, 'bore', r.between(0.7, 0.99), -1);
    tried('a rougher hose', hose, 'lossCoefficient', r.between(1.01, 3), -1);
  }
  for (const id of pumps) {
    const pump = network.elementIndex(id);
    if (model.elements[pump]!.law.kind !== 'demand-pump')
      tried('a faster pump', pump, 'speed', r.between(1.01, 1.5), 1);
  }
  for (const id of tips) {
    const other = network.elementIndex(id);
    tried(
      other === tip ? 'a bigger tip' : 'another tip bigger',
      other,
      'k',
      r.between(1.01, 2),
      other === tip ? 1 : -1,
    );
  }
  return complaints;
}

/** Elements from the tank to the tip of a tree. */
function pathTo(model: NetworkModel, tip: number): number[] {
  const path: number[] = [];
  let node = model.elements[tip]!.from;
  while (node !== 'tank') {
    // Every node of a tree but the outlets of reliefs is fed by the first element that ends at it.
    const feeder = model.elements.findIndex((e) => e.to === node);
    path.push(feeder);
    node = model.elements[feeder]!.from;
  }
  return path;
}

function compiled(model: NetworkModel): CompiledNetwork {
  const result = compileNetwork(model);
  if (!result.ok) throw new Error(`a random model was refused: ${JSON.stringify(result.problems)}`);
  return result.network;
}

function flowsOf(network: CompiledNetwork): Float64Array {
  return Float64Array.from({ length: network.elementCount }, (_, e) => network.flow(e));
}

function largest(flows: Float64Array): number {
  return flows.reduce((most, q) => Math.max(most, Math.abs(q)), 0);
}

function differing(
  model: NetworkModel,
  expected: Float64Array,
  got: Float64Array,
  what: string,
  most = MOST_FLOW_DIFFERENCE,
): string[] {
  const scale = Math.max(largest(expected), LEAST_FLOW);
  let [worst, at] = [0, -1];
  expected.forEach((q, e) => {
    const off = Math.abs(q - got[e]!) / scale;
    if (!(off <= worst)) [worst, at] = [off, e];
  });
  if (worst <= most) return [];
  return [`${what}: ${model.elements[at]!.id} carries ${got[at]!} instead of ${expected[at]!}`];
}
