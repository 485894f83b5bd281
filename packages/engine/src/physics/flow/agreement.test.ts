import { describe, expect, it } from 'vitest';
import {
  affinityFlow,
  affinityHead,
  assumedLossCoefficientCoupling,
  boreErrorLossRatio,
  coilFrictionRatioSchmidt,
  dischargeCoefficientOrificePlate,
  dischargeCoefficientSharpOrifice,
  frictionFactorCoilTurbulentIto,
  frictionFactorColebrook,
  frictionFactorCrane,
  frictionFactorDodgeMetzner,
  frictionFactorPowerLaw,
  frictionLossPoiseuille,
  frictionLossPowerLaw,
  hooperConstants,
  hoseLoss,
  lossCoefficientElbow90,
  lossCoefficientHooper,
  lossCoefficientScreen,
  lossCoefficientScreenBlevins,
  lossCoefficientTeeBranch,
  lossCoefficientThroat,
  pumpCurveHead,
  screenCloggingFactor,
} from '../index.ts';

const apart = (a: number, b: number): number => Math.abs(a / b - 1);

describe('independent laws for the same thing agree within a stated band', () => {
  it('Crane fT against its own rounded table for 1/2 to 2 in schedule 40, 2.5 % (TP-410 A-26, table from memory)', () => {
    const table = [
      [0.0158, 0.026],
      [0.02093, 0.024],
      [0.02664, 0.022],
      [0.03505, 0.021],
      [0.04089, 0.02],
      [0.0525, 0.019],
    ] as const;
    for (const [bore, fT] of table)
      expect(apart(frictionFactorCrane(bore), fT), `${bore}`).toBeLessThan(0.025);
  });

  it('Crane fT is the limit of Colebrook-White for clean steel', () => {
    for (const bore of [0.0127, 0.0254, 0.0508])
      expect(apart(frictionFactorCrane(bore), frictionFactorColebrook(1e9, 4.572e-5 / bore))).toBeLessThan(
        1e-3,
      );
  });

  it('Crane and Hooper on a 1 in threaded elbow and tee branch at Re 1e5, 20 %', () => {
    const hooper = (name: 'elbow-90-threaded' | 'tee-branch'): number => {
      const { laminar, turbulent } = hooperConstants(name);
      return lossCoefficientHooper(laminar, turbulent, 1e5, 0.02664);
    };
    expect(apart(lossCoefficientElbow90(0.02664), hooper('elbow-90-threaded'))).toBeLessThan(0.2);
    expect(apart(lossCoefficientTeeBranch(0.02664), hooper('tee-branch'))).toBeLessThan(0.2);
  });

  it('Schmidt and Ito on smooth coils of hose on drums, 20 %', () => {
    for (const [reynolds, bore, drum] of [
      [13357, 0.0095, 0.3],
      [33305, 0.0127, 0.55],
      [44524, 0.019, 0.45],
    ] as const) {
      const schmidt = frictionFactorColebrook(reynolds, 0) * coilFrictionRatioSchmidt(reynolds, bore, drum);
      expect(apart(schmidt, frictionFactorCoilTurbulentIto(reynolds, bore, drum))).toBeLessThan(0.2);
    }
  });

  it('Idelchik and Blevins on clean wire screens, 25 %', () => {
    for (const open of [0.3, 0.36, 0.45])
      expect(apart(lossCoefficientScreen(open), lossCoefficientScreenBlevins(open, 1000))).toBeLessThan(0.25);
  });

  it('half a blinded 40 mesh screen costs five and a half times the clean one', () => {
    expect(screenCloggingFactor(0.36, 0.5)).toBeCloseTo(5.5, 0);
  });

  it('a free orifice and an orifice plate of small ratio, 3 %', () => {
    // For a small ratio the plate's Reynolds number in the orifice is that in the pipe over the ratio.
    expect(
      apart(dischargeCoefficientSharpOrifice(1e5 / 0.2), dischargeCoefficientOrificePlate(0.2, 1e5, 0.1)),
    ).toBeLessThan(0.03);
  });

  it('the orifice plate with taps at D and D/2 gives the values of the fluids library 1.3.1 (ISO 5167-2)', () => {
    expect(dischargeCoefficientOrificePlate(0.05 / 0.07366, 1.2e5, 0.07366, 'd-and-half-d')).toBeCloseTo(
      0.6151627,
      6,
    );
    expect(dischargeCoefficientOrificePlate(0.6, 5e5, 0.1, 'd-and-half-d')).toBeCloseTo(0.6079238, 6);
    expect(dischargeCoefficientOrificePlate(0.6, 5e5, 0.1, 'corner')).toBeCloseTo(0.6063955, 6);
  });

  it('a power law with n = 1 is a Newtonian liquid: laminar exactly, turbulent within 1.5 % of Colebrook-White', () => {
    const mix = { flow: 1e-4, bore: 0.019, length: 60, density: 1150 };
    const thick = frictionLossPowerLaw({ ...mix, consistency: 0.08, index: 1 });
    expect(apart(thick.pressureLoss, frictionLossPoiseuille(1e-4, 0.019, 60, 0.08))).toBeLessThan(1e-12);
    for (const reynolds of [1e4, 1e5, 1e6])
      expect(
        apart(frictionFactorDodgeMetzner(reynolds, 1), frictionFactorColebrook(reynolds, 0)),
      ).toBeLessThan(0.015);
  });

  it('the power law joins its transition without a step', () => {
    for (const index of [0.3, 0.6, 1]) {
      const critical = (6464 * index * (2 + index) ** ((2 + index) / (1 + index))) / (1 + 3 * index) ** 2;
      for (const at of [critical, critical * (4000 / 2300)])
        expect(
          apart(
            frictionFactorPowerLaw(at * (1 - 1e-9), index),
            frictionFactorPowerLaw(at * (1 + 1e-9), index),
          ),
        ).toBeLessThan(1e-7);
    }
  });

  it('the rule for a bore error agrees with Colebrook-White within 2 % at 3 % less bore', () => {
    const hose = { flow: 20e-3 / 60, length: 1, roughness: 1e-5, density: 998.2, viscosity: 1.0016e-3 };
    const ratio =
      hoseLoss({ ...hose, bore: 0.0123 }).pressureLoss / hoseLoss({ ...hose, bore: 0.0127 }).pressureLoss;
    expect(apart(boreErrorLossRatio(0.0127, 0.0123), ratio)).toBeLessThan(0.02);
  });

  it('the assumed couplings are the throats their source note says', () => {
    const throats = {
      'cam-lock': 0.9,
      'quick-coupling-open': 0.8,
      'hose-swivel': 0.77,
      'quick-coupling-valved': 0.63,
    };
    for (const [kind, share] of Object.entries(throats)) {
      const assumed = assumedLossCoefficientCoupling(kind as keyof typeof throats);
      expect(apart(lossCoefficientThroat(0.02, 0.02 * share), assumed.lossCoefficient), kind).toBeLessThan(
        0.1,
      );
      expect(assumed.low).toBeLessThan(assumed.lossCoefficient);
      expect(assumed.high).toBeGreaterThan(assumed.lossCoefficient);
      expect(assumed.basis).toBe('judgement');
    }
  });

  it('a pump curve at another speed passes through the points the affinity laws move', () => {
    const flows = [0, 1e-3, 2e-3];
    const heads = [40, 36, 25];
    expect(pumpCurveHead(flows, heads, affinityFlow(1e-3, 0.8), 0.8)).toBeCloseTo(affinityHead(36, 0.8), 12);
  });
});
