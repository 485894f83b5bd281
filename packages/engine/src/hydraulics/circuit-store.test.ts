import { describe, expect, it } from 'vitest';
import { randomNetwork } from '../../test/random-network.ts';
import { randomSource } from '../../test/random-source.ts';
import { checkModel } from './check-model.ts';
import { compileNetwork, type CompiledNetwork, type NetworkElement, type NetworkModel } from './index.ts';

const NETWORKS = 40;
const TURNS = 6;

function compiled(model: NetworkModel): CompiledNetwork {
  const result = compileNetwork(model);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.network;
}

/** Flows and heads as they stand. */
function stateOf(network: CompiledNetwork): (number | null)[] {
  const state: (number | null)[] = [];
  for (let e = 0; e < network.elementCount; e++) state.push(network.flow(e));
  for (let n = 0; n < network.nodeCount; n++) state.push(network.head(n));
  return state;
}

/** What a network is asked in one turn: the last solution read, something changed, a valve turned, solved. */
function turn(network: CompiledNetwork, model: NetworkModel, k: number): (number | null)[] {
  const before = k === 0 ? [] : stateOf(network);
  const pipes = model.elements.flatMap((e, i) => (e.law.kind === 'pipe' ? [i] : []));
  const pipe = pipes[k % pipes.length];
  if (pipe !== undefined) network.set(pipe, 'length', network.get(pipe, 'length') * 1.1);
  if (k % 2 === 1) network.open(k % network.elementCount, k % 4 === 3);
  network.solve(k % 3 === 0 ? { start: 'cold' } : {});
  return before;
}

describe('Circuits that share one store', () => {
  it('are solved and read in turns as each would be by itself, to the last digit', () => {
    const models = Array.from({ length: NETWORKS }, (_, i) => randomNetwork(randomSource(i + 1)).model);
    const alone = models.map((model) => {
      const network = compiled(model);
      const states = Array.from({ length: TURNS }, (_, k) => turn(network, model, k));
      return [...states, stateOf(network)];
    });
    const networks = models.map(compiled);
    const inTurns: (number | null)[][][] = models.map(() => []);
    for (let k = 0; k < TURNS; k++)
      networks.forEach((network, i) => inTurns[i]!.push(turn(network, models[i]!, k)));
    networks.forEach((network, i) => inTurns[i]!.push(stateOf(network)));
    expect(inTurns).toEqual(alone);
    expect(alone.flat(2).some((value) => value !== null && value !== 0)).toBe(true);
  });

  it('are of models of 30,000 elements at most', () => {
    const chain = (count: number): NetworkModel => ({
      liquid: { density: 1000, viscosity: 1e-3 },
      nodes: Array.from({ length: count + 1 }, (_, i) => ({
        id: `n${i}`,
        elevation: 0,
        ...(i === 0 ? { surface: 10 } : i === count ? { atmosphere: true } : {}),
      })),
      elements: Array.from({ length: count }, (_, i): NetworkElement => ({
        id: `e${i}`,
        from: `n${i}`,
        to: `n${i + 1}`,
        law: { kind: 'flow-factor', k: 1e-5 },
      })),
    });
    expect(checkModel(chain(30_000))).toEqual([]);
    expect(checkModel(chain(30_001)).map((p) => p.message)).toEqual([
      'the network has 30001 elements; it may have 30000',
    ]);
  });
});
