/** What a network document looks like. Every quantity is text with its unit. */
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
  tagged,
  text,
  withDefault,
  type Infer,
} from '../quantity/index.ts';
import { CHECK_FORMS, FITTING_FORMS } from '../physics/index.ts';

const bore = () => quantity('length', { min: '0.1 mm', max: '2 m' });
const elevation = () => quantity('length', { min: '-10000 m', max: '10000 m' });
const flow = () => quantity('flow', { min: '0 l/min', max: '60000 l/min' });
const head = () => quantity('length', { min: '0 m', max: '10000 m' });
const pressure = () => quantity('pressure', { min: '0 bar', max: '1000 bar' });
const lossCoefficient = () => number({ min: 0, max: 1e6 });
/** Water of 1000 kg/m3 that passes at a pressure difference of one bar. */
const flowAtOneBar = () => quantity('flow', { min: '0.0001 l/min', max: '20000 l/min' });
const relativeSpeed = () => withDefault(quantity('ratio', { min: '0 %', max: '1000 %' }), 1);
/** A proportion of a flow to a pressure, given by one pair. */
const flowPerPressure = () =>
  object({
    flow: quantity('flow', { above: '0 l/min', max: '60000 l/min' }),
    pressure: quantity('pressure', { above: '0 bar', max: '10000 bar' }),
  });
const headCurve = () => list(object({ flow: flow(), head: head() }), { min: 2, max: 200 });
const pressureCurve = () => list(object({ flow: flow(), pressure: pressure() }), { min: 2, max: 200 });

const everyElement = {
  id: identifier(),
  from: identifier(),
  to: identifier(),
  /** Not open is a shut valve: it passes nothing. */
  open: withDefault(flag(), true),
  /** So many equal ones side by side. */
  count: withDefault(integer({ min: 1, max: 1_000_000 }), 1),
};

const regulator = object({
  ...everyElement,
  setPressure: quantity('pressure', { min: '-1 bar', max: '1000 bar' }),
  /** How far the held pressure rises over how much flow. */
  gradient: optional(flowPerPressure()),
  flowAtOneBar: flowAtOneBar(),
  reference: withDefault(oneOf('atmosphere', 'outlet'), 'atmosphere'),
});

const orifice = object({ ...everyElement, flowAtOneBar: flowAtOneBar() });

