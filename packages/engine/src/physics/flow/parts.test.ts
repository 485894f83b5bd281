import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  accelerationHead,
  boreForVelocity,
  boreFromContents,
  bypassRegulatorCapacity,
  bypassRegulatorPressure,
  cvFromFlowAtOneBar,
  dcMotorPump,
  displacementPumpFlow,
  displacementPumpStallPressure,
  eductorFlow,
  eductorSuctionFromCurve,
  equivalentLength,
  flowAtOneBarFromCv,
  flowAtOneBarFromKv,
  flowAtOneBarFromLossCoefficient,
  flowAtOneBarFromOrifice,
  hoseContents,
  hoseLoss,
  jetAgitator,
  kvFromFlowAtOneBar,
  lossCoefficientExpander,
  lossCoefficientExpansion,
  lossCoefficientFromFlowAtOneBar,
  lossCoefficientReducer,
  meanVelocity,
  npshMargin,
  pressureWaveSpeed,
  pumpCurveHead,
  pumpCurveShape,
  reducingRegulatorPressure,
  screenOpenFraction,
  slipFromVolumetricLoss,
  tipFlow,
  tipPressure,
  triggerPeak,
  triggerPeakSlow,
  velocityHead,
  waterBulkModulus,
} from '../index.ts';

describe('displacement pump', () => {
  const pump = { displacement: 1e-4, speed: 56.5, slip: slipFromVolumetricLoss(1e-4, 56.5, 0.05, 40e5) };

  it('loses the stated share at the stated pressure and stalls where it leaks all it displaces', () => {
    const displaced = 1e-4 * (56.5 / (2 * Math.PI));
    expect(displacementPumpFlow({ ...pump, pressureRise: 40e5 })).toBeCloseTo(0.95 * displaced, 12);
    expect(displacementPumpStallPressure(pump)).toBeCloseTo(800e5, 3);
    expect(displacementPumpFlow({ ...pump, pressureRise: 900e5 })).toBe(0);
  });

  it('leaks less with thick liquid only when it is a gap pump (Wilson, from memory)', () => {
    const at = (viscosityExponent: number, viscosity: number) =>
      displacementPumpFlow({ ...pump, viscosityExponent, viscosity, pressureRise: 40e5 });
    expect(at(1, 0.005)).toBeGreaterThan(at(1, 0.001));
    expect(at(0, 0.005)).toBe(at(0, 0.001));
  });
});

describe('motor pump', () => {
  const motor = {
    voltage: 12,
    resistance: 0.35,
    motorConstant: 0.055,
    noLoadCurrent: 1.2,
    displacement: 6e-6,
    mechanicalEfficiency: 0.75,
  };

  it('stands still and draws the stall current when the pressure is too high', () => {
    const duty = dcMotorPump({ ...motor, pressureRise: 5e6 });
    expect(duty.displacedFlow).toBe(0);
    expect(duty.current).toBeCloseTo(12 / 0.35, 10);
  });

  it('never gives more fluid power than the electric power it takes', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 3e6, noNaN: true }), (pressureRise) => {
        const duty = dcMotorPump({ ...motor, pressureRise });
        expect(duty.displacedFlow * pressureRise).toBeLessThanOrEqual(duty.inputPower);
      }),
    );
  });
});

describe('centrifugal pump curve', () => {
  it('is told apart from a drooping one', () => {
    expect(pumpCurveShape([0, 1e-3, 2e-3], [40, 36, 25])).toEqual({ falling: true, droop: 0 });
    expect(pumpCurveShape([0, 1e-3, 2e-3], [38, 40, 25])).toEqual({ falling: false, droop: 2 });
    expect(pumpCurveShape([0, 1e-3], [38, 38]).falling).toBe(false);
  });

  it('refuses flows that do not rise, lists of unequal length and a flow off the curve', () => {
    expect(() => pumpCurveShape([0, 0], [40, 39])).toThrow('flows[1] is 0 m3/s; it must be more than');
    expect(() => pumpCurveShape([0, 1e-3, 2e-3], [40, 39])).toThrow('heads has 2 entries');
    expect(() => pumpCurveHead([0, 1e-3], [40, 30], 2e-3)).toThrow(
      'flow is 0.002 m3/s; it must be at most 0.001 m3/s',
    );
  });
});

