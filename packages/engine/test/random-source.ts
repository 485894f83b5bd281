/** Seeded numbers for tests: the same seed gives the same networks everywhere. */
export interface RandomSource {
  /** 0 <= x < 1 */
  next(): number;
  between(min: number, max: number): number;
  /** Evenly in the logarithm. */
  scale(min: number, max: number): number;
  whole(min: number, max: number): number;
  chance(probability: number): boolean;
  pick<T>(from: readonly T[]): T;
}

/** Mulberry32, a well-known 32-bit generator in the public domain. */
export function randomSource(seed: number): RandomSource {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const between = (min: number, max: number): number => min + (max - min) * next();
  const whole = (min: number, max: number): number => Math.floor(between(min, max + 1));
  return {
    next,
    between,
    scale: (min, max) => Math.exp(between(Math.log(min), Math.log(max))),
    whole,
    chance: (p) => next() < p,
    pick: (from) => from[whole(0, from.length - 1)]!,
  };
}
