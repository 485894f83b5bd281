import {
  dutySolver,
  liquidOf,
  proveRig,
  readRig,
  siteOf,
  type Proof,
  type Rig,
} from '@spraywright/engine/rig';
import { beforeAll, describe, expect, it } from 'vitest';
import { demoBriefs, demoCatalogue, demoRig, demoShop } from './demo.ts';
import { firstBadNumber } from './mutation.ts';

const catalogue = demoCatalogue();
const shop = demoShop();
const names = demoBriefs().map((b) => b.name);
const rigs = new Map<string, { raw: unknown; rig: Rig; proof: Proof }>();

beforeAll(() => {
  for (const name of names) {
    const { raw, rig } = demoRig(name, catalogue, shop);
    rigs.set(name, { raw, rig, proof: proveRig(rig, catalogue, shop) });
  }
});

/** The rig with one item changed, read and proven again. */
function changed(name: string, item: string, change: Record<string, unknown>): Proof {
  const raw = structuredClone(rigs.get(name)!.raw) as { items: { id: string }[] };
  Object.assign(
    raw.items.find((i) => i.id === item)!,
    change,
  );
  const rig = readRig(raw, catalogue);
  if (!rig.ok) throw new Error(rig.problems[0]!.message);
  return proveRig(rig.rig, catalogue, shop);
}

const gunFlows = (proof: Proof) =>
  proof.duties.map((d) => d.open.outlets.find((o) => o.line === 'gun')?.flow ?? 0);

describe('the rig found for each demo brief', () => {
  it.each(names)('%s solves every duty', (name) => {
    for (const duty of rigs.get(name)!.proof.duties)
      for (const state of [duty.open, duty.dirty, duty.shut])
        expect(state.status, state.reason).toBe('converged');
  });

  it.each(names)('%s has no bad number and every promise tells cause, method and source', (name) => {
    const { proof } = rigs.get(name)!;
    expect(firstBadNumber(proof)).toBeUndefined();
    for (const p of proof.promises) {
      expect(p.cause, p.id).not.toBe('');
      expect(p.method, p.id).not.toBe('');
      expect(p.source, p.id).not.toBe('');
    }
    expect(new Set(proof.promises.map((p) => p.id)).size).toBe(proof.promises.length);
  });

  it.each(names)('%s is proven the same twice, and reads the same in metric units', (name) => {
    const { rig, proof } = rigs.get(name)!;
    expect(proveRig(rig, catalogue, shop)).toEqual(proof);
    const metric = proveRig(rig, catalogue, shop, { units: 'metric' });
    expect(metric.promises.map((p) => [p.id, p.has, p.asked, p.state])).toEqual(
      proof.promises.map((p) => [p.id, p.has, p.asked, p.state]),
    );
  });

  it.each(names)('%s has a bill whose lines add up and whose joints are all made', (name) => {
    const { bill } = rigs.get(name)!.proof;
    expect(bill.plumbing.gaps).toEqual([]);
    expect(bill.lines.reduce((sum, l) => sum + l.priceCents, 0)).toBe(bill.priceCents);
    expect(bill.lines.reduce((sum, l) => sum + l.costCents, 0)).toBe(bill.costCents);
    expect(Number.isInteger(bill.priceCents)).toBe(true);
    expect(bill.priceCents).toBeGreaterThan(bill.costCents);
  });

  it.each(names)('%s takes liquid from the tank as much as it gives back and sprays', (name) => {
    for (const { open } of rigs.get(name)!.proof.duties) {
      const sprayed = open.outlets.reduce((sum, o) => sum + o.flow, 0);
      const returned = rigs
        .get(name)!
        .rig.lines.filter((l) => l.to === 'tank')
        .reduce((sum, l) => sum + (open.flowThrough.get(l.run[l.run.length - 1]!) ?? 0), 0);
      expect(sprayed + returned).toBeCloseTo(open.pump!.flow, 9);
    }
  });
});

