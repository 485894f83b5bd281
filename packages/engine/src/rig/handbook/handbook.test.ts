import { describe, expect, it } from 'vitest';
import { CARE_RULES, CARE_TIMES } from './care.data.ts';

describe('Care of a rig', () => {
  it('says of every step where it comes from, and no step promises what only a maker knows', () => {
    for (const rule of CARE_RULES) {
      expect(rule.source.length).toBeGreaterThan(5);
      expect(rule.text).toMatch(/[.]$/);
      // A torque or a tyre pressure is the maker's to say.
      expect(rule.text).not.toMatch(/\d+\s*(ft·?lb|N·?m|psi)/);
    }
  });

  it('has steps for each time of the year', () => {
    for (const at of CARE_TIMES) expect(CARE_RULES.some((r) => r.at === at)).toBe(true);
  });
});
