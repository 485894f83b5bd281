import {
  compileNetwork,
  type CompiledNetwork,
  type ElementParameter,
  type NetworkModel,
} from '../../hydraulics/index.ts';
import { dutyNetwork, type DutyNetwork } from '../duty-network.ts';
import type { ProvenDuty } from '../proof/context.ts';
import type { Rig } from '../rig-document.ts';
import type { DrawnParameter } from './parameter-factors.ts';

/** The three conditions of a duty that a proof looks at. */
export type Condition = 'open' | 'dirty' | 'shut';

/** One figure of the network in every draw: NaN without a steady state and for a pressure that nothing defines. */
export interface Reading {
  readonly of: DrawnNetwork;
  readonly what: 'flow' | 'pressure';
  /** Element or node of the model. */
  readonly place: number;
  readonly values: Float64Array;
}

/** One duty of a rig in one condition, solved in every draw with the same solver as the proof. */
export class DrawnNetwork {
  readonly proven: ProvenDuty;
  readonly condition: Condition;
  readonly made: DutyNetwork;
  /** 1 for each draw without a steady state. */
  readonly failed: Uint8Array;
  private readonly count: number;
  /** Flow factor of each strainer in this condition, by its element. */
  private readonly strainers: ReadonlyMap<number, number>;
  private readonly network: CompiledNetwork;
  private readonly moving: readonly {
    readonly element: number;
    readonly parameter: ElementParameter;
    readonly nominal: number;
    readonly factors: Float64Array;
  }[];
  private readonly readings = new Map<string, Reading>();

  /** @returns undefined where the proof has no steady state either */
  static of(
    rig: Rig,
    proven: ProvenDuty,
    condition: Condition,
    parameters: readonly DrawnParameter[],
    count: number,
  ): DrawnNetwork | undefined {
    if (proven[condition].status !== 'converged') return undefined;
    const made = dutyNetwork(rig, proven.duty, proven.liquid);
    const compiled = compileNetwork(inCondition(made, condition));
    return compiled.ok
      ? new DrawnNetwork(proven, condition, made, compiled.network, parameters, count)
      : undefined;
  }

  private constructor(
    proven: ProvenDuty,
    condition: Condition,
    made: DutyNetwork,
    network: CompiledNetwork,
    parameters: readonly DrawnParameter[],
    count: number,
  ) {
    this.proven = proven;
    this.condition = condition;
    this.made = made;
    this.network = network;
    this.count = count;
    this.failed = new Uint8Array(count);
    this.strainers = new Map(
      made.strainers.map((s) => [s.element, condition === 'dirty' ? s.dirty : s.clean]),
    );
    const other = condition === 'dirty' ? 'clean' : 'dirty';
    const mine = parameters.filter((p) => p.strainer !== other);
    this.moving = mine.map(({ element, parameter, factors }) => {
      const index = network.elementIndex(element);
      return { element: index, parameter, nominal: network.get(index, parameter), factors };
    });
  }

  /** Flow through an element of the model [m3/s], in each draw. */
  flow(element: number): Reading {
    return this.reading('flow', element);
  }

  /** Gauge pressure at a node of the model [Pa], in each draw. */
  pressure(node: number): Reading {
    return this.reading('pressure', node);
  }

  private reading(what: Reading['what'], place: number): Reading {
    const key = `${what} ${place}`;
    let reading = this.readings.get(key);
    if (reading === undefined) {
      reading = { of: this, what, place, values: new Float64Array(this.count) };
      this.readings.set(key, reading);
    }
    return reading;
  }

  /**
   * Solves draws `from` up to `to` and writes what is read; with it the same duty with its strainers dirty, which is near
   * by: in one network, draw by draw, that takes half the time of two.
   */
  solve(
    readings: readonly Reading[],
    from: number,
    to: number,
    dirty?: { readonly network: DrawnNetwork; readonly readings: readonly Reading[] },
  ): void {
    const clogged = dirty?.network.moving.filter((m) => this.strainers.has(m.element)) ?? [];
    for (let draw = from; draw < to; draw++) {
      for (const [element, k] of this.strainers) this.network.set(element, 'k', k);
      this.set(this.moving, draw);
      this.failed[draw] = this.read(readings, draw);
      if (dirty === undefined) continue;
      for (const [element, k] of dirty.network.strainers) this.network.set(element, 'k', k);
      this.set(clogged, draw);
      dirty.network.failed[draw] = this.read(dirty.readings, draw);
    }
  }

  private set(moving: DrawnNetwork['moving'], draw: number): void {
    for (const m of moving) this.network.set(m.element, m.parameter, m.nominal * m.factors[draw]!);
  }

  /** Solves as it is set and writes what is read in one draw; 1 when it has no steady state. */
  private read(readings: readonly Reading[], draw: number): 0 | 1 {
    const { network } = this;
    const solved =
      network.solve().status === 'converged' || network.solve({ start: 'cold' }).status === 'converged';
    for (const r of readings)
      r.values[draw] = !solved
        ? NaN
        : r.what === 'flow'
          ? network.flow(r.place)
          : (network.pressure(r.place) ?? NaN);
    return solved ? 0 : 1;
  }
}

function inCondition(made: DutyNetwork, condition: Condition): NetworkModel {
  const { model } = made;
  if (condition === 'open') return model;
  const elements = [...model.elements];
  if (condition === 'shut') for (const t of made.triggers) elements[t] = { ...elements[t]!, open: false };
  else
    for (const s of made.strainers)
      elements[s.element] = { ...elements[s.element]!, law: { kind: 'flow-factor', k: s.dirty } };
  return { ...model, elements };
}
