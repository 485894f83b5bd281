import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { loadedBeam } from '../../physics/index.ts';
import { valueOfSum } from '../working/formula.ts';
import { momentSteps } from './structure-working.ts';

const share = fc.double({ min: 0, max: 1, noNaN: true });
const load = fc.double({ min: -2000, max: 5000, noNaN: true });

describe('the moment of a rail as its working tells it', () => {
  it('is the moment that the beam law gives, for any loads between and beyond the supports', () => {
    fc.assert(
      fc.property(
        fc.tuple(share, share),
        fc.array(fc.tuple(load, share), { minLength: 1, maxLength: 5 }),
        fc.array(fc.tuple(load, share, share), { maxLength: 3 }),
        ([first, second], points, spreads) => {
          const [supportA, supportB] = [2 * first, 2.5 + 3 * second];
          const spans = spreads.map(([, a, b]) => [Math.min(a, b) * 6, Math.max(a, b) * 6] as const);
          const p = {
            length: 6,
            supportA,
            supportB,
            pointLoads: points.map(([force]) => force),
            pointPlaces: points.map(([, x]) => 6 * x),
            evenLoads: spreads.map(([force]) => force),
            evenFrom: spans.map(([from]) => from),
            evenTo: spans.map(([, to]) => to),
            stiffness: 1e6,
          };
          const bent = loadedBeam(p);
          const [whole, front, , moment] = momentSteps(p, bent, 2, 2);
          for (const step of [whole!, front!, moment!]) {
            const told = valueOfSum(step.sum!.formula, (name) => step.sum!.terms[name]!.value);
            const scale = Math.max(1, Math.abs(bent.maxMoment), Math.abs(bent.reactionA));
            expect(Math.abs(told - step.figure!.value) / scale, step.text).toBeLessThan(1e-6);
          }
          expect(moment!.figure!.value).toBeCloseTo(Math.abs(bent.maxMoment), 9);
        },
      ),
      { numRuns: 2000 },
    );
  });
});
