import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { DIMENSIONS, dimensionOf, parseQuantity, UNITS, unitOf, type Dimension } from './index.ts';
import { asDoubles, exact, toDouble } from './exact.ts';

interface Ucum {
  UcumLhcUtils: {
    getInstance(): {
      convertUnitTo(
        from: string,
        value: number,
        to: string,
      ): { status: string; toVal: number; msg: string[] };
    };
  };
}
// The Unified Code for Units of Measure, as the US National Library of Medicine publishes it in code.
const ucum = (createRequire(import.meta.url)('@lhncbc/ucum-lhc') as Ucum).UcumLhcUtils.getInstance();

function byUcum(code: string, value: number, si: string): number {
  const { status, toVal, msg } = ucum.convertUnitTo(code, value, si);
  if (status !== 'succeeded') throw new Error(`UCUM ${code} to ${si}: ${msg.join()}`);
  return toVal;
}

/** UCUM code of each unit that stands by itself. */
const CODES: Readonly<Record<string, string>> = {
  m: 'm',
  mm: 'mm',
  cm: 'cm',
  km: 'km',
  µm: 'um',
  in: '[in_i]',
  ft: '[ft_i]',
  yd: '[yd_i]',
  mi: '[mi_i]',
  thou: '[mil_i]',
  'ft US survey': '[ft_us]',
  acre: '43560.[sft_i]',
  'acre US survey': '[acr_us]',
  ha: 'har',
  L: 'L',
  mL: 'mL',
  cL: 'cL',
  hL: 'hL',
  cc: 'cm3',
  gal: '[gal_us]',
  qt: '[qt_us]',
  pt: '[pt_us]',
  'fl oz': '[foz_us]',
  cup: '[cup_us]',
  tbsp: '[tbs_us]',
  tsp: '[tsp_us]',
  bbl: '[bbl_us]',
  'gal imp': '[gal_br]',
  'qt imp': '[qt_br]',
  'pt imp': '[pt_br]',
  'fl oz imp': '[foz_br]',
  s: 's',
  ms: 'ms',
  min: 'min',
  h: 'h',
  day: 'd',
  week: 'wk',
  kg: 'kg',
  g: 'g',
  mg: 'mg',
  µg: 'ug',
  t: 't',
  lb: '[lb_av]',
  oz: '[oz_av]',
  'short ton': '[ston_av]',
  'long ton': '[lton_av]',
  slug: '[lbf_av].s2/[ft_i]',
  N: 'N',
  kN: 'kN',
  mN: 'mN',
  dyn: 'dyn',
  kgf: 'kgf',
  lbf: '[lbf_av]',
  ozf: '[lbf_av]/16',
  kip: '1000.[lbf_av]',
  Pa: 'Pa',
  hPa: 'hPa',
  kPa: 'kPa',
  MPa: 'MPa',
  mPa: 'mPa',
  GPa: 'GPa',
  bar: 'bar',
  mbar: 'mbar',
  atm: 'atm',
  at: 'att',
  psi: '[psi]',
  ksi: '1000.[psi]',
  torr: 'atm/760',
  inH2O: "[in_i'H2O]",
  ftH2O: "12.[in_i'H2O]",
  mH2O: 'm[H2O]',
  mmH2O: 'mm[H2O]',
  cmH2O: 'cm[H2O]',
  gpm: '[gal_us]/min',
  gph: '[gal_us]/h',
  gpd: '[gal_us]/d',
  'gpm imp': '[gal_br]/min',
  'gph imp': '[gal_br]/h',
  lpm: 'L/min',
  lph: 'L/h',
  cfm: '[cft_i]/min',
  cfs: '[cft_i]/s',
  mph: '[mi_i]/h',
  kph: 'km/h',
  kn: '[kn_i]',
  fpm: '[ft_i]/min',
  fps: '[ft_i]/s',
  gn: '[g]',
  rad: 'rad',
  deg: 'deg',
  rev: 'circ',
  rpm: 'circ/min',
  rps: 'circ/s',
  Hz: 'Hz',
  W: 'W',
  mW: 'mW',
  kW: 'kW',
  MW: 'MW',
  hp: '[HP]',
  'hp metric': '75.kgf.m/s',
  J: 'J',
  kJ: 'kJ',
  MJ: 'MJ',
  Wh: 'W.h',
  kWh: 'kW.h',
  K: 'K',
  '°C': 'Cel',
  '°F': '[degF]',
  '°R': '[degR]',
  P: 'P',
  cP: 'cP',
  Pas: 'Pa.s',
  mPas: 'mPa.s',
  St: 'St',
  cSt: 'cSt',
  gpa: '[gal_us]/(43560.[sft_i])',
  A: 'A',
  mA: 'mA',
  V: 'V',
  mV: 'mV',
  kV: 'kV',
  Ah: 'A.h',
  mAh: 'mA.h',
  C: 'C',
  Ω: 'Ohm',
  mΩ: 'mOhm',
  kΩ: 'kOhm',
  Nm: 'N.m',
  '%': '%',
  '‰': '[ppth]',
  ppm: '[ppm]',
};

