import { describe, expect, it } from 'vitest';
import { INSTRUMENTS } from './instruments.data.ts';
import {
  atOdds,
  countedOf,
  repeatsAgree,
  repeatsLeft,
  scatterOf,
  valuesAsked,
  valuesTaken,
  windowAfter,
} from './repeats.ts';

describe('a tape that is thrown to several times', () => {
  it('counts the middle one, whatever one of three says; two count by their mean', () => {
    expect(countedOf('tape-farthest', [20, 22, 19.5])).toBe(20);
    expect(countedOf('tape-farthest', [20, 18, 19.5])).toBe(19.5);
    expect(countedOf('tape-farthest', [20, 19])).toBe(19.5);
    expect(countedOf('tape-farthest', [20])).toBe(20);
    // Tips of a boom are no repeats of each other.
    expect(countedOf('bucket', [60, 61, 90])).toBeCloseTo(70.333, 3);
  });

  it('leaves out one of three that is far from the others; of two nobody can tell which', () => {
    expect(repeatsAgree('tape-farthest', [20, 31, 19.5])).toEqual([true, false, true]);
    expect(repeatsAgree('tape-farthest', [12, 20, 19.5])).toEqual([false, true, true]);
    expect(countedOf('tape-farthest', [20, 31, 19.5])).toBe(19.75);
    expect(repeatsAgree('tape-farthest', [20, 31])).toEqual([true, true]);
    // 3.2 deviations of one throw against the mean of two others: 5 % · √1.5 · 3.2 = 19.6 %.
    const against = (share: number) => repeatsAgree('tape-farthest', [20, 20, 20 * Math.exp(share)]);
    expect(against(0.195)).toEqual([true, true, true]);
    expect(against(0.197)).toEqual([true, true, false]);
    expect(repeatsAgree('bucket', [60, 61, 160])).toEqual([true, true, true]);
  });

  it('scatters by what order statistics say of the part that differs from throw to throw', () => {
    // Variance of the median of three standard normals 0.4487 (published tables of order statistics, e.g. Teichroew 1956;
    // from memory), deviation 0.6698.
    const { deviation, repeats } = INSTRUMENTS['tape-farthest'];
    const common = deviation ** 2 - repeats.deviation ** 2;
    expect(common).toBeGreaterThan(0);
    expect(scatterOf('tape-farthest', 1)).toBe(deviation);
    expect(scatterOf('tape-farthest', 2) ** 2 - common).toBeCloseTo(repeats.deviation ** 2 / 2, 12);
    expect(scatterOf('tape-farthest', 3) ** 2 - common).toBeCloseTo(0.4487 * repeats.deviation ** 2, 6);
    // What is common to all throws no number of them takes away.
    expect(scatterOf('tape-farthest', 3)).toBeGreaterThan(Math.sqrt(common));
    expect(scatterOf('bucket', 12)).toBe(INSTRUMENTS.bucket.deviation);
  });

  it('asks for three, says how many are left, and widens the window of fewer', () => {
    expect(valuesAsked({ repeats: 3 })).toBe(3);
    expect(valuesAsked({ tips: 12 })).toBe(12);
    expect(valuesAsked({})).toBe(1);
    expect(
      [0, 1, 2, 3].map((made) =>
        repeatsLeft({ instrument: 'tape-farthest', repeats: 3 }, [20, 20, 20].slice(0, made)),
      ),
    ).toEqual([3, 2, 1, 0]);
    expect(repeatsLeft({ instrument: 'bucket' }, [])).toBe(0);
    const row = { instrument: 'tape-farthest', repeats: 3, expected: 20, deviation: 0.1 } as const;
    const full = { ...row, low: 20 * Math.exp(-0.16449), high: 20 * Math.exp(0.16449) };
    expect(windowAfter(full, 3)).toBe(full);
    const one = windowAfter(full, 1);
    const more = scatterOf('tape-farthest', 1) ** 2 - scatterOf('tape-farthest', 3) ** 2;
    expect(one.deviation ** 2).toBeCloseTo(0.01 + more, 12);
    expect(one.low).toBeLessThan(windowAfter(full, 2).low);
    expect(windowAfter(full, 2).low).toBeLessThan(full.low);
  });
});

describe('a gauge that is read again after the outlets were open', () => {
  const row = { instrument: 'shut-gauge', repeats: 2 } as const;
  const left = (...values: readonly number[]) => repeatsLeft(row, values);

  it('is read twice; two that agree count by their mean, two at odds ask for a third', () => {
    expect([valuesAsked(row), valuesTaken(row)]).toEqual([2, 3]);
    expect([left(), left(40), left(40, 40.8)]).toEqual([2, 1, 0]);
    expect(countedOf('shut-gauge', [40, 40.8])).toBeCloseTo(40.4, 9);
    expect(atOdds('shut-gauge', [40, 45.2])).toBe(true);
    expect(left(40, 45.2)).toBe(1);
    // 3.2 deviations of the difference of two: 1 % · √2 · 3.2 = 4.5 %.
    expect(atOdds('shut-gauge', [40, 40 * Math.exp(0.045)])).toBe(false);
    expect(atOdds('shut-gauge', [40, 40 * Math.exp(0.0455)])).toBe(true);
    expect(atOdds('shut-gauge', [40])).toBe(false);
    // Tips of a boom are no repeats of each other, and tapes of three throws ask for the third anyhow.
    expect(atOdds('bucket', [60, 90])).toBe(false);
    expect(atOdds('tape-farthest', [20, 31])).toBe(true);
  });

  it('tells by a third which of two went wrong, and asks on where all three are apart', () => {
    expect(repeatsAgree('shut-gauge', [40, 45.2, 40.4])).toEqual([true, false, true]);
    expect(countedOf('shut-gauge', [40, 45.2, 40.4])).toBeCloseTo(40.2, 9);
    expect(left(40, 45.2, 40.4)).toBe(0);
    expect(atOdds('shut-gauge', [40, 45.2, 36])).toBe(true);
    expect(left(40, 45.2, 36)).toBe(1);
  });

  it('scatters no less than the gauge itself however often it is read, and a single reading as before', () => {
    const { deviation, repeats } = INSTRUMENTS['shut-gauge'];
    const ofGauge = Math.sqrt(deviation ** 2 - repeats.deviation ** 2);
    expect(ofGauge).toBeGreaterThan(0.01);
    expect(scatterOf('shut-gauge', 1)).toBe(INSTRUMENTS['pump-gauge'].deviation);
    expect(scatterOf('shut-gauge', 2)).toBeLessThan(scatterOf('shut-gauge', 1));
    expect(scatterOf('shut-gauge', 3)).toBeGreaterThan(ofGauge);
  });
});
