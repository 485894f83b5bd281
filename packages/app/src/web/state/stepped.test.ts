import { describe, expect, it } from 'vitest';
import { stepped } from './stepped.ts';
import { typedValue } from './typed-value.ts';

describe('A step of a typed figure', () => {
  it('goes by ones, or by the last digit of a decimal', () => {
    expect(stepped('52 ft', 1)).toBe('53 ft');
    expect(stepped('15.8 m', -10)).toBe('14.8 m');
    expect(stepped('1,200 gal', 10)).toBe('1210 gal');
    expect(stepped('$22,000', 1)).toBe('$22001');
  });

  it('stops at nothing, and leaves what it cannot read', () => {
    expect(stepped('3 ft', -10)).toBe('0 ft');
    expect(stepped('about', 1)).toBeUndefined();
    expect(stepped('3/4 in', 1)).toBeUndefined();
  });
});

describe('A typed text', () => {
  it('keeps the unit that stood in the box when it is a bare number', () => {
    expect(typedValue({ sort: 'quantity' }, '40', '52 ft')).toBe('40 ft');
    expect(typedValue({ sort: 'quantity' }, '40 m', '52 ft')).toBe('40 m');
    expect(typedValue({ sort: 'quantity' }, '60', '50 %')).toBe('60 %');
  });

  it('becomes a number where the document holds one, and stays text where it is none', () => {
    expect(typedValue({ sort: 'money' }, '$22,500', '$22,000')).toBe(2250000);
    expect(typedValue({ sort: 'number' }, '30', '75')).toBe(30);
    expect(typedValue({ sort: 'number' }, 'soon', '75')).toBe('soon');
  });
});