/** Units that cannot be checked against UCUM to its full precision, with the reason and what is checked instead. */
const EXCEPTIONS: Readonly<Record<string, { reason: string; code: string; within: number }>> = {
  inHg: {
    reason: 'UCUM rounds the metre of mercury to 133.322 kPa; NIST SP 811 B.8 gives 3386.389 Pa',
    code: "[in_i'Hg]",
    within: 3e-6,
  },
  mmHg: { reason: 'as inHg; NIST SP 811 B.8 gives 133.3224 Pa', code: 'mm[Hg]', within: 3e-6 },
};

/** UCUM writes these SI units another way. */
const SI: Readonly<Record<string, string>> = { 'A.s': 'C', ohm: 'Ohm', 'ohm/m': 'Ohm/m', 'N.m': 'J' };
const siCode = (dimension: Dimension) => SI[DIMENSIONS[dimension].si] ?? DIMENSIONS[dimension].si;

const relative = (a: number, b: number) => Math.abs(a - b) / Math.abs(b);

describe('the unit table', () => {
  it.each(UNITS.map((u) => [u.symbol, u.kind as Dimension, u] as const))(
    'agrees with UCUM for %s of %s',
    (symbol, kind, unit) => {
      const special = EXCEPTIONS[symbol];
      const code = special?.code ?? CODES[symbol];
      if (code === undefined) throw new Error(`no UCUM code is given for ${symbol}`);
      if (kind === 'temperatureDifference') {
        const step = byUcum(code, 101, 'K') - byUcum(code, 100, 'K');
        // UCUM knows only points of the scale: two of them are subtracted, which costs three digits.
        expect(relative(unit.factor, step)).toBeLessThan(3e-13);
      } else if (kind === 'temperature') {
        for (const figure of [-40, 0, 70, 212])
          if (figure + unit.offset > 0)
            expect(relative((figure + unit.offset) * unit.factor, byUcum(code, figure, 'K'))).toBeLessThan(
              1e-15,
            );
      } else {
        expect(relative(unit.factor, byUcum(code, 1, siCode(kind)))).toBeLessThan(special?.within ?? 2e-15);
      }
    },
  );

  it('holds the values NIST SP 811 (2008) appendix B.8 prints, to its seven digits (digits from memory)', () => {
    const printed: [string, Dimension, number][] = [
      ['inHg', 'pressure', 3386.389],
      ['mmHg', 'pressure', 133.3224],
      ['ftH2O', 'pressure', 2989.067],
      ['inH2O', 'pressure', 249.0889],
      ['psi', 'pressure', 6894.757],
      ['hp', 'power', 745.6999],
      ['hp metric', 'power', 735.4988],
      ['acre US survey', 'area', 4046.873],
    ];
    for (const [symbol, dimension, value] of printed)
      expect(Math.abs((unitOf(symbol, dimension)?.factor ?? NaN) - value), symbol).toBeLessThan(
        // Half of the seventh digit; the metric horsepower, 735.49875 W, is the half itself.
        0.50001 * 10 ** (Math.floor(Math.log10(value)) - 6),
      );
  });

  it('keeps the international and the survey acre apart by two parts in a million', () => {
    const international = unitOf('acre', 'area')?.factor ?? NaN;
    const survey = unitOf('US survey acre', 'area')?.factor ?? NaN;
    expect(international).toBe(4046.8564224);
    expect(survey / international - 1).toBeCloseTo(4.0e-6, 8);
  });

  it('gives every symbol back its own unit', () => {
    for (const unit of UNITS) expect(unitOf(unit.symbol, unit.kind as Dimension), unit.symbol).toBe(unit);
  });
});

