/** Many variations of one network, one after another, each from the last solution. */
import type { Variable } from './compiled-network.ts';
import { limitBroken } from './element-parameters.ts';
import type { NetworkState } from './network-state.ts';

/** See `CompiledNetwork.solveMany`. */
export function solveRows(
  network: NetworkState,
  variables: readonly Variable[],
  values: Float64Array,
  outputs: readonly number[],
  flows: Float64Array,
  failed?: Uint8Array,
): number {
  const width = variables.length;
  const rows = width === 0 ? 0 : Math.floor(values.length / width);
  if (flows.length < rows * outputs.length)
    throw new RangeError(`flows has ${flows.length} places; ${rows * outputs.length} are needed`);
  const slots = variables.map((v) =>
    v.parameter === 'surface' ? v.node : network.slotOf(v.element, v.parameter),
  );
  checkValues(network, variables, values);
  const before = variables.map((v, k) =>
    v.parameter === 'surface' ? network.fixedHead[v.node]! : network.values[slots[k]!]!,
  );
  let missed = 0;
  for (let row = 0; row < rows; row++) {
    for (let k = 0; k < width; k++) change(network, variables[k]!, slots[k]!, values[row * width + k]!);
    let converged = network.solve().status === 'converged';
    if (!converged) converged = network.solve({ start: 'cold' }).status === 'converged';
    if (!converged) missed++;
    if (failed !== undefined) failed[row] = converged ? 0 : 1;
    for (let k = 0; k < outputs.length; k++)
      flows[row * outputs.length + k] = converged ? network.flow(outputs[k]!) : 0;
  }
  for (let k = 0; k < width; k++) change(network, variables[k]!, slots[k]!, before[k]!);
  network.solve();
  return missed;
}

function change(network: NetworkState, variable: Variable, slot: number, value: number): void {
  if (variable.parameter === 'surface') network.setSurface(variable.node, value);
  else network.setSlot(variable.element, slot, value);
}

/** All of them before anything is changed. */
function checkValues(network: NetworkState, variables: readonly Variable[], values: Float64Array): void {
  for (let i = 0; i < values.length; i++) {
    const variable = variables[i % variables.length]!;
    const value = values[i]!;
    if (variable.parameter === 'surface') {
      if (!(value >= -1e4 && value <= 1e4))
        throw new RangeError(
          `surface in row ${Math.floor(i / variables.length)} is ${value} m; it must be -10000 to 10000 m`,
        );
      continue;
    }
    const wrong = limitBroken(variable.parameter, value);
    if (wrong !== undefined)
      throw new RangeError(
        `element '${network.elements[variable.element]!.id}' in row ${Math.floor(i / variables.length)}: ${wrong}`,
      );
  }
}
