import {
  flag,
  integer,
  list,
  number,
  object,
  oneOf,
  optional,
  quantity,
  tagged,
  withDefault,
  type Infer,
  type Shape,
} from '../quantity/index.ts';
import { PROPORTIONER_CONVENTIONS } from '../liquids/index.ts';
import { STREAM_QUALITIES } from '../physics/index.ts';
import { battery, carrier, engine, hardware, ptoDrive, reduction } from './machine-parts.ts';
import { bore, everyPart, flow, flowAtOneBar, length, pressure, speed } from './part-figures.ts';

const tank = object({
  ...everyPart,
  volume: quantity('volume', { above: '0 l', max: '20000 l' }),
  /** Inside shape; volume, level, centroid and free surface follow from it. */
  shape: tagged('form', {
    'lying-round': object({
      diameter: length(),
      length: length(),
      ends: oneOf('flat', 'dished', 'hemispherical'),
    }),
    'lying-elliptical': object({ width: length(), height: length(), length: length() }),
    box: object({ length: length(), width: length(), height: length() }),
    'upright-round': object({ diameter: length(), height: length(), coneHeight: withDefault(length(), 0) }),
  }),
  /** Heaviest liquid the tank is rated for, as specific gravity. */
  ratedSpecificGravity: number({ min: 0.8, max: 2.5 }),
  outlet: oneOf('flush', 'projecting'),
  vented: flag(),
});

const pump = object({
  ...everyPart,
  maxPressure: pressure(),
  maxSpeed: speed(),
  minSpeed: withDefault(speed(), 0),
  /** Net positive suction head the pump asks at its rated flow. */
  npshRequired: quantity('length', { min: '0 m', max: '20 m' }),
  law: tagged('action', {
    displacement: object({
      mechanism: oneOf('diaphragm', 'piston', 'roller', 'gear'),
      displacement: quantity('displacement', { above: '0 cm3/rev', max: '5000 cm3/rev' }),
      /** Share of the displaced flow that slips back at the rated pressure, with water. */
      slipAtMaxPressure: quantity('ratio', { above: '0', max: '60 %' }),
      efficiency: quantity('ratio', { above: '0', max: '98 %' }),
    }),
    centrifugal: object({
      ratedSpeed: speed(),
      curve: list(object({ flow: flow(), head: quantity('length', { min: '0 m', max: '500 m' }) }), {
        min: 3,
        max: 20,
      }),
      efficiency: quantity('ratio', { above: '0', max: '95 %' }),
    }),
  }),
});

const motorPump = object({
  ...everyPart,
  voltage: quantity('voltage', { min: '6 V', max: '48 V' }),
  maxPressure: pressure(),
  npshRequired: quantity('length', { min: '0 m', max: '20 m' }),
  /** Flow falls and current rises with pressure, at the stated voltage. */
  curve: list(
    object({
      pressure: pressure(),
      flow: flow(),
      current: quantity('current', { min: '0 A', max: '300 A' }),
    }),
    { min: 2, max: 20 },
  ),
  switchOff: pressure(),
  switchOn: pressure(),
});

const strainer = object({
  ...everyPart,
  flowAtOneBar: flowAtOneBar(),
  mesh: integer({ min: 4, max: 400 }),
  /** How many times the clean loss the strainer takes when it must be cleaned. */
  dirtyFactor: number({ min: 1, max: 50 }),
  maxPressure: pressure(),
});

const valve = object({
  ...everyPart,
  form: oneOf('ball-full-port', 'ball-standard-port', 'three-way', 'swing-check', 'lift-check', 'solenoid'),
  /** The ball has a hole that lets gas out when it is shut. */
  ventedBall: optional(flag()),
  bore: bore(),
  /** Given where the maker states it; otherwise the form and bore decide the loss. */
  flowAtOneBar: optional(flowAtOneBar()),
  maxPressure: pressure(),
});

const regulator = object({
  ...everyPart,
  action: oneOf('unloader', 'relief', 'bypass', 'reducing'),
  setMin: pressure(),
  setMax: pressure(),
  /** How far the held pressure rises from crack-open to the rated flow. */
  overridePressure: quantity('pressure', { above: '0 psi', max: '100 bar' }),
  ratedFlow: flow(),
  /** Flow at one bar with the valve wide open: its capacity. */
  flowAtOneBar: flowAtOneBar(),
  /** Pressure peak when the trigger is slammed shut, over the set pressure. */
  shutPeak: quantity('ratio', { min: '0 %', max: '100 %' }),
  maxPressure: pressure(),
});

/** Hose is bought by the foot; cost, price and mass are for one foot. */
const hose = object({
  ...everyPart,
  use: oneOf('suction', 'delivery', 'either'),
  bore: bore(),
  outsideDiameter: bore(),
  roughness: quantity('length', { min: '0 mm', max: '1 mm' }),
  maxPressure: pressure(),
  /** Vacuum the hose stands without collapsing, as a gauge pressure below zero; 0 for delivery hose. */
  minPressure: quantity('pressure', { min: '-1 bar', max: '0 bar' }),
  bendRadius: length(),
  longestPiece: quantity('length', { above: '0 ft', max: '1000 ft' }),
});

