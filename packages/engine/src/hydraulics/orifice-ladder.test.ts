import { describe, expect, it } from 'vitest';
import { orificeLadder } from '../../test/orifice-ladder.ts';
import { compileNetwork, type NetworkModel, type PipeLaw } from './index.ts';

const K = 2 / 60000 / Math.sqrt(1e5);
const pipe = (bore: number): PipeLaw => ({ kind: 'pipe', length: 0.5, bore, roughness: 1.5e-6 });

function model(bore: number, lumped: boolean): NetworkModel {
  const ladder = orificeLadder({
    id: 'boom',
    from: 'feed',
    outlets: 6,
    piece: pipe(bore),
    k: K,
    elevation: 0.6,
  });
  return {
    liquid: { density: 998.2, viscosity: 1.002e-3 },
    nodes: [
      { id: 'tank', elevation: 0, surface: 20 },
      { id: 'feed', elevation: 0.6 },
      ...(lumped ? [{ id: 'air', elevation: 0.6, atmosphere: true as const }] : ladder.nodes),
    ],
    elements: [
      { id: 'supply', from: 'tank', to: 'feed', law: pipe(0.025) },
      ...(lumped
        ? [{ id: 'sparger', from: 'feed', to: 'air', law: { kind: 'sparger', k: K, orifices: 6 } as const }]
        : ladder.elements),
    ],
  };
}

function solved(of: NetworkModel): (id: string) => number {
  const compiled = compileNetwork(of);
  if (!compiled.ok) throw new Error(JSON.stringify(compiled.problems));
  expect(compiled.network.solve().status).toBe('converged');
  return (id) => compiled.network.flow(compiled.network.elementIndex(id));
}

describe('A pipe with outlets along it', () => {
  it('gives less at each outlet further down', () => {
    const flow = solved(model(0.012, false));
    for (let i = 2; i <= 6; i++) expect(flow(`boom-outlet-${i}`)).toBeLessThan(flow(`boom-outlet-${i - 1}`));
    const sum = [1, 2, 3, 4, 5, 6].reduce((total, i) => total + flow(`boom-outlet-${i}`), 0);
    expect(sum / flow('supply')).toBeCloseTo(1, 9);
  });

  it('is one sparger when the pipe is so wide that nothing is lost in it', () => {
    const wide = solved(model(0.5, false));
    const lumped = solved(model(0.5, true));
    expect(wide('supply') / lumped('supply')).toBeCloseTo(1, 6);
  });

  it('needs a whole number of outlets', () => {
    const ladder = { id: 'b', from: 'feed', piece: pipe(0.02), k: K, elevation: 0 };
    expect(() => orificeLadder({ ...ladder, outlets: 0 })).toThrow(/outlets of 'b' is 0/);
    expect(() => orificeLadder({ ...ladder, outlets: 1.5 })).toThrow(RangeError);
  });
});
