import { changed } from '@spraywright/engine/quantity';
import {
  aimDuty,
  alternatives,
  byUse,
  partsInstead,
  proveRig,
  putPart,
  readRig,
  slotsOf,
  trialsOf,
  waysOut,
  type Proof,
  type RawRig,
  type Trials,
} from '@spraywright/engine/rig';
import { beforeAll, describe, expect, it } from 'vitest';
import { demoBriefs, demoCatalogue, demoRig, demoShop } from './demo.ts';

const catalogue = demoCatalogue();
const shop = demoShop();
const names = demoBriefs().map((b) => b.name);
const all = new Map<string, Trials>();

beforeAll(() => {
  for (const name of names) {
    const { raw, rig } = demoRig(name, catalogue, shop);
    const proof = proveRig(rig, catalogue, shop, { notes: false });
    all.set(name, trialsOf({ raw: raw as RawRig, rig, proof }, catalogue, shop));
  }
});

/** Parts spread over a list: the cheapest, the dearest and some between. */
function spread<T>(list: readonly T[], most: number): T[] {
  return list.filter((_, i) => i === list.length - 1 || i % Math.ceil(list.length / most) === 0);
}

/** The first document with each number of the second where the two agree to 1e-6 of it. */
function near(one: unknown, two: unknown): unknown {
  if (typeof one === 'number' && typeof two === 'number')
    return Math.abs(one - two) <= 1e-6 * Math.abs(two) ? two : one;
  if (Array.isArray(one) && Array.isArray(two)) return one.map((v, i) => near(v, two[i]));
  if (typeof one !== 'object' || one === null || typeof two !== 'object' || two === null) return one;
  const other = two as Record<string, unknown>;
  return Object.fromEntries(Object.entries(one).map(([key, v]) => [key, near(v, other[key])]));
}

/** Equal but for the last digits of what the solver iterates: friction curves are kept from solve to solve. */
function sameProof(a: Proof, b: Proof, what: string): void {
  const told = (proof: Proof) => proof.promises.map((p) => [p.id, p.state, p.sentence, p.items]);
  expect(told(a), what).toEqual(told(b));
  a.promises.forEach((p, i) => {
    const other = b.promises[i]!;
    for (const [x, y] of [
      [p.has?.value, other.has?.value],
      [p.asked?.value, other.asked?.value],
      [p.margin, other.margin],
    ])
      if (x !== y) expect(Math.abs(x! - y!), `${what}: ${p.id}`).toBeLessThan(1e-6 * Math.abs(y!) + 1e-9);
  });
  // The pressures of its joints come from the solver too.
  expect(near(a.bill, b.bill), `${what}: bill`).toEqual(b.bill);
  expect(a.counts).toEqual(b.counts);
  expect(a.placement?.parts).toEqual(b.placement?.parts);
}

function fullProof(raw: unknown) {
  const read = readRig(raw, catalogue);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  return proveRig(read.rig, catalogue, shop, { notes: false });
}

describe('an alternative', () => {
  it.each(names)('%s: is proven in every slot as if its rig had been read and proven alone', (name) => {
    const trials = all.get(name)!;
    for (const { id } of slotsOf(trials.rig))
      for (const part of spread(partsInstead(trials.rig, catalogue, id), 5)) {
        const { change } = putPart(trials.raw, catalogue, id, part);
        const { document } = changed(trials.raw, change);
        sameProof(trials.prove(change)!, fullProof(document), `${id}: ${part.id}`);
      }
  });

  it.each(['tall-elms', 'road-dust'])(
    '%s: tells the change of price, mass and days that the two bills tell',
    (name) => {
      const trials = all.get(name)!;
      const before = trials.proof.bill;
      for (const { change, effect } of alternatives(trials, 'tank')) {
        const { bill } = fullProof(changed(trials.raw, change).document);
        expect(before.priceCents + effect.priceCents).toBe(bill.priceCents);
        expect(before.dryMass + effect.mass).toBeCloseTo(bill.dryMass, 9);
        expect(before.readyInDays + effect.days).toBe(bill.readyInDays);
      }
    },
  );

  it('is listed with least broken first, then the cheapest', () => {
    const list = byUse([...alternatives(all.get('tall-elms')!, 'pump')]);
    expect(list.length).toBeGreaterThan(10);
    for (let i = 1; i < list.length; i++) {
      const [a, b] = [list[i - 1]!.effect, list[i]!.effect];
      expect(
        a.counts.broken < b.counts.broken ||
          (a.counts.broken === b.counts.broken && a.priceCents <= b.priceCents),
      ).toBe(true);
    }
  });

  it('with a hose of half the bore breaks promises, and neither reach nor flow goes up', () => {
    const trials = all.get('tall-elms')!;
    const { bore } = trials.rig.items.get('hose')!.part as { bore: number };
    const narrow = [...alternatives(trials, 'hose')].filter(
      ({ part }) => part.kind === 'hose' && part.bore < bore * 0.55,
    );
    expect(narrow.length).toBeGreaterThan(0);
    for (const { effect } of narrow) {
      expect(effect.breaks.length).toBeGreaterThan(0);
      for (const { reach, flow } of effect.duties) {
        if (reach[0] !== undefined) expect(reach[1]!).toBeLessThanOrEqual(reach[0]);
        expect(flow[1]!).toBeLessThanOrEqual(flow[0]!);
      }
    }
  });

  it('is refused by name in a slot that the rig does not have', () => {
    const trials = all.get('tall-elms')!;
    expect(() => [...alternatives(trials, 'sail')]).toThrow(/slot is 'sail'; the rig has 'carrier'/);
  });
});

