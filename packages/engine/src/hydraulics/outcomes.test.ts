import { describe, expect, it } from 'vitest';
import {
  compileNetwork,
  solveNetwork,
  type ElementLaw,
  type NetworkElement,
  type NetworkModel,
  type NetworkNode,
  type NetworkResult,
} from './index.ts';

const BAR = 1e5;
const LPM = 1 / 60000;
const WEIGHT = 1000 * 9.80665;

const pump: ElementLaw = {
  kind: 'positive-displacement-pump',
  displacement: (20 * LPM) / 100,
  speed: 100,
  slip: LPM / (20 * BAR),
  ratedPressure: 40 * BAR,
};
const tip: ElementLaw = { kind: 'orifice', k: (5 * LPM) / Math.sqrt(BAR) };
const hose: ElementLaw = { kind: 'pipe', length: 10, bore: 0.0127, roughness: 1e-5 };
const check: ElementLaw = { kind: 'check-valve', bore: 0.0127, lossCoefficient: 2 };

/** Elements as 'id from to'; nodes in use stand at height 0 unless told otherwise; tank and air are fixed. */
function model(
  elements: Readonly<Record<string, ElementLaw>>,
  nodes: readonly NetworkNode[] = [],
  shut: readonly string[] = [],
): NetworkModel {
  const list = Object.entries(elements).map(([line, law]): NetworkElement => {
    const [id, from, to] = line.split(' ') as [string, string, string];
    return { id, from, to, law, open: !shut.includes(id) };
  });
  const all = new Map<string, NetworkNode>([
    ['tank', { id: 'tank', elevation: 0, surface: 1 }],
    ['air', { id: 'air', elevation: 0, atmosphere: true }],
  ]);
  for (const { from, to } of list)
    for (const id of [from, to]) if (!all.has(id)) all.set(id, { id, elevation: 0 });
  for (const node of nodes) all.set(node.id, node);
  return { liquid: { density: 1000, viscosity: 1e-3 }, nodes: [...all.values()], elements: list };
}

const at = (result: NetworkResult, id: string): number | null =>
  result.nodes.find((n) => n.id === id)!.pressure;
const element = (result: NetworkResult, id: string) => result.elements.find((e) => e.id === id)!;
const codes = (result: NetworkResult): string[] => result.notes.map((n) => n.code);

describe('What a network without an ordinary steady state says', () => {
  it('a pump against a shut line is at its dead-head pressure, reported against its rating', () => {
    const result = solveNetwork(model({ 'p tank out': pump, 'h out in': hose, 't in air': tip }, [], ['t']));
    expect(result.status).toBe('converged');
    expect(element(result, 'p')).toMatchObject({ flow: 0, state: 'dead-head' });
    // 20 l/min slip at 400 bar, from a tank that stands 1 m above.
    expect(at(result, 'out')! / (400 * BAR + WEIGHT)).toBeCloseTo(1, 9);
    expect(at(result, 'in')).toBe(at(result, 'out'));
    expect(codes(result)).toEqual(expect.arrayContaining(['dead-head', 'above-rating']));
  });

  it('a pump that feeds back on itself with no way out has no steady state', () => {
    const result = solveNetwork(
      model({ 'p tank out': pump, 't out air': tip, 'lost a b': pump, 'back b a': hose }),
    );
    expect(result).toMatchObject({
      status: 'failed',
      reason: { code: 'pump-recirculates', ids: ['lost'] },
      nodes: [],
    });
  });

  it('a network with neither tank nor outlet is refused', () => {
    const closed = model({ 'p a b': pump, 'h b a': hose });
    const compiled = compileNetwork({ ...closed, nodes: closed.nodes.filter((n) => n.id.length === 1) });
    expect(compiled).toMatchObject({ ok: false, problems: [{ code: 'no-path-to-tank-or-atmosphere' }] });
  });

  it('check valves that face each other pass nothing and are named', () => {
    const result = solveNetwork(
      model({
        'p tank out': pump,
        't out air': tip,
        'one out x': check,
        'other y x': check,
        'h y air': hose,
      }),
    );
    expect(result.status).toBe('converged');
    expect(element(result, 'one').flow).toBe(0);
    expect(result.notes.find((n) => n.code === 'check-valves-facing')!.ids.toSorted()).toEqual([
      'one',
      'other',
    ]);
  });

  it('a drooping pump curve is refused, or levelled when asked to', () => {
    const drooping = (law: object): ElementLaw => ({
      kind: 'centrifugal-pump',
      curve: [
        { flow: 0, head: 20 },
        { flow: 10 * LPM, head: 22 },
        { flow: 40 * LPM, head: 5 },
      ],
      ...law,
    });
    const refused = solveNetwork(model({ 'p tank out': drooping({}), 't out air': tip }));
    expect(refused).toMatchObject({ status: 'failed', problems: [{ code: 'drooping-curve', ids: ['p'] }] });
    const levelled = solveNetwork(model({ 'p tank out': drooping({ drooping: 'level' }), 't out air': tip }));
    expect(levelled.status).toBe('converged');
    expect(at(levelled, 'out')! / WEIGHT).toBeLessThan(21);
  });
});

