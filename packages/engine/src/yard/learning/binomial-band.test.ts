import { describe, expect, it } from 'vitest';
import { binomialBand } from './binomial-band.ts';

describe('How many of a number of trials hold', () => {
  // Cumulative binomial table, textbook, to four places (from memory, and by whole numbers: 21700 of 2^20 is 0.0207):
  // n = 20, p = 0.5: P(at most 5) 0.0207, P(at most 6) 0.0577; n = 20, p = 0.1: P(at most 4) 0.9568; n = 10, p = 0.5:
  // P(at most 1) 0.0107, P(at most 2) 0.0547.
  it.each([
    [20, 0.5, 6, 14],
    [20, 0.1, 0, 4],
    [10, 0.5, 2, 8],
  ])('of %i with probability %f, nine times in ten, %i to %i', (trials, probability, low, high) => {
    expect(binomialBand(trials, probability, 0.9)).toEqual([low, high]);
  });

  it('holds what is sure, and stands up to many trials', () => {
    expect(binomialBand(7, 1, 0.9)).toEqual([7, 7]);
    expect(binomialBand(7, 0, 0.9)).toEqual([0, 0]);
    expect(binomialBand(0, 0.5, 0.9)).toEqual([0, 0]);
    const [low, high] = binomialBand(100_000, 0.5, 0.9);
    // Normal approximation: 1.6449 deviations of 158.1 on either side.
    expect(low).toBeGreaterThan(49_735);
    expect(low).toBeLessThan(49_745);
    expect(high).toBe(100_000 - low);
  });
});
