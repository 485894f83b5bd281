import { proveRig, readRig, type Proof, type RigPromise } from '@spraywright/engine/rig';
import { beforeAll, describe, expect, it } from 'vitest';
import { demoBriefs, demoCatalogue, demoRig, demoShop } from './demo.ts';

const catalogue = demoCatalogue();
const shop = demoShop();
const names = demoBriefs().map((b) => b.name);
const found = new Map<string, { raw: unknown; proof: Proof }>();

beforeAll(() => {
  for (const name of names) {
    const { raw, rig } = demoRig(name, catalogue, shop);
    found.set(name, { raw, proof: proveRig(rig, catalogue, shop) });
  }
});

const KINDS = ['weight', 'stability', 'structure', 'electrics'];

function machine(name: string): RigPromise[] {
  return found.get(name)!.proof.promises.filter((p) => KINDS.includes(p.kind));
}

describe('weight, stability, structure and electrics of the demo jobs', () => {
  it.each(names)('%s leaves none of them not computed', (name) => {
    const list = machine(name);
    for (const kind of ['weight', 'stability', 'structure'])
      expect(
        list.some((p) => p.kind === kind),
        kind,
      ).toBe(true);
    expect(list.filter((p) => p.id.endsWith('out-of-range'))).toEqual([]);
  });

  it('road-dust breaks its weight promise with the reason: brine is heavier than the trailer was built for', () => {
    const broken = machine('road-dust').filter((p) => p.state === 'broken');
    expect(broken.map((p) => p.id)).toContain('weight:gross');
    expect(broken.every((p) => p.kind === 'weight')).toBe(true);
    const gross = broken.find((p) => p.id === 'weight:gross')!;
    expect(gross.cause).toMatch(
      /1,300 gal of Magnesium chloride brine .* there is room for [\d,]+ gal of it/,
    );
    // The same tank of water is carried: the liquid alone breaks it.
    const step = (text: string) => gross.working.find((s) => s.text.includes(text))!.figure!.value;
    const density = found.get('road-dust')!.proof.placement!.liquid.density;
    const water = step('empty tank') + (step('tank full of') / density) * 998;
    expect(density).toBeGreaterThan(1200);
    expect(water).toBeLessThan(gross.asked!.value);
  });

  it.each(names.filter((n) => n !== 'road-dust'))('%s keeps them or says whom to ask', (name) => {
    for (const p of machine(name)) {
      expect(p.state, `${p.id}: ${p.cause}`).not.toBe('broken');
      if (p.state === 'unknown') expect(p.cause, p.id).toContain('ask');
    }
  });

  it.each(names)(
    '%s places every part on its carrier, with the mass of the bill, fuel and filled hoses',
    (name) => {
      const { proof, raw } = found.get(name)!;
      const placement = proof.placement!;
      const carrier = proof.parts.find((p) => p.kind === 'carrier')!;
      expect(placement.parts.map((p) => p.item).sort()).toEqual(
        proof.parts
          .filter((p) => p !== carrier)
          .map((p) => p.item)
          .sort(),
      );
      const line = (sort: string, item?: string) =>
        proof.bill.lines.filter((l) => l.sort === sort && (item === undefined || l.item === item));
      // Hose is billed by whole feet; fuel and liquid come on top.
      const dry = proof.bill.dryMass;
      const placed = placement.centre.empty.mass;
      const inHoses = proof.parts
        .filter((p) => p.kind === 'hose')
        .reduce((sum, p) => {
          const part = catalogue.parts.get(p.part)!;
          return part.kind === 'hose'
            ? sum + (Math.PI / 4) * part.bore ** 2 * p.length! * p.count * placement.liquid.density
            : sum;
        }, 0);
      const fuel = proof.parts.reduce((sum, p) => {
        const part = catalogue.parts.get(p.part)!;
        return part.kind === 'engine' ? sum + part.fuelTank * (part.fuel === 'petrol' ? 745 : 840) : sum;
      }, 0);
      expect(line('fitting').length).toBeGreaterThan(0);
      // Clean water for rinsing on the job, 1 kg a litre.
      const { rinse } = (raw as { brief: { rinse?: { where?: string; water?: string } } }).brief;
      const rinseWater = rinse?.where === 'yard' ? 0 : parseFloat(rinse?.water ?? '0') * 3.785;
      expect(Math.abs(placed - dry - inHoses - fuel - rinseWater)).toBeLessThan(0.5);
    },
  );

  it.each(names)('%s rests with its whole weight on its supports at every duty', (name) => {
    const { proof } = found.get(name)!;
    const { supports, centre, carrier, parts } = proof.placement!;
    expect(carrier.grossRating).toBeGreaterThan(0);
    expect(parts.every((p) => p.mass >= 0)).toBe(true);
    if (!['cart', 'wagon', 'tandem-trailer'].includes(carrier.form)) return;
    for (const fill of ['full', 'half', 'empty'] as const)
      expect(supports.reduce((sum, s) => sum + s[fill], 0)).toBeCloseTo(centre[fill].mass, 6);
    for (const { id, duty } of proof.duties) {
      const mass = centre.empty.mass + duty.tankLevel * (centre.full.mass - centre.empty.mass);
      expect(supports.reduce((sum, s) => sum + s.byDuty[id]!, 0)).toBeCloseTo(mass, 6);
    }
  });
});

describe('a given place', () => {
  it('moves a part and its loads, is read from typed lengths, and is refused with its field when it is none', () => {
    const { raw, proof } = found.get('tall-elms')!;
    const with_ = (at: unknown) => {
      const copy = structuredClone(raw) as { items: { id: string; at?: unknown }[] };
      copy.items.find((i) => i.id === 'reel')!.at = at;
      return readRig(copy, catalogue);
    };
    const moved = with_({ x: '7 ft' });
    if (!moved.ok) throw new Error(moved.problems[0]!.message);
    const after = proveRig(moved.rig, catalogue, shop);
    const place = (p: Proof) => p.placement!.parts.find((x) => x.item === 'reel')!;
    expect(place(after)).toMatchObject({ x: 7 * 0.3048, given: true });
    const coupler = (p: Proof) => p.placement!.supports.find((s) => s.id === 'coupler')!.full;
    if (place(proof).x < place(after).x) expect(coupler(after)).toBeLessThan(coupler(proof));
    else expect(coupler(after)).toBeGreaterThanOrEqual(coupler(proof));
    const bad = with_({ x: '7 gal' });
    expect(bad.ok).toBe(false);
    if (!bad.ok) expect(bad.problems[0]!.path).toContain('at');
  });
});
