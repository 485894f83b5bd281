import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DIMENSIONS, parseQuantity, UNITS, type Dimension } from './index.ts';

const GALLON = 231 * 0.0254 ** 3;
const PSI = (0.45359237 * 9.80665) / 0.0254 ** 2;
const IN_HG = 0.0254 * 13595.1 * 9.80665;

/** What people type, what it is, and its SI value worked out here by hand from the definitions of the units. */
const TYPED: [text: string, dimension: Dimension, si: number][] = [
  ['12 gpm', 'flow', (12 * GALLON) / 60],
  ['12 GPM', 'flow', (12 * GALLON) / 60],
  ['12gpm', 'flow', (12 * GALLON) / 60],
  ['12 gal/min', 'flow', (12 * GALLON) / 60],
  ['12 gal per min', 'flow', (12 * GALLON) / 60],
  ['90 gph', 'flow', (90 * GALLON) / 3600],
  ['40 l/min', 'flow', 0.04 / 60],
  ['40 L/min', 'flow', 0.04 / 60],
  ['40 lpm', 'flow', 0.04 / 60],
  ['40 LPM', 'flow', 0.04 / 60],
  ['12 oz/min', 'flow', (12 * GALLON) / 128 / 60],
  ['12 imp gpm', 'flow', (12 * 0.00454609) / 60],
  ['1,200 gal', 'volume', 1200 * GALLON],
  ['1,200.5 gal', 'volume', 1200.5 * GALLON],
  ['1 200 gal', 'volume', 1200 * GALLON],
  ['1,200,000 gal', 'volume', 1.2e6 * GALLON],
  ['1.200,5 l', 'volume', 1.2005],
  ['1.200.000 l', 'volume', 1200],
  ['1 200,5 L', 'volume', 1.2005],
  ['1\u202F200 L', 'volume', 1.2],
  ['4 gal imp', 'volume', 4 * 0.00454609],
  ['4 imp gal', 'volume', 4 * 0.00454609],
  ['4 gal (imp)', 'volume', 4 * 0.00454609],
  ['4 UK gallons', 'volume', 4 * 0.00454609],
  ['4 US gal', 'volume', 4 * GALLON],
  ['4 U.S. gal.', 'volume', 4 * GALLON],
  ['16 oz', 'volume', GALLON / 8],
  ['16 oz', 'mass', 0.45359237],
  ['45 psi', 'pressure', 45 * PSI],
  ['45 PSI', 'pressure', 45 * PSI],
  ['40 psig', 'pressure', 40 * PSI],
  ['2 bar', 'pressure', 2e5],
  ['2 bar(g)', 'pressure', 2e5],
  ['2 barg', 'pressure', 2e5],
  ['3,25 bar', 'pressure', 3.25e5],
  ['0,200 bar', 'pressure', 2e4],
  ['1.200 bar', 'pressure', 1.2e5],
  [',5 bar', 'pressure', 5e4],
  ['.5 bar', 'pressure', 5e4],
  ['2e5 Pa', 'pressure', 2e5],
  ['2E+5 Pa', 'pressure', 2e5],
  ['200 kPa', 'pressure', 2e5],
  ['0.2 MPa', 'pressure', 2e5],
  ['0.2 Mpa', 'pressure', 2e5],
  ['30 mwc', 'pressure', 30 * 9806.65],
  ['30 ft of water', 'pressure', 30 * 0.3048 * 9806.65],
  ['10 inHg vac', 'pressure', -10 * IN_HG],
  ['10 in Hg vacuum', 'pressure', -10 * IN_HG],
  ['-7.3 psi', 'pressure', -7.3 * PSI],
  ['\u22127.3 psi', 'pressure', -7.3 * PSI],
  ['14.7 psia', 'absolutePressure', 14.7 * PSI],
  ['2 bar abs', 'absolutePressure', 2e5],
  ['2 bara', 'absolutePressure', 2e5],
  ['101 kPaa', 'absolutePressure', 101e3],
  ['1013 hPa', 'absolutePressure', 101300],
  ['29.92 inHg', 'absolutePressure', 29.92 * IN_HG],
  ['3/4 in', 'length', 0.01905],
  ['3/4"', 'length', 0.01905],
  ['3/4\u201D', 'length', 0.01905],
  ['1 1/2"', 'length', 0.0381],
  ['1-1/2 in', 'length', 0.0381],
  ['1 - 1/2 in', 'length', 0.0381],
  ['½ in', 'length', 0.0127],
  ['1½ in', 'length', 0.0381],
  ['1 ½"', 'length', 0.0381],
  ['-½ in', 'length', -0.0127],
  ['3\u20444 in', 'length', 0.01905],
  ['⅜"', 'length', 0.009525],
  [`5'6"`, 'length', 1.6764],
  ["5'6''", 'length', 1.6764],
  ["5'6", 'length', 1.6764],
  ['5\u20326\u2033', 'length', 1.6764],
  [`5'-6 1/2"`, 'length', 66.5 * 0.0254],
  ['5 ft 6 in', 'length', 1.6764],
  ['5ft6in', 'length', 1.6764],
  ['5 ft, 6 in', 'length', 1.6764],
  ['5 feet and 6 inches', 'length', 1.6764],
  [`-5'6"`, 'length', -1.6764],
  ["60'", 'length', 60 * 0.3048],
  ['300 ft', 'length', 91.44],
  ['300 FT.', 'length', 91.44],
  ['300 micron', 'length', 3e-4],
  ['300 µm', 'length', 3e-4],
  ['19 mm', 'length', 0.019],
  ['70 F', 'temperature', (529.67 * 5) / 9],
  ['70 °F', 'temperature', (529.67 * 5) / 9],
  ['70°F', 'temperature', (529.67 * 5) / 9],
  ['-5 C', 'temperature', 268.15],
  ['-40 °C', 'temperature', 233.15],
  ['-40 F', 'temperature', 233.15],
  ['300 K', 'temperature', 300],
  ['18 F', 'temperatureDifference', 10],
  ['10 °C', 'temperatureDifference', 10],
  ['8.3 lb/gal', 'density', (8.3 * 0.45359237) / GALLON],
  ['1,15 kg/L', 'density', 1150],
  ['20 gal/acre', 'dose', (20 * GALLON) / (43560 * 0.3048 ** 2)],
  ['20 gpa', 'dose', (20 * GALLON) / (43560 * 0.3048 ** 2)],
  ['2 gal/1,000 sq ft', 'dose', (2 * GALLON) / (1000 * 0.3048 ** 2)],
  ['200 L/ha', 'dose', 2e-5],
  ['540 rpm', 'rotation', 18 * Math.PI],
  ['540 1/min', 'rotation', 18 * Math.PI],
  ['2.5 in3/rev', 'displacement', (2.5 * 0.0254 ** 3) / (2 * Math.PI)],
  ['5.5 hp', 'power', 5.5 * 550 * 0.3048 * 0.45359237 * 9.80665],
  ['5 PS', 'power', 5 * 735.49875],
  ['4 mph', 'speed', 4 * 0.44704],
  ['6,5 km/h', 'speed', 6.5 / 3.6],
  ['25 ft-lb', 'torque', 25 * 0.3048 * 0.45359237 * 9.80665],
  ['45 lb', 'force', 45 * 0.45359237 * 9.80665],
  ['75 Ah', 'charge', 270000],
  ['1 h 30 min', 'time', 5400],
  ['1h30min', 'time', 5400],
  ['2 lb 3 oz', 'mass', (2 + 3 / 16) * 0.45359237],
  ['3 /min', 'rate', 0.05],
  ['1.0 cP', 'viscosity', 0.001],
  ['45°', 'angle', Math.PI / 4],
  ['60 %', 'ratio', 0.6],
  ['60%', 'ratio', 0.6],
  ['0.6', 'ratio', 0.6],
  ['3/5', 'ratio', 0.6],
  ['4 fl oz/gal', 'ratio', 1 / 32],
  ['300 gal/mile', 'volumePerLength', (300 * GALLON) / 1609.344],
  ['0 psi', 'pressure', 0],
  ['-0 psi', 'pressure', 0],
];

