import {
  compileNetwork,
  type CompiledNetwork,
  type NetworkLiquid,
  type NetworkModel,
  type Solution,
} from '../hydraulics/index.ts';
import type { Duty } from './brief.ts';
import { dutyNetwork, type DutyNetwork, type LineElement } from './duty-network.ts';
import { retune } from './retune.ts';
import type { Rig } from './rig-document.ts';

/** One step of the pressure line: a part between tank and tip and what it costs. */
export interface PressureStep {
  /** Item of the rig; absent for the bends and branches of a line. */
  readonly item?: string;
  readonly line: string;
  readonly flow: number;
  /** Gauge pressure at rest in front of it and behind it [Pa]; null where nothing defines it. */
  readonly before: number | null;
  readonly after: number | null;
  /** Rating it must not exceed [Pa]. */
  readonly limit?: number;
}

export interface OutletState {
  readonly line: string;
  /** Flow of the whole outlet, all nozzles of a boom together [m3/s]. */
  readonly flow: number;
  /** Gauge pressure of the liquid at rest in front of the last element: what a gauge at the tip shows [Pa]. */
  readonly tipPressure: number;
}

/** A rig in one duty and one condition, solved: what comes out, and what the pump does. */
interface SolvedState {
  readonly status: Solution['status'];
  readonly reason: string | undefined;
  readonly iterations: number;
  readonly outlets: readonly OutletState[];
  readonly pump:
    | {
        readonly item: string;
        readonly flow: number;
        readonly inlet: number | null;
        readonly outlet: number | null;
      }
    | undefined;
  /** Highest gauge pressure at any item; 0 when none is above that of the air [Pa]. */
  readonly highestPressure: number;
  /** Regulators and demand pumps that are not simply flowing: `holding`, `wide-open`, `cycling`, `dead-head`. */
  readonly states: ReadonlyMap<string, string>;
  readonly notes: readonly string[];
}

/** A solved state with what every item feels. */
export interface DutyState extends SolvedState {
  /** Highest gauge pressure on either side of each item [Pa]. */
  readonly pressureAt: ReadonlyMap<string, number>;
  readonly flowThrough: ReadonlyMap<string, number>;
}

/** A duty as it is meant to work, with its pressure line. */
interface OpenState extends DutyState {
  /** From the tank to the first open outlet; to the tank through the regulator when none is open. */
  readonly steps: readonly PressureStep[];
}

/** A duty in the three conditions a proof looks at. */
export interface DutyStates {
  /** Strainer clean, outlets open: how it is meant to work. */
  readonly open: OpenState;
  /** Strainer at the state in which it says it must be cleaned. */
  readonly dirty: SolvedState;
  /** Every outlet shut while the pump turns, as when a trigger is let go. */
  readonly shut: SolvedState & Pick<DutyState, 'pressureAt'>;
}

/**
 * Makes the solver of one rig. Its network is compiled for the first duty and set anew for the others, as long as
 * they differ in lengths, levels, settings and open lines only; in each duty its strainers are clogged and its
 * outlets shut in turn.
 *
 * @param told ask for the solver's notes on the open state, which cost more than the solve
 */
export function dutySolver(rig: Rig, told: boolean): (duty: Duty, liquid: NetworkLiquid) => DutyStates {
  let last: { network: CompiledNetwork; model: NetworkModel } | undefined;
  return (duty, liquid) => {
    const made = dutyNetwork(rig, duty, liquid);
    if (last !== undefined && retune(last.network, last.model, made.model))
      last = { ...last, model: made.model };
    else {
      const compiled = compileNetwork(made.model);
      if (!compiled.ok) {
        last = undefined;
        const failed = failedState(compiled.problems.map((p) => p.message).join('; '), 0);
        const open = { ...failed, pressureAt: NOTHING, flowThrough: NOTHING, steps: [] };
        return { open, dirty: failed, shut: { ...failed, pressureAt: NOTHING } };
      }
      last = { network: compiled.network, model: made.model };
    }
    const { network } = last;
    const state = stateOf(rig, made, network, network.solve({ start: 'cold' }), told);
    const open = { ...state, steps: state.status === 'failed' ? [] : stepsOf(rig, made, network) };
    for (const s of made.strainers) network.set(s.element, 'k', s.dirty);
    const dirty = solvedState(rig, made, network, network.solve());
    for (const s of made.strainers) network.set(s.element, 'k', s.clean);
    for (const t of made.triggers) network.open(t, false);
    const pressureAt = new Map<string, number>();
    const closed = { ...made, outlets: [] };
    const shut = solvedState(rig, closed, network, network.solve({ start: 'cold' }), pressureAt);
    return { open, dirty, shut: { ...shut, pressureAt } };
  };
}

