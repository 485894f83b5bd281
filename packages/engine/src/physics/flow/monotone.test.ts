import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bypassRegulatorPressure,
  displacementPumpFlow,
  fittingLoss,
  flowCoefficientLoss,
  frictionFactorCoil,
  frictionFactorPowerLaw,
  frictionLossPowerLaw,
  hoseFlow,
  hoseLoss,
  lossCoefficientAtReynolds,
  lossCoefficientBallValveReduced,
  lossCoefficientScreen,
  lossCoefficientThroat,
  reducingRegulatorPressure,
  spargerFlow,
  tipFlow,
} from '../index.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** Evenly over the powers of ten. */
const spread = (min: number, max: number) => number(Math.log(min), Math.log(max)).map(Math.exp);

const line = fc.record({
  flow: spread(1e-7, 0.01),
  bore: spread(0.006, 0.08),
  length: number(0.1, 200),
  roughness: number(0, 5e-5),
  density: number(800, 1400),
  viscosity: spread(3e-4, 0.5),
});

describe('every law rises with the flow, so that a rig has one steady state', () => {
  it('holds for hose, straight and on a drum, from creep to fully rough', () => {
    fc.assert(
      fc.property(line, number(1.0001, 3), number(0, 1), number(3.5, 60), (p, factor, wound, turns) => {
        const hose = { ...p, woundLength: wound * p.length, coilDiameter: turns * p.bore };
        fc.pre(p.flow * factor < 190 * (Math.PI / 4) * p.bore ** 2);
        const less = hoseLoss(hose).pressureLoss;
        const more = hoseLoss({ ...hose, flow: p.flow * factor }).pressureLoss;
        expect(more).toBeGreaterThan(less);
      }),
      { numRuns: 2000 },
    );
  });

  it('holds for a coil in small steps through its transition, whatever its curvature', () => {
    for (const turns of [3, 5, 10, 20, 40, 100, 300])
      for (const roughness of [0, 1e-4, 1e-3, 1e-2]) {
        let before = 0;
        for (let reynolds = 100; reynolds < 3e5; reynolds *= 1.003) {
          const loss = frictionFactorCoil(reynolds, 0.01, 0.01 * turns, roughness) * reynolds ** 2;
          expect(loss, `turns ${turns}, roughness ${roughness}, Re ${reynolds}`).toBeGreaterThan(before);
          before = loss;
        }
      }
  });

  it('never lets a coil lose less than the hose laid straight', () => {
    fc.assert(
      fc.property(line, number(3.5, 60), (p, turns) => {
        fc.pre(p.flow < 190 * (Math.PI / 4) * p.bore ** 2);
        const wound = hoseLoss({ ...p, woundLength: p.length, coilDiameter: turns * p.bore }).pressureLoss;
        expect(wound).toBeGreaterThanOrEqual(hoseLoss(p).pressureLoss * (1 - 1e-12));
      }),
    );
  });

  it('holds for power-law liquids through their transition', () => {
    for (const index of [0.2, 0.35, 0.5, 0.7, 0.9, 1, 1.2, 1.5]) {
      let before = 0;
      for (let u = 1; u < 3e4; u *= 1.01) {
        // u is proportional to the flow.
        const reynolds = u ** (2 - index);
        if (reynolds > 1e8) break;
        const loss = frictionFactorPowerLaw(reynolds, index) * u ** 2;
        expect(loss, `n ${index}, Re ${reynolds}`).toBeGreaterThan(before);
        before = loss;
      }
    }
  });

  it('holds for fittings with their laminar term, valves and strainers', () => {
    fc.assert(
      fc.property(spread(1e-7, 0.005), number(1.001, 5), spread(3e-4, 0.5), (flow, factor, viscosity) => {
        const lossAt = (q: number): number => {
          const reynolds = (4 * q * 1000) / (Math.PI * 0.02 * viscosity);
          return fittingLoss(lossCoefficientAtReynolds(0.7, 800, reynolds), 0.02, q, 1000);
        };
        expect(lossAt(flow * factor)).toBeGreaterThan(lossAt(flow));
        expect(flowCoefficientLoss(flow * factor, 1e-3, 1000)).toBeGreaterThan(
          flowCoefficientLoss(flow, 1e-3, 1000),
        );
      }),
    );
  });

  it('holds for tips, pumps and regulators', () => {
    fc.assert(
      fc.property(number(0, 6e6), number(1e3, 2e6), number(1e-6, 1e-3), (pressure, step, flow) => {
        expect(tipFlow(1e-4, pressure + step, 1000)).toBeGreaterThan(tipFlow(1e-4, pressure, 1000));
        const pump = { displacement: 1e-4, speed: 56, slip: 1e-11 };
        expect(displacementPumpFlow({ ...pump, pressureRise: pressure + step })).toBeLessThan(
          displacementPumpFlow({ ...pump, pressureRise: pressure }),
        );
        const valve = { setPressure: 2e6, gradient: 1e8, flowAtOneBar: 2e-4, density: 1000 };
        expect(bypassRegulatorPressure({ ...valve, flow: flow * 1.1 }).pressure).toBeGreaterThan(
          bypassRegulatorPressure({ ...valve, flow }).pressure,
        );
        const reducer = { ...valve, inletPressure: 3e6 };
        expect(reducingRegulatorPressure({ ...reducer, flow: flow * 1.1 }).pressure).toBeLessThan(
          reducingRegulatorPressure({ ...reducer, flow }).pressure,
        );
      }),
    );
  });
});

