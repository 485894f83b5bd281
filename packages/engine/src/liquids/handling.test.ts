import { describe, expect, it } from 'vitest';
import {
  LIQUIDS,
  MEETINGS,
  agitationNeed,
  flushDemand,
  forbiddenMeetings,
  meshOpening,
  mustNotMeet,
  settlingSpeedStokes,
  settlingTime,
  strainerAdvice,
  tankRating,
  tankRatingFor,
  ventDemands,
} from './index.ts';

const results = (a: string, b: string, wetted?: string[]) => mustNotMeet(a, b, wetted).map((m) => m.result);

describe('what must not meet', () => {
  // One case for each of the 16 pairs; sources stand with the rule.
  it.each([
    ['naocl_12', 'citric', 'chlorine gas'],
    ['naocl_wash', 'uan', 'chloramines, nitrogen trichloride'],
    ['naocl_12', 'kts', 'hot, fast reaction; acid and sulfur products'],
    ['naocl_12', 'pg', 'heat and loss of strength; oxidised organics'],
    ['naocl_12', 'brass', 'catalysed oxygen release and pressure'],
    ['naocl_12', 'al_6061', 'hydrogen and fast corrosion'],
    ['ats', 'sulfamic', 'sulfur dioxide and sulfur sludge'],
    ['glyphosate_mix', 'steel', 'hydrogen: explosion'],
    ['naoh', 'al_anod', 'hydrogen and dissolution'],
    ['naoh', 'app_10_34_0', 'ammonia gas'],
    ['naoh', 'oxalic', 'violent heat'],
    ['sulfamic', 'zinc', 'hydrogen'],
    ['uan', 'calcium nitrate', 'milky precipitate'],
    ['app_10_34_0', 'mgcl2_brine', 'phosphate precipitate'],
    ['cacl2_brine', 'copper_sulfate', 'gypsum precipitate'],
  ])('%s and %s: %s, whichever comes first', (a, b, result) => {
    expect(results(a, b)).toContain(result);
    expect(results(b, a)).toContain(result);
  });

  it('minds 10-34-0 residue under UAN only where aluminium is wetted (Banks and Hutchison 1968)', () => {
    expect(results('uan', 'app_10_34_0')).not.toContain('local acid attack on aluminium');
    expect(results('uan', 'app_10_34_0', ['al_5052'])).toContain('local acid attack on aluminium');
  });

  it('can be reached by every rule', () => {
    const names = [
      ...LIQUIDS.map((l) => l.id),
      ...['brass', 'steel', 'al_5052', 'zinc', 'galvanised steel', 'calcium nitrate', 'acid'],
    ];
    const reached = new Set(names.flatMap((a) => names.flatMap((b) => mustNotMeet(a, b, ['al_5052']))));
    expect(reached.size).toBe(MEETINGS.length);
  });

  it('treats acidic herbicide and fertiliser as acid to bleach, and lets water meet anything', () => {
    expect(results('naocl_12', 'glyphosate_mix')).toContain('chlorine gas');
    expect(results('naocl_12', 'app_10_34_0')).toContain('chlorine gas');
    for (const l of LIQUIDS) expect(mustNotMeet('water', l.id)).toEqual([]);
    expect(() => mustNotMeet('naocl_12', 'lemonade')).toThrow(/'lemonade' is no liquid/);
  });

  it('checks what is carried together, what was carried last and what comes next', () => {
    const found = forbiddenMeetings({
      carries: ['naocl_12', 'water'],
      last: 'citric',
      next: 'uan',
      materials: ['al_6061', 'pp'],
    });
    expect(found.map((f) => f.where).sort()).toEqual(['last', 'next', 'part']);
    expect(found.every((f) => f.severity === 'never')).toBe(true);
    expect(forbiddenMeetings({ carries: ['water', 'uan'] })).toEqual([]);
  });
});

describe('flush', () => {
  it('demands a recorded flush where the rest of the last liquid is dangerous to the next', () => {
    const demand = flushDemand('citric', 'naocl_12');
    expect(demand.record).toBe(true);
    expect(demand.dangers[0]?.result).toBe('chlorine gas');
    expect(demand.steps.join(' ')).toMatch(/pH 6 to 8/);
    expect(flushDemand('water', 'naocl_12').record).toBe(false);
  });

  it('has steps for every liquid', () => {
    for (const l of LIQUIDS) expect(flushDemand(l.id).steps.length, l.id).toBeGreaterThan(0);
  });
});