const NOTHING: ReadonlyMap<string, number> = new Map();

function failedState(reason: string, iterations: number): SolvedState {
  return {
    status: 'failed',
    reason,
    iterations,
    outlets: [],
    pump: undefined,
    highestPressure: 0,
    states: new Map(),
    notes: [],
  };
}

export function noState(reason: string, iterations: number): DutyState {
  return { ...failedState(reason, iterations), pressureAt: NOTHING, flowThrough: NOTHING };
}

/** The state that a network was just solved to. */
export function stateOf(
  rig: Rig,
  made: DutyNetwork,
  network: CompiledNetwork,
  solution: Solution,
  told: boolean,
): DutyState {
  const pressureAt = new Map<string, number>();
  const flowThrough = new Map<string, number>();
  const state = solvedState(rig, made, network, solution, pressureAt, flowThrough);
  const notes = told && state.status !== 'failed' ? network.notes().map((n) => n.message) : [];
  return { ...state, notes, pressureAt, flowThrough };
}

/** Reads a solved network; what every item feels is written only where somebody asks it. */
function solvedState(
  rig: Rig,
  { outlets, lines }: DutyNetwork,
  network: CompiledNetwork,
  solution: Solution,
  pressureAt?: Map<string, number>,
  flowThrough?: Map<string, number>,
): SolvedState {
  if (solution.status === 'failed')
    return failedState(solution.reason?.message ?? 'no steady state was found', solution.iterations);

  const states = new Map<string, string>();
  let pump: SolvedState['pump'];
  let highestPressure = 0;
  for (const run of lines.values()) {
    for (const { element, from, to, item } of run) {
      if (item === undefined) continue;
      const before = network.pressure(from);
      const after = network.pressure(to);
      const highest = Math.max(before ?? -Infinity, after ?? -Infinity);
      if (highest > highestPressure) highestPressure = highest;
      if (pressureAt !== undefined && highest > (pressureAt.get(item) ?? -Infinity))
        pressureAt.set(item, highest);
      flowThrough?.set(item, network.flow(element));
      const state = network.state(element);
      if (state !== 'flowing' && state !== 'idle') states.set(item, state);
      const { kind } = rig.items.get(item)!.part;
      if (kind === 'pump' || kind === 'motor-pump')
        pump = { item, flow: network.flow(element), inlet: before, outlet: after };
    }
  }
  return {
    status: 'converged',
    reason: undefined,
    iterations: solution.iterations,
    outlets: outlets.map(({ line, last, before }) => ({
      line,
      flow: network.flow(last),
      tipPressure: network.pressure(before) ?? 0,
    })),
    pump,
    highestPressure,
    states,
    notes: [],
  };
}

function stepsOf(rig: Rig, { outlets, lines }: DutyNetwork, network: CompiledNetwork): PressureStep[] {
  const steps: PressureStep[] = [];
  for (const line of wayTo(rig, outlets[0]?.line ?? lastLineToTank(rig)))
    for (const piece of lines.get(line) ?? []) steps.push(stepOf(rig, line, piece, network));
  return steps;
}

function stepOf(
  rig: Rig,
  line: string,
  { element, from, to, item }: LineElement,
  network: CompiledNetwork,
): PressureStep {
  const felt = {
    line,
    flow: network.flow(element),
    before: network.pressure(from),
    after: network.pressure(to),
  };
  if (item === undefined) return felt;
  const { part } = rig.items.get(item)!;
  return 'maxPressure' in part ? { item, ...felt, limit: part.maxPressure } : { item, ...felt };
}

/** Lines from the tank to the end of a line, following them back from it. */
function wayTo(rig: Rig, end: string | undefined): string[] {
  const way: string[] = [];
  for (let line = rig.lines.find((l) => l.id === end); line !== undefined && !way.includes(line.id);) {
    way.unshift(line.id);
    const from: string = line.from;
    line = from === 'tank' ? undefined : rig.lines.find((l) => l.to === from && !way.includes(l.id));
  }
  return way;
}

function lastLineToTank(rig: Rig): string | undefined {
  return rig.lines.find((l) => l.to === 'tank' && l.opens === 'always')?.id;
}