describe('What nothing flows through', () => {
  const feed = { 'p tank out': pump, 't out air': tip } as const;

  it('a shut boom section stands at the pressure outside its lowest tip', () => {
    const air = (id: string, elevation: number): NetworkNode => ({ id, elevation, atmosphere: true });
    const result = solveNetwork(
      model(
        { ...feed, 'v out s1': hose, 'b s1 s2': hose, 't1 s1 a1': tip, 't2 s2 a2': tip },
        [air('a1', 0.5), air('a2', 0.3)],
        ['v'],
      ),
    );
    expect(result.status).toBe('converged');
    expect(at(result, 's1')! / WEIGHT).toBeCloseTo(0.3, 9);
    expect(at(result, 's2')! / WEIGHT).toBeCloseTo(0.3, 9);
    expect(codes(result)).toEqual([]);
  });

  it('a hose shut off from its pump drains through its one tip', () => {
    const result = solveNetwork(
      model({ ...feed, 'v out x': hose, 'h x y': hose, 'g y air': tip }, [], ['v']),
    );
    expect(at(result, 'x')).toBeCloseTo(0, 6);
    expect(at(result, 'y')).toBeCloseTo(0, 6);
  });

  it('a pocket behind a check valve keeps the highest pressure that got in', () => {
    const result = solveNetwork(model({ ...feed, 'c out x': check, 'h x y': hose }));
    expect(at(result, 'y')! / at(result, 'out')!).toBeCloseTo(1, 9);
  });

  it('a pocket shut off on all sides has no pressure, and the note names it', () => {
    const result = solveNetwork(model({ ...feed, 'v out x': hose, 'h x y': hose }, [], ['v']));
    expect(result.status).toBe('converged');
    expect(at(result, 'x')).toBeNull();
    expect(result.notes).toMatchObject([{ code: 'isolated', ids: ['x', 'y'] }]);
    expect(JSON.stringify(result)).not.toContain('NaN');
  });
});

