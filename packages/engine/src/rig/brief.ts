import { OUTLETS, WORKS } from '../catalogue/index.ts';
import { FORMULATIONS } from '../liquids/index.ts';
import type { DerateRuleId, GROUND_RESISTANCE } from '../physics/index.ts';
import {
  flag,
  identifier,
  integer,
  list,
  number,
  object,
  oneOf,
  optional,
  quantity,
  read,
  record,
  tagged,
  text,
  withDefault,
  type Infer,
  type Problem,
} from '../quantity/index.ts';
import {
  dayShape,
  fillShape,
  hopperShape,
  patternFields,
  rinseShape,
  sprayingFields,
  storeShape,
  transferShape,
} from './brief-work.ts';

const GROUNDS = [
  'hard-road',
  'worn-asphalt',
  'packed-gravel',
  'loose-gravel',
  'soil',
  'turf',
  'wet-turf',
  'sand',
] as const satisfies readonly (keyof typeof GROUND_RESISTANCE)[];

const DERATING_RULES = [
  'sae-j1349',
  'extension-3pct',
  'gas-engine',
  'small-engine',
  'generator-set',
  'msha-diesel',
  'iso-3046',
] as const satisfies readonly DerateRuleId[];

const lengthUpTo = (max: string) => quantity('length', { min: '0 ft', max });

const target = tagged('aim', {
  /** Up into a crown or against a wall: a height, from a distance. */
  height: object({ height: lengthUpTo('150 ft'), standoff: lengthUpTo('150 ft') }),
  /** Along the ground. */
  distance: object({ distance: lengthUpTo('300 ft') }),
  /** Over an edge on to a roof: land at this height, this far away. */
  roof: object({ height: lengthUpTo('100 ft'), distance: lengthUpTo('150 ft') }),
});

/** Values that are start values of ours until somebody confirms them, by their path inside what holds them. */
const startsShape = () => optional(record(flag(), { max: 80 }));

export const dutyShape = object({
  id: identifier(),
  name: text({ min: 2, max: 80 }),
  /** Which of the brief's liquids is sprayed. */
  liquid: identifier(),
  open: list(oneOf(...OUTLETS), { min: 1, max: 5 }),
  /** How full the tank is. */
  tankLevel: quantity('ratio', { min: '2 %', max: '100 %' }),
  hoseOut: optional(lengthUpTo('1000 ft')),
  /** The outlet above the ground the rig stands on. */
  outletHeight: optional(quantity('length', { min: '-100 ft', max: '100 ft' })),
  target: optional(target),
  /** Whether the target must be wetted (half the water gets there) or only touched (farthest drops). */
  reach: withDefault(oneOf('wetted', 'touched'), 'wetted'),
  /** Least flow at each open outlet. */
  flow: optional(quantity('flow', { above: '0 gpm', max: '5000 gpm' })),
  /** Least gauge pressure at the tip. */
  pressure: optional(quantity('pressure', { above: '0 psi', max: '1000 psi' })),
  ...patternFields,
  agitate: withDefault(flag(), true),
  wind: optional(quantity('speed', { min: '0 mph', max: '40 mph' })),
  starts: startsShape(),
});

const vehicleMass = () => quantity('mass', { above: '0 lb', max: '60000 lb' });

/** What only the customer knows of the tractor, truck or utility vehicle, as it stands with its driver and without the rig. */
const vehicleFields = {
  frontAxleMass: optional(vehicleMass()),
  rearAxleMass: optional(vehicleMass()),
  rearAxleRating: optional(vehicleMass()),
  wheelbase: optional(quantity('length', { min: '2 ft', max: '30 ft' })),
  track: optional(quantity('length', { min: '1 ft', max: '12 ft' })),
  centreHeight: optional(quantity('length', { min: '0.5 ft', max: '10 ft' })),
  /** Rear axle back to the lower hitch balls of a tractor. */
  ballToAxle: optional(quantity('length', { min: '0 ft', max: '6 ft' })),
  /** Category of the tractor's three-point hitch: its pins and their span, never what it lifts. */
  hitchCategory: optional(oneOf('0', '1N', '1', '2', '3N', '3', '4')),
  lowerLinkLength: optional(quantity('length', { min: '1 ft', max: '5 ft' })),
  /** Lift 24 in (610 mm) behind the hitch balls. */
  liftAt24in: optional(vehicleMass()),
  /** Front ballast fitted, and how far ahead of the front axle. */
  ballast: optional(quantity('mass', { min: '0 lb', max: '10000 lb' })),
  ballastAhead: optional(quantity('length', { min: '0 ft', max: '9 ft' })),
  /** Floor of a truck's or utility vehicle's bed above the ground, and its front end ahead of the rear axle. */
  bedHeight: optional(quantity('length', { min: '0 ft', max: '8 ft' })),
  bedAheadOfAxle: optional(quantity('length', { min: '0 ft', max: '20 ft' })),
  /** How a rig in a bed is held down. */
  heldBy: optional(oneOf('straps', 'bolts')),
  /** Rule by which it is held on the road; the United States where none is said. */
  tieDownRule: optional(oneOf('united-states', 'australia', 'europe')),
  /** State of registration of a trailer, two letters; gross rating of the tow vehicle. */
  state: optional(text({ min: 2, max: 2 })),
  towRating: optional(vehicleMass()),
  /** A cart that people push and pull, the ground it stands on, and who moves it. */
  movedByHand: optional(flag()),
  ground: optional(oneOf(...GROUNDS)),
  movedBy: optional(oneOf('men', 'women')),
  /** Use of the battery in a working day. */
  rewindsPerHour: optional(number({ min: 0, max: 60 })),
  startsPerDay: optional(integer({ min: 0, max: 200 })),
  workHours: optional(number({ above: 0, max: 24 })),
  controlCurrent: optional(quantity('current', { min: '0 A', max: '60 A' })),
};

