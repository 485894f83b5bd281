import {
  flag,
  integer,
  list,
  number,
  object,
  oneOf,
  optional,
  quantity,
  text,
  withDefault,
} from '../quantity/index.ts';
import { AREA_BASES, DROPLET_CLASSES, PASS_MANNERS, PATTERN_SHAPES, WIND_RULES } from '../physics/index.ts';

const length = (max: string) => quantity('length', { min: '0 ft', max });
const groundSpeed = () => quantity('speed', { above: '0 mph', max: '60 mph' });

/** Rate over ground; with speed and width it asks a flow. */
const applicationShape = object({
  rate: quantity('dose', { above: '0 gal/acre', max: '5 gal/yd2' }),
  speed: groundSpeed(),
  width: quantity('length', { above: '0 ft', max: '120 ft' }),
  /** The area the rate is told for: the treated bands, as labels do, or the whole field with its untreated strips. */
  basis: withDefault(oneOf(...AREA_BASES), 'treated'),
  /** Treated in bands only: width of a band and spacing of the rows. */
  band: optional(quantity('length', { min: '1 in', max: '60 ft' })),
  row: optional(quantity('length', { min: '1 in', max: '60 ft' })),
  /** Speeds between which the rate must hold. */
  slowest: optional(groundSpeed()),
  fastest: optional(groundSpeed()),
});

/** Crowns that are wetted one by one, or as rows. */
const treesShape = object({
  crownHeight: quantity('length', { above: '0 ft', max: '120 ft' }),
  crownWidth: quantity('length', { above: '0 ft', max: '90 ft' }),
  shape: withDefault(oneOf('ellipsoid', 'cone', 'cylinder'), 'ellipsoid'),
  canopy: withDefault(oneOf('pruned', 'dense'), 'dense'),
  /** How long the trigger is open at one tree. */
  time: optional(quantity('time', { above: '0 s', max: '2 h' })),
  /** Spacing of the rows of an orchard or nursery; with it the rate follows from the volume of the rows. */
  rowSpacing: optional(quantity('length', { min: '1 ft', max: '150 ft' })),
});

/** A road treated at a rate of dry salt by length of lane, as road agencies state it. */
const laneShape = object({
  drySalt: quantity('massPerLength', { above: '0 kg/m', max: '10 kg/m' }),
  lanes: withDefault(integer({ min: 1, max: 4 }), 1),
  /** Width of one lane: 10, 11 and 12 ft are all in use. */
  width: optional(quantity('length', { min: '2 ft', max: '20 ft' })),
  speed: groundSpeed(),
});

/** Pots or plants that get a measured gulp each from a hand-timed trigger. */
const drenchShape = object({
  dose: quantity('volume', { above: '0.1 fl oz', max: '50 gal' }),
  /** Part by which a gulp may be off. */
  within: withDefault(quantity('ratio', { min: '1 %', max: '100 %' }), 0.1),
});

/** What cups caught in a row across one pass, left to right, in any one unit: the pattern of a boomless nozzle or a gun. */
const cupsShape = object({
  pitch: quantity('length', { min: '1 cm', max: '5 m' }),
  catches: list(number({ min: 0, max: 1e6 }), { min: 3, max: 200 }),
  manner: withDefault(oneOf(...PASS_MANNERS), 'there-and-back'),
});

/** What a spray must be besides enough: fields of a duty. */
export const patternFields = {
  application: optional(applicationShape),
  trees: optional(treesShape),
  lane: optional(laneShape),
  drench: optional(drenchShape),
  /** No droplets finer than this class. */
  droplets: optional(oneOf(...DROPLET_CLASSES)),
  /** Boom or bar above what it sprays. */
  boomHeight: optional(quantity('length', { min: '4 in', max: '10 ft' })),
  /** How one nozzle spreads across its fan, from its test report. */
  patternShape: optional(oneOf(...PATTERN_SHAPES)),
  /** Instead of a shape: one pass as it was measured. */
  cups: optional(cupsShape),
};