/** Ways out as found to the end. */
function found(trials: Trials) {
  const work = waysOut(trials, { pairs: 20 });
  let next = work.next();
  while (next.done !== true) {
    expect(next.value).toBeGreaterThan(0);
    expect(next.value).toBeLessThanOrEqual(1);
    next = work.next();
  }
  return next.value;
}

describe('a way out', () => {
  it('keeps the promise and every other when its rig is read and proven alone, the cheapest first', () => {
    const trials = all.get('tall-elms')!;
    const list = found(trials);
    expect(list.map((w) => w.promise.id)).toEqual(
      trials.proof.promises.filter((p) => ['broken', 'thin'].includes(p.state)).map((p) => p.id),
    );
    expect(list.some((w) => w.ways.length > 1)).toBe(true);
    for (const { promise, ways } of list)
      for (const way of ways) {
        const proof = fullProof(changed(trials.raw, way.change).document);
        expect(proof.promises.find((p) => p.id === promise.id)?.state, way.name).toBe('kept');
        for (const before of trials.proof.promises)
          if (before.state === 'kept' || before.state === 'thin')
            expect(proof.promises.find((p) => p.id === before.id)?.state ?? 'kept', way.name).not.toBe(
              'broken',
            );
        expect(proof.bill.priceCents - trials.proof.bill.priceCents).toBe(way.effect.priceCents);
      }
  });

  it('mends a broken reach by one change, or two, and offers to ask no more than the rig gives', () => {
    const whole = all.get('tall-elms')!;
    const { tip } = catalogue.byKind;
    // A tip of half the flow throws too little to reach the tops.
    const now = (whole.rig.items.get('tip')!.part as { flowAtOneBar: number }).flowAtOneBar;
    const fine = tip
      .filter((t) => t.flowAtOneBar < now * 0.6)
      .sort((a, b) => b.flowAtOneBar - a.flowAtOneBar)[0]!;
    const raw = changed(whole.raw, putPart(whole.raw, catalogue, 'tip', fine).change).document;
    const read = readRig(raw, catalogue);
    if (!read.ok) throw new Error(read.problems[0]!.message);
    const proof = proveRig(read.rig, catalogue, shop, { notes: false });
    const trials = trialsOf({ raw, rig: read.rig, proof }, catalogue, shop);
    const reach = found(trials).find((w) => w.promise.kind === 'reach' && w.promise.state === 'broken')!;
    const back = reach.ways.find((w) => w.slots.includes('tip'));
    expect(back, reach.ways.map((w) => w.name).join('; ')).toBeDefined();
    expect(
      fullProof(changed(raw, back!.change).document).promises.find((p) => p.id === reach.promise.id)?.state,
    ).not.toBe('broken');
    const asked = fullProof(changed(raw, reach.less!.change).document).promises.find(
      (p) => p.id === reach.promise.id,
    )!;
    expect(asked.state).not.toBe('broken');
    expect(asked.has!.value).toBeLessThan(reach.promise.asked!.value);
  });

  it('is found where one of the duties pays out no hose at all', () => {
    const { raw: whole } = all.get('three-point-pasture')!;
    const raw = changed(whole, aimDuty(whole, 'fence-row', 'height')).document;
    const read = readRig(raw, catalogue);
    if (!read.ok) throw new Error(read.problems[0]!.message);
    const proof = proveRig(read.rig, catalogue, shop, { notes: false });
    const list = found(trialsOf({ raw, rig: read.rig, proof }, catalogue, shop));
    const reach = list.find((w) => w.promise.id === 'reach:fence-row');
    expect(reach?.promise.state).toBe('broken');
    expect((reach?.ways.length ?? 0) + (reach?.less === undefined ? 0 : 1)).toBeGreaterThan(0);
  });
});
