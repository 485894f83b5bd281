import { workingDay } from '@spraywright/engine/physics';
import { hoseCurve, proveRig, type Proof, type Rig, type RigPromise } from '@spraywright/engine/rig';
import { beforeAll, describe, expect, it } from 'vitest';
import { proofText } from '../src/documents/proof-text.ts';
import { demoBriefs, demoCatalogue, demoRig, demoShop } from './demo.ts';

const catalogue = demoCatalogue();
const shop = demoShop();
const names = demoBriefs().map((b) => b.name);
const proofs = new Map<string, Proof>();
const rigs = new Map<string, Rig>();

beforeAll(() => {
  for (const name of names) {
    const { rig } = demoRig(name, catalogue, shop);
    rigs.set(name, rig);
    proofs.set(name, proveRig(rig, catalogue, shop));
  }
});

function promise(name: string, id: string): RigPromise {
  const found = proofs.get(name)!.promises.find((p) => p.id === id);
  if (found === undefined) throw new Error(`${name} has no promise '${id}'`);
  return found;
}
const caused = (name: string) =>
  proofs
    .get(name)!
    .cautions.filter((c) => c.state === 'caused')
    .map((c) => c.caution.id);

describe('the demo jobs', () => {
  it.each(names)('%s leaves no promise without a method', (name) => {
    const { promises } = proofs.get(name)!;
    for (const kind of ['rinse', 'day'] as const)
      expect(
        promises.some((p) => p.kind === kind),
        kind,
      ).toBe(true);
    for (const p of promises) expect(p.sentence, p.id).not.toMatch(/undefined|NaN|\[object/);
  });

  it.each(names)('%s has a day that balances, as its own input tells again', (name) => {
    const { day } = proofs.get(name)!;
    expect(day).toBeDefined();
    const { result, input } = day!;
    expect(result.filled).toBeCloseTo(result.sprayed + result.left, 9);
    expect(result.units).toBeGreaterThan(0);
    expect(workingDay(input)).toEqual(result);
    expect(day!.tanks!.sizes).toContain(input.tank);
  });

  it('show among them a day that a larger tank does not improve, and one that it does', () => {
    expect(proofs.get('utility-12v')!.day!.tanks!.largerHelps).toBe(false);
    expect(promise('utility-12v', 'day:work').cause).toContain('a larger tank does no more');
    expect(proofs.get('tall-elms')!.day!.tanks!.largerHelps).toBe(true);
  });

  it('show how much a longer hose brings: it saves moves and loses flow', () => {
    const lengths = [15, 30, 45, 60, 90];
    for (const name of ['tall-elms', 'roof-skid', 'light-cart', 'utility-12v']) {
      const curve = hoseCurve(rigs.get(name)!, proofs.get(name)!.day!, lengths)!;
      for (let i = 1; i < lengths.length; i++) {
        expect(curve.flows[i]!).toBeLessThanOrEqual(curve.flows[i - 1]! + 1e-12);
        expect(curve.stops[i]!).toBeLessThanOrEqual(curve.stops[i - 1]!);
      }
      expect(lengths).toContain(curve.paying);
    }
    expect(hoseCurve(rigs.get('road-dust')!, proofs.get('road-dust')!.day!, lengths)).toBeUndefined();
  });

  it('show a material without data that asks for a decision, and seals that no single rubber serves', () => {
    const undecided = promise('light-cart', 'materials:doubtful');
    expect(undecided.state).toBe('unknown');
    expect(undecided.working.some((s) => s.text.includes('no data'))).toBe(true);
    expect(undecided.decisions!.length).toBeGreaterThan(0);
    expect(promise('roof-skid', 'materials:seals').state).toBe('unknown');
  });

  it('say plainly where drift has no published curve, and keep a boom away from its neighbour', () => {
    expect(promise('tall-elms', 'pattern:drift:high-jet')).toMatchObject({ state: 'unknown' });
    expect(promise('tall-elms', 'pattern:drift:high-jet').cause).toContain('no published curve covers this');
    expect(promise('three-point-pasture', 'pattern:drift:boom').state).toBe('kept');
  });

  it('cover dose on ground, on trees, in pots and on lanes, strength, rinse, winter, transfer and hopper', () => {
    for (const [name, id] of [
      ['three-point-pasture', 'pattern:dose:pasture'],
      ['three-point-pasture', 'pattern:droplets:pasture:boom'],
      ['tall-elms', 'pattern:tree:tops'],
      ['light-cart', 'pattern:drench:drench'],
      ['road-dust', 'pattern:lane:first-coat'],
      ['road-dust', 'pattern:even:first-coat:bar'],
      ['roof-skid', 'liquid:strength:straight'],
      ['utility-12v', 'rinse:plan'],
      ['utility-12v', 'rinse:winter'],
      ['nurse-trailer', 'day:transfer'],
      ['nurse-trailer', 'day:hopper'],
      ['nurse-trailer', 'rinse:backflow'],
    ] as const)
      expect(['kept', 'thin'], `${name} ${id}: ${promise(name, id).cause}`).toContain(
        promise(name, id).state,
      );
  });

  it('bring up the cautions of their work', () => {
    expect(caused('three-point-pasture')).toEqual(
      expect.arrayContaining(['pto-shaft', 'lifting', 'exposure']),
    );
    expect(caused('roof-skid')).toEqual(expect.arrayContaining(['bleach-alone', 'roof', 'corrosive']));
    expect(caused('tall-elms')).toEqual(expect.arrayContaining(['injection', 'high-jet', 'towing']));
    expect(caused('utility-12v')).not.toContain('pto-shaft');
    expect(caused('utility-12v')).toContain('frost');
  });

  it('print each caution once with its source', () => {
    const proof = proofs.get('tall-elms')!;
    const text = proofText(proof, { units: 'us' });
    for (const { caution } of proof.cautions) {
      expect(text.split(caution.danger)).toHaveLength(2);
      expect(text).toContain(caution.origin.source);
    }
  });
});
