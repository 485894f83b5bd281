import type { PartOf } from '../src/catalogue/index.ts';
import type { ProofContext } from '../src/rig/proof/context.ts';
import { readBrief, type Brief } from '../src/rig/brief.ts';
import { driveOf } from '../src/rig/drive.ts';
import { first, type Rig, type RigItem } from '../src/rig/rig-document.ts';
import { siteOf } from '../src/rig/proof/site.ts';

// Small rigs for the tests of placement, weight, stability, structure and electrics: only what those look at is filled in.

const part = (id: string, mass: number, length: number, width: number, height: number) => ({
  id,
  name: id,
  mass,
  size: { length, width, height },
  costCents: 0,
  priceCents: 0,
  leadTimeDays: 0,
  stock: 0,
  ports: [],
  wetted: [],
});

export function boxTank(length: number, width: number, height: number, mass = 40): PartOf<'tank'> {
  return {
    kind: 'tank',
    ...part('box-tank', mass, length, width, height),
    volume: length * width * height * 0.96,
    shape: { form: 'box', length, width, height },
    ratedSpecificGravity: 1.5,
    outlet: 'flush',
    vented: true,
  };
}

export function roundTank(diameter: number, length: number, mass = 40): PartOf<'tank'> {
  return {
    kind: 'tank',
    ...part('round-tank', mass, length, diameter, diameter),
    volume: (Math.PI / 4) * diameter ** 2 * length * 0.96,
    shape: { form: 'lying-round', diameter, length, ends: 'flat' },
    ratedSpecificGravity: 1.5,
    outlet: 'flush',
    vented: true,
  };
}

export function engine(mass: number, more: Partial<PartOf<'engine'>> = {}): PartOf<'engine'> {
  return {
    kind: 'engine',
    ...part('engine', mass, 0.4, 0.45, 0.4),
    power: 5000,
    ratedSpeed: 377,
    minSpeed: 100,
    fuel: 'petrol',
    label: 'net',
    start: 'recoil',
    chargingCurrent: 0,
    startingCurrent: 0,
    fuelTank: 0.004,
    ...more,
  };
}

export function pump(mass: number): PartOf<'pump'> {
  return {
    kind: 'pump',
    ...part('pump', mass, 0.3, 0.25, 0.25),
    maxPressure: 4e6,
    maxSpeed: 80,
    minSpeed: 0,
    npshRequired: 2,
    law: {
      action: 'displacement',
      mechanism: 'diaphragm',
      displacement: 1e-5,
      slipAtMaxPressure: 0.04,
      efficiency: 0.8,
    },
  };
}

export function reel(mass: number, more: Partial<PartOf<'reel'>> = {}): PartOf<'reel'> {
  return {
    kind: 'reel',
    ...part('reel', mass, 0.5, 0.6, 0.55),
    hubDiameter: 0.2,
    flangeDiameter: 0.5,
    drumWidth: 0.4,
    bore: 0.025,
    flowAtOneBar: 0.003,
    maxPressure: 4e6,
    rewind: 'hand',
    rewindCurrent: 0,
    ...more,
  };
}

export function battery(more: Partial<PartOf<'battery'>> = {}): PartOf<'battery'> {
  return {
    kind: 'battery',
    ...part('battery', 20, 0.3, 0.2, 0.2),
    voltage: 12,
    capacity: 75 * 3600,
    ratedHours: 20,
    peukert: 1.2,
    ...more,
  };
}

export function hose(): PartOf<'hose'> {
  return {
    kind: 'hose',
    ...part('hose', 0.15, 0, 0, 0),
    use: 'delivery',
    bore: 0.025,
    outsideDiameter: 0.035,
    roughness: 0,
    maxPressure: 4e6,
    minPressure: 0,
    bendRadius: 0.2,
    longestPiece: 100,
  };
}

