import { expect, it } from 'vitest';
import { tip } from '../../test/work-rig.ts';
import { bestThrowRange } from '../physics/index.ts';
import { streamAt } from '../rig/index.ts';
import { throwNear } from './throw-near.ts';

it('the throw near a pressure is the throw model within half a percent, over what a test can meet', () => {
  const nozzle = tip({ flowAtOneBar: 2.8e-4 });
  const conditions = {
    gun: { bestStream: 'gun' as const },
    tip: nozzle,
    density: 998,
    airDensity: 1.2,
    tipHeight: 1.5,
  };
  const near = throwNear(conditions, 24e5)!;
  for (const [p, k] of [
    [0.85, 1],
    [1.15, 1],
    [0.95, 1.08],
    [1.1, 0.93],
  ] as const) {
    const other = { ...nozzle, flowAtOneBar: nozzle.flowAtOneBar * k };
    const exact = bestThrowRange(streamAt({ ...conditions, tip: other }, 24e5 * p)!, 1.5).farthest;
    expect(Math.abs(near(24e5 * p, other) / exact - 1), `pressure x ${p}, tip x ${k}`).toBeLessThan(0.005);
  }
});

it('nothing is thrown without pressure', () => {
  const conditions = {
    gun: { bestStream: 'gun' as const },
    tip: tip(),
    density: 998,
    airDensity: 1.2,
    tipHeight: 1.5,
  };
  expect(throwNear(conditions, 50)).toBeUndefined();
});
