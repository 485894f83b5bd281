import type { Laws } from './branch-loss.ts';
import type { Circuit } from './circuit.ts';
import type { CompiledNetwork } from './compiled-network.ts';
import type { Graph } from './graph.ts';
import type { NetworkElement, NetworkLiquid, NetworkNode } from './network-model.ts';
import type { Solution } from './solution.ts';

/** Heads of all nodes, as of one solve. */
export interface NodeHeads {
  solve: number;
  /** [m]; NaN where undefined. */
  heads: Float64Array;
}

/** The solution as the solver writes it. */
export interface SolutionState extends Solution {
  status: Solution['status'];
  reason: Solution['reason'];
  iterations: number;
}

/** A compiled network seen from inside the layer. */
export interface NetworkState extends CompiledNetwork {
  readonly elements: readonly NetworkElement[];
  readonly nodes: readonly NetworkNode[];
  /** Parameters, SLOTS per element. */
  readonly values: Float64Array;
  readonly laws: Laws;
  readonly graph: Graph;
  readonly fixedHead: Float64Array;
  readonly elevation: Float64Array;
  readonly openState: Uint8Array;
  readonly inletElevation: Float64Array;
  readonly outletElevation: Float64Array;
  readonly solution: SolutionState;
  readonly circuit: Circuit;
  readonly liquid: NetworkLiquid;
  /** Counts solves, so that readings know when they are stale. */
  readonly solves: number;
  readonly heads: NodeHeads;
  applyChanges(): void;
  slotOf(element: number, parameter: string): number;
  setSlot(element: number, slot: number, value: number): void;
  /** Holds an element on one part of its law, or frees it with 0: see `held-parts.ts`. */
  hold(element: number, part: number): void;
}