describe('units put together', () => {
  const made: [string, Dimension, string][] = [
    ['lb/gal', 'density', '[lb_av]/[gal_us]'],
    ['g/L', 'density', 'g/L'],
    ['lb/ft3', 'density', '[lb_av]/[cft_i]'],
    ['oz/gal', 'density', '[oz_av]/[gal_us]'],
    ['lb/100 gal', 'density', '[lb_av]/(100.[gal_us])'],
    ['gal/acre', 'dose', '[gal_us]/(43560.[sft_i])'],
    ['L/ha', 'dose', 'L/har'],
    ['gal/1000 ft2', 'dose', '[gal_us]/(1000.[sft_i])'],
    ['fl oz/acre', 'dose', '[foz_us]/(43560.[sft_i])'],
    ['oz/acre', 'dose', '[foz_us]/(43560.[sft_i])'],
    ['L/100 m2', 'dose', 'L/(100.m2)'],
    ['oz/acre', 'massPerArea', '[oz_av]/(43560.[sft_i])'],
    ['kg/ha', 'massPerArea', 'kg/har'],
    ['oz/min', 'flow', '[foz_us]/min'],
    ['oz/min', 'massFlow', '[oz_av]/min'],
    ['m3/h', 'flow', 'm3/h'],
    ['L/s', 'flow', 'L/s'],
    ['in3/rev', 'displacement', '[in_i]3/circ'],
    ['cm³/rev', 'displacement', 'cm3/circ'],
    ['cc/rev', 'displacement', 'cm3/circ'],
    ['lb/in2', 'pressure', '[lbf_av]/[in_i]2'],
    ['N/mm2', 'stress', 'N/mm2'],
    ['kg/cm2', 'pressure', 'kgf/cm2'],
    ['ft/s', 'speed', '[ft_i]/s'],
    ['mm/h', 'speed', 'mm/h'],
    ['ft/s2', 'acceleration', '[ft_i]/s2'],
    ['ft lbf/s', 'power', '[ft_i].[lbf_av]/s'],
    ['hp.h', 'energy', '[HP].h'],
    ['ft lbf', 'energy', '[ft_i].[lbf_av]'],
    ['ft-lb', 'torque', '[ft_i].[lbf_av]'],
    ['lbf.in', 'torque', '[in_i].[lbf_av]'],
    ['N·m', 'torque', 'N.m'],
    ['kgf.m', 'torque', 'kgf.m'],
    ['lb/hp.h', 'specificFuel', '[lb_av]/([HP].h)'],
    ['g/kWh', 'specificFuel', 'g/(kW.h)'],
    ['lb/ft', 'massPerLength', '[lb_av]/[ft_i]'],
    ['lbf/in', 'forcePerLength', '[lbf_av]/[in_i]'],
    ['dyn/cm', 'surfaceTension', 'dyn/cm'],
    ['psi/100 ft', 'pressurePerLength', '[psi]/(100.[ft_i])'],
    ['ohm/1000 ft', 'resistancePerLength', 'Ohm/(1000.[ft_i])'],
    ['gal/lane-mile', 'volumePerLength', '[gal_us]/[mi_i]'],
    ['mPa.s', 'viscosity', 'mPa.s'],
    ['lbf.s/ft2', 'viscosity', '[lbf_av].s/[sft_i]'],
    ['mm2/s', 'kinematicViscosity', 'mm2/s'],
    ['acre/h', 'areaRate', '43560.[sft_i]/h'],
    ['ft2/min', 'areaRate', '[sft_i]/min'],
    ['lb.ft2', 'inertia', '[lb_av].[sft_i]'],
    ['in4', 'secondMoment', '[in_i]4'],
    ['%/min', 'rate', '%/min'],
    ['fl oz/gal', 'ratio', '[foz_us]/[gal_us]'],
    ['A.h', 'charge', 'A.h'],
    ['deg/s', 'rotation', 'deg/s'],
  ];
  it.each(made)('reads %s as %s like UCUM', (text, dimension, code) => {
    const unit = unitOf(text, dimension);
    expect(unit, text).toBeDefined();
    expect(relative(unit?.factor ?? NaN, byUcum(code, 1, siCode(dimension)))).toBeLessThan(4e-15);
  });

  it('writes them so that they read as the same unit', () => {
    for (const [text, dimension] of made) {
      const unit = unitOf(text, dimension);
      expect(unitOf(unit?.symbol ?? '', dimension)?.factor, unit?.symbol).toBe(unit?.factor);
    }
  });

  it('reads words, abbreviations with points and raised figures as the same unit', () => {
    const same: [Dimension, ...string[]][] = [
      [
        'flow',
        'gal/min',
        'gallons per minute',
        'gal per min',
        'US gal/min',
        'GAL/MIN',
        'gal. / min.',
        'gpm',
        'US gpm',
      ],
      [
        'dose',
        'gal/1000 ft2',
        'gal/1,000 sq. ft.',
        'gallons per 1000 square feet',
        'gal/1000 ft²',
        'gal/1000 sqft',
      ],
      ['area', 'ft2', 'ft²', 'ft^2', 'sq ft', 'sq. ft.', 'square feet', 'sqft'],
      ['volume', 'in3', 'in³', 'cu in', 'cubic inches', 'cu. in.'],
      ['volume', 'fl oz', 'fl. oz.', 'fl.oz', 'fluid ounces', 'US fl oz', 'oz'],
      ['torque', 'lbf.ft', 'lbf·ft', 'lb-ft', 'lb ft', 'ft-lbf', 'ft lb', 'foot-pounds'],
      ['temperature', '°F', 'F', 'f', 'deg F', 'degF', 'degrees F', 'Fahrenheit'],
      ['resistance', 'ohm', 'ohms', '\u03A9', '\u2126'],
      ['length', 'µm', 'um', 'micron', 'microns', '\u00B5m', '\u03BCm'],
    ];
    for (const [dimension, first, ...others] of same)
      for (const other of others)
        expect(unitOf(other, dimension)?.factor, other).toBe(unitOf(first ?? '', dimension)?.factor);
  });

  it('does not take one dimension for another', () => {
    const refused: [string, Dimension][] = [
      ['gal/acre', 'length'],
      ['ft lbf', 'length'],
      ['mpa', 'pressure'],
      ['mw', 'power'],
      ['1/min', 'flow'],
      ['gal/0 ft2', 'dose'],
      ['', 'length'],
      ['ft2/', 'area'],
      ['/', 'ratio'],
      ['m'.repeat(100), 'length'],
    ];
    for (const [text, dimension] of refused) expect(unitOf(text, dimension), text).toBeUndefined();
    expect(dimensionOf('gal/acre')).toBe('dose');
    expect(dimensionOf('furlong')).toBeUndefined();
  });
});

