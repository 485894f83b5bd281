import { readFileSync } from 'node:fs';
import { readNetwork, solveNetwork, type NetworkModel } from '@spraywright/engine/hydraulics';
import { describe, expect, it } from 'vitest';
import { networkTable } from './network-text.ts';

function demo(name: string): NetworkModel {
  const file = new URL(`../../../../demo/networks/${name}.json`, import.meta.url);
  const reading = readNetwork(JSON.parse(readFileSync(file, 'utf8')));
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.model;
}

describe('A solved network as text', () => {
  it('has a row for every node and every element, in the units asked for', () => {
    const model = demo('reel-and-return');
    const result = solveNetwork(model);
    const us = networkTable(result, 'us').split('\n');
    for (const { id } of [...model.nodes, ...model.elements])
      expect(
        us.filter((line) => line.startsWith(`${id} `)),
        id,
      ).toHaveLength(1);
    const row = us.find((line) => line.startsWith('tip '))!;
    expect(row).toMatch(/ 5\.1 gpm .* 308 psi .* flowing$/);
    expect(networkTable(result, 'metric')).toMatch(/\ntip .* 19\.2 L\/min .* 21\.3 bar .* flowing\n/);
  });

  it('says what is undefined behind shut valves, and what an on-demand pump swings between', () => {
    const model: NetworkModel = {
      liquid: { density: 1000, viscosity: 1e-3 },
      nodes: [
        { id: 'tank', elevation: 0, surface: 1 },
        { id: 'out', elevation: 0 },
        { id: 'air', elevation: 0, atmosphere: true },
        { id: 'behind', elevation: 0 },
      ],
      elements: [
        {
          id: 'pump',
          from: 'tank',
          to: 'out',
          law: {
            kind: 'demand-pump',
            curve: [
              { flow: 0, pressure: 5.5e5 },
              { flow: 2e-4, pressure: 0 },
            ],
            switchOff: 4e5,
            switchOn: 3e5,
          },
        },
        { id: 'tip', from: 'out', to: 'air', law: { kind: 'orifice', k: 1e-8 } },
        { id: 'valve', from: 'out', to: 'behind', law: { kind: 'flow-factor', k: 1e-6 }, open: false },
      ],
    };
    const text = networkTable(solveNetwork(model), 'metric');
    expect(text).toMatch(/\nbehind +0 m +undefined +undefined\n/);
    // k sqrt(p) at 3 and at 4 bar.
    expect(text).toContain('tip swings between 0.33 L/min and 0.38 L/min as the pump switches on and off.');
    expect(text).toMatch(/Note: pump pump switches on and off/);
  });

  it('says why there is no steady state and what is wrong with a model', () => {
    const model = demo('boom-loop');
    const unsound = solveNetwork({ ...model, elements: [...model.elements, model.elements[0]!] });
    expect(networkTable(unsound, 'us')).toMatch(
      /^The network cannot be solved:\n {2}element 'suction-hose' is there twice$/,
    );
    const ring = solveNetwork({
      ...model,
      nodes: [...model.nodes, { id: 'x', elevation: 0 }, { id: 'y', elevation: 0 }],
      elements: [
        ...model.elements,
        { ...model.elements[1]!, id: 'lost-pump', from: 'x', to: 'y' },
        { id: 'lost-hose', from: 'y', to: 'x', law: { kind: 'flow-factor', k: 1e-6 } },
      ],
    });
    expect(networkTable(ring, 'us')).toMatch(/^No steady state: pump lost-pump feeds back to its own inlet/);
  });
});
