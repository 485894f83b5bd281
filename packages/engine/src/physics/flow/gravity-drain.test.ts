import { describe, expect, it } from 'vitest';
import { drainTimeLyingRound, drainTimeUpright } from '../index.ts';

const OUTLET = 0.05;
const SHARE = 0.55;
const outflow = (level: number) => SHARE * (Math.PI / 4) * OUTLET ** 2 * Math.sqrt(2 * 9.80665 * level);

/** Time in small steps of volume, each let out at the flow of its middle level. */
function inSteps(surface: (level: number) => number, from: number, to: number): number {
  const steps = 200_000;
  const step = (from - to) / steps;
  let time = 0;
  for (let i = 0; i < steps; i++) {
    const level = to + (i + 0.5) * step;
    time += (surface(level) * step) / outflow(level);
  }
  return time;
}

describe('a tank that runs down by its own weight takes the time that small steps add up to (numerical integration)', () => {
  it('upright', () => {
    const section = 1.1;
    expect(drainTimeUpright(section, 1.4, 0.2, OUTLET, SHARE)).toBeCloseTo(
      inSteps(() => section, 1.4, 0.2),
      4,
    );
  });

  it('lying round, its surface widest at half', () => {
    const [diameter, length] = [1.2, 2.5];
    const surface = (h: number) => 2 * length * Math.sqrt(h * (diameter - h));
    expect(drainTimeLyingRound(diameter, length, 1, 0.1, OUTLET, SHARE)).toBeCloseTo(
      inSteps(surface, 1, 0.1),
      4,
    );
    // To the last drop: the surface vanishes with the level, so that the time stays finite.
    const whole = drainTimeLyingRound(diameter, length, diameter, 0, OUTLET, SHARE);
    expect(whole).toBeCloseTo(((4 / 3) * length * diameter ** 1.5) / outflow(1), 9);
  });

  it('in parts as in one go', () => {
    const parts = [
      [1, 0.6],
      [0.6, 0.25],
      [0.25, 0],
    ].map(([from, to]) => drainTimeLyingRound(1, 2, from!, to!, OUTLET, SHARE));
    expect(parts.reduce((sum, t) => sum + t, 0)).toBeCloseTo(
      drainTimeLyingRound(1, 2, 1, 0, OUTLET, SHARE),
      9,
    );
  });
});

describe('a tank that cannot run down so', () => {
  it('is refused by the name of what is wrong', () => {
    expect(() => drainTimeUpright(1, 0.5, 0.6, OUTLET, SHARE)).toThrow(
      'leftLevel is 0.6 m; it must be at most 0.5 m',
    );
    expect(() => drainTimeLyingRound(1, 2, 1.1, 0, OUTLET, SHARE)).toThrow(
      'level is 1.1 m; it must be at most 1 m',
    );
  });
});