describe('the dimensions', () => {
  it.each(Object.entries(DIMENSIONS))(
    '%s has an example that reads and a sorted list of what it is made of',
    (name, facts) => {
      expect(parseQuantity(facts.example, name as Dimension)).toMatchObject({ ok: true });
      for (const made of facts.made)
        for (const side of made.split('/')) expect(side.split('*').sort().join('*')).toBe(side);
    },
  );
});

describe('exact factors', () => {
  it('are the nearest doubles', () => {
    expect(toDouble(exact('0.45359237 * 9.80665'))).toBe(4.4482216152605);
    expect(toDouble(exact('231 * 0.0254^3'))).toBe(0.003785411784);
    expect(toDouble(exact('5 / 9'))).toBe(5 / 9);
    expect(toDouble(exact('pi / 30'))).toBe(Math.PI / 30);
    expect(toDouble(exact('0.000000001'))).toBe(1e-9);
    expect(toDouble(exact('1000000000'))).toBe(1e9);
  });

  it('are fractions of two doubles where those hold them', () => {
    expect(asDoubles(exact('0.0254'))).toEqual([127, 5000]);
    expect(asDoubles(exact('2 * pi'))).toBeUndefined();
    expect(asDoubles(exact('0.12345678901234567891'))).toBeUndefined();
  });
});