describe('the network of a rig', () => {
  it.each(names)(
    '%s gives the same when it is set from duty to duty as when it is compiled for each',
    (name) => {
      const { rig, proof } = rigs.get(name)!;
      for (const { duty, open, dirty, shut } of proof.duties) {
        const alone = dutySolver(rig, false)(duty, liquidOf(rig.brief, duty.liquid, siteOf(rig.brief)));
        for (const [a, b] of [
          [open, alone.open],
          [dirty, alone.dirty],
          [shut, alone.shut],
        ] as const) {
          expect([a.status, a.states, a.pump?.item]).toEqual([b.status, b.states, b.pump?.item]);
          expect(a.pump!.flow).toBeCloseTo(b.pump!.flow, 9);
          for (const end of ['inlet', 'outlet'] as const)
            expect(a.pump![end]! / 1e5, end).toBeCloseTo(b.pump![end]! / 1e5, 6);
          expect(a.highestPressure / 1e5).toBeCloseTo(b.highestPressure / 1e5, 6);
          expect(a.outlets.map((o) => o.line)).toEqual(b.outlets.map((o) => o.line));
          for (const [i, { line, flow, tipPressure }] of a.outlets.entries()) {
            expect(flow, line).toBeCloseTo(b.outlets[i]!.flow, 9);
            expect(tipPressure / 1e5, line).toBeCloseTo(b.outlets[i]!.tipPressure / 1e5, 6);
          }
        }
        expect([...open.flowThrough.keys()]).toEqual([...alone.open.flowThrough.keys()]);
        for (const [item, flow] of open.flowThrough)
          expect(flow, item).toBeCloseTo(alone.open.flowThrough.get(item)!, 9);
        for (const [a, b] of [
          [open, alone.open],
          [shut, alone.shut],
        ] as const)
          for (const [item, p] of a.pressureAt)
            expect(p / 1e5, item).toBeCloseTo(b.pressureAt.get(item)! / 1e5, 6);
      }
    },
  );
});

describe('a change of one part', () => {
  const guns = names.filter((n) => !['nurse-trailer', 'road-dust'].includes(n));

  it.each(guns)('%s: longer hose on the reel never gives more at the gun', (name) => {
    const before = gunFlows(rigs.get(name)!.proof);
    gunFlows(changed(name, 'hose', { length: '400 ft' })).forEach((flow, i) =>
      expect(flow).toBeLessThanOrEqual(before[i]! + 1e-12),
    );
  });

  it.each(guns)('%s: narrower hose never gives more at the gun', (name) => {
    const { rig } = rigs.get(name)!;
    const now = rig.items.get('hose')!.part as { bore: number };
    const narrower = catalogue.byKind.hose.filter((h) => h.use !== 'suction' && h.bore < now.bore * 0.95);
    const before = gunFlows(rigs.get(name)!.proof);
    for (const hose of narrower)
      gunFlows(changed(name, 'hose', { part: hose.id })).forEach((flow, i) =>
        expect(flow).toBeLessThanOrEqual(before[i]! + 1e-12),
      );
  });

  it('a higher set pressure never gives less at the gun and never less reach', () => {
    const flows = ['200 psi', '300 psi', '400 psi'].map((set) => changed('tall-elms', 'regulator', { set }));
    for (let i = 1; i < flows.length; i++) {
      gunFlows(flows[i]!).forEach((flow, k) =>
        expect(flow).toBeGreaterThanOrEqual(gunFlows(flows[i - 1]!)[k]! - 1e-12),
      );
      flows[i]!.duties.forEach((d, k) =>
        expect(d.reach!.bulk).toBeGreaterThanOrEqual(flows[i - 1]!.duties[k]!.reach!.bulk),
      );
    }
  });

  it('the bulk is never promised farther than the farthest drops, and 9 in 10 lies below the middle', () => {
    for (const { proof } of rigs.values())
      for (const { reach } of proof.duties) {
        if (reach === undefined) continue;
        expect(reach.bulk).toBeLessThanOrEqual(reach.farthest);
        expect(reach.promised).toBeLessThan(reach.meaning === 'wetted' ? reach.bulk : reach.farthest);
        expect(reach.band5).toBeLessThan(reach.promised);
      }
  });
});