describe('A loop that nothing drives', () => {
  const fitting = (lossCoefficient: number): ElementLaw => ({ kind: 'fitting', bore: 0.04, lossCoefficient });
  const strainer: ElementLaw = { kind: 'strainer', k: 5e-6 };
  const feed = { 'p tank out': pump, 'h out y': hose, 't y air': tip } as const;
  const loops = {
    'of two fittings side by side': { 'a y z': fitting(0.14), 'b z y': fitting(0.11) },
    'of three ways': { 'a y z': fitting(0.14), 'b z y': fitting(0.11), 'c y z': strainer },
    'of two loops, one hanging on the other': {
      'a y z': fitting(0.14),
      'b z x': fitting(0.11),
      'c x y': strainer,
      'd x w': fitting(0.2),
      'e w x': strainer,
    },
    'through a check valve': { 'a y z': fitting(0.14), 'b z y': check },
    'from the tank to the tank, behind a shut relief valve': {
      'r y z': { kind: 'relief-valve', setPressure: 390 * BAR, k: 1e-6 },
      'a z tank': fitting(0.14),
      'b tank z': fitting(0.11),
    },
  } satisfies Readonly<Record<string, Readonly<Record<string, ElementLaw>>>>;

  it.each(Object.entries(loops))('%s carries nothing at all, and has the head it hangs on', (_, loop) => {
    const compiled = compileNetwork(model({ ...feed, ...loop }));
    if (!compiled.ok) throw new Error(JSON.stringify(compiled.problems));
    const { network } = compiled;
    const still = Object.keys(loop).map((line) => network.elementIndex(line.split(' ')[0]!));
    const heads = Object.keys(loop).flatMap((line) => line.split(' ').slice(1));
    for (const start of ['cold', 'warm', 'warm'] as const) {
      expect(network.solve({ start }).status).toBe('converged');
      for (const e of still) expect(Math.abs(network.flow(e))).toBe(0);
      for (const id of new Set(heads)) {
        const hangsOn = network.head(network.nodeIndex('r y z' in loop && id !== 'y' ? 'tank' : 'y'))!;
        expect(network.head(network.nodeIndex(id))! / hangsOn).toBeCloseTo(1, 12);
      }
      network.set(
        network.elementIndex('h'),
        'length',
        network.get(network.elementIndex('h'), 'length') * 1.3,
      );
    }
  });

  it('is found still where twelve thousand of them hang on one another', () => {
    const chain: Record<string, ElementLaw> = { ...feed, 'a0 y n0': fitting(0.14), 'b0 y n0': fitting(0.14) };
    for (let i = 1; i < 12_000; i++)
      for (const way of ['a', 'b']) chain[`${way}${i} n${i - 1} n${i}`] = fitting(0.14);
    const compiled = compileNetwork(model(chain));
    if (!compiled.ok) throw new Error(JSON.stringify(compiled.problems));
    const { network } = compiled;
    expect(network.solve().status).toBe('converged');
    for (let e = 3; e < network.elementCount; e++) expect(Math.abs(network.flow(e))).toBe(0);
  });

  it('with a pump in it is driven', () => {
    const small: ElementLaw = { ...pump, displacement: LPM / 100 };
    const compiled = compileNetwork(model({ ...feed, 'q y z': small, 'b z y': fitting(0.11) }));
    if (!compiled.ok) throw new Error(JSON.stringify(compiled.problems));
    const { network } = compiled;
    expect(network.solve().status).toBe('converged');
    expect(network.flow(network.elementIndex('q')) / LPM).toBeCloseTo(1, 3);
    expect(network.flow(network.elementIndex('b'))).toBe(network.flow(network.elementIndex('q')));
  });
});

describe('A network whose outlet is carried to another height', () => {
  const line = { 'pump tank a': pump, 'hose a b': hose, 'tip b air': tip };
  const lifted = (height: number): NetworkModel =>
    model(line, [
      { id: 'b', elevation: height },
      { id: 'air', elevation: height, atmosphere: true },
    ]);
  const made = (of: NetworkModel) => {
    const result = compileNetwork(of);
    if (!result.ok) throw new Error(result.problems.map((p) => p.message).join('; '));
    return result.network;
  };

  it('gives the figures of one that was made at that height', () => {
    const moved = made(lifted(0));
    const low = moved.solve({ start: 'cold' }).status === 'converged' ? moved.flow(2) : NaN;
    for (const id of ['b', 'air']) moved.setElevation(moved.nodeIndex(id), 12);
    const fresh = made(lifted(12));
    expect(moved.solve({ start: 'cold' }).status).toBe('converged');
    fresh.solve();
    expect(moved.flow(2)).toBe(fresh.flow(2));
    for (let node = 0; node < 4; node++) expect(moved.pressure(node)).toBe(fresh.pressure(node));
    expect(moved.flow(2)).toBeLessThan(low);
  });

  it('refuses a height that is no number, and a node that is not there', () => {
    const network = made(lifted(0));
    expect(() => network.setElevation(network.nodeIndex('b'), NaN)).toThrow("elevation of node 'b' is NaN m");
    expect(() => network.setElevation(9, 1)).toThrow('node 9 is not there');
  });
});
