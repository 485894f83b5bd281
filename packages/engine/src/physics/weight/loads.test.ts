import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addedAxleLoads,
  axleUse,
  backwardTipGrade,
  brakingTongueLoad,
  hitchPinForces,
  jackLoad,
  largestMountedMass,
  largestPulledMass,
  leastFrontBallast,
  leastLiftForce,
  liftAtDistance,
  pickupCargoRating,
  ptoPowerForLift,
  pullForce,
  rollCentreHeight,
  rollStability,
  sideSlopeWheelLoads,
  threePointAxleLoads,
  threePointAxleLoadsOnGrade,
  threeSupportTipAngle,
  trailerLoads,
  twoSupportLoads,
} from './index.ts';

const G = 9.80665;
const DEG = Math.PI / 180;
const LB = 0.45359237;

/** Gaussian elimination: the second method for every load split. */
function solve(a: number[][], b: number[]): number[] {
  const n = b.length;
  const m = a.map((row, i) => [...row, b[i]!]);
  for (let c = 0; c < n; c++) {
    let p = c;
    for (let r = c + 1; r < n; r++) if (Math.abs(m[r]![c]!) > Math.abs(m[p]![c]!)) p = r;
    [m[c], m[p]] = [m[p]!, m[c]!];
    for (let r = 0; r < n; r++) {
      if (r === c) continue;
      const f = m[r]![c]! / m[c]![c]!;
      for (let k = c; k <= n; k++) m[r]![k]! -= f * m[c]![k]!;
    }
  }
  return m.map((row, i) => row[n]! / row[i]!);
}

const lists = fc.array(
  fc.tuple(fc.double({ min: 0, max: 5000, noNaN: true }), fc.double({ min: -2, max: 8, noNaN: true })),
  { minLength: 1, maxLength: 8 },
);

describe('loads on supports', () => {
  it('satisfy force and moment balance, solved as a linear system', () => {
    fc.assert(
      fc.property(lists, fc.double({ min: 1, max: 9, noNaN: true }), (pairs, axle) => {
        const masses = pairs.map(([m]) => m);
        const places = pairs.map(([, x]) => x);
        const total = masses.reduce((a, b) => a + b, 0);
        // Moments about a point far from both supports, so that this is not the same arithmetic.
        const about = -7.3;
        const [tongue, axles] = solve(
          [
            [1, 1],
            [0 - about, axle - about],
          ],
          [total, masses.reduce((sum, m, i) => sum + m * (places[i]! - about), 0)],
        );
        const got = trailerLoads(masses, places, axle);
        expect(Math.abs(got.tongue - tongue!)).toBeLessThan(1e-7 * (1 + total));
        expect(Math.abs(got.axles - axles!)).toBeLessThan(1e-7 * (1 + total));
        expect(Math.abs(got.tongue + got.axles - got.gross)).toBeLessThan(1e-9 * (1 + total));
      }),
      { numRuns: 200 },
    );
  });

  it('of a four-wheel wagon on a side slope agree with a 4 by 4 system of its wheels', () => {
    const masses = [400, 900, 120];
    const places = [0.6, 1.1, 2.2];
    const axles = twoSupportLoads(masses, places, 0, 2);
    const slope = 12 * DEG;
    const height = 0.8;
    const track = 1.3;
    const front = sideSlopeWheelLoads(axles.front, height, track, slope);
    const rear = sideSlopeWheelLoads(axles.rear, height, track, slope);
    const total = 1420;
    const c = Math.cos(slope);
    const s = Math.sin(slope);
    // Unknowns: front low, front high, rear low, rear high. Each axle takes its own share of the roll moment.
    const moment = places.reduce((sum, x, i) => sum + masses[i]! * x, 0);
    const want = solve(
      [
        [1, 1, 1, 1],
        [0, 0, 2, 2],
        [track / 2, -track / 2, track / 2, -track / 2],
        [track / 2, -track / 2, 0, 0],
      ],
      [total * c, moment * c, total * height * s, axles.front * height * s],
    );
    [front.lowSide, front.highSide, rear.lowSide, rear.highSide].forEach((load, i) =>
      expect(load).toBeCloseTo(want[i]!, 8),
    );
  });

  it('lift the uphill wheels exactly at the tilt angle of the static stability factor', () => {
    const { tiltAngle } = rollStability(1.3, 0.9);
    expect(sideSlopeWheelLoads(1000, 0.9, 1.3, tiltAngle).highSide).toBeCloseTo(0, 9);
    expect(sideSlopeWheelLoads(1000, 0.9, 1.3, tiltAngle + 0.01).highSide).toBeLessThan(0);
  });

  it('go on the tongue in braking as a free-body balance says', () => {
    const [gross, h, X, a, hc] = [5000, 1.1, 4.2, 5, 0.45];
    // Braked at its own axle: drag at the ground. Moments about the axle's contact point.
    expect(brakingTongueLoad(gross, h, X, a, hc, true)).toBeCloseTo((gross * a * h) / X / G, 9);
    // Pushing: the force meets the trailer at the coupler, so only the height above it counts.
    expect(brakingTongueLoad(gross, h, X, a, hc, false)).toBeCloseTo((gross * a * (h - hc)) / X / G, 9);
    expect(brakingTongueLoad(gross, h, X, 0, hc, true)).toBe(0);
  });

  it('of a jack equal those of a coupler moved to the jack', () => {
    const masses = [1000, 3800];
    const places = [3.8, 3.9];
    expect(jackLoad(masses, places, 4.2, 0)).toBeCloseTo(trailerLoads(masses, places, 4.2).tongue, 9);
    expect(jackLoad(masses, places, 4.2, 0.8)).toBeGreaterThan(jackLoad(masses, places, 4.2, 0));
  });

  it('of a pickup keep their sum and press the rear axle by more than the load behind the axle', () => {
    const a = addedAxleLoads(1000, 3.7, 0.3);
    expect(a.front + a.rear).toBeCloseTo(1000, 9);
    expect(a.rear).toBeGreaterThan(1000);
    expect(pickupCargoRating(3000, 2100, 2)).toBeCloseTo(900 - 300 * LB, 9);
    expect(axleUse(3000, 1400, 2).margin).toBe(-200);
  });
});

