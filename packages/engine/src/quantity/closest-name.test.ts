import { describe, expect, it } from 'vitest';
import { closestName } from './index.ts';

describe('the name a person most likely meant', () => {
  const names = ['mass', 'maxPressure', 'leadTimeDays', 'flow', 'id'];

  it('is found through a slip, a swap, another case and other hyphens', () => {
    expect(closestName('mas', names)).toBe('mass');
    expect(closestName('masss', names)).toBe('mass');
    expect(closestName('folw', names)).toBe('flow');
    expect(closestName('max_pressure', names)).toBe('maxPressure');
    expect(closestName('LEAD-TIME-DAYS', names)).toBe('leadTimeDays');
    expect(closestName('maxPresure', names)).toBe('maxPressure');
  });

  it('is not guessed when none is near', () => {
    expect(closestName('colour', names)).toBeUndefined();
    expect(closestName('x', names)).toBeUndefined();
    expect(closestName('', names)).toBeUndefined();
    expect(closestName('mass', [])).toBeUndefined();
    expect(closestName('m'.repeat(1000), names)).toBeUndefined();
  });

  it('is the nearest of several', () => {
    expect(closestName('pumps', ['dumps', 'pump'])).toBe('dumps');
    expect(closestName('pump', ['dump', 'pump'])).toBe('pump');
  });
});