describe('vessels that can be shut', () => {
  it('demands a vent for bleach only', () => {
    const vessels = [
      { name: 'Ball valve', vented: false },
      { name: 'Tank', vented: true },
    ];
    const demands = ventDemands(vessels, ['naocl_wash', 'uan']);
    expect(demands.map((d) => [d.vessel, d.state])).toEqual([
      ['Ball valve', 'must-vent'],
      ['Tank', 'fine'],
    ]);
    expect(ventDemands(vessels, ['uan', 'water'])).toEqual([]);
  });
});

describe('stirring, straining and settling', () => {
  it('stirs for the most demanding liquid: 3 % of the tank a minute for a solution, 5 % for a suspension (GRDC)', () => {
    expect(agitationNeed([{ liquid: 'uan' }]).share * 60).toBeCloseTo(0.03, 12);
    const both = agitationNeed([{ liquid: 'uan' }, { liquid: 'wettable_powder' }]);
    expect(both.class).toBe('suspension');
    expect(both.share * 60).toBeCloseTo(0.05, 12);
    expect(both.liquids).toEqual(['wettable_powder']);
    expect(agitationNeed([{ liquid: 'water' }]).share).toBe(0);
    expect(agitationNeed([{ liquid: 'copper_sulfate', suspension: true }]).class).toBe('suspension');
    expect(() => agitationNeed([])).toThrow(/liquids is empty/);
  });

  it('never puts a fine strainer before a centrifugal pump, nor passes powder through more than 50 mesh', () => {
    const suction = strainerAdvice({ place: 'suction', pump: 'centrifugal', liquidClass: 'solution' });
    expect(suction.finest).toBe(16);
    expect(suction.note).toMatch(/no suction strainer at all/);
    expect(strainerAdvice({ place: 'suction', pump: 'diaphragm', liquidClass: 'solution' }).finest).toBe(50);
    const powder = strainerAdvice({ place: 'nozzle body', pump: 'other', liquidClass: 'suspension' });
    expect([powder.coarsest, powder.finest]).toEqual([50, 50]);
    expect(meshOpening(50)).toBeCloseTo(0.3e-3, 9);
    expect(() => meshOpening(60)).toThrow(/mesh is 60; the table of openings has 12, 16/);
  });

  it('lets a 10 µm copper salt fall 47 cm in an hour: a parked tank settles over lunch (Stokes)', () => {
    const speed = settlingSpeedStokes(10e-6, 3400, 998.2, 1.002e-3);
    expect(speed * 3600).toBeCloseTo(0.47, 2);
    expect(settlingTime(0.47, speed) / 3600).toBeCloseTo(1, 2);
    expect(() => settlingSpeedStokes(500e-6, 3400, 998.2, 1.002e-3)).toThrow(
      /Reynolds number of the particle/,
    );
    expect(settlingSpeedStokes(10e-6, 850, 998.2, 1.002e-3)).toBeLessThan(0);
  });
});

describe('tank rating', () => {
  it('holds the floor of 1.5 for fertiliser and takes the next rating up (North Dakota State University)', () => {
    expect(tankRating(1200, 'fertiliser')).toBe(1.5);
    expect(tankRating(1200, 'other')).toBe(1.35);
    expect(tankRating(1000, 'other')).toBe(1);
    expect(tankRating(1600, 'fertiliser')).toBe(1.9);
    expect(() => tankRating(2000, 'other')).toThrow(/density is 2000/);
  });

  it('asks 1.9 for bleach as the trade does, and does not guess for an unknown density', () => {
    const t = 20;
    const bleach = tankRatingFor([
      { liquid: 'naocl_12', strength: 12.5, strengthUnit: 'trade %', temperatureC: t },
    ]);
    expect(bleach.rating).toBe(1.9);
    expect(bleach.reason).toMatch(/trade practice/);
    const brine = tankRatingFor([
      { liquid: 'water', temperatureC: t },
      { liquid: 'cacl2_brine', strength: 30, strengthUnit: 'weight %', temperatureC: t },
    ]);
    expect(brine.rating).toBe(1.5);
    const unknown = tankRatingFor([{ liquid: 'polymer_dust', temperatureC: t }]);
    expect(unknown.rating).toBeUndefined();
    expect(unknown.reason).toMatch(/density of Polymer dust suppressant/);
  });

  it('does not believe the misprinted water of 8.24 lb/gal: fertiliser of 12 lb/gal is 1.44, so rated 1.5', () => {
    expect(tankRating(12 * 119.826, 'fertiliser')).toBe(1.5);
    expect((12 * 119.826) / 999.35).toBeCloseTo(1.44, 2);
  });
});