describe('a rig on the three-point hitch', () => {
  const tractor = {
    tractorMass: 1500,
    frontAxleUnladen: 600,
    wheelbase: 1.65,
    axleToHitch: 0.85,
    hitchToImplement: 0.61,
  };

  it('splits its weight as a linear system of both axles says, with ballast', () => {
    const p = { ...tractor, implementMass: 700, ballastMass: 200, ballastAhead: 0.9 };
    const tractorAhead = (600 * 1.65) / 1500;
    const [front, rear] = solve(
      [
        [1, 1],
        [1.65, 0],
      ],
      [2400, 1500 * tractorAhead + 200 * 2.55 - 700 * 1.46],
    );
    const got = threePointAxleLoads(p);
    expect(got.front).toBeCloseTo(front!, 9);
    expect(got.rear).toBeCloseTo(rear!, 9);
  });

  it('guards the plus sign before T_V b: the wrong sign of one printed manual does not come out', () => {
    const got = threePointAxleLoads({ ...tractor, implementMass: 0 });
    expect(got.front).toBe(600);
    const wrong = (0 - 600 * 1.65) / 1.65;
    expect(got.front).not.toBeCloseTo(wrong, 0);
  });

  it('is relieved at the front uphill and loaded downhill, and equals the level case on the level', () => {
    const p = {
      ...tractor,
      implementMass: 300,
      tractorCentreHeight: 0.6,
      implementCentreHeight: 0.8,
    };
    const level = threePointAxleLoadsOnGrade({ ...p, grade: 0 });
    expect(level.front).toBeCloseTo(threePointAxleLoads({ ...tractor, implementMass: 300 }).front, 12);
    expect(threePointAxleLoadsOnGrade({ ...p, grade: 0.2 }).front).toBeLessThan(level.front);
    expect(threePointAxleLoadsOnGrade({ ...p, grade: -0.2 }).front).toBeGreaterThan(level.front);
    const up = threePointAxleLoadsOnGrade({ ...p, grade: 0.2 });
    expect(up.front + up.rear).toBeCloseTo(1800 * Math.cos(0.2), 9);
  });

  it('needs just the ballast that brings the front to 20 %, and none up to the largest unballasted mass', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1500, noNaN: true }), (implementMass) => {
        const ballastMass = leastFrontBallast({ ...tractor, implementMass, ballastAhead: 1 });
        const got = threePointAxleLoads({ ...tractor, implementMass, ballastMass, ballastAhead: 1 });
        expect(got.enough).toBe(true);
        if (ballastMass > 0) expect(got.frontShare).toBeCloseTo(0.2, 9);
        expect(ballastMass > 1e-9).toBe(implementMass > largestMountedMass(tractor) + 1e-9);
      }),
      { numRuns: 100 },
    );
  });

  it('is lifted less the farther back it hangs, and the standard asks lift without a jump at 65 kW (from memory)', () => {
    expect(liftAtDistance(1200, 0.8, 0.3)).toBe(1200);
    expect(liftAtDistance(1200, 0.8, 1.2)).toBeLessThan(liftAtDistance(1200, 0.8, 0.9));
    expect(leastLiftForce(65000)).toBeCloseTo(leastLiftForce(65000.001), 1);
    for (const power of [5e3, 30e3, 65e3, 120e3])
      expect(ptoPowerForLift(leastLiftForce(power))).toBeCloseTo(power, 6);
  });
});

