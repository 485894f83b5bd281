import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  DIMENSIONS,
  display,
  displayParts,
  parseQuantity,
  type Dimension,
  type DisplayOptions,
  type UnitSystem,
} from './index.ts';

function si(text: string, dimension: Dimension): number {
  const parsed = parseQuantity(text, dimension);
  if (!parsed.ok) throw new Error(parsed.message);
  return parsed.value;
}

/** The rounding of the trade; common practice, no source. */
const SHOWN: [typed: string, dimension: Dimension, us: string, metric: string, options?: DisplayOptions][] = [
  ['12 gpm', 'flow', '12.0 gpm', '45.4 L/min'],
  ['99.96 gpm', 'flow', '100 gpm', '378 L/min'],
  ['0.2 gpm', 'flow', '0.20 gpm', '0.76 L/min'],
  ['500 psi', 'pressure', '500 psi', '34.5 bar'],
  ['2.31 psi', 'pressure', '2.3 psi', '0.16 bar'],
  ['-7.3 psi', 'pressure', '\u22127.3 psi', '\u22120.50 bar'],
  ['-0.01 psi', 'pressure', '0.0 psi', '0.00 bar'],
  ['14.7 psia', 'absolutePressure', '14.7 psia', '1.01 bar abs'],
  ['52.37 ft', 'length', '52.4 ft', '16.0 m'],
  ['300 ft', 'length', '300 ft', '91.4 m'],
  ['8.25 in', 'length', '8.3 in', '210 mm'],
  ['3/4 in', 'length', '3/4 in', '19 mm', { as: 'bore' }],
  ['1 1/2 in', 'length', '1 1/2 in', '38.1 mm', { as: 'bore' }],
  ['2 in', 'length', '2 in', '50.8 mm', { as: 'bore' }],
  ['19 mm', 'length', '3/4 in', '19 mm', { as: 'bore' }],
  ['13 mm', 'length', '0.512 in', '13 mm', { as: 'bore' }],
  ['250 µm', 'length', '250 µm', '250 µm', { as: 'droplet' }],
  ['1,200 gal', 'volume', '1,200 gal', '4542 L'],
  ['12345 gal', 'volume', '12,345 gal', '46\u00A0731 L'],
  ['4.25 gal', 'volume', '4.3 gal', '16 L'],
  ['6 fl oz', 'volume', '6.0 fl oz', '177 mL'],
  ['8340 lb', 'mass', '8,340 lb', '3783 kg'],
  ['5 oz', 'mass', '5.0 oz', '142 g'],
  ['70 F', 'temperature', '70 °F', '21 °C'],
  ['18 F', 'temperatureDifference', '18 °F', '10 °C'],
  ['5.5 hp', 'power', '5.5 hp', '4.1 kW'],
  ['8.34 lb/gal', 'density', '8.34 lb/gal', '999 kg/m³'],
  ['540 rpm', 'rotation', '540 rpm', '540 rpm'],
  ['60 %', 'ratio', '60%', '60%'],
  ['4.2 %', 'ratio', '4.2%', '4.2%'],
  ['45 deg', 'angle', '45°', '45°'],
  ['20 gal/acre', 'dose', '20.0 gal/acre', '187 L/ha'],
  ['2 gal/1000 ft2', 'dose', '2.00 gal/1000 ft²', '8.1 L/100 m²', { as: 'turf-dose' }],
  ['59.97 s', 'time', '1.0 min', '1.0 min'],
  ['90 min', 'time', '1.5 h', '1.5 h'],
  ['12 A', 'current', '12.0 A', '12.0 A'],
  ['4 mph', 'speed', '4.0 mph', '6.4 km/h'],
  ['10 ft/s', 'speed', '10.0 ft/s', '3.0 m/s', { as: 'liquid-speed' }],
  ['500 psi', 'pressure', '3.45 MPa', '3.45 MPa', { unit: 'MPa', decimals: 2 }],
];

describe('showing a value', () => {
  it.each(SHOWN)('shows %s of %s as the trade reads it', (typed, dimension, us, metric, options) => {
    expect(display(si(typed, dimension), dimension, 'us', options)).toBe(us);
    expect(display(si(typed, dimension), dimension, 'metric', options)).toBe(metric);
  });

  it('gives figure and unit apart', () => {
    expect(displayParts(si('1200 gal', 'volume'), 'volume', 'us')).toEqual({ figure: '1,200', unit: 'gal' });
  });

  it('refuses a value that is not finite, naming the quantity', () => {
    expect(() => display(NaN, 'flow', 'us')).toThrow('a flow to display is NaN');
    expect(() => display(Infinity, 'flow', 'us')).toThrow(RangeError);
    expect(() => display(1, 'flow', 'us', { unit: 'psi' })).toThrow("'psi' is not a unit of a flow");
  });

  it('shows what reads back as the same quantity within its rounding, in every dimension and both systems', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...(Object.keys(DIMENSIONS) as Dimension[])),
        fc.constantFrom<UnitSystem>('us', 'metric'),
        fc.double({ min: 1e-6, max: 1e9, noNaN: true }),
        fc.boolean(),
        (dimension, system, size, negative) => {
          // Whole degrees cannot show what lies less than one above absolute zero.
          const value =
            dimension === 'temperature'
              ? size + 1
              : negative && dimension !== 'absolutePressure'
                ? -size
                : size;
          const shown = display(value, dimension, system);
          const back = parseQuantity(shown.replace(' per min', '/min'), dimension);
          if (!back.ok) throw new Error(`${shown}: ${back.message}`);
          const { figure, unit } = displayParts(value, dimension, system);
          const decimals = figure.split('.')[1]?.length ?? 0;
          const step = si(`1 ${plainUnit(unit)}`, stepOf(dimension)) * 10 ** -decimals;
          // Half a step of the last digit shown, and the rounding of doubles.
          expect(Math.abs(back.value - value), shown).toBeLessThanOrEqual(
            step * 0.5001 + Math.abs(value) * 1e-12,
          );
        },
      ),
      { numRuns: 3000 },
    );
  });
});

const plainUnit = (unit: string) => unit.replace('per min', '/min');
const stepOf = (dimension: Dimension): Dimension =>
  dimension === 'temperature' ? 'temperatureDifference' : dimension;
