import type { DayProof, HoseReach, PumpCurve, TankCurve } from '../src/rig/index.ts';

const GPM = 6.30901964e-5;
const PSI = 6894.757293168361;
const FT = 0.3048;
const GALLON = 3.785411784e-3;
const at = (gpm: number, psi: number) => ({ flow: gpm * GPM, rise: psi * PSI });

/** A displacement pump against a rig whose unloader opens at 390 psi, made up. */
export function samplePumpCurve(): PumpCurve {
  return {
    item: 'pump',
    pump: [at(38, 0), at(36, 580)],
    rig: [0, 4, 8, 12, 16, 20, 24, 28, 30, 34, 38, 42].map((q) =>
      at(q, q < 30 ? (390 * q * q) / 900 : 390 + (q - 30) * 1.4),
    ),
    duties: [
      { duty: 'tops', ...at(36.6, 405) },
      { duty: 'crowns', ...at(36.8, 345) },
    ],
    rated: 580 * PSI,
  };
}

/** A centrifugal pump that works past its last measured point. */
export function sampleCentrifugalCurve(): PumpCurve {
  return {
    item: 'pump',
    pump: [at(0, 58), at(80, 54), at(150, 42), at(200, 29)],
    rig: [0, 40, 80, 120, 160, 200, 240].map((q) => at(q, 1 + (q * q) / 2600)),
    duties: [{ duty: 'tops', ...at(226, 20.6) }],
  };
}

export function sampleHoseReach(): HoseReach {
  const lengths = [25, 50, 100, 150, 200, 250, 300, 350, 400].map((ft) => ft * FT);
  const lost = lengths.map((l) => l / (400 * FT));
  return {
    item: 'hose',
    lengths,
    flows: lost.map((s) => (36 - 5 * s) * GPM),
    own: 250 * FT,
    reach: {
      farthest: lost.map((s) => (78 - 7 * s) * FT),
      bulk: lost.map((s) => (61 - 6 * s) * FT),
      promised: lost.map((s) => (53 - 5 * s) * FT),
    },
  };
}

export function sampleTankCurve(): TankCurve {
  const sizes = [50, 100, 150, 200, 300, 400, 500].map((gallons) => gallons * GALLON);
  return {
    sizes,
    units: [20, 31, 38, 42, 46, 48, 48.2],
    areas: [2000, 3100, 3800, 4200, 4600, 4800, 4820],
    masses: sizes.map((size) => 500 + 1000 * size),
    paying: 400 * GALLON,
  };
}

/** A short day of two fills. */
export function sampleDay(): DayProof {
  const times = [0, 1800, 3000, 3600, 12000, 12600, 13800, 14400, 24000, 26000];
  return {
    duty: 'tops',
    unit: 'tree',
    byArea: false,
    assumed: [],
    input: {
      dayLength: 28800,
      tank: 200 * GALLON,
      flow: 36 * GPM,
      unitVolume: 5 * GALLON,
      unitArea: 100,
      fillFlow: 10 * GPM,
    },
    result: {
      units: 42,
      area: 4200,
      sprayed: 1.5,
      filled: 1.5,
      left: 0,
      fills: 2,
      stops: 3,
      product: 0,
      flushWater: 0,
      fuel: 0,
      distance: 900,
      workTime: 18000,
      triggerTime: 9000,
      fillTime: 3600,
      leastCharge: 0,
      greatestMass: 1257,
      limitedBy: 'time',
      times,
      phases: ['prepare', 'prepare', 'fill', 'drive', 'work', 'drive', 'fill', 'drive', 'work', 'close'],
      tanks: [0, 0, 0.757, 0.757, 0, 0, 0.757, 0.757, 0.1, 0.1],
      masses: [500, 500, 1257, 1257, 500, 500, 1257, 1257, 600, 600],
      charges: times.map(() => 0),
    },
  };
}
