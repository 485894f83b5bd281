import { describe, expect, it } from 'vitest';
import { randomSource } from '../../test/random-source.ts';
import {
  criticalReynoldsRyanJohnson,
  frictionFactorBlend,
  frictionFactorCoil,
  frictionFactorPowerLaw,
  frictionFactorSwameeJainDunlop,
} from '../physics/index.ts';
import {
  FRICTION_BLEND,
  FRICTION_COLEBROOK,
  FRICTION_LAMINAR,
  FRICTION_POWER_LAW,
  FRICTION_PURE_POWER,
  FRICTION_SWAMEE_JAIN,
  FRICTION_TURBULENT,
  W_PER_REYNOLDS,
  evaluatePsi,
  psiOut,
  type FrictionKey,
} from './friction-kernel.ts';
import { frictionTables } from './friction-table.ts';
import { POWER_LAW_CRITICAL_W } from './power-law-friction.ts';

interface Law {
  readonly name: string;
  readonly key: (draw: () => number) => FrictionKey;
  /** Darcy friction factor of the documented law at w. */
  readonly factor: (key: FrictionKey, w: number) => number;
}

const BORE = 0.0127;
const key = (law: number, relativeRoughness: number, coilRatio = 0, index = 1): FrictionKey => ({
  law,
  relativeRoughness,
  coilRatio,
  index,
});

const LAWS: readonly Law[] = [
  {
    name: 'laminar, transition and Colebrook-White',
    key: (draw) => key(FRICTION_COLEBROOK, draw() < 0.2 ? 0 : 0.05 * draw() ** 4),
    factor: (k, w) => frictionFactorBlend(w / W_PER_REYNOLDS, k.relativeRoughness),
  },
  {
    name: 'laminar, Dunlop and Swamee-Jain',
    key: (draw) => key(FRICTION_SWAMEE_JAIN, draw() < 0.2 ? 0 : 0.05 * draw() ** 4),
    factor: (k, w) => frictionFactorSwameeJainDunlop(w / W_PER_REYNOLDS, k.relativeRoughness),
  },
  {
    name: 'hose on a drum',
    key: (draw) => key(FRICTION_COLEBROOK, 0.01 * draw() ** 4, 0.005 + 0.15 * draw()),
    factor: (k, w) => frictionFactorCoil(w / W_PER_REYNOLDS, BORE, BORE / k.coilRatio, k.relativeRoughness),
  },
  {
    name: 'thick liquid',
    key: (draw) => key(FRICTION_POWER_LAW, 0, 0, 0.3 + draw()),
    factor: (k, w) =>
      frictionFactorPowerLaw(
        criticalReynoldsRyanJohnson(k.index) * (w / POWER_LAW_CRITICAL_W) ** (2 - k.index),
        k.index,
      ),
  },
];

describe.each(LAWS)('The kernel for $name', ({ key: drawKey, factor }) => {
  const r = randomSource(7);
  const cases = Array.from({ length: 2000 }, () => ({ k: drawKey(() => r.next()), w: r.scale(1e-3, 1e4) }));

  it('equals the documented law', () => {
    for (const { k, w } of cases) {
      evaluatePsi(k, w);
      expect(Math.abs(psiOut[0]! / (factor(k, w) * w * w) - 1), JSON.stringify({ k, w })).toBeLessThan(1e-11);
    }
  });

  it('rises with the flow, by the slope it states', () => {
    for (const { k, w } of cases) {
      evaluatePsi(k, w);
      const slope = psiOut[1]!;
      expect(slope).toBeGreaterThan(0);
      const at = (x: number): number => {
        evaluatePsi(k, x);
        return psiOut[0]!;
      };
      const h = 1e-4 * w;
      const [below, here, above] = [at(w - h), at(w), at(w + h)];
      expect(above).toBeGreaterThan(below);
      const [left, right] = [(here - below) / h, (above - here) / h];
      // Across a kink any slope between those of its two sides will do.
      const kink = Math.abs(left - right);
      expect(Math.abs(slope - (left + right) / 2), JSON.stringify({ k, w })).toBeLessThanOrEqual(
        kink + 1e-5 * slope,
      );
    }
  });

  it('is met by its prepared pieces to 1e-10', () => {
    // Curves are kept in a limited number; a few of each law, at many flows.
    for (const { k } of cases.slice(0, 12)) {
      const offset = frictionTables.offsetOf(k);
      expect(offset).toBeGreaterThan(0);
      for (let i = 0; i < 100; i++) {
        const w = r.scale(1, 1e4);
        for (let visit = 0; visit < 3; visit++) frictionTables.evaluate(offset, w);
        const prepared = psiOut[0]!;
        evaluatePsi(k, w);
        expect(Math.abs(prepared / psiOut[0]! - 1), JSON.stringify({ k, w })).toBeLessThan(1.1e-10);
      }
    }
  });
});

describe('The kernel for a pump curve given as a power', () => {
  it('is that power and its derivative', () => {
    evaluatePsi(key(FRICTION_PURE_POWER, 0, 0, 1.85), 37);
    expect(psiOut[0]).toBeCloseTo(37 ** 1.85, 10);
    expect(psiOut[1]).toBeCloseTo(1.85 * 37 ** 0.85, 10);
  });
});

describe('A part of the Colebrook law held by itself', () => {
  const roughness = 0.002;
  // w is Re/100: laminar to Re 2300, blended to Re 4000, turbulent above (checked against the documented law above).
  it.each([
    ['laminar', FRICTION_LAMINAR, [0.5, 12, 19.9, 22.9]],
    ['blended', FRICTION_BLEND, [23.1, 30, 39.9]],
    ['turbulent', FRICTION_TURBULENT, [40.1, 200, 5e4]],
  ] as const)('is the law itself where it holds: %s', (_, part, places) => {
    for (const w of places) {
      evaluatePsi(key(FRICTION_COLEBROOK, roughness), w);
      const [psi, slope] = psiOut;
      evaluatePsi(key(part, roughness), w);
      expect(psiOut[0]! / psi!).toBeCloseTo(1, 12);
      expect(psiOut[1]! / slope!).toBeCloseTo(1, 12);
    }
  });

  it('meets its neighbour at the end and goes on beyond it without one', () => {
    const loss = (part: number, w: number): number => {
      evaluatePsi(key(part, roughness), w);
      return psiOut[0]!;
    };
    expect(loss(FRICTION_LAMINAR, 23) / loss(FRICTION_BLEND, 23)).toBeCloseTo(1, 10);
    expect(loss(FRICTION_BLEND, 40) / loss(FRICTION_TURBULENT, 40)).toBeCloseTo(1, 10);
    expect(loss(FRICTION_LAMINAR, 30)).toBeCloseTo(0.64 * 30, 12);
    expect(loss(FRICTION_BLEND, 30)).toBeGreaterThan(1.1 * loss(FRICTION_LAMINAR, 30));
  });
});
