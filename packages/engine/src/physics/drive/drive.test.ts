import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DERATE_RULES, type DerateRuleId } from './site-derate.data.ts';
import * as drive from './index.ts';

const HP = 745.6998715822702;
const GPM = 231 * 0.0254 ** 3 * (1 / 60);
const PSI = (0.45359237 * 9.80665) / 0.0254 ** 2;

describe('the power chain', () => {
  it('asks about twice the fluid power on the label (worked example: 10 gpm, 500 psi, 5000 ft, 95 °F: 5.5 hp)', () => {
    const site = drive.siteDerate('small-engine', 1524, 35);
    const chain = drive.enginePowerNeeded({
      flow: 10 * GPM,
      pressureRise: 500 * PSI,
      pumpEfficiency: 0.85,
      driveEfficiency: 0.95,
      siteFactor: site.factor,
    });
    expect(chain.labelPower / HP).toBeCloseTo(5.52, 2);
    expect(chain.labelPower / chain.fluidPower).toBeGreaterThan(1.8);
  });

  it('never asks less than the step before it and is undone by reading it backwards', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-6, max: 0.01, noNaN: true }),
        fc.double({ min: 1e4, max: 1e7, noNaN: true }),
        fc.double({ min: 0.3, max: 1, noNaN: true }),
        fc.double({ min: 0.5, max: 1, noNaN: true }),
        fc.double({ min: 0.5, max: 1, noNaN: true }),
        (flow, pressureRise, pumpEfficiency, driveEfficiency, siteFactor) => {
          const c = drive.enginePowerNeeded({
            flow,
            pressureRise,
            pumpEfficiency,
            driveEfficiency,
            siteFactor,
          });
          const steps = [
            c.fluidPower,
            c.pumpShaftPower,
            c.engineContinuousPower,
            c.siteRatedPower,
            c.meanProductionPower,
            c.labelPower,
          ];
          steps.reduce((before, after) => {
            expect(after).toBeGreaterThanOrEqual(before);
            return after;
          });
          const back = drive.engineContinuousPower(c.labelPower, siteFactor);
          expect(Math.abs(back / c.engineContinuousPower - 1)).toBeLessThan(1e-12);
        },
      ),
      { numRuns: 200 },
    );
  });

  it('uses the exact divisor and not the rounded 1714 (definition: 231 in3/gal, 33000 ft.lbf/min/hp)', () => {
    const hpOf10At500 = drive.fluidPower(10 * GPM, 500 * PSI) / HP;
    expect(hpOf10At500).toBeCloseTo(5000 / 1714.2857, 5);
    expect(hpOf10At500).not.toBeCloseTo(5000 / 1714, 4);
  });
});

describe('site derating', () => {
  const rules = Object.keys(DERATE_RULES) as DerateRuleId[];

  it('gives at 5000 ft what the rules are known for: 0.825 to 0.878, and 0.97 for the generator rule', () => {
    const at = (rule: DerateRuleId) => drive.siteDerate(rule, 1524, 15).factor;
    expect(at('small-engine')).toBeCloseTo(0.825, 4);
    expect(at('gas-engine')).toBeCloseTo(0.85, 4);
    expect(at('extension-3pct')).toBeCloseTo(0.865, 4);
    expect(at('msha-diesel')).toBeCloseTo(1 - 0.01 * 12.19, 4);
    expect(at('generator-set')).toBeCloseTo(1 - 0.03 * 1.048, 4);
  });

  it('separates the rules for 13 hp at 1524 m, 35 °C, 40 % as computed beside them: 10.3, 10.5, 11.2 hp', () => {
    const hp = (rule: DerateRuleId) => 13 * drive.siteDerate(rule, 1524, 35, 0.4).factor;
    expect(hp('sae-j1349')).toBeCloseTo(10.26, 1);
    expect(hp('small-engine')).toBeCloseTo(10.53, 2);
    expect(hp('extension-3pct')).toBeCloseTo(11.245, 2);
    expect(drive.siteDerate('sae-j1349', 1524, 35, 0.4).estimate).toBe(true);
    expect(drive.siteDerate('sae-j1349', 300, 25, 0.4).estimate).toBe(false);
  });

  it('never rises with altitude or heat, never leaves 0..1, and splits into its two parts under every rule', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...rules),
        fc.double({ min: -500, max: 4900, noNaN: true }),
        fc.double({ min: -40, max: 54, noNaN: true }),
        (rule, altitude, temperature) => {
          const here = drive.siteDerate(rule, altitude, temperature);
          expect(here.factor).toBeGreaterThan(0);
          expect(here.factor).toBeLessThanOrEqual(1);
          expect(here.altitudeFactor * here.temperatureFactor).toBeCloseTo(here.factor, 12);
          expect(drive.siteDerate(rule, altitude + 100, temperature).factor).toBeLessThanOrEqual(
            here.factor + 1e-12,
          );
          expect(drive.siteDerate(rule, altitude, temperature + 1).factor).toBeLessThanOrEqual(
            here.factor + 1e-12,
          );
        },
      ),
      { numRuns: 300 },
    );
  });

  it('keeps with each rule where it comes from and whether anybody read it', () => {
    for (const rule of Object.values(DERATE_RULES)) {
      expect(rule.origin.source.length).toBeGreaterThan(10);
      expect(['seen', 'memory', 'part seen']).toContain(rule.origin.evidence);
    }
  });
});