describe('regulators', () => {
  const valve = { setPressure: 20e5, gradient: 1e9, flowAtOneBar: 1e-4, density: 1000 };

  it('shuts, holds and runs out of capacity exactly where the two branches meet', () => {
    expect(bypassRegulatorPressure({ ...valve, flow: 0 })).toEqual({ pressure: 20e5, state: 'shut' });
    const capacity = bypassRegulatorCapacity(20e5, 1e9, 1e-4, 1000);
    expect(bypassRegulatorPressure({ ...valve, flow: capacity * 0.999 }).state).toBe('holding');
    expect(bypassRegulatorPressure({ ...valve, flow: capacity * 1.001 }).state).toBe('wide-open');
    expect(bypassRegulatorPressure({ ...valve, flow: capacity, returnPressure: 2e5 }).state).toBe(
      'wide-open',
    );
  });

  it('reduces until the inlet is the limit', () => {
    const at = (inletPressure: number) =>
      reducingRegulatorPressure({ ...valve, gradient: 1e8, inletPressure, flow: 2e-4 });
    expect(at(40e5)).toEqual({ pressure: 20e5 - 2e4, state: 'holding' });
    expect(at(20e5)).toEqual({ pressure: 16e5, state: 'wide-open' });
  });
});

describe('eductor', () => {
  it('draws as much as it is driven in the worked case of the fluids library 1.3.1 (liquid jet pump of Karassik, Pump Handbook): 1 %', () => {
    const flow = eductorFlow({
      motivePressure: 426256,
      suctionPressure: 133600,
      dischargePressure: 200000,
      nozzleDiameter: 0.0223829,
      throatDiameter: 0.045,
      density: 998,
      suctionDensity: 1098,
      nozzleLoss: 0.04,
      suctionLoss: 0.11,
      mixingLoss: 0.186 + 0.12,
    });
    expect(Math.abs(flow.motiveFlow / 0.01 - 1)).toBeLessThan(0.01);
    expect(Math.abs(flow.suctionFlow / 0.01 - 1)).toBeLessThan(0.01);
  });

  const eductor = {
    motivePressure: 3e5,
    suctionPressure: 0,
    nozzleDiameter: 0.008,
    throatDiameter: 0.014,
    density: 1000,
  };

  it('draws less the higher it must lift, and then nothing, never backwards', () => {
    let before = Infinity;
    for (let discharge = 0; discharge <= 3e5; discharge += 1e4) {
      const { suctionFlow, draws } = eductorFlow({ ...eductor, dischargePressure: discharge });
      expect(suctionFlow).toBeLessThanOrEqual(before);
      expect(suctionFlow > 0).toBe(draws);
      before = suctionFlow;
    }
    expect(before).toBe(0);
  });

  it('never gives out more power than it is driven with', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.21, max: 0.79, noNaN: true }),
        fc.double({ min: 0, max: 0.6, noNaN: true }),
        (ratio, back) => {
          const flow = eductorFlow({
            ...eductor,
            nozzleDiameter: 0.014 * ratio,
            dischargePressure: back * 3e5,
          });
          const gained = flow.suctionFlow * back * 3e5;
          const spent = flow.motiveFlow * (1 - back) * 3e5;
          expect(gained).toBeLessThan(spent);
          expect(flow.throatPressure).toBeLessThanOrEqual(0);
        },
      ),
    );
  });

  it('reads its measured curve: nothing below the first point, refused beyond the last', () => {
    const curve = [
      [5e4, 1e5, 2e5],
      [1e-5, 4e-5, 5e-5],
    ] as const;
    expect(eductorSuctionFromCurve(curve[0], curve[1], 4e4)).toBe(0);
    expect(eductorSuctionFromCurve(curve[0], curve[1], 7.5e4)).toBeCloseTo(2.5e-5, 12);
    expect(() => eductorSuctionFromCurve(curve[0], curve[1], 3e5)).toThrow('pressureDifference is 300000 Pa');
  });
});

describe('suction', () => {
  it('has no margin when it has just what the pump needs', () => {
    expect(npshMargin(3, 3)).toBe(0);
    expect(npshMargin(2, 3)).toBe(-1);
  });

  it('gives the acceleration head of the printed formula (Hydraulic Institute, from memory)', () => {
    // 10 ft at 5 ft/s, 500 rpm, three plungers: 10 * 5 * 500 * 0.066 / (1.5 * 32.17) = 34.2 ft
    const bore = 0.0254;
    const flow = 5 * 0.3048 * (Math.PI / 4) * bore ** 2;
    const head = accelerationHead(10 * 0.3048, flow, bore, (500 * Math.PI) / 30, 'three');
    expect(head / 0.3048).toBeCloseTo(34.19, 1);
  });
});