/** What is refused, and words the refusal must contain. */
const REFUSED: [text: string, dimension: Dimension, words: string[]][] = [
  ['70 F', 'length', ["'70 F' is a temperature", 'a length was expected, such as 12 ft']],
  ['20 gal/acre', 'length', ['is a volume by area', 'a length was expected']],
  ['12', 'flow', ["'12' has no unit", 'such as 12 gpm']],
  ['', 'flow', ['nothing was given', 'a flow was expected']],
  ['   ', 'flow', ['nothing was given']],
  ['gpm', 'flow', ['does not begin with a number']],
  ['about 12 gpm', 'flow', ['does not begin with a number']],
  ['12 gmp', 'flow', ["unknown unit 'gmp'", "did you mean 'gpm'?"]],
  ['12 quux', 'flow', ["unknown unit 'quux'"]],
  ['10-12 gpm', 'flow', ['is more than one number']],
  ['10 to 12 gpm', 'flow', ['is more than one number']],
  ['1,200 bar', 'pressure', ['can be read two ways', '1.2 bar or 1200 bar']],
  ['1,200 l/min', 'flow', ['can be read two ways']],
  ['1,20,000 gal', 'volume', ['a number that cannot be read']],
  ['1.200,500.5 l', 'volume', ['a number that cannot be read']],
  ['1,2,3 gal', 'volume', ['a number that cannot be read']],
  ['1 1/0 in', 'length', ['a number that cannot be read']],
  ['3/0 in', 'length', ['a number that cannot be read']],
  ['1 5/4 in', 'length', ['a number that cannot be read']],
  ['14.7 psia', 'pressure', ['is an absolute pressure', 'a gauge pressure was expected, such as 45 psi']],
  ['2 bar abs', 'pressure', ['is an absolute pressure']],
  ['2 bar(a)', 'pressure', ['is an absolute pressure']],
  ['40 psig', 'absolutePressure', ['is a gauge pressure', 'such as 14.7 psia']],
  ['-1 psia', 'absolutePressure', ['below full vacuum']],
  ['5 mpa', 'pressure', ["did you mean 'MPa'?"]],
  ['5 mw', 'power', ["did you mean 'mW'?"]],
  ['12 AWG', 'length', ['a wire gauge is not a length']],
  ['60 mesh', 'length', ['a mesh count is not a length']],
  ['60 SSU', 'kinematicViscosity', ['Saybolt']],
  ['2 tons', 'mass', ['short, long or metric']],
  ['70 deg', 'temperature', ["must say 'F' or 'C'"]],
  ['5 kg', 'force', ["written 'kgf'"]],
  ['-500 F', 'temperature', ['below absolute zero', '-459.67 °F']],
  ['-300 C', 'temperature', ['below absolute zero', '-273.15 °C']],
  ['-1 K', 'temperature', ['below absolute zero']],
  ['1e999 Pa', 'pressure', ['too large a number']],
  ['1e308 GPa', 'pressure', ['too large a number']],
  ['1e-400 Pa', 'pressure', ['a number that cannot be read']],
  ['1e-320 µm', 'length', ['too small a number']],
  [`5'14"`, 'length', ['expected']],
  ['5 in 6 ft', 'length', ['expected']],
  ['5 ft 6', 'flow', ['expected']],
  ['NaN gpm', 'flow', ['does not begin with a number']],
  ['Infinity gpm', 'flow', ['does not begin with a number']],
  ['12 gpm 5', 'flow', ['expected']],
  ['1:50', 'ratio', ['expected']],
  [`${'1'.repeat(200)} ft`, 'length', ['too long']],
];