/** What the neighbourhood and the weather ask: fields of the site. */
export const sprayingFields = {
  /** Height at which the wind was measured, and the rule it is held against. */
  windHeight: optional(quantity('length', { min: '0.5 m', max: '100 m' })),
  windRule: withDefault(oneOf(...WIND_RULES.map((r) => r.id)), 'victoria'),
  /** Downwind to the nearest water, garden or beehive, and the share of the rate that may fall there. */
  neighbour: optional(quantity('length', { min: '0 ft', max: '2000 ft' })),
  driftAllowed: withDefault(quantity('ratio', { above: '0 %', max: '100 %' }), 0.01),
  /** Lowest temperature the rig is stored at. */
  coldest: optional(quantity('temperature', { min: '-60 F', max: '100 F' })),
};

/** Age of bleach on the day it is used. */
export const storeShape = object({
  days: number({ min: 0, max: 730 }),
  temperature: quantity('temperature', { min: '-40 F', max: '131 F' }),
  /** Trade % when delivered, where the brief's strength is that of a wash made from it. */
  delivered: optional(number({ min: 5, max: 21 })),
  /** Trade % that the work needs. */
  least: optional(number({ min: 0.1, max: 21 })),
});

/** How the rig is rinsed and put away for the winter. */
export const rinseShape = object({
  /** Clean water that rides along. */
  water: optional(quantity('volume', { min: '0 gal', max: '2000 gal' })),
  /** Rinsed on the job from the water aboard, or at the yard where there is water. */
  where: withDefault(oneOf('job', 'yard'), 'job'),
  /** How far the last mix must be thinned, and in how many rinses. */
  dilution: optional(number({ min: 2, max: 100_000 })),
  rinses: withDefault(integer({ min: 1, max: 12 }), 3),
  /** Antifreeze put in for the winter. */
  antifreeze: optional(quantity('volume', { above: '0 gal', max: '500 gal' })),
});

/** Where the water comes from and what keeps the mix out of it. */
export const fillShape = object({
  from: oneOf('mains', 'tank', 'open-water'),
  flow: optional(quantity('flow', { above: '0 gpm', max: '2000 gpm' })),
  protection: optional(oneOf('air-gap', 'reduced-pressure-assembly', 'none')),
  bore: optional(quantity('length', { min: '1/4 in', max: '6 in' })),
});

/** Filling another sprayer from this rig, and taking product in through the hopper. */
export const transferShape = object({
  duty: text({ min: 1, max: 40 }),
  volume: quantity('volume', { above: '0 gal', max: '4000 gal' }),
  within: quantity('time', { above: '0 s', max: '12 h' }),
});
export const hopperShape = object({
  /** Liquid product for one load, in how many containers. */
  product: quantity('volume', { above: '0 gal', max: '500 gal' }),
  containers: withDefault(integer({ min: 1, max: 200 }), 1),
  within: quantity('time', { above: '0 s', max: '12 h' }),
});

/** The day's work; what is left out is a start value of the kind of work. */
export const dayShape = object({
  /** The duty that fills the day; the first when it is not said. */
  duty: optional(text({ min: 1, max: 40 })),
  length: optional(quantity('time', { above: '0 h', max: '24 h' })),
  /** What is counted: a tree, a roof, a bed; the mix it takes and the ground it stands for. */
  unit: optional(text({ min: 1, max: 30 })),
  unitVolume: optional(quantity('volume', { above: '0.1 fl oz', max: '4000 gal' })),
  unitArea: optional(quantity('area', { min: '0.1 m2', max: '100 ha' })),
  /** Asked for the day: so many units, or so much ground. */
  units: optional(number({ above: 0, max: 1_000_000 })),
  area: optional(quantity('area', { above: '0 m2', max: '5000 ha' })),
  /** Way to the water and back to the work, and what a load takes besides. */
  fillDistance: optional(length('50 mi')),
  roadSpeed: optional(groundSpeed()),
  connectTime: optional(quantity('time', { min: '0 s', max: '8 h' })),
  mixTime: optional(quantity('time', { min: '0 s', max: '8 h' })),
  pauseTime: optional(quantity('time', { min: '0 s', max: '8 h' })),
  stopTime: optional(quantity('time', { min: '0 s', max: '8 h' })),
  preparation: optional(quantity('time', { min: '0 s', max: '8 h' })),
  closing: optional(quantity('time', { min: '0 s', max: '8 h' })),
  startsFull: optional(flag()),
});