describe('slammed trigger', () => {
  it('raises the pressure by 1.48 MPa per m/s in a rigid pipe of water (Joukowsky with a = 1480 m/s, from memory)', () => {
    const wave = pressureWaveSpeed(998.2, waterBulkModulus(20), 0.0127, 0.005, 1e12);
    expect(Math.abs(wave / 1480 - 1)).toBeLessThan(0.01);
    expect(Math.abs(triggerPeak(998.2, wave, 1) / 1.477e6 - 1)).toBeLessThan(0.01);
  });

  it('is softened by a soft wall and by closing slowly', () => {
    const soft = pressureWaveSpeed(998.2, 2.18e9, 0.0127, 0.005, 1e8);
    expect(soft).toBeLessThan(300);
    expect(triggerPeakSlow(998.2, soft, 5, 30, 10)).toBeLessThan(0.05 * triggerPeak(998.2, soft, 5));
    expect(triggerPeakSlow(998.2, soft, 5, 30, 0.01)).toBe(triggerPeak(998.2, soft, 5));
  });
});

describe('conversions go there and back', () => {
  const flow = fc.double({ min: 1e-7, max: 0.1, noNaN: true });

  it('for Kv, Cv, K and tips', () => {
    fc.assert(
      fc.property(flow, fc.double({ min: 0.003, max: 0.1, noNaN: true }), (q, bore) => {
        expect(flowAtOneBarFromKv(kvFromFlowAtOneBar(q)) / q).toBeCloseTo(1, 12);
        expect(flowAtOneBarFromCv(cvFromFlowAtOneBar(q)) / q).toBeCloseTo(1, 12);
        const k = lossCoefficientFromFlowAtOneBar(q, bore);
        if (k > 1e-6 && k < 1e9) expect(flowAtOneBarFromLossCoefficient(k, bore) / q).toBeCloseTo(1, 12);
        expect(tipFlow(1e-4, tipPressure(1e-3 * q, 1e-4, 1200), 1200) / (1e-3 * q)).toBeCloseTo(1, 12);
      }),
    );
  });

  it('for bore, contents and velocity', () => {
    expect(boreFromContents(hoseContents(0.0127, 60), 60)).toBeCloseTo(0.0127, 14);
    expect(meanVelocity(1e-3, boreForVelocity(1e-3, 1.5))).toBeCloseTo(1.5, 12);
    expect(equivalentLength(0.7, 0.028, 0.02)).toBeCloseTo(0.5, 12);
    expect(velocityHead(5)).toBeCloseTo(1.2746, 4);
  });
});

describe('small parts', () => {
  it('leads a cone into a sudden step as it gets blunt', () => {
    expect(lossCoefficientExpander(0.02, 0.04, Math.PI)).toBe(lossCoefficientExpansion(0.02, 0.04));
    expect(lossCoefficientReducer(0.02, 0.04, 0.3)).toBeLessThan(lossCoefficientReducer(0.02, 0.04, Math.PI));
  });

  it('leaves 36 % open in a 40 mesh screen of 0.254 mm wire', () => {
    expect(screenOpenFraction(40, 0.254e-3)).toBeCloseTo(0.36, 12);
    expect(() => screenOpenFraction(400, 1e-4)).toThrow('wireDiameter');
  });

  it('pushes with the momentum of the jet', () => {
    const diameter = 0.004;
    const jet = jetAgitator(flowAtOneBarFromOrifice(diameter, 1), diameter, 3e5, 1000);
    expect(jet.thrust).toBeCloseTo(2 * 3e5 * (Math.PI / 4) * diameter ** 2, 9);
    expect(jet.fluidPower).toBeCloseTo(3e5 * jet.flow, 12);
    expect(() => jetAgitator(1e-4, 0.6, 3e5, 1000)).toThrow('diameter is 0.6 m; it must be at most 0.5 m');
  });

  it('asks for the drum when hose is wound on it, and names what is wrong', () => {
    const hose = { flow: 3e-4, bore: 0.0127, length: 60, roughness: 1e-5, density: 998, viscosity: 1e-3 };
    expect(() => hoseLoss({ ...hose, woundLength: 10 })).toThrow('coilDiameter is missing');
    expect(() => hoseLoss({ ...hose, woundLength: 70 })).toThrow(
      'woundLength is 70 m; it must be at most 60 m',
    );
    expect(() => hoseLoss({ ...hose, bore: NaN })).toThrow('bore is not a number');
    expect(() => hoseLoss({ ...hose, density: 0.998 })).toThrow(
      'density is 0.998 kg/m3; it must be at least 500 kg/m3',
    );
    expect(hoseLoss({ ...hose, flow: 0 })).toEqual({
      pressureLoss: 0,
      velocity: 0,
      reynolds: 0,
      uncertain: false,
    });
  });
});