describe('tipping', () => {
  /** Least side slope at which the load on the high wheel of a three-support rig is lost, from force balance in space. */
  function tipByBalance(T: number, L: number, x: number, h: number, hf: number): number {
    const highWheel = (t: number): number => {
      // Axes: along x (forward support at 0), across y (downhill positive), up z; all in the rig's frame.
      const fy = Math.sin(t);
      const fz = -Math.cos(t);
      // Unknown normal forces: support (vertical and sideways at hf), low and high wheels; side force of wheels as one.
      // Balance of: vertical, sideways, moments about x, y and z through the origin on the ground.
      const [, , , high] = solve(
        [
          [1, 0, 1, 1, 0],
          [0, 1, 0, 0, 1],
          [0, -hf, T / 2, -T / 2, 0],
          [0, 0, -L, -L, 0],
          [0, 0, 0, 0, L],
        ],
        [-fz, -fy, h * fy, x * fz, -x * fy],
      );
      return high!;
    };
    let [a, b] = [0, 1.4];
    for (let i = 0; i < 60; i++) {
      const m = (a + b) / 2;
      if (highWheel(m) > 0) a = m;
      else b = m;
    }
    return a;
  }

  it('of a cart on a ball agrees with the balance of all forces in space', () => {
    for (const [T, L, x, h, hf] of [
      [1.5, 3.2, 2.8, 1.0, 0.45],
      [1.2, 2.0, 1.9, 0.7, 0.4],
      [1.8, 2.2, 1.4, 0.9, 0.5],
    ] as const)
      expect(threeSupportTipAngle(T, L, x, h, hf)).toBeCloseTo(tipByBalance(T, L, x, h, hf), 6);
  });

  it('is the two-wheel formula with the centre over the axle, and less with the centre ahead and above the ball', () => {
    expect(threeSupportTipAngle(1.5, 3, 3, 1, 0.4)).toBeCloseTo(rollStability(1.5, 1).tiltAngle, 12);
    expect(threeSupportTipAngle(1.5, 3, 2.6, 1, 0.4)).toBeLessThan(rollStability(1.5, 1).tiltAngle);
    expect(() => threeSupportTipAngle(1.5, 3, 1.5, 0.2, 0.45)).toThrow('centreHeight is 0.2 m');
  });

  it('counts round-tank liquid at the axis: part full is not lower (a loss of 17 % against the frozen centroid)', () => {
    const frozen = rollStability(1.7, rollCentreHeight(1100, 0.7, 686.022, 0.55 + 0.2057)).factor;
    const free = rollStability(1.7, rollCentreHeight(1100, 0.7, 686.022, 0.55 + 0.6)).factor;
    expect(1 - free / frozen).toBeCloseTo(0.17, 2);
  });

  it('backward happens when the centre is over the rear axle', () => {
    const { angle } = backwardTipGrade(0.55, 0.85);
    expect(0.55 * Math.cos(angle) - 0.85 * Math.sin(angle)).toBeCloseTo(0, 12);
  });
});

describe('moving by hand', () => {
  it('takes the weight along the slope and the rolling part square to it', () => {
    const f = pullForce(400, 0.08, 0.1);
    const angle = Math.atan(0.1);
    expect(f.total).toBeCloseTo(400 * G * (0.08 * Math.cos(angle) + Math.sin(angle)), 9);
    expect(pullForce(400, 0.01, -0.1).total).toBeLessThan(0);
    expect(largestPulledMass(f.total, 0.08, 0.1)).toBeCloseTo(400, 9);
  });
});

describe('bad loads', () => {
  it('are named by field, place in the list, value and limit', () => {
    expect(() => trailerLoads([100, -1], [1, 2], 3)).toThrow('masses[1] is -1 kg; it must be at least 0 kg');
    expect(() => trailerLoads([100, 1], [1], 3)).toThrow(
      'places has 1 entries; it must have as many as masses: 2',
    );
    expect(() => trailerLoads([100], [NaN], 3)).toThrow('places[0] is not a number');
    expect(() => twoSupportLoads([1], [1], 2, 2)).toThrow(
      'rear is 2 m; it must be at least 0.01 m away from front',
    );
    expect(() => axleUse(1, 1, 1.5)).toThrow('axles is 1.5; it must be a whole number');
    expect(() =>
      leastFrontBallast({
        tractorMass: 1500,
        frontAxleUnladen: 1600,
        wheelbase: 1.6,
        axleToHitch: 0.8,
        hitchToImplement: 0.6,
        implementMass: 1,
      }),
    ).toThrow('frontAxleUnladen is 1600 kg; it must be at most 1500 kg');
  });

  it('of nothing at all give zero and not a number that is none', () => {
    expect(trailerLoads([], [], 3)).toEqual({
      gross: 0,
      tongue: 0,
      axles: 0,
      tongueShare: 0,
      withinGuidance: false,
    });
  });
});

describe('pins of a three-point hitch', () => {
  it('hold a rig in balance: forces and the moment about the lower pins vanish (linear solve by hand)', () => {
    const [mass, behind, mast] = [900, 0.7, 0.46];
    const weight = mass * 9.80665;
    const { topLink, lowerPin } = hitchPinForces(mass, behind, mast, 1);
    expect(topLink * mast - weight * behind).toBeCloseTo(0, 9);
    // Both lower pins push forward what the top link pulls back, and carry the weight.
    expect((2 * lowerPin) ** 2).toBeCloseTo(topLink ** 2 + weight ** 2, 3);
    expect(hitchPinForces(mass, behind, mast).lowerPin).toBeCloseTo(2.5 * lowerPin, 9);
  });
});