const reel = object({
  ...everyPart,
  hubDiameter: bore(),
  flangeDiameter: quantity('length', { min: '50 mm', max: '3 m' }),
  drumWidth: quantity('length', { min: '20 mm', max: '3 m' }),
  bore: bore(),
  flowAtOneBar: flowAtOneBar(),
  maxPressure: pressure(),
  rewind: oneOf('hand', 'electric'),
  rewindCurrent: withDefault(quantity('current', { min: '0 A', max: '200 A' }), 0),
});

const gun = object({
  ...everyPart,
  flowAtOneBar: flowAtOneBar(),
  maxPressure: pressure(),
  maxFlow: flow(),
  /** Best stream the gun's passage lets a tip make. */
  bestStream: oneOf(...STREAM_QUALITIES),
});

const tip = object({
  ...everyPart,
  pattern: oneOf('stream', 'cone', 'fan'),
  /** Full spray angle of a cone or fan. */
  angle: withDefault(quantity('angle', { min: '0 deg', max: '160 deg' }), 0),
  flowAtOneBar: flowAtOneBar(),
  velocityCoefficient: number({ above: 0.4, max: 1 }),
  stream: oneOf(...STREAM_QUALITIES),
  minPressure: pressure(),
  maxPressure: pressure(),
});

const DROPLET_CLASSES = [
  'extremely-fine',
  'very-fine',
  'fine',
  'medium',
  'coarse',
  'very-coarse',
  'extremely-coarse',
  'ultra-coarse',
] as const;

/** A boom or bar nozzle: many of them share one line. */
const nozzle = object({
  ...everyPart,
  pattern: oneOf('flat-fan', 'hollow-cone', 'solid-stream', 'flood', 'boomless'),
  angle: quantity('angle', { min: '0 deg', max: '180 deg' }),
  flowAtOneBar: flowAtOneBar(),
  minPressure: pressure(),
  maxPressure: pressure(),
  /** Width wetted by one boomless nozzle at its middle pressure. */
  wettedWidth: optional(quantity('length', { min: '0 m', max: '40 m' })),
  /** Droplet class of the tip at a pressure (ASABE S572, ISO 25358), as its test data says. */
  droplets: list(object({ pressure: pressure(), class: oneOf(...DROPLET_CLASSES) }), { max: 12 }),
});

const boom = object({
  ...everyPart,
  width: length(),
  spacing: quantity('length', { min: '5 cm', max: '3 m' }),
  sections: integer({ min: 1, max: 15 }),
  nozzles: integer({ min: 1, max: 200 }),
  bore: bore(),
  maxPressure: pressure(),
});

const agitator = object({
  ...everyPart,
  type: oneOf('jet', 'sparger'),
  flowAtOneBar: flowAtOneBar(),
  /** Tank flow moved per unit of jet flow. */
  amplification: number({ min: 1, max: 10 }),
  maxPressure: pressure(),
});

const eductor = object({
  ...everyPart,
  /** Motive side: flow at one bar across the eductor. */
  flowAtOneBar: flowAtOneBar(),
  /** Suction flow against motive pressure, with the suction at the same level. */
  suction: list(object({ motivePressure: pressure(), flow: flow() }), { min: 2, max: 12 }),
  /** A proportioner's settings, each the N of its 1:N, and what its maker means with 1:N. */
  dial: optional(
    object({
      settings: list(number({ min: 1, max: 10_000 }), { min: 1, max: 24 }),
      means: oneOf(...PROPORTIONER_CONVENTIONS),
    }),
  ),
  maxPressure: pressure(),
});

const fitting = object({
  ...everyPart,
  form: oneOf(
    'straight',
    'elbow',
    'tee',
    'reducer',
    'bulkhead',
    'cam-lock',
    'quick-coupling',
    'swivel',
    'barb',
    'manifold',
    'cap',
  ),
  bore: bore(),
  maxPressure: pressure(),
});

const gauge = object({
  ...everyPart,
  range: pressure(),
  dial: length(),
  maxPressure: pressure(),
});

export const PART_SHAPES = {
  tank,
  pump,
  engine,
  reduction,
  'pto-drive': ptoDrive,
  'motor-pump': motorPump,
  strainer,
  valve,
  regulator,
  hose,
  reel,
  gun,
  tip,
  nozzle,
  boom,
  agitator,
  eductor,
  fitting,
  carrier,
  battery,
  gauge,
  hardware,
} as const;

export type Kind = keyof typeof PART_SHAPES;
type PartFields = { [K in Kind]: (typeof PART_SHAPES)[K] extends Shape<infer T> ? T : never };
export type Part = { [K in Kind]: { readonly kind: K } & PartFields[K] }[Kind];
/** One kind of part: `PartOf<'pump'>`. */
export type PartOf<K extends Kind> = Extract<Part, { readonly kind: K }>;
export type DropletClass = (typeof DROPLET_CLASSES)[number];
export type TankShape = Infer<typeof tank>['shape'];
export const KINDS = Object.keys(PART_SHAPES) as Kind[];
