import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readInp } from '../../test/inp-network.ts';
import { randomSource } from '../../test/random-source.ts';
import { compileNetwork, type CompiledNetwork, type NetworkModel, type Variable } from './index.ts';

const folder = new URL('../../reference/hydraulics/networks/', import.meta.url);
const model = (name: string): NetworkModel =>
  readInp(readFileSync(new URL(`${name}.inp`, folder), 'utf8'), 'colebrook').model;

function compiled(of: NetworkModel): CompiledNetwork {
  const result = compileNetwork(of);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.network;
}

/** Parameters of elements of the network, some of each kind that matters, spread by 30 % each side. */
function variablesOf(of: NetworkModel, network: CompiledNetwork, count: number): Variable[] {
  const found: Variable[] = [];
  const add = (element: number, parameter: 'k' | 'length' | 'bore' | 'speed'): void => {
    if (element >= 0 && found.length < count) found.push({ element, parameter });
  };
  const longest = of.elements.reduce(
    (best, e, i) => (e.law.kind === 'pipe' && e.law.length > network.get(best, 'length') ? i : best),
    of.elements.findIndex((e) => e.law.kind === 'pipe'),
  );
  add(
    of.elements.findIndex((e) => e.law.kind === 'orifice'),
    'k',
  );
  add(longest, 'length');
  add(
    of.elements.findIndex((e) => e.law.kind === 'centrifugal-pump'),
    'speed',
  );
  add(longest, 'bore');
  return found;
}

describe('A batch of variations', () => {
  it.each(
    ['net01', 'net02', 'net03', 'net04', 'net05', 'net06'].flatMap((n) =>
      [1, 2, 3, 4].map((d) => [n, d] as const),
    ),
  )('of %s in %d variables gives the flows of single solves to 1e-6', (name, dimensions) => {
    const of = model(name);
    const batch = compiled(of);
    const variables = variablesOf(of, batch, dimensions);
    const first = variables.map((v) => (v.parameter === 'surface' ? 0 : batch.get(v.element, v.parameter)));
    const r = randomSource(dimensions);
    const rows = 1000;
    const values = Float64Array.from({ length: rows * variables.length }, (_, i) => {
      const k = i % variables.length;
      const spread = variables[k]!.parameter === 'bore' || variables[k]!.parameter === 'speed' ? 0.05 : 0.3;
      return first[k]! * r.between(1 - spread, 1 + spread);
    });
    const outputs = of.elements.flatMap((e, i) => (e.law.kind === 'orifice' ? [i] : []));
    const flows = new Float64Array(rows * outputs.length);
    const failed = new Uint8Array(rows);
    expect(batch.solveMany(variables, values, outputs, flows, failed)).toBe(0);
    expect(failed.every((f) => f === 0)).toBe(true);
    const single = compiled(of);
    let worst = 0;
    for (let row = 0; row < rows; row += 7) {
      variables.forEach((v, k) => {
        if (v.parameter !== 'surface')
          single.set(v.element, v.parameter, values[row * variables.length + k]!);
      });
      single.solve({ start: 'cold' });
      outputs.forEach((e, k) => {
        const exact = single.flow(e);
        worst = Math.max(
          worst,
          Math.abs(flows[row * outputs.length + k]! - exact) / Math.max(Math.abs(exact), 1e-7),
        );
      });
    }
    expect(worst).toBeLessThan(1e-6);
    variables.forEach((v, k) => {
      if (v.parameter !== 'surface') expect(batch.get(v.element, v.parameter)).toBe(first[k]);
    });
  });

  it('varies the level of a tank like any other number', () => {
    const of = model('net03');
    const batch = compiled(of);
    const tank = of.nodes.findIndex((n) => n.surface !== undefined);
    const tip = of.elements.findIndex((e) => e.law.kind === 'orifice');
    const levels = Float64Array.from({ length: 200 }, (_, i) => 0.3 + i / 400);
    const flows = new Float64Array(200);
    expect(batch.solveMany([{ node: tank, parameter: 'surface' }], levels, [tip], flows)).toBe(0);
    for (let i = 1; i < 200; i++) expect(flows[i]).toBeGreaterThan(flows[i - 1]!);
    const single = compiled(of);
    single.setSurface(tank, levels[120]!);
    single.solve();
    expect(flows[120]! / single.flow(tip)).toBeCloseTo(1, 8);
  });

  it.each([1, 2, 3])('writes over all of %i outputs that nothing flows through', (count) => {
    const of = model('net05');
    const longest = of.elements.findIndex((e) => e.law.kind === 'pipe' && e.law.length > 5);
    const tips = of.elements.flatMap((e, i) => (e.law.kind === 'orifice' ? [i] : [])).slice(0, count);
    const shut = compiled({
      ...of,
      elements: of.elements.map((e) => (e.law.kind === 'orifice' ? { ...e, open: false } : e)),
    });
    const lengths = Float64Array.from({ length: 300 }, (_, i) => 10 + i / 100);
    const flows = new Float64Array(300 * tips.length).fill(1);
    expect(shut.solveMany([{ element: longest, parameter: 'length' }], lengths, tips, flows)).toBe(0);
    expect(flows.every((q) => q === 0)).toBe(true);
  });

  it('refuses a bad value before anything is changed', () => {
    const of = model('net03');
    const batch = compiled(of);
    const tip = of.elements.findIndex((e) => e.law.kind === 'orifice');
    const before = batch.get(tip, 'k');
    const call = (): number =>
      batch.solveMany(
        [{ element: tip, parameter: 'k' }],
        Float64Array.of(before, -1),
        [tip],
        new Float64Array(2),
      );
    expect(call).toThrow(/k is -1.*in row 1|row 1.*k is -1/s);
    expect(batch.get(tip, 'k')).toBe(before);
  });
});
