import type { Duty, DutyProof, DutyReach, Placement, Proof, PressureStep, Target } from '../src/rig/index.ts';

/** A path under gravity alone [m]: enough for a drawing's test, and plainly not the throw model. */
function parabola(speed: number, elevation: number, from: number): [number, number][] {
  const [u, w] = [speed * Math.cos(elevation), speed * Math.sin(elevation)];
  const end = (w + Math.sqrt(w * w + 2 * 9.81 * from)) / 9.81;
  return Array.from({ length: 41 }, (_, i) => {
    const t = (end * i) / 40;
    return [u * t, Math.max(0, from + w * t - 4.905 * t * t)];
  });
}

interface SampleReach {
  readonly target: Target;
  readonly meaning?: DutyReach['meaning'];
  readonly farthest: number;
  readonly bulk: number;
  readonly promised: number;
  readonly speeds: readonly [low: number, bulk: number, high: number, farthest: number];
  readonly elevation: number;
}

export function sampleReach(s: SampleReach): DutyReach {
  const { target, elevation, speeds } = s;
  const gunHeight = 1.4;
  const middle = s.meaning === 'touched' ? s.farthest : s.bulk;
  return {
    aim: target.aim,
    meaning: s.meaning ?? 'wetted',
    asked: target.aim === 'height' ? target.height : target.distance,
    standoff: target.aim === 'height' ? target.standoff : target.distance,
    height: target.aim === 'distance' ? 0 : target.height,
    farthest: s.farthest,
    bulk: s.bulk,
    goodStream: 0.8 * s.bulk,
    promised: s.promised,
    band5: 0.87 * middle,
    band95: 1.15 * middle,
    sigma: 0.08,
    elevation,
    gunHeight,
    reactionForce: 100,
    arcLow: parabola(speeds[0], elevation, gunHeight),
    arcBulk: parabola(speeds[1], elevation, gunHeight),
    arcHigh: parabola(speeds[2], elevation, gunHeight),
    arcFarthest: parabola(speeds[3], elevation, gunHeight),
  };
}

const PSI = 6894.757293168361;
const step = (item: string, before: number, after: number, limit?: number): PressureStep => ({
  item,
  line: 'gun',
  flow: 1.3e-3,
  before: before * PSI,
  after: after * PSI,
  ...(limit === undefined ? {} : { limit: limit * PSI }),
});

/** One duty of the sample, solved by hand. */
export function sampleDuty(more: Partial<Duty>, reach?: DutyReach): DutyProof {
  const duty: Duty = {
    id: 'tops',
    name: 'Tops of the elms',
    liquid: 'mix',
    open: ['gun'],
    tankLevel: 0.6,
    reach: 'wetted',
    agitate: true,
    ...more,
  };
  const steps = [
    step('tank-valve', 1.2, 0.9),
    step('suction-hose', 0.9, 0.4),
    step('strainer', 0.4, -0.8),
    step('pump', -0.8, 404, 580),
    step('reel', 404, 395, 600),
    step('hose', 395, 318, 600),
    step('gun', 318, 309, 725),
    step('tip', 309, 0, 800),
  ];
  const state = (pump: number): DutyProof['open'] => ({
    status: 'converged',
    reason: undefined,
    iterations: 6,
    outlets: [{ line: duty.open[0]!, flow: 1.3e-3, tipPressure: 309 * PSI }],
    pump: { item: 'pump', flow: 1.6e-3, inlet: -0.8 * PSI, outlet: pump * PSI },
    highestPressure: pump * PSI,
    pressureAt: new Map([['pump', pump * PSI]]),
    flowThrough: new Map([['hose', 1.3e-3]]),
    states: new Map(),
    notes: [],
    steps,
  });
  return {
    id: duty.id,
    name: duty.name,
    duty,
    liquid: 'Oil 2 %',
    open: state(404),
    dirty: state(398),
    shut: state(452),
    ...(reach === undefined ? {} : { reach }),
  };
}

/** A proof with the parts of a heavy cart and the duties given; nothing in it is computed. */
export function sampleProof(duties: readonly DutyProof[], carrier = 'Cart, one axle, 72 x 48 in'): Proof {
  const part = (item: string, kind: string, name: string) => ({ item, part: item, kind, name, count: 1 });
  return {
    id: 'sample',
    title: 'Heavy cart for elms',
    customer: 'Wrenmere Parks',
    engineVersion: '0.0.0',
    catalogue: { name: 'Sample', version: 1 },
    site: {
      altitude: 0,
      temperature: 293.15,
      wind: 0,
      humidity: 0.5,
      derating: 'sae-j1349',
      airPressure: 101325,
      airDensity: 1.204,
    },
    promises: [],
    counts: { broken: 0, thin: 0, unknown: 0, kept: 0 },
    duties,
    bill: {
      lines: [],
      plumbing: { joints: [], added: [], open: [], gaps: [] },
      cuts: [],
      missing: [],
      linesCents: 0,
      costCents: 0,
      priceCents: 0,
      totalCents: 0,
      dryMass: 300,
      readyInDays: 10,
    },
    cautions: [],
    parts: [
      part('carrier', 'carrier', carrier),
      part('tank', 'tank', 'Tank, 200 gal, poly'),
      part('tank-valve', 'valve', 'Ball valve, 2 in'),
      part('suction-hose', 'hose', 'Suction hose, 2 in'),
      part('strainer', 'strainer', 'Strainer, 2 in'),
      part('pump', 'pump', 'Diaphragm pump, 42 gpm'),
      part('engine', 'engine', 'Petrol engine, 18 hp'),
      part('reel', 'reel', 'Reel, electric, 250 ft'),
      { ...part('hose', 'hose', 'Hose, 1 in'), length: 76.2 },
      part('gun', 'gun', 'Tree gun'),
      part('tip', 'tip', 'Taper tip'),
    ],
  };
}

/** Places of a cart's tank, engine and reel, the reel over the engine at the front [m]. */
export function samplePlacement(): Placement {
  const part = (item: 'tank' | 'engine' | 'reel', x: number, z: number, length: number, height: number) => ({
    item,
    kind: item,
    name: `${item.charAt(0).toUpperCase()}${item.slice(1)}, sample`,
    mass: 50,
    x,
    y: 0,
    z,
    length,
    width: 0.8,
    height,
    given: false,
  });
  const loads = { full: 500, half: 400, empty: 300, byDuty: {} };
  const middle = { mass: 500, x: 1.2, y: 0, z: 0.9 };
  return {
    carrier: {
      item: 'carrier',
      form: 'cart',
      deckLength: 2.44,
      deckWidth: 1.37,
      deckHeight: 0.6,
      grossRating: 2358,
      size: { length: 3.2, width: 1.78, height: 0.89 },
    },
    parts: [
      part('tank', 1.57, 0.6, 1.47, 0.85),
      part('engine', 0.36, 0.6, 0.43, 0.47),
      part('reel', 0.36, 1.12, 0.71, 0.74),
    ],
    supports: [
      { id: 'coupler', name: 'Coupler', x: -0.76, ...loads },
      {
        id: 'axle-1',
        name: 'Axle',
        x: 1.51,
        ...loads,
        rating: 510,
        wheels: { track: 1.5, diameter: 0.66, sideRating: 250 },
      },
    ],
    centre: { full: middle, half: middle, empty: middle },
    liquid: { name: 'Oil 2 %', density: 1000 },
    slope: { angle: 0.1, given: false },
    tip: { angle: 0.64, fill: 1, height: 0.9, track: 1.5, made: [], mass: 500 },
  };
}
