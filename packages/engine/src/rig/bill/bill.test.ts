import { describe, expect, it } from 'vitest';
import type { Shop } from '../../catalogue/index.ts';
import { priceBy, priced, pricingOf, type Pricing } from './pricing.ts';
import type { RawLine } from './part-lines.ts';
import { workingDaysBefore } from './working-days.ts';

const line = (sort: RawLine['sort'], costCents: number, listCents: number): RawLine => ({
  sort,
  name: sort,
  quantity: 1,
  unit: 'each',
  costCents,
  priceCents: listCents,
  mass: 0,
  short: 0,
  leadTimeDays: 0,
});
const LIST: Pricing = {
  rule: { mode: 'list' },
  discountPercent: 0,
  leastMarginPercent: 0,
  mostDiscountPercent: 100,
  tax: undefined,
  freightCents: undefined,
};
const LINES = [line('part', 6000, 9000), line('labour', 2000, 3333)];

describe('pricing', () => {
  it('is by list, by a markup on cost, or by a margin that is never missed by rounding', () => {
    expect(priced(LINES, LIST).priceCents).toBe(12333);
    expect(priced(LINES, { ...LIST, rule: { mode: 'cost-plus', markupPercent: 35 } }).priceCents).toBe(10800);
    for (let cost = 1; cost < 4000; cost += 7) {
      const price = priceBy({ mode: 'target-margin', marginPercent: 33 }, cost, 0);
      expect(Number.isInteger(price)).toBe(true);
      expect(price - cost).toBeGreaterThanOrEqual(price * 0.33 - 1e-9);
      expect(price - 1 - cost).toBeLessThan((price - 1) * 0.33);
    }
  });

  it('gives a discount as asked, and no more than either floor lets it', () => {
    expect(priced(LINES, { ...LIST, discountPercent: 10 }).discount).toEqual({
      askedPercent: 10,
      askedCents: 1233,
      cents: 1233,
    });
    const capped = priced(LINES, { ...LIST, discountPercent: 30, mostDiscountPercent: 12 });
    expect(capped.discount).toMatchObject({ cents: 1479, held: 'most-discount' });
    const floored = priced(LINES, { ...LIST, discountPercent: 30, leastMarginPercent: 30 });
    expect(floored.discount).toMatchObject({ held: 'least-margin' });
    expect(1 - floored.costCents / floored.priceCents).toBeGreaterThanOrEqual(0.3);
    expect(1 - floored.costCents / (floored.priceCents - 1)).toBeLessThan(0.3);
    const below = priced([line('part', 9000, 9500)], { ...LIST, discountPercent: 5, leastMarginPercent: 20 });
    expect(below.discount).toMatchObject({ cents: 0, held: 'least-margin' });
  });

  it('adds freight to what is to be paid, with neither discount nor tax on it, and takes the tax off who pays none', () => {
    const tax = { percent: 8, on: 'everything' as const };
    const {
      priceCents,
      totalCents,
      tax: reckoned,
    } = priced(LINES, {
      ...LIST,
      discountPercent: 10,
      tax,
      freightCents: 45_000,
    });
    // By hand: 12333 less 10 % is 11100, 8 % of that 888.
    expect([priceCents, reckoned?.cents, totalCents]).toEqual([11_100, 888, 11_100 + 888 + 45_000]);
    const shop = { pricing: { price: { mode: 'list' }, tax } } as unknown as Shop;
    expect(pricingOf(shop, { taxFree: true }).tax).toBeUndefined();
    expect(pricingOf(shop, undefined).tax).toEqual(tax);
  });

  it('reckons tax on what is paid, on everything or on goods alone', () => {
    const taxed = (on: 'everything' | 'goods', discountPercent = 0) =>
      priced(LINES, { ...LIST, discountPercent, tax: { percent: 8, on } }).tax!.cents;
    expect(taxed('everything')).toBe(987);
    expect(taxed('goods')).toBe(720);
    expect(taxed('goods', 10)).toBe(648);
  });
});

describe('working days', () => {
  it('go back over weekends, leap days and new years', () => {
    // Looked up in a calendar: 2026-03-03 is a Tuesday.
    expect(workingDaysBefore('2026-03-03', 0)).toBe('2026-03-03');
    expect(workingDaysBefore('2026-03-03', 2)).toBe('2026-02-27');
    expect(workingDaysBefore('2026-03-01', 0)).toBe('2026-02-27');
    expect(workingDaysBefore('2028-03-01', 1)).toBe('2028-02-29');
    expect(workingDaysBefore('2027-01-01', 1)).toBe('2026-12-31');
  });

  it('agree with the calendar of the platform for forty years', () => {
    for (let t = Date.UTC(2000, 0, 3); t < Date.UTC(2040, 0, 1); t += 86_400_000 * 11) {
      const text = (at: number) => new Date(at).toISOString().slice(0, 10);
      let back = t;
      while ([0, 6].includes(new Date(back).getUTCDay())) back -= 86_400_000;
      expect(workingDaysBefore(text(t), 5)).toBe(text(back - 7 * 86_400_000));
    }
  });

  it('refuse what is no day', () => {
    for (const text of ['2026-13-01', '2026-02-30', '3 March', ''])
      expect(() => workingDaysBefore(text, 1)).toThrow(RangeError);
  });
});
