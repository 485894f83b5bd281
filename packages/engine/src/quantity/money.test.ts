import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { amountText, moneyText, priceChangeText, priceText } from './index.ts';

const anyCents = fc.integer({ min: -1_000_000_000_000, max: 1_000_000_000_000 });
/** The cents that a text says. */
const read = (text: string) => {
  const said = /^(−?)\$?([\d,]+)(?:\.(\d\d))?$/.exec(text);
  const cents = Number(said![2]!.replaceAll(',', '')) * 100 + Number(said![3] ?? 0);
  return said![1] === '' ? cents : -cents;
};

// How money is written is common practice in US shops, no source.
describe('money as people read it', () => {
  it('is exact on a bill', () => {
    expect(moneyText(118_000)).toBe('$1,180');
    expect(moneyText(118_050)).toBe('$1,180.50');
    expect(moneyText(118_005)).toBe('$1,180.05');
    expect(moneyText(-3500)).toBe('−$35');
    expect(moneyText(123_456_789)).toBe('$1,234,567.89');
    expect(amountText(118_000)).toBe('1,180.00');
    expect(amountText(7)).toBe('0.07');
    expect(amountText(-3520)).toBe('−35.20');
  });

  it('says a price in whole dollars, a small one with its cents', () => {
    expect(priceText(118_049)).toBe('$1,180');
    expect(priceText(118_050)).toBe('$1,181');
    expect(priceText(740)).toBe('$7.40');
    expect(priceText(9999)).toBe('$99.99');
    expect(priceText(-118_050)).toBe('−$1,181');
  });

  it('gives a change its sign, and none to no change', () => {
    expect(priceChangeText(12_000)).toBe('+$120');
    expect(priceChangeText(-3500)).toBe('−$35');
    expect(priceChangeText(0)).toBe('$0');
    expect(priceChangeText(-0)).toBe('$0');
  });

  it('says any sum so that it can be read back', () => {
    fc.assert(
      fc.property(anyCents, (cents) => {
        expect(read(moneyText(cents)) - cents).toBe(0);
        expect(read(amountText(cents)) - cents).toBe(0);
        expect(Math.abs(read(priceText(cents)) - cents)).toBeLessThanOrEqual(50);
      }),
    );
  });

  it('refuses what is not whole cents', () => {
    for (const cents of [NaN, Infinity, 0.5])
      expect(() => moneyText(cents)).toThrow(/it must be whole cents/);
  });
});
