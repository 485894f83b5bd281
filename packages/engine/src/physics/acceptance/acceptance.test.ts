import { describe, expect, it } from 'vitest';
import { acceptanceCheck, acceptanceConflict, ACCEPTANCE_EDITIONS, ACCEPTANCE_ITEMS } from './index.ts';

const LITRE_A_MINUTE = 1e-3 / 60;

describe('Acceptance limits of the yard test', () => {
  it('carry place, edition, date, source and who checked, and say what was recalled', () => {
    for (const { origin, limits } of ACCEPTANCE_EDITIONS) {
      for (const text of [origin.place, origin.edition, origin.date, origin.source, origin.checkedBy])
        expect(text.length).toBeGreaterThan(2);
      if (origin.evidence === 'memory') expect(limits.every((l) => !l.seen)).toBe(true);
      for (const limit of limits) {
        expect(ACCEPTANCE_ITEMS).toContain(limit.item);
        expect(limit.bands.length).toBeGreaterThan(0);
      }
    }
  });

  it('conflict on small tips is shown: French text tighter, recalled ISO looser', () => {
    const small = acceptanceConflict('tip-flow', 0.5 * LITRE_A_MINUTE, 'boom');
    expect(small.conflict).toBe(true);
    const share = (edition: string) =>
      (small.limits[small.editions.indexOf(edition)] ?? NaN) / (0.5 * LITRE_A_MINUTE);
    expect(share('france-2008')).toBeCloseTo(0.1, 9);
    expect(share('iso-16122-recalled')).toBeCloseTo(0.15, 9);
    const large = acceptanceConflict('tip-flow', 2 * LITRE_A_MINUTE, 'boom');
    expect((large.limits[large.editions.indexOf('france-2008')] ?? NaN) / (2 * LITRE_A_MINUTE)).toBeCloseTo(
      0.15,
      9,
    );
    expect(small.seen[small.editions.indexOf('iso-16122-recalled')]).toBe(false);
  });

  it('conflict on the gauge is shown and one edition alone is none', () => {
    expect(acceptanceConflict('gauge-error', 3e5, 'boom').conflict).toBe(true);
    expect(acceptanceConflict('tip-spacing', 0.5, 'boom')).toMatchObject({
      editions: ['france-2008'],
      conflict: false,
    });
    expect(acceptanceConflict('left-right-flow', 1e-4, 'boom').editions).toEqual([]);
  });

  it('bands change at their ends: pulsation at 6 and 16 bar (France 2008)', () => {
    const limit = (bar: number) =>
      (acceptanceCheck('france-2008', 'pulsation', bar * 1e5, 0, 'boom').limit ?? NaN) / 1e5;
    expect([6, 6.1, 16, 16.1].map(limit)).toEqual([0.4, 1, 1, 4]);
  });

  it('say unknown where an edition is silent, never pass', () => {
    expect(acceptanceCheck('netherlands-2009', 'pulsation', 4e5, 0, 'boom').state).toBe('unknown');
    expect(acceptanceCheck('france-2008', 'gauge-error', 0.5e5, 0.5e5, 'boom').state).toBe('unknown');
    expect(acceptanceCheck('netherlands-2009', 'gauge-error', 20e5, 20e5, 'boom').state).toBe('unknown');
  });

  it('judge all four senses', () => {
    const state = (...a: Parameters<typeof acceptanceCheck>) => acceptanceCheck(...a).state;
    expect(state('france-2008', 'shut-off-time', 0, 5, 'boom')).toBe('pass');
    expect(state('france-2008', 'shut-off-time', 0, 5.1, 'boom')).toBe('fail');
    expect(state('netherlands-2009', 'leak-test-pressure', 0, 20e5, 'orchard')).toBe('pass');
    expect(state('netherlands-2009', 'leak-test-pressure', 0, 10e5, 'orchard')).toBe('fail');
    expect(state('netherlands-2009', 'leak-test-pressure', 0, 10e5, 'boom')).toBe('pass');
    expect(state('france-2008', 'air-chamber-charge', 10e5, 6e5, 'boom')).toBe('pass');
    expect(state('france-2008', 'air-chamber-charge', 10e5, 2e5, 'boom')).toBe('fail');
    expect(state('france-2008', 'air-chamber-charge', 10e5, 8e5, 'boom')).toBe('fail');
    expect(state('netherlands-2009', 'agitation-return', 0.6, 0.6 * (0.05 / 60), 'boom')).toBe('pass');
  });

  it('refuse an edition or item that is not there, by name', () => {
    expect(() => acceptanceCheck('mars-2030', 'pulsation', 1, 1, 'boom')).toThrow(
      /edition is 'mars-2030'; it must be one of/,
    );
    expect(() => acceptanceCheck('france-2008', 'colour' as 'pulsation', 1, 1, 'boom')).toThrow(
      /item is 'colour'/,
    );
    expect(() => acceptanceCheck('france-2008', 'pulsation', NaN, 1, 'boom')).toThrow(
      /expected is not a number/,
    );
  });
});
