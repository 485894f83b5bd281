import { refreshBranch, regroupFriction } from './refresh-branch.ts';
import type { Laws } from './branch-loss.ts';
import { buildCircuit } from './build-circuit.ts';
import { checkModel, liquidProblems } from './check-model.ts';
import { bringIn } from './circuit-store.ts';
import { moveHead, setHead } from './circuit.ts';
import type { Circuit } from './circuit.ts';
import type { CompiledNetwork, ElementParameter, SolveOptions, Variable } from './compiled-network.ts';
import { UNKNOWN_TABLE, newCoefficients, refreshElement } from './element-coefficients.ts';
import * as parameters from './element-parameters.ts';
import { initialValues, limitBroken } from './element-parameters.ts';
import { graphOf } from './model-graph.ts';
import type { Graph } from './graph.ts';
import { lossCurveOf } from './loss-curve.ts';
import type { LossCurve } from './loss-curve.ts';
import type {
  ElementLaw,
  NetworkElement,
  NetworkLiquid,
  NetworkModel,
  NetworkNode,
} from './network-model.ts';
import { imbalance, solveCircuit } from './solve-circuit.ts';
import type { CyclingBand, ElementReading, ElementState, ModelProblem, Note, Solution } from './solution.ts';
import { STILL } from './newton.ts';
import { newNodeHeads, nodeHead } from './node-heads.ts';
import type { NetworkState, NodeHeads, SolutionState } from './network-state.ts';
import { notesOf } from './notes.ts';
import { cyclingBandOf } from './cycling.ts';
import { readingOf, stateOf, suctionFlowOf } from './readings.ts';
import { solveRows } from './solve-rows.ts';

// Copies of its own: a constant of this module is compiled into the loop, an imported one is read anew each time.
const { COUNT, PARAMETERS, SLOTS } = parameters;

export type Compilation =
  | { readonly ok: true; readonly network: CompiledNetwork }
  | { readonly ok: false; readonly problems: readonly ModelProblem[] };

/** Checks a model and prepares it for many solves. */
export function compileNetwork(model: NetworkModel): Compilation {
  const problems = checkModel(model);
  if (problems.length > 0) return { ok: false, problems };
  return { ok: true, network: new Network(model) };
}

/** Solves without a parameter change after which a pipe's friction curve is prepared. */
const CALM = 8;

class Network implements NetworkState {
  readonly elements: readonly NetworkElement[];
  readonly nodes: readonly NetworkNode[];
  readonly values: Float64Array;
  readonly laws: Laws;
  readonly graph: Graph;
  readonly fixedHead: Float64Array;
  /** Of each node [m]. */
  readonly elevation: Float64Array;
  readonly openState: Uint8Array;
  readonly solution: SolutionState;
  liquid: NetworkLiquid;
  /** Counts solves, so that readings know when they are stale. */
  solves = 0;
  readonly heads: NodeHeads = newNodeHeads();
  readonly inletElevation: Float64Array;
  readonly outletElevation: Float64Array;
  private readonly elementByName: ReadonlyMap<string, number>;
  private readonly nodeByName: ReadonlyMap<string, number>;
  private readonly circuits = new Map<string, Circuit>();
  private readonly dirty: Int32Array;
  private dirtyCount = 0;
  private readonly isDirty: Uint8Array;
  private readonly unprepared = new Map<number, number>();
  private laidOut: Circuit;
  private solvedOnce = false;
  /** Valves or the liquid have changed: the circuit is laid out or filled anew before the next solve. */
  private relaid = false;

