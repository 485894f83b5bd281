import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseQuantity, UNITS, write, type Dimension } from './index.ts';

function si(text: string, dimension: Dimension): number {
  const parsed = parseQuantity(text, dimension);
  if (!parsed.ok) throw new Error(parsed.message);
  return parsed.value;
}

describe('writing a value for a document', () => {
  it('writes what was typed', () => {
    for (const [typed, dimension] of [
      ['12 gpm', 'flow'],
      ['0.75 in', 'length'],
      ['70 °F', 'temperature'],
      ['8.3 lb/gal', 'density'],
      ['540 rpm', 'rotation'],
      ['2.5 in³/rev', 'displacement'],
      ['0.6 1', 'ratio'],
      ['-7.3 psi', 'pressure'],
    ] as [string, Dimension][]) {
      const [figure, unit] = [typed.split(' ')[0] ?? '', typed.slice(typed.indexOf(' ') + 1)];
      const value = si(unit === '1' ? figure : typed, dimension);
      expect(write(value, unit, dimension)).toBe(unit === '1' ? figure : typed);
    }
  });

  it('is read back to the same value within 1e-15, in every unit', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...UNITS),
        fc.double({ min: -1e12, max: 1e12, noNaN: true, noDefaultInfinity: true }),
        (unit, figure) => {
          fc.pre(Math.abs(figure) > 1e-9 || figure === 0);
          const dimension = unit.kind as Dimension;
          const value = (figure + unit.offset) * unit.factor;
          fc.pre(dimension !== 'temperature' || value >= 0);
          const back = parseQuantity(write(value, unit.symbol, dimension), dimension);
          if (!back.ok) throw new Error(back.message);
          // Within four units of the last place; for °C and °F of the larger of the value and its zero.
          const scale = Math.max(Math.abs(value), unit.offset * unit.factor);
          expect(Math.abs(back.value - value)).toBeLessThanOrEqual(scale * 1e-15);
        },
      ),
      { numRuns: 3000 },
    );
  });

  it('no longer changes a value that has been read from a document', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('gpm', 'psi', 'ft', 'gal', 'lb', 'L/min', 'bar'),
        fc.double({ min: 1e-6, max: 1e6, noNaN: true }),
        (unit, figure) => {
          const once = write(figure, unit);
          const dimension = {
            gpm: 'flow',
            psi: 'pressure',
            ft: 'length',
            gal: 'volume',
            lb: 'mass',
            'L/min': 'flow',
            bar: 'pressure',
          }[unit] as Dimension;
          const read = si(once, dimension);
          expect(si(write(read, unit), dimension)).toBe(read);
        },
      ),
      { numRuns: 3000 },
    );
  });

  it('refuses what cannot be written', () => {
    expect(() => write(NaN, 'gpm')).toThrow('a flow is NaN; it must be finite');
    expect(() => write(1, 'furlong')).toThrow("'furlong' is not a unit");
    expect(() => write(1, 'psi', 'flow')).toThrow("'psi' is not a unit of a flow");
  });
});