describe('reading a quantity as typed', () => {
  it.each(TYPED)('reads %j as %s', (text, dimension, si) => {
    const parsed = parseQuantity(text, dimension);
    if (!parsed.ok) throw new Error(parsed.message);
    if (si === 0) expect(Object.is(parsed.value, 0)).toBe(true);
    else expect(Math.abs(parsed.value / si - 1)).toBeLessThan(1e-15);
  });

  it.each(REFUSED)('refuses %j as %s and says why', (text, dimension, words) => {
    const parsed = parseQuantity(text, dimension);
    if (parsed.ok) throw new Error(`read as ${parsed.value} (${parsed.unit})`);
    for (const word of words) expect(parsed.message).toContain(word);
    expect(parsed.message.length).toBeLessThan(300);
  });

  it('gives fractions of an inch the same value as the millimetres they are defined to be', () => {
    for (const [inches, millimetres] of [
      ['3/4 in', '19.05 mm'],
      ['1 1/2 in', '38.1 mm'],
      ['3/8 in', '9.525 mm'],
    ] as const)
      expect(parseQuantity(inches, 'length')).toMatchObject({
        value: (parseQuantity(millimetres, 'length') as { value: number }).value,
      });
  });

  it('names the unit it read', () => {
    const units = (text: string, dimension: Dimension) => {
      const parsed = parseQuantity(text, dimension);
      return parsed.ok ? parsed.unit : parsed.message;
    };
    expect(units(`5'6"`, 'length')).toBe('ft');
    expect(units('8 gal per 1000 sq. ft.', 'dose')).toBe('gal/1000 ft²');
    expect(units('70 f', 'temperature')).toBe('°F');
    expect(units('0.5', 'ratio')).toBe('1');
  });
});

describe('any text at all', () => {
  const dimensions = Object.keys(DIMENSIONS) as Dimension[];
  const figures = fc.oneof(
    fc.double().map(String),
    fc.stringMatching(/^[-+]?[\d.,/ e]{1,12}$/),
    fc.constant('1 1/2'),
  );
  const names = fc.oneof(fc.constantFrom(...UNITS.map((u) => u.symbol)), fc.string({ maxLength: 12 }));
  const texts = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 40 }),
    fc.tuple(figures, names, names).map(([f, a, b]) => `${f} ${a}/${b}`),
    fc.tuple(figures, names).map(([f, n]) => `${f} ${n}`),
    fc.tuple(figures, names, figures, names).map((all) => all.join(' ')),
  );

  it('gives a finite number or a refusal that names what was expected, never anything else', () => {
    fc.assert(
      fc.property(texts, fc.constantFrom(...dimensions), (text, dimension) => {
        const parsed = parseQuantity(text, dimension);
        if (parsed.ok)
          return Number.isFinite(parsed.value) && !Object.is(parsed.value, -0) && parsed.unit.length > 0;
        return parsed.message.length > 10 && parsed.message.length < 300;
      }),
      { numRuns: 5000 },
    );
  });

  it('is read fast however it is made', () => {
    const hostile = [
      '1 '.repeat(49),
      '1,'.repeat(49),
      '1 ft '.repeat(19),
      `1 ${'a-'.repeat(28)}`,
      `1 ${'('.repeat(90)}`,
    ];
    for (const text of hostile) expect(parseQuantity(text, 'length').ok).toBe(false);
    const start = performance.now();
    for (let i = 0; i < 200; i++) for (const text of hostile) parseQuantity(text, 'length');
    // A catastrophic pattern takes minutes here, not milliseconds.
    expect(performance.now() - start).toBeLessThan(5000);
  });
});
