import { describe, expect, it } from 'vitest';
import { KINDS, WORKS, type Part, type PartOf } from '@spraywright/engine/catalogue';
import { isLiquid, isMaterial, materialResistance, sealChoice } from '@spraywright/engine/liquids';
import { tankCapacity } from '@spraywright/engine/physics';
import { readBrief, type Brief } from '@spraywright/engine/rig';
import { demoBriefs, demoCatalogue, demoShop } from './demo.ts';

const catalogue = demoCatalogue();
const briefs: ReadonlyMap<string, Brief> = new Map(
  demoBriefs().map(({ name, raw }): [string, Brief] => {
    const result = readBrief(raw);
    if (!result.ok) throw new Error(`${name}: ${result.problems.map((p) => p.message).join('; ')}`);
    return [name, result.brief];
  }),
);
const parts: readonly Part[] = [...catalogue.parts.values()];
const portIds = (part: Part) => part.ports.map((p) => p.id).sort();

describe('the demo catalogue', () => {
  it('reads without a problem and holds every kind of part', () => {
    expect(parts.length).toBeGreaterThanOrEqual(320);
    for (const kind of KINDS) expect(catalogue.byKind[kind].length, kind).toBeGreaterThanOrEqual(5);
  });

  it('names only materials that the liquids layer knows', () => {
    const unknown = parts.flatMap((p) =>
      p.wetted.filter((w) => !isMaterial(w.material)).map((w) => `${p.id}: ${w.material}`),
    );
    expect(unknown).toEqual([]);
  });

  it('states the wetted materials of every part that liquid touches', () => {
    const dry = new Set(['engine', 'reduction', 'pto-drive', 'carrier', 'battery', 'hardware']);
    expect(parts.filter((p) => !dry.has(p.kind) && p.wetted.length === 0).map((p) => p.id)).toEqual([]);
  });

  it('gives every kind the ports that plumbing asks of it', () => {
    const asked: Partial<Record<Part['kind'], readonly string[]>> = {
      tank: ['outlet', 'return'],
      pump: ['in', 'out', 'shaft'],
      'motor-pump': ['in', 'out'],
      engine: ['shaft'],
      reduction: ['in', 'out'],
      'pto-drive': ['in', 'out'],
      strainer: ['in', 'out'],
      valve: ['in', 'out'],
      hose: ['in', 'out'],
      reel: ['in', 'out'],
      gun: ['in', 'out'],
      tip: ['in'],
      nozzle: ['in'],
      boom: ['in', 'out'],
      agitator: ['in'],
      eductor: ['in', 'out', 'suction'],
      gauge: ['in'],
    };
    for (const part of parts) {
      const ids = portIds(part);
      expect(new Set(ids).size, part.id).toBe(ids.length);
      for (const id of asked[part.kind] ?? []) expect(ids, part.id).toContain(id);
      if (part.kind === 'regulator')
        expect(ids, part.id).toContain(part.action === 'reducing' ? 'out' : 'bypass');
    }
  });

  it('sells every part above its cost and puts what is on the shelf a week away at most', () => {
    for (const part of parts) {
      expect(part.priceCents, part.id).toBeGreaterThan(part.costCents);
      expect(part.leadTimeDays, part.id).toBeLessThanOrEqual(part.stock > 0 ? 7 : 60);
    }
  });

  it('has tanks whose inside shape holds 2 to 6 % more than the rated volume', () => {
    for (const tank of catalogue.byKind.tank) {
      const spare = tankCapacity(tank.shape) / tank.volume;
      expect(spare, tank.id).toBeGreaterThan(1.02);
      expect(spare, tank.id).toBeLessThan(1.06);
    }
  });

  it('has regulators that, wide open at rated flow, lose less than their least set pressure', () => {
    for (const r of catalogue.byKind.regulator)
      expect(1e5 * (r.ratedFlow / r.flowAtOneBar) ** 2, r.id).toBeLessThan(r.setMin);
  });

  it('has carriers whose axles and tyres carry their own gross rating', () => {
    for (const c of catalogue.byKind.carrier) {
      if (c.axles.length === 0) continue;
      const axles = c.axles.reduce((sum, a) => sum + a.rating, 0);
      expect(axles, c.id).toBeGreaterThanOrEqual(c.grossRating * 0.999);
      for (const a of c.axles) expect(a.tyreRating * a.tyres, c.id).toBeGreaterThanOrEqual(a.rating);
    }
  });

  it('has a drive with fitting shafts for every pump', () => {
    const { engine, reduction, 'pto-drive': pto, pump } = catalogue.byKind;
    const size = (part: Part, id: string) => part.ports.find((p) => p.id === id)!.size;
    const same = (a: number, b: number) => Math.abs(a - b) < 1e-4;
    const turns = (p: PartOf<'pump'>) => {
      const fits = (drive: Part) => same(size(drive, 'out'), size(p, 'shaft'));
      const inRange = (fastest: number, slowest: number) => fastest >= p.minSpeed && slowest <= p.maxSpeed;
      return (
        pto.some((d) => fits(d) && inRange(d.ptoSpeed * d.ratio, d.ptoSpeed * d.ratio)) ||
        reduction.some(
          (r) =>
            fits(r) &&
            engine.some(
              (e) =>
                same(size(e, 'shaft'), size(r, 'in')) &&
                inRange(e.ratedSpeed * r.ratio, e.minSpeed * r.ratio),
            ),
        )
      );
    };
    expect(pump.filter((p) => !turns(p)).map((p) => p.id)).toEqual([]);
  });
});

describe('the demo jobs', () => {
  it('are one for each kind of work, told by the shop that quotes them', () => {
    expect([...briefs.values()].map((b) => b.work).sort()).toEqual([...WORKS].sort());
    for (const [name, brief] of briefs) expect(brief.id).toBe(name);
    expect(demoShop().operations.length).toBeGreaterThan(0);
  });

  it('name only liquids that the liquids layer knows', () => {
    for (const brief of briefs.values())
      for (const l of brief.liquids) expect(isLiquid(l.liquid), `${brief.id}: ${l.liquid}`).toBe(true);
  });

  it('hold one whose liquids no single rubber seal stands: bleach and caustic on roofs', () => {
    const { liquids } = briefs.get('roof-skid')!;
    expect(liquids.map((l) => l.liquid)).toEqual(expect.arrayContaining(['naocl_12', 'naoh']));
    const contacts = liquids.map(({ liquid, strength, strengthUnit }) => ({
      liquid,
      temperatureC: 25,
      ...(strength === undefined ? {} : { strength }),
      ...(strengthUnit === undefined ? {} : { strengthUnit }),
    }));
    expect(sealChoice(contacts).conflict).toBe(true);
  });

  it('hold a part with a material about which nothing is published', () => {
    const noData = parts.filter((p) =>
      p.wetted.some(
        ({ material }) =>
          materialResistance({ material, liquid: 'glyphosate_mix', temperatureC: 25 }).rating === 'no-data',
      ),
    );
    expect(noData.map((p) => p.id)).toContain('hose-1-2in-60-eva');
  });

  it('hold a trailer that a deck-sized tank of water overloads', () => {
    const trailer = catalogue.byKind.carrier.find((c) => c.id === 'trailer-16ft-7000lb')!;
    const tank = catalogue.byKind.tank.find((t) => t.id === 'tank-1000-elliptical-poly')!;
    expect(tank.size.length).toBeLessThan(trailer.deckLength);
    const axles = trailer.axles.reduce((sum, a) => sum + a.rating, 0);
    expect(0.85 * (tank.volume * 998 + tank.mass + trailer.mass)).toBeGreaterThan(axles);
  });
});
