/** One call of `solveMany`: what varies, what is asked for, and where it goes. */
import type { Variable } from './compiled-network.ts';
import type { NetworkState } from './network-state.ts';

export interface Batch {
  readonly network: NetworkState;
  readonly variables: readonly Variable[];
  readonly slots: readonly number[];
  readonly values: Float64Array;
  readonly outputs: readonly number[];
  readonly flows: Float64Array;
  readonly failed: Uint8Array | undefined;
  readonly one: Float64Array;
  missed: number;
}

const COLD = { start: 'cold' } as const;

/** Solves for the values of variables that stand in `values` from `from` on. */
export function solveAt(batch: Batch, values: Float64Array, from: number): boolean {
  const { network, variables } = batch;
  for (let k = 0; k < variables.length; k++) change(batch, k, values[from + k]!);
  return network.solve().status === 'converged' || network.solve(COLD).status === 'converged';
}

export function change(batch: Batch, k: number, value: number): void {
  const variable = batch.variables[k]!;
  if (variable.parameter === 'surface') batch.network.setSurface(variable.node, value);
  else batch.network.setSlot(variable.element, batch.slots[k]!, value);
}

export function largestFlow(network: NetworkState): number {
  let largest = 0;
  for (let b = 0; b < network.circuit.branches; b++)
    largest = Math.max(largest, Math.abs(network.circuit.flow[b]!));
  return largest;
}