  constructor(model: NetworkModel) {
    this.elements = model.elements;
    this.nodes = model.nodes;
    this.liquid = model.liquid;
    const n = model.elements.length;
    this.nodeByName = indexById(model.nodes);
    this.elementByName = indexById(model.elements);
    this.values = new Float64Array(n * SLOTS);
    const laws = model.elements.map((e) => e.law);
    for (let e = 0; e < n; e++) {
      const given = initialValues(laws[e]!);
      for (let k = 0; k < given.length; k++) this.values[e * SLOTS + k] = given[k]!;
      this.values[e * SLOTS + COUNT] = model.elements[e]!.count ?? 1;
    }
    this.laws = {
      laws,
      context: {
        values: this.values,
        curves: laws.map((law) => curveFor(law, model.liquid.density)),
        frictionLaw: model.friction ?? 'colebrook',
        heldPart: new Uint16Array(n),
      },
      coefficients: newCoefficients(n),
    };
    this.graph = graphOf(model, this.nodeByName);
    this.elevation = new Float64Array(model.nodes.map((node) => node.elevation));
    this.fixedHead = new Float64Array(model.nodes.map((node) => node.surface ?? node.elevation));
    this.inletElevation = new Float64Array(n);
    this.outletElevation = new Float64Array(n);
    this.openState = new Uint8Array(n);
    for (let e = 0; e < n; e++) {
      this.openState[e] = model.elements[e]!.open === false ? 0 : 1;
    }
    this.readElevations();
    this.dirty = new Int32Array(n);
    this.isDirty = new Uint8Array(n);
    for (let e = 0; e < n; e++)
      refreshElement(this.laws.coefficients, this.laws.context, laws[e]!, e, this.liquid);
    this.laidOut = this.circuitFor();
    this.solution = new NetworkSolution(this);
  }

  /** Ready to be worked on: of all networks, one at a time is. */
  get circuit(): Circuit {
    return bringIn(this.laidOut);
  }

  get elementCount(): number {
    return this.elements.length;
  }

  get nodeCount(): number {
    return this.nodes.length;
  }

  elementIndex(id: string): number {
    return found(this.elementByName.get(id), 'element', id);
  }

  nodeIndex(id: string): number {
    return found(this.nodeByName.get(id), 'node', id);
  }

  set(element: number, parameter: ElementParameter, value: number): void {
    const slot = this.slotOf(element, parameter);
    const wrong = limitBroken(parameter, value);
    if (wrong !== undefined) throw new RangeError(`element '${this.elements[element]!.id}': ${wrong}`);
    this.setSlot(element, slot, value);
  }

  get(element: number, parameter: ElementParameter): number {
    return this.values[this.slotOf(element, parameter)]!;
  }

  /** Position of a parameter in `values`. */
  slotOf(element: number, parameter: ElementParameter): number {
    const law = this.laws.laws[element];
    if (law === undefined)
      throw new RangeError(`element ${element} is not there; the network has ${this.elementCount}`);
    if (parameter === 'count') return element * SLOTS + COUNT;
    const slot = PARAMETERS[law.kind].indexOf(parameter);
    if (slot < 0)
      throw new RangeError(
        `element '${this.elements[element]!.id}' is a ${law.kind}; it has no ${parameter}`,
      );
    return element * SLOTS + slot;
  }

  setSlot(element: number, slot: number, value: number): void {
    if (this.values[slot] === value) return;
    this.values[slot] = value;
    this.markDirty(element);
  }

  hold(element: number, part: number): void {
    if (this.laws.context.heldPart[element] === part) return;
    this.laws.context.heldPart[element] = part;
    this.markDirty(element);
  }

  private markDirty(element: number): void {
    if (this.isDirty[element] === 1) return;
    this.isDirty[element] = 1;
    this.dirty[this.dirtyCount++] = element;
  }

  setSurface(node: number, surface: number): void {
    const given = this.nodes[node];
    if (given === undefined)
      throw new RangeError(`node ${node} is not there; the network has ${this.nodeCount}`);
    if (given.surface === undefined)
      throw new RangeError(`node '${given.id}' is not in a tank; it has no surface`);
    if (!(surface >= -1e4 && surface <= 1e4))
      throw new RangeError(`surface of node '${given.id}' is ${surface} m; it must be -10000 to 10000 m`);
    this.fixedHead[node] = surface;
    const c = this.circuit;
    moveHead(c, c.headOf[node]!, surface);
  }