export const briefShape = object({
  format: oneOf('spraywright-brief'),
  id: identifier(),
  title: text({ min: 2, max: 80 }),
  customer: text({ min: 1, max: 80 }),
  place: optional(text({ max: 80 })),
  work: oneOf(...WORKS),
  /** The one layout to build by, where the work alone does not say it. */
  family: optional(identifier()),
  liquids: list(
    object({
      id: identifier(),
      name: text({ min: 1, max: 60 }),
      /** A liquid of the liquids layer. */
      liquid: text({ min: 1, max: 40 }),
      strength: optional(number({ min: 0, max: 1000 })),
      strengthUnit: optional(oneOf('trade %', 'weight %', 'g/L', 'volume %')),
      /** What the supplier's sheet says, instead of our tables. */
      density: optional(quantity('density', { min: '600 kg/m3', max: '2500 kg/m3' })),
      viscosity: optional(quantity('viscosity', { min: '0.1 cP', max: '10000 cP' })),
      temperature: optional(quantity('temperature', { min: '-40 F', max: '150 F' })),
      /** Suspensions need stronger agitation than solutions. */
      suspension: withDefault(flag(), false),
      /** Products that are mixed in the tank, by the form they are sold in: it decides the order they go in. */
      products: withDefault(
        list(object({ name: text({ min: 1, max: 60 }), form: oneOf(...FORMULATIONS) }), { max: 12 }),
        [],
      ),
      use: withDefault(oneOf('spray', 'flush', 'winterise'), 'spray'),
      /** Age of bleach on the day of use. */
      store: optional(storeShape),
      /** Strength of the stock it is mixed from, in the same unit. */
      stock: optional(number({ above: 0, max: 2000 })),
      starts: startsShape(),
    }),
    { min: 1, max: 12 },
  ),
  duties: list(dutyShape, { min: 1, max: 12 }),
  carrier: object({
    form: oneOf('skid', 'three-point', 'cart', 'wagon', 'tandem-trailer', 'utility-bed'),
    /** Most the customer's vehicle may pull or carry. */
    massLimit: optional(quantity('mass', { above: '0 lb', max: '40000 lb' })),
    ptoSpeed: optional(quantity('rotation', { min: '300 rpm', max: '1300 rpm' })),
    ptoPower: optional(quantity('power', { above: '0 hp', max: '500 hp' })),
    /** Current the vehicle's 12 V socket can give without a battery of the rig's own. */
    supplyCurrent: optional(quantity('current', { min: '0 A', max: '200 A' })),
    ...vehicleFields,
  }),
  site: object({
    altitude: optional(quantity('length', { min: '-1000 ft', max: '14000 ft' })),
    temperature: optional(quantity('temperature', { min: '-40 F', max: '130 F' })),
    wind: optional(quantity('speed', { min: '0 mph', max: '40 mph' })),
    humidity: optional(quantity('ratio', { min: '0 %', max: '100 %' })),
    /** Steepest slope the rig works on, in any direction. */
    slope: optional(quantity('angle', { min: '0 deg', max: '40 deg' })),
    /** Rule by which an engine is derated for altitude and heat. */
    derating: withDefault(oneOf(...DERATING_RULES), 'sae-j1349'),
    ...sprayingFields,
  }),
  day: optional(dayShape),
  rinse: optional(rinseShape),
  fill: optional(fillShape),
  transfer: optional(transferShape),
  hopper: optional(hopperShape),
  limits: object({
    budgetCents: optional(integer({ min: 0, max: 1_000_000_000 })),
    readyInDays: optional(integer({ min: 1, max: 730 })),
  }),
  /** What data do not settle and a person has decided: a limited material accepted, two liquids kept apart. */
  decisions: withDefault(
    list(
      object({
        about: text({ min: 1, max: 120 }),
        who: text({ min: 1, max: 60 }),
        why: text({ min: 1, max: 300 }),
        when: text({ min: 4, max: 40 }),
      }),
      { max: 200 },
    ),
    [],
  ),
  wishes: object({
    drive: optional(oneOf('engine', 'pto', 'electric-12v')),
    tank: optional(quantity('volume', { above: '0 gal', max: '4000 gal' })),
    hose: optional(lengthUpTo('1000 ft')),
    rewind: optional(oneOf('hand', 'electric')),
  }),
  starts: startsShape(),
});