export function carrier(
  form: PartOf<'carrier'>['form'],
  more: Partial<PartOf<'carrier'>> = {},
): PartOf<'carrier'> {
  const axle = { rating: 1500, tyreRating: 800, tyres: 2, tyreDiameter: 0.65, track: 1.5 };
  const coupler = { position: -1.2, height: 0.45, rating: 3000 };
  const deck = { deckLength: 3.6, deckWidth: 1.8, deckHeight: 0.55, grossRating: 3200 };
  const own: Partial<PartOf<'carrier'>> =
    form === 'tandem-trailer'
      ? {
          coupler,
          axles: [
            { position: 1.9, ...axle },
            { position: 2.8, ...axle },
          ],
        }
      : form === 'cart'
        ? { coupler, axles: [{ position: 2.2, ...axle }] }
        : form === 'wagon'
          ? {
              coupler,
              axles: [
                { position: 0.5, ...axle },
                { position: 3.1, ...axle },
              ],
            }
          : {};
  return {
    kind: 'carrier',
    ...part('carrier', 500, 4.8, 2, 0.9),
    form,
    ...deck,
    axles: [],
    rail: { material: 'steel-a500b', height: 0.1, width: 0.05, wall: 0.006, count: 2 },
    ...own,
    ...more,
  };
}

type AnyPart = Rig['items'] extends ReadonlyMap<string, { readonly part: infer P }> ? P : never;

/** A rig of the parts given, in one line from tank to gun when it has a reel and a hose. */
export function rigOf(
  parts: Readonly<Record<string, AnyPart>>,
  more: {
    readonly carrier?: Partial<Brief['carrier']>;
    readonly site?: Partial<Brief['site']>;
    readonly items?: Readonly<Record<string, Partial<RigItem>>>;
    readonly levels?: readonly number[];
  } = {},
): Rig {
  const form = Object.values(parts).find((p) => p.kind === 'carrier')?.form ?? 'skid';
  const read = readBrief({
    format: 'spraywright-brief',
    id: 'test',
    title: 'Test rig',
    customer: 'Nobody',
    work: 'tall-trees',
    liquids: [{ id: 'water', name: 'Water', liquid: 'water' }],
    duties: (more.levels ?? [0.5]).map((level, i) => ({
      id: `duty-${i}`,
      name: `Duty ${i}`,
      liquid: 'water',
      open: ['gun'],
      tankLevel: `${level * 100} %`,
    })),
    carrier: { form },
    site: { temperature: '68 F' },
    limits: {},
    wishes: {},
  });
  if (!read.ok) throw new Error(read.problems.map((p) => p.message).join('; '));
  const brief: Brief = {
    ...read.brief,
    carrier: { ...read.brief.carrier, ...more.carrier },
    site: { ...read.brief.site, ...more.site },
  };
  const items = Object.entries(parts).map(([id, p]) => ({ id, part: p.id, count: 1, ...more.items?.[id] }));
  const run = ['reel', 'hose'].filter((id) => id in parts);
  const line = {
    id: 'gun',
    name: 'Gun line',
    from: 'tank',
    to: 'air',
    run,
    elbows: 0,
    teesRun: 0,
    teesBranch: 0,
    opens: 'gun' as const,
  };
  return {
    document: {
      ownParts: [],
      format: 'spraywright-rig',
      id: 'test',
      title: 'Test rig',
      layout: 'test',
      brief,
      items,
      nodes: [],
      lines: [line],
    },
    brief,
    items: new Map(items.map((item) => [item.id, { item, part: parts[item.id]! }])),
    lines: [line],
    ownParts: new Map(),
  };
}

/** What promises of weight and electrics are computed from, without any solved duty. */
export function contextOf(rig: Rig, density = 1000): ProofContext {
  const site = siteOf(rig.brief);
  const state = {
    condition: { strainer: 'clean', trigger: 'open' },
    status: 'failed',
    reason: 'not solved in this test',
    iterations: 0,
    outlets: [],
    pump: undefined,
    highestPressure: 0,
    pressureAt: new Map<string, number>(),
    flowThrough: new Map<string, number>(),
    states: new Map<string, string>(),
    notes: [],
    steps: [],
  } as const;
  return {
    rig,
    site,
    drive: driveOf(rig),
    tank: first(rig, 'tank')!.part,
    duties: rig.brief.duties.map((duty) => ({
      duty,
      liquid: {
        id: 'water',
        name: 'Water',
        density,
        viscosity: 1e-3,
        vapourPressure: 2300,
        temperatureC: 20,
        agitationShare: 0,
        missing: [],
        estimates: [],
      },
      open: state,
      dirty: state,
      shut: state,
    })),
    bill: {
      lines: [],
      plumbing: { joints: [], added: [], open: [], gaps: [] },
      cuts: [],
      missing: [],
      linesCents: 0,
      costCents: 0,
      priceCents: 0,
      totalCents: 0,
      dryMass: 0,
      readyInDays: 0,
    },
    units: 'us',
  };
}