describe('what makes a line tighter makes it lose more', () => {
  it('loses more in a longer, narrower or rougher hose', () => {
    fc.assert(
      fc.property(line, number(0.5, 0.999), (p, shrink) => {
        fc.pre(p.flow < 190 * (Math.PI / 4) * (p.bore * shrink) ** 2);
        const loss = hoseLoss(p).pressureLoss;
        expect(hoseLoss({ ...p, length: p.length * 1.01 }).pressureLoss).toBeGreaterThan(loss);
        expect(hoseLoss({ ...p, bore: p.bore * shrink }).pressureLoss).toBeGreaterThan(loss);
        expect(hoseLoss({ ...p, roughness: p.roughness + 1e-5 }).pressureLoss).toBeGreaterThanOrEqual(
          loss * (1 - 1e-12),
        );
      }),
    );
  });

  it('loses more in a smaller valve port, a finer or blinded screen, a narrower throat', () => {
    fc.assert(
      fc.property(number(0.35, 0.98), number(1.001, 1.02), (share, factor) => {
        const valve = (s: number) => lossCoefficientBallValveReduced(0.02, 0.02 * s, 0.5);
        expect(valve(share)).toBeGreaterThan(valve(share * factor));
        expect(lossCoefficientThroat(0.02, 0.02 * share)).toBeGreaterThan(
          lossCoefficientThroat(0.02, 0.02 * share * factor),
        );
        expect(lossCoefficientScreen(share)).toBeGreaterThan(lossCoefficientScreen(share * factor));
      }),
    );
  });

  it('finds the flow of a hose from its loss and back', () => {
    fc.assert(
      fc.property(line, (p) => {
        fc.pre(p.flow < 150 * (Math.PI / 4) * p.bore ** 2 && p.flow > 1e-6);
        const { pressureLoss } = hoseLoss(p);
        fc.pre(pressureLoss < 1e8);
        const flow = hoseFlow(pressureLoss, p.bore, p.length, p.roughness, p.density, p.viscosity);
        expect(flow / p.flow).toBeCloseTo(1, 8);
      }),
    );
  });

  it('feeds the far hole of a sparge pipe least, and all holes alike when the pipe is wide', () => {
    const pipe = {
      inletPressure: 2e5,
      spacing: 0.2,
      holes: 10,
      flowAtOneBar: 5e-5,
      roughness: 1e-5,
      density: 1000,
      viscosity: 1e-3,
    };
    const narrow = spargerFlow({ ...pipe, bore: 0.012 });
    const wide = spargerFlow({ ...pipe, bore: 0.1 });
    expect(narrow.evenness).toBeLessThan(0.95);
    expect(wide.evenness).toBeCloseTo(1, 4);
    expect(wide.flow).toBeCloseTo(10 * 5e-5 * Math.SQRT2, 7);
    expect(narrow.flow).toBeLessThan(wide.flow);
  });

  it('refuses a shear rate outside the range in which a thick mix was measured', () => {
    const mix = { flow: 4e-4, bore: 0.019, length: 10, density: 1020, consistency: 0.2, index: 0.7 };
    expect(frictionLossPowerLaw({ ...mix, shearRateMax: 1000 }).wallShearRate).toBeLessThan(1000);
    expect(() => frictionLossPowerLaw({ ...mix, shearRateMax: 100 })).toThrow(
      /wallShearRate is .* it must be at most 100/,
    );
  });
});