  setElevation(node: number, elevation: number): void {
    const given = this.nodes[node];
    if (given === undefined)
      throw new RangeError(`node ${node} is not there; the network has ${this.nodeCount}`);
    if (!(elevation >= -1e4 && elevation <= 1e4))
      throw new RangeError(`elevation of node '${given.id}' is ${elevation} m; it must be -10000 to 10000 m`);
    this.elevation[node] = elevation;
    if (given.atmosphere === true) this.fixedHead[node] = elevation;
    this.readElevations();
    this.relaid = true;
  }

  private readElevations(): void {
    const { from, to } = this.graph;
    for (let e = 0; e < this.elements.length; e++) {
      this.inletElevation[e] = this.elevation[from[e]!]!;
      this.outletElevation[e] = this.elevation[to[e]!]!;
    }
  }

  setLiquid(liquid: NetworkLiquid): void {
    const wrong = liquidProblems(liquid);
    if (wrong.length > 0) throw new RangeError(wrong.join('; '));
    const curves = this.laws.context.curves as (LossCurve | undefined)[];
    if (liquid.density !== this.liquid.density) {
      for (let e = 0; e < curves.length; e++) curves[e] = curveFor(this.laws.laws[e]!, liquid.density);
    }
    this.liquid = liquid;
    for (let e = 0; e < this.elementCount; e++) {
      refreshElement(this.laws.coefficients, this.laws.context, this.laws.laws[e]!, e, liquid);
    }
    this.relaid = true;
  }

  open(element: number, open: boolean): void {
    const state = open ? 1 : 0;
    if (this.openState[element] === undefined)
      throw new RangeError(`element ${element} is not there; the network has ${this.elementCount}`);
    if (this.openState[element] === state) return;
    this.openState[element] = state;
    this.relaid = true;
    this.solvedOnce = false;
  }

  solve(options?: SolveOptions): Solution {
    this.applyChanges();
    const warm = this.solvedOnce && options?.start !== 'cold';
    solveCircuit(this, warm);
    this.solvedOnce = this.solution.status === 'converged';
    this.solves++;
    return this.solution;
  }

  solveMany(
    variables: readonly Variable[],
    values: Float64Array,
    outputs: readonly number[],
    flows: Float64Array,
    failed?: Uint8Array,
  ): number {
    return solveRows(this, variables, values, outputs, flows, failed);
  }

  flow(element: number): number {
    const c = this.circuit;
    const b = c.branchOf[element];
    if (b === undefined)
      throw new RangeError(`element ${element} is not there; the network has ${this.elementCount}`);
    const q = b < 0 ? 0 : c.flow[b]!;
    return Math.abs(q) < STILL ? 0 : q * c.signOf[element]!;
  }

  head(node: number): number | null {
    return nodeHead(this, node);
  }

  pressure(node: number): number | null {
    const head = this.head(node);
    return head === null ? null : (head - this.elevation[node]!) * this.liquid.density * 9.80665;
  }

  staticPressure(node: number, flow: number, bore: number): number | null {
    const pressure = this.pressure(node);
    if (pressure === null) return null;
    const velocity = flow / ((Math.PI / 4) * bore * bore);
    return pressure - (this.liquid.density * velocity * velocity) / 2;
  }

  state(element: number): ElementState {
    return stateOf(this, element);
  }

  reading(element: number): ElementReading {
    return readingOf(this, element);
  }

  suctionFlow(element: number): number {
    return suctionFlowOf(this, element);
  }

  cyclingBand(pump: number, outlet: number): CyclingBand | null {
    return cyclingBandOf(this, pump, outlet, (model) => new Network(model));
  }

  notes(): Note[] {
    return notesOf(this);
  }

