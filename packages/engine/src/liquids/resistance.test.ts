import { describe, expect, it } from 'vitest';
import {
  LIQUIDS,
  MATERIALS,
  RATINGS,
  brassUpstreamOfAluminium,
  galvanicPair,
  galvanicPairs,
  materialResistance,
  sealChoice,
  worseRating,
  worstResistance,
} from './index.ts';

const at = (liquid: string, material: string, temperatureC = 20) =>
  materialResistance({ liquid, material, temperatureC }).rating;

describe('resistance of a material', () => {
  it.each([
    ['uan', 'brass', 'not-suited', 'ammoniacal cracking, Corrosion 22(6), 1966'],
    ['app_10_34_0', 'brass', 'not-suited', 'ammoniacal cracking, Corrosion 22(6), 1966'],
    ['uan', 'steel', 'not-suited', 'NACE tests'],
    ['uan', 'al_5052', 'limited', 'Banks and Hutchison 1968'],
    ['naocl_12', 'ss304', 'not-suited', 'bleach coupons, 2014'],
    ['naocl_12', 'ss316', 'not-suited', 'bleach coupons, 2014'],
    ['naocl_wash', 'ss316', 'limited', 'bleach coupons, 2014'],
    ['cacl2_brine', 'ss304', 'not-suited', 'stainless guidelines 11003'],
    ['cacl2_brine', 'ss316', 'limited', 'stainless guidelines 11003'],
    ['cacl2_brine', 'pa', 'limited', 'Wyzgoski and Novak 1987'],
    ['naoh', 'fkm', 'not-suited', 'Mitra: alkaline fluororubber'],
    ['oxalic', 'ti', 'limited', 'RI 5189, 1956'],
    ['sulfamic', 'ss316', 'suited', 'sulfamic acid at 298 K'],
    ['naoh', 'steel', 'suited', 'caustic to about 65 degC'],
    ['hort_oil', 'epdm', 'not-suited', 'Purdue PPP-89'],
  ] as const)('%s on %s is %s (%s)', (liquid, material, rating, source) => {
    expect(at(liquid, material), source).toBe(rating);
  });

  it('drops one step above the temperature that was rated, and never lifts a rating', () => {
    expect(at('naoh', 'steel', 60)).toBe('suited');
    expect(at('naoh', 'steel', 61)).toBe('limited');
    expect(at('naocl_12', 'lldpe', 31)).toBe('not-suited');
    for (const l of LIQUIDS)
      for (const m of MATERIALS) {
        const cold = at(l.id, m.id, 10);
        const hot = at(l.id, m.id, 90);
        expect(RATINGS.indexOf(hot), `${l.id} ${m.id}`).toBeGreaterThanOrEqual(RATINGS.indexOf(cold));
        if (cold === 'no-data') expect(hot).toBe('no-data');
      }
  });

  it('turns a pass into no data when the liquid is stronger than what was rated', () => {
    const q = { liquid: 'citric', material: 'ss304', strengthUnit: 'weight %', temperatureC: 20 } as const;
    expect(materialResistance({ ...q, strength: 20 }).rating).toBe('suited');
    const strong = materialResistance({ ...q, strength: 30 });
    expect(strong.rating).toBe('no-data');
    expect(strong.tableRating).toBe('suited');
    expect(strong.reason).toMatch(/30 weight % is stronger than the 20 weight % that was rated/);
    // Wash mix rated to 4 trade %: stock does not pass as wash.
    expect(
      materialResistance({
        liquid: 'naocl_wash',
        material: 'epdm',
        strength: 12.5,
        strengthUnit: 'trade %',
        temperatureC: 20,
      }).rating,
    ).toBe('no-data');
    // Decayed bleach keeps the rating of the fresh one.
    expect(
      materialResistance({
        liquid: 'naocl_12',
        material: 'pvc_u',
        strength: 9,
        strengthUnit: 'trade %',
        temperatureC: 20,
      }).rating,
    ).toBe('suited');
  });

  it('compares g/L with trade % by what they count', () => {
    const q = { liquid: 'naocl_wash', material: 'ss316', temperatureC: 20, strengthUnit: 'g/L' } as const;
    expect(materialResistance({ ...q, strength: 9 }).rating).toBe('limited');
    expect(materialResistance({ ...q, strength: 20 }).rating).toBe('no-data');
  });

  it('says source, confidence and that a recalled rating must be checked', () => {
    const recalled = materialResistance({ liquid: 'naocl_12', material: 'lldpe', temperatureC: 20 });
    expect(recalled.reason).toMatch(/recalled, not read/);
    expect(recalled.conflict).toMatch(/cautious reading kept/);
    expect(recalled.sources.length).toBeGreaterThan(0);
    const none = materialResistance({ liquid: 'polymer_dust', material: 'epdm', temperatureC: 20 });
    expect(none.rating).toBe('no-data');
    expect(none.reason).toMatch(/nothing was found/);
  });

  it('refuses unknown names and a hose liner that is not named', () => {
    expect(() => at('water', 'unobtainium')).toThrow(/material is 'unobtainium'; it must be one of pp/);
    expect(() =>
      materialResistance({
        liquid: 'uan',
        material: 'pp',
        strength: NaN,
        strengthUnit: 'weight %',
        temperatureC: 20,
      }),
    ).toThrow(/strength is not a number/);
    expect(() =>
      materialResistance({
        liquid: 'uan',
        material: 'pp',
        strength: 28,
        strengthUnit: 'trade %',
        temperatureC: 20,
      }),
    ).toThrow(/strengthUnit is 'trade %'/);
    expect(() => at('water', 'hose_liner')).toThrow(/name the tube's own material/);
  });
});

describe('worst of a part and a job', () => {
  it('lets the worst material and the worst liquid decide, and lists what asks for a decision', () => {
    const liquids = [
      { liquid: 'water', temperatureC: 20 },
      { liquid: 'uan', strength: 28, strengthUnit: 'weight %', temperatureC: 20 },
    ] as const;
    const worst = worstResistance(['pp', 'brass', 'al_5052'], liquids);
    expect(worst.rating).toBe('not-suited');
    expect(worst.deciding.map((r) => `${r.liquid} ${r.material}`)).toEqual(['uan brass']);
    expect(worst.toDecide.some((r) => r.material === 'al_5052')).toBe(true);
    expect(worst.all).toHaveLength(6);
  });

  it('never lets no data pass: it outranks limited', () => {
    expect(worseRating('limited', 'no-data')).toBe('no-data');
    expect(worseRating('no-data', 'not-suited')).toBe('not-suited');
    expect(worseRating('suited', 'suited')).toBe('suited');
    expect(() => worstResistance([], [{ liquid: 'water', temperatureC: 20 }])).toThrow(/materials is empty/);
  });

  it('only grows worse as materials or liquids are added', () => {
    const contacts = LIQUIDS.map((l) => ({ liquid: l.id, temperatureC: 20 }));
    let last = 0;
    for (let n = 1; n <= contacts.length; n++) {
      const rank = RATINGS.indexOf(worstResistance(['epdm', 'ss316'], contacts.slice(0, n)).rating);
      expect(rank).toBeGreaterThanOrEqual(last);
      last = rank;
    }
  });
});

describe('seals', () => {
  const contact = (liquid: string) => ({ liquid, temperatureC: 20 });

  it('chooses FKM for bleach, EPDM for caustic, and not EPDM for oil', () => {
    expect(sealChoice([contact('naocl_12')]).suited).toContain('fkm');
    expect(sealChoice([contact('naoh')]).suited).toContain('epdm');
    expect(sealChoice([contact('naoh')]).suited).not.toContain('fkm');
    expect(sealChoice([contact('hort_oil')]).suited).not.toContain('epdm');
    expect(sealChoice([contact('uan')]).suited).toContain('epdm');
  });

  it('says plainly that no single seal serves bleach and caustic, and what to do', () => {
    const choice = sealChoice([contact('naocl_12'), contact('naoh')]);
    expect(choice.conflict).toBe(true);
    expect(choice.suited).toEqual([]);
    expect(choice.statement).toMatch(/^No single rubber seal stands all the liquids/);
    expect(choice.statement).toMatch(/two sets of seals/);
    expect(choice.perLiquid.map((p) => p.suited.length > 0)).toEqual([true, true]);
    expect(choice.options[0]?.seal).toBe('ptfe');
  });
});

describe('dissimilar metals', () => {
  it('warns of aluminium against brass in brine and names aluminium as the one that is eaten', () => {
    const pair = galvanicPair({ a: 'brass', b: 'al_5052', liquid: 'cacl2_brine' });
    expect(pair.verdict).toBe('warn');
    expect(pair.anode).toBe('al_5052');
    expect(pair.limit).toBe(0.15);
    expect(pair.difference).toBeCloseTo(0.39, 9);
  });

  it('takes stainless at its active potential in chloride, and at its passive one in fresh water', () => {
    const brine = galvanicPair({ a: 'ss316', b: 'steel', liquid: 'cacl2_brine' });
    expect(brine.difference).toBeCloseTo(0.07, 9);
    const water = galvanicPair({ a: 'ss316', b: 'steel', liquid: 'water' });
    expect(water.difference).toBeCloseTo(0.56, 9);
    expect(water.limit).toBe(0.25);
    expect(galvanicPair({ a: 'ss316', b: 'ti', liquid: 'cacl2_brine' }).anode).toBe('ss316');
  });

  it('points out a small anode', () => {
    const q = { a: 'al_6061', b: 'brass', liquid: 'water' } as const;
    expect(galvanicPair({ ...q, areaRatio: 0.01 }).smallAnode).toBe(true);
    expect(galvanicPair({ ...q, areaRatio: 10 }).smallAnode).toBe(false);
  });

  it('has no data for the plated iron, no opinion on plastics, and finds each pair once', () => {
    expect(galvanicPair({ a: 'iron_nib', b: 'brass', liquid: 'water' }).verdict).toBe('no-data');
    expect(() => galvanicPair({ a: 'pp', b: 'brass', liquid: 'water' })).toThrow(/only metals/);
    const pairs = galvanicPairs(['pp', 'brass', 'al_5052', 'brass', 'steel'], 'cacl2_brine');
    expect(pairs.map((p) => `${p.a} ${p.b}`)).toEqual(['brass al_5052', 'brass steel', 'al_5052 steel']);
    expect(galvanicPair({ a: 'brass', b: 'brass', liquid: 'water' }).verdict).toBe('fine');
  });

  it('refuses brass upstream of aluminium, not downstream (20 µg/L copper, water treatment handbook)', () => {
    expect(brassUpstreamOfAluminium(['lldpe', 'brass', 'al_6061'])).toMatch(/upstream/);
    expect(brassUpstreamOfAluminium(['al_6061', 'epdm', 'brass'])).toBeUndefined();
  });
});