describe('shafts and motors', () => {
  it('conserves power in belt, gear and hydraulic motor (power balance)', () => {
    const belt = drive.beltDrive(350, 0.08, 0.24, 4000, 0.95, 0.01);
    expect(belt.torqueOut * belt.drivenSpeed).toBeCloseTo(4000 * 0.95, 6);
    const gear = drive.gearReducer(377, 56.5, 6000, 0.95);
    expect(gear.torqueOut * 56.5).toBeCloseTo(6000 * 0.95, 6);
    const motor = drive.hydraulicMotor(32e-6, 0.5e-3, 12e6, 0.92, 0.88);
    expect(motor.power).toBeCloseTo(0.5e-3 * 12e6 * 0.92 * 0.88, 6);
    expect(motor.speed).toBeCloseTo((0.5e-3 / 32e-6) * 0.92 * 2 * Math.PI, 6);
  });

  it('gets the torque of a pump by two ways: power over speed, and work per turn', () => {
    const d = drive.displacementPumpDuty(25e-6, 188, 2e7, 0.9, 0.85);
    expect(d.fluidPower / d.overallEfficiency / 188).toBeCloseTo(d.shaftTorque, 9);
    const leaking = drive.displacementPumpDuty(25e-6, 188, 2e7, 0.5, 0.85);
    expect(leaking.shaftTorque).toBe(d.shaftTorque);
  });

  it('sizes a sheave with which the belt turns the pump at the flow wanted', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.3, max: 1.5, noNaN: true }),
        fc.double({ min: 150, max: 400, noNaN: true }),
        fc.double({ min: 0, max: 0.03, noNaN: true }),
        (share, engineSpeed, slip) => {
          const s = drive.sheaveForFlow(share * 6e-4, 6e-4, 68, engineSpeed, 0.3, slip);
          fc.pre(s.engineSheave >= 0.02);
          const belt = drive.beltDrive(engineSpeed, s.engineSheave, 0.3, 1000, 0.95, slip);
          expect(belt.drivenSpeed).toBeCloseTo(s.pumpSpeed, 9);
          expect(drive.pumpFlowAtSpeed(6e-4, 68, belt.drivenSpeed)).toBeCloseTo(share * 6e-4, 12);
          expect(s.share).toBeCloseTo(share, 12);
        },
      ),
    );
  });

  it('measures a belt as points laid along it do, and leaves more wrap the farther the shafts stand apart', () => {
    const [small, large, centres] = [0.1, 0.3, 0.55];
    // The tight loop round two discs is the edge of their hull: walk it point by point.
    const hull: [number, number][] = [];
    for (let i = 0; i <= 200_000; i++) {
      const a = (2 * Math.PI * i) / 200_000;
      const [x, y] = [Math.cos(a), Math.sin(a)];
      // The disc that reaches farther in this direction carries the belt.
      hull.push(
        large / 2 > small / 2 + centres * x
          ? [(large / 2) * x, (large / 2) * y]
          : [centres + (small / 2) * x, (small / 2) * y],
      );
    }
    let length = 0;
    for (let i = 1; i < hull.length; i++)
      length += Math.hypot(hull[i]![0] - hull[i - 1]![0], hull[i]![1] - hull[i - 1]![1]);
    const belt = drive.beltLength(small, large, centres);
    expect(belt.length).toBeCloseTo(length, 6);
    expect(belt.length).toBe(drive.beltLength(large, small, centres).length);
    expect(drive.beltLength(0.2, 0.2, 0.5)).toEqual({ length: 1 + 0.2 * Math.PI, smallWrap: Math.PI });
    expect(drive.beltLength(small, large, 0.8).smallWrap).toBeGreaterThan(belt.smallWrap);
    expect(() => drive.beltLength(small, large, 0.19)).toThrow(
      'centres is 0.19 m; it must be at least 0.2 m',
    );
  });

  it('displaces in a turn what its plungers sweep', () => {
    const each = Math.PI * 0.009 ** 2 * 0.012;
    expect(drive.plungerDisplacement(3, 0.018, 0.012)).toBeCloseTo(3 * each, 15);
  });

  it('swings a single universal joint at 15° by +3.5 and -3.4 % and a straight one not at all', () => {
    const r = drive.cardanSpeedRange(100, (15 * Math.PI) / 180);
    expect(r.maxSpeed).toBeCloseTo(103.53, 2);
    expect(r.minSpeed).toBeCloseTo(96.59, 2);
    expect(drive.cardanSpeedRange(100, 0).ripple).toBe(0);
  });

  it('names the PTO shafts that carry a power, and none when none does (ISO 500 limits, from memory)', () => {
    expect(drive.ptoShaft(50e3, '540').types.map((t) => t.type)).toEqual(['1']);
    expect(drive.ptoShaft(70e3, '540').types).toEqual([]);
    expect(drive.ptoShaft(100e3, '1000').types.map((t) => t.type)).toEqual(['2', '3']);
    expect(drive.ptoPowerFromEngine(100, 'net')).toBe(90);
  });

  it('calls 12 V the wrong drive above 150 W of fluid power (design judgement, no source)', () => {
    expect(drive.motorPumpCurrent(5 * GPM, 60 * PSI, 0.45, 12.5).sensibleAt12V).toBe(true);
    expect(drive.motorPumpCurrent(7 * GPM, 100 * PSI, 0.45, 12.5).sensibleAt12V).toBe(false);
  });

  it('burns less in a slowed tractor, and near the yearly average at mixed load (Grisso et al. 2004, from memory)', () => {
    const full = drive.tractorFuelRatePartLoad(33556, 1, 0);
    expect(drive.tractorFuelRatePartLoad(33556, 0.5, 0)).toBeLessThan(full);
    expect(drive.tractorFuelRatePartLoad(33556, 0.5, 20)).toBeLessThan(
      drive.tractorFuelRatePartLoad(33556, 0.5, 0),
    );
    const average = drive.tractorFuelRateAverage(33556, 'diesel');
    expect(average).toBeGreaterThan(drive.tractorFuelRatePartLoad(33556, 0.3, 0));
    expect(average).toBeLessThan(full);
  });
});

describe('bad input to the drive', () => {
  it('is named by field, value and limit', () => {
    expect(() => drive.fluidPower(-1, 1)).toThrow('flow is -1 m3/s; it must be at least 0 m3/s');
    expect(() => drive.pumpShaftPower(1e-3, 1e6, 0)).toThrow('pumpEfficiency is 0; it must be at least 0.05');
    expect(() => drive.shaftTorque(NaN, 1)).toThrow('power is not a number');
    expect(() => drive.siteDerate('guess' as DerateRuleId, 0, 20)).toThrow(
      "rule is 'guess'; it must be one of sae-j1349",
    );
    expect(() => drive.siteDerate('sae-j1349', 9000, 20)).toThrow(
      'altitude is 9000 m; it must be at most 5000 m',
    );
    expect(() =>
      drive.enginePowerNeeded({
        flow: 1e-3,
        pressureRise: 1e6,
        pumpEfficiency: 0.8,
        driveEfficiency: 1,
        siteFactor: 2,
      }),
    ).toThrow('siteFactor is 2; it must be at most 1.2');
    expect(() => drive.ptoShaft(1000, '750' as '540')).toThrow("standardSpeed is '750'");
  });
});