export type Brief = Infer<typeof briefShape>;
export type Duty = Brief['duties'][number];
export type Target = NonNullable<Duty['target']>;

/** Reads a brief and checks what its fields say of each other. */
export function readBrief(raw: unknown): { ok: true; brief: Brief } | { ok: false; problems: Problem[] } {
  const result = read(briefShape, raw);
  if (!result.ok) return result;
  const problems = briefProblems(result.value);
  return problems.length > 0 ? { ok: false, problems } : { ok: true, brief: result.value };
}

/** What fields of a brief that was read say against each other; paths begin at the brief. */
export function briefProblems(brief: Brief): Problem[] {
  const problems: Problem[] = [];
  const unique = (what: 'liquids' | 'duties') => {
    const seen = new Set<string>();
    brief[what].forEach((entry, i) => {
      if (seen.has(entry.id))
        problems.push({
          path: [what, i, 'id'],
          code: 'duplicate',
          message: `id '${entry.id}' is used twice in ${what}`,
        });
      seen.add(entry.id);
    });
  };
  unique('liquids');
  unique('duties');
  const liquids = new Set(brief.liquids.map((l) => l.id));
  brief.duties.forEach((d, i) => {
    if (!liquids.has(d.liquid))
      problems.push({
        path: ['duties', i, 'liquid'],
        code: 'unknown-reference',
        message: `liquid '${d.liquid}' is not one of the brief's liquids: ${[...liquids].join(', ')}`,
      });
    if (d.target !== undefined && !d.open.includes('gun') && !d.open.includes('second-gun'))
      problems.push({
        path: ['duties', i, 'target'],
        code: 'contradiction',
        message: `duty '${d.id}' has a target to reach but no gun is open`,
      });
    if (d.cups !== undefined && !d.cups.catches.some((c) => c > 0))
      problems.push({
        path: ['duties', i, 'cups', 'catches'],
        code: 'contradiction',
        message: `catches: no cup of duty '${d.id}' caught anything`,
      });
    const a = d.application;
    if (a !== undefined && (a.band === undefined) !== (a.row === undefined))
      problems.push({
        path: ['duties', i, 'application', a.band === undefined ? 'band' : 'row'],
        code: 'missing',
        message: `band and row go together: duty '${d.id}' has only one of them`,
      });
    if (a?.band !== undefined && a.row !== undefined && a.band > a.row)
      problems.push({
        path: ['duties', i, 'application', 'band'],
        code: 'contradiction',
        message: `duty '${d.id}' has bands wider than its rows are apart`,
      });
    if (a !== undefined && ((a.slowest ?? 0) > a.speed || (a.fastest ?? Infinity) < a.speed))
      problems.push({
        path: ['duties', i, 'application', 'speed'],
        code: 'contradiction',
        message: `duty '${d.id}' has a speed that is not between its slowest and fastest`,
      });
  });
  for (const of of ['day', 'transfer'] as const) {
    const named = brief[of]?.duty;
    if (named !== undefined && !brief.duties.some((d) => d.id === named))
      problems.push({
        path: [of, 'duty'],
        code: 'unknown-reference',
        message: `duty '${named}' is not one of the brief's duties: ${brief.duties.map((d) => d.id).join(', ')}`,
      });
  }
  brief.liquids.forEach((l, i) => {
    if ((l.strength === undefined) !== (l.strengthUnit === undefined))
      problems.push({
        path: ['liquids', i, l.strength === undefined ? 'strength' : 'strengthUnit'],
        code: 'missing',
        message: `strength and strengthUnit go together: '${l.id}' has only one of them`,
      });
  });
  return problems;
}