  /** Brings coefficients up to date with changed parameters, liquid and valves. */
  applyChanges(): void {
    if (this.dirtyCount > 0) this.refreshDirty();
    if (this.relaid) this.laidOut = this.circuitFor();
    if (this.unprepared.size > 0) this.prepareCalm();
  }

  private refreshDirty(): void {
    const { laws } = this;
    for (let i = 0; i < this.dirtyCount; i++) {
      const e = this.dirty[i]!;
      this.isDirty[e] = 0;
      refreshElement(laws.coefficients, laws.context, laws.laws[e]!, e, this.liquid);
      if (!this.relaid) this.refreshBranchOf(e);
    }
    this.dirtyCount = 0;
  }

  private refreshBranchOf(e: number): void {
    const { laws, circuit } = this;
    const b = circuit.branchOf[e]!;
    if (b < 0) return;
    refreshBranch(circuit, laws, b, this.inletElevation, this.outletElevation);
    if (laws.laws[e]!.kind === 'pipe') {
      regroupFriction(circuit, laws, b, laws.context.heldPart[e]! > 0);
      if (laws.coefficients.friction[e]!.table === UNKNOWN_TABLE) this.unprepared.set(b, CALM);
    } else if (laws.context.curves[e]?.power !== undefined) regroupFriction(circuit, laws, b, true);
  }

  /** A pipe whose friction curve has not changed for a while gets it prepared; one that varies does without. */
  private prepareCalm(): void {
    for (const [b, left] of this.unprepared) {
      if (left > 0) this.unprepared.set(b, left - 1);
      else {
        regroupFriction(this.circuit, this.laws, b, true);
        this.unprepared.delete(b);
      }
    }
  }

  private circuitFor(): Circuit {
    const state = this.openState.join('');
    let circuit = this.circuits.get(state);
    if (circuit === undefined) {
      const { laws } = this.laws;
      const { curves } = this.laws.context;
      const hasGroup = new Uint8Array(
        laws.map((law, e) => (law.kind === 'pipe' || curves[e]?.power !== undefined ? 1 : 0)),
      );
      const hasCurve = new Uint8Array(
        curves.map((curve) => (curve === undefined || curve.power !== undefined ? 0 : 1)),
      );
      circuit = buildCircuit(this.graph, this.openState, hasGroup, hasCurve);
      if (this.circuits.size < 64) this.circuits.set(state, circuit);
    }
    this.fill(bringIn(circuit));
    return circuit;
  }

  private fill(circuit: Circuit): void {
    this.relaid = false;
    this.unprepared.clear();
    circuit.usual.fill(0);
    for (let b = 0; b < circuit.branches; b++) {
      refreshBranch(circuit, this.laws, b, this.inletElevation, this.outletElevation);
      regroupFriction(circuit, this.laws, b, true);
    }
    for (let node = 0; node < this.nodeCount; node++) {
      if (this.graph.fixed[node] === 1) setHead(circuit, circuit.headOf[node]!, this.fixedHead[node]!);
    }
  }
}

/** Its residual is worked out when asked for. */
class NetworkSolution implements SolutionState {
  status: Solution['status'] = 'converged';
  reason: Solution['reason'] = undefined;
  iterations = 0;
  private readonly network: Network;

  constructor(network: Network) {
    this.network = network;
  }

  get residual(): number {
    return imbalance(this.network.circuit);
  }
}

function curveFor(law: ElementLaw, density: number): LossCurve | undefined {
  const curve = lossCurveOf(law, density);
  if (curve !== undefined && 'code' in curve) throw new RangeError(curve.message);
  return curve;
}

function indexById(items: readonly { readonly id: string }[]): Map<string, number> {
  const index = new Map<string, number>();
  for (let i = 0; i < items.length; i++) index.set(items[i]!.id, i);
  return index;
}

function found(index: number | undefined, what: string, id: string): number {
  if (index === undefined) throw new RangeError(`${what} '${id}' is not there`);
  return index;
}