const elementShape = tagged('kind', {
  pipe: object({
    ...everyElement,
    length: quantity('length', { min: '0 m', max: '100 km' }),
    bore: bore(),
    roughness: quantity('length', { min: '0 mm', max: '20 mm' }),
    lossCoefficient: withDefault(lossCoefficient(), 0),
    /** Across the turns on a drum, centre to centre of the hose. */
    coilDiameter: optional(quantity('length', { above: '0 m', max: '100 m' })),
  }),
  fitting: object({
    ...everyElement,
    bore: bore(),
    /** What it is, or the loss that was measured. */
    form: optional(oneOf(...FITTING_FORMS)),
    lossCoefficient: optional(lossCoefficient()),
    laminarCoefficient: withDefault(number({ min: 0, max: 1e6 }), 0),
  }),
  'flow-factor': orifice,
  orifice,
  'jet-agitator': orifice,
  sparger: object({
    ...everyElement,
    /** Of one of its holes. */
    flowAtOneBar: flowAtOneBar(),
    orifices: integer({ min: 1, max: 100_000 }),
  }),
  strainer: object({
    ...everyElement,
    /** Clean. */
    flowAtOneBar: flowAtOneBar(),
    /** Share of its openings that dirt has blocked. */
    blinded: withDefault(quantity('ratio', { min: '0 %', max: '90 %' }), 0),
  }),
  'check-valve': object({
    ...everyElement,
    bore: bore(),
    form: optional(oneOf(...CHECK_FORMS)),
    lossCoefficient: optional(lossCoefficient()),
    crackingPressure: withDefault(pressure(), 0),
  }),
  'positive-displacement-pump': object({
    ...everyElement,
    displacement: quantity('displacement', { above: '0 cm3/rev', max: '100000 cm3/rev' }),
    speed: quantity('rotation', { min: '0 rpm', max: '20000 rpm' }),
    /** What leaks back at which pressure rise, with a liquid of the reference viscosity. */
    slip: flowPerPressure(),
    viscosityExponent: withDefault(number({ min: 0, max: 1.5 }), 0),
    referenceViscosity: withDefault(quantity('viscosity', { min: '0.001 cP', max: '1000000 cP' }), 1e-3),
    constantSlip: withDefault(quantity('ratio', { min: '0 %', max: '99 %' }), 0),
    ratedPressure: optional(quantity('pressure', { above: '0 bar', max: '1000 bar' })),
  }),
  'centrifugal-pump': object({
    ...everyElement,
    curve: optional(headCurve()),
    /** Instead of a curve: head falls from shut-off as a power of the flow, through one point. */
    powerCurve: optional(
      object({
        shutOffHead: quantity('length', { above: '0 m', max: '10000 m' }),
        point: object({ flow: quantity('flow', { above: '0 l/min', max: '60000 l/min' }), head: head() }),
        exponent: withDefault(number({ min: 0.5, max: 8 }), 2),
      }),
    ),
    interpolation: withDefault(oneOf('linear', 'smooth'), 'linear'),
    drooping: withDefault(oneOf('refuse', 'level'), 'refuse'),
    speed: relativeSpeed(),
    viscosityLimit: optional(quantity('kinematicViscosity', { above: '0 cSt', max: '1000000 cSt' })),
    ratedPressure: optional(quantity('pressure', { above: '0 bar', max: '1000 bar' })),
  }),
  'demand-pump': object({
    ...everyElement,
    curve: pressureCurve(),
    switchOff: pressure(),
    switchOn: pressure(),
    speed: relativeSpeed(),
  }),
  curve: object({ ...everyElement, curve: headCurve(), oneWay: withDefault(flag(), false) }),
  'back-pressure-regulator': regulator,
  unloader: regulator,
  'relief-valve': regulator,
  'reducing-regulator': object({
    ...everyElement,
    setPressure: quantity('pressure', { min: '-1 bar', max: '1000 bar' }),
    gradient: optional(flowPerPressure()),
    flowAtOneBar: flowAtOneBar(),
  }),
  eductor: object({
    ...everyElement,
    curve: pressureCurve(),
    suction: optional(pressureCurve()),
  }),
});

const nodeShape = object({
  id: identifier(),
  elevation: elevation(),
  surface: optional(elevation()),
  atmosphere: withDefault(flag(), false),
});

export const networkShape = object({
  format: oneOf('spraywright-network'),
  title: optional(text({ min: 2, max: 120 })),
  liquid: object({
    density: quantity('density', { min: '100 kg/m3', max: '20000 kg/m3' }),
    viscosity: quantity('viscosity', { min: '0.001 cP', max: '1000000 cP' }),
    /** A thickened mix: shear stress = consistency * (shear rate)^index. */
    powerLaw: optional(
      object({
        /** [Pa.s^index]: a plain number, since its unit changes with the index. */
        consistency: number({ min: 1e-6, max: 1e4 }),
        index: number({ min: 0.2, max: 1.8 }),
        shearRateMin: optional(quantity('rate', { min: '0.000001 /s', max: '1000000 /s' })),
        shearRateMax: optional(quantity('rate', { min: '0.000001 /s', max: '1000000000 /s' })),
      }),
    ),
  }),
  friction: withDefault(oneOf('colebrook', 'swamee-jain'), 'colebrook'),
  nodes: list(nodeShape, { min: 2, max: 5000 }),
  elements: list(elementShape, { min: 1, max: 5000 }),
});

export type NetworkDocument = Infer<typeof networkShape>;
export type ElementDocument = NetworkDocument['elements'][number];
