import {
  PALETTES,
  partNumbers,
  plumbingDiagram,
  plumbingGraph,
  type PlumbingLayout,
} from '@spraywright/engine/drawings';
import { proveRig, shutInDuty, valvesOf, valveState, type Proof, type Rig } from '@spraywright/engine/rig';
import { beforeAll, describe, expect, it } from 'vitest';
import { layPlumbing } from '../src/plumbing/lay-plumbing.ts';
import { nodeKernel } from '../src/plumbing/node-kernel.ts';
import { demoBriefs, demoCatalogue, demoRig, demoShop } from './demo.ts';

const names = demoBriefs().map((b) => b.name);
const rigs = new Map<string, { rig: Rig; proof: Proof }>();

beforeAll(() => {
  const [catalogue, shop] = [demoCatalogue(), demoShop()];
  for (const name of names) {
    const { rig } = demoRig(name, catalogue, shop);
    rigs.set(name, { rig, proof: proveRig(rig, catalogue, shop) });
  }
});

const lay = (rig: Rig, run: 'right' | 'down') => layPlumbing(plumbingGraph(rig, run), nodeKernel());

function overlaps({ nodes }: PlumbingLayout): string[] {
  const boxes = Object.entries(nodes);
  return boxes.flatMap(([a, p], i) =>
    boxes
      .slice(i + 1)
      .filter(
        ([, q]) => p.x < q.x + q.width && q.x < p.x + p.width && p.y < q.y + q.height && q.y < p.y + p.height,
      )
      .map(([b]) => `${a} and ${b}`),
  );
}

describe.each(names)('the plumbing diagram of %s', (name) => {
  it.each(['right', 'down'] as const)('laid %s is the same twice, with room for every part', async (run) => {
    const { rig } = rigs.get(name)!;
    const layout = await lay(rig, run);
    expect(await lay(rig, run)).toEqual(layout);
    expect(overlaps(layout)).toEqual([]);
    const inLines = rig.lines.flatMap((l) => l.run);
    expect(Object.keys(layout.nodes)).toEqual(expect.arrayContaining(['tank', ...inLines]));
  });

  it.each(['right', 'down'] as const)(
    'laid %s has lines at right angles that end at what they join',
    async (run) => {
      const { rig } = rigs.get(name)!;
      const graph = plumbingGraph(rig, run);
      const layout = await layPlumbing(graph, nodeKernel());
      for (const { id, from, to } of graph.edges) {
        const points = layout.edges[id]!;
        expect(points.length, id).toBeGreaterThan(1);
        for (const [i, [x, y]] of points.entries())
          if (i > 0) expect(x === points[i - 1]![0] || y === points[i - 1]![1], id).toBe(true);
        for (const [node, end] of [
          [from[0], points[0]!],
          [to[0], points.at(-1)!],
        ] as const) {
          const box = layout.nodes[node]!;
          expect(end[0], id).toBeGreaterThanOrEqual(box.x - 1e-6);
          expect(end[0], id).toBeLessThanOrEqual(box.x + box.width + 1e-6);
          expect(end[1], id).toBeGreaterThanOrEqual(box.y - 1e-6);
          expect(end[1], id).toBeLessThanOrEqual(box.y + box.height + 1e-6);
        }
      }
    },
  );

  it('names every part of its lines by its number, and is told in one sentence', async () => {
    const { rig, proof } = rigs.get(name)!;
    const duty = proof.duties[0]!;
    const svg = plumbingDiagram(proof, plumbingGraph(rig, 'right'), await lay(rig, 'right'), duty.open, {
      width: 828,
      units: 'us',
      palette: PALETTES.print,
      shut: shutInDuty(rig, duty.duty),
      level: duty.duty.tankLevel,
    });
    expect(svg).not.toMatch(/NaN|Infinity|undefined/);
    expect(svg).toContain(`<title>Plumbing of ${proof.title}`);
    const numbers = partNumbers(proof);
    for (const item of rig.lines.flatMap((l) => l.run)) {
      expect(svg).toContain(`data-item="${item}"`);
      expect(svg).toContain(`>${numbers.get(item)}</text>`);
    }
  });
});

describe.each(names)('the valves of %s', (name) => {
  it('all open as in the duty, it stands as the proof says', () => {
    const { rig, proof } = rigs.get(name)!;
    for (const { duty, open } of proof.duties) {
      const state = valveState(rig, duty, new Set());
      for (const [i, outlet] of open.outlets.entries())
        expect(state.outlets[i]!.flow / outlet.flow, duty.id).toBeCloseTo(1, 6);
    }
  });

  it('a shut tank valve leaves the pump without liquid, and nothing comes out', () => {
    const { rig, proof } = rigs.get(name)!;
    const { duty } = proof.duties[0]!;
    const state = valveState(rig, duty, new Set(['tank-valve']));
    expect(state.pump!.inlet).toBeNull();
    for (const outlet of state.outlets) expect(Math.abs(outlet.flow)).toBeLessThan(1e-9);
  });

  it('shutting what leads an outlet gives the state with all outlets shut, where it is the only one', () => {
    const { rig, proof } = rigs.get(name)!;
    for (const { duty, shut } of proof.duties) {
      const leads = valvesOf(rig).filter((v) => v.leads && duty.open.some((o) => o === v.line.opens));
      if (duty.open.length !== 1 || leads.length !== 1) continue;
      const state = valveState(rig, duty, new Set([leads[0]!.item]));
      expect(state.pump!.outlet! / shut.pump!.outlet!, duty.id).toBeCloseTo(1, 4);
    }
  });
});
