import type { Dimension } from './dimension.ts';

/** One unit of a style, used below a size; the last one is used for everything larger. */
export interface Step {
  readonly unit: string;
  /** What is printed for the unit, where it is not the unit's own symbol. */
  readonly label?: string;
  /** The figure below which this unit is used. */
  readonly below?: number;
  /** Figures below `fine[0]` get one decimal, below `fine[1]` two, and so on; Infinity is always. */
  readonly fine?: readonly number[];
  /** This many significant digits instead. */
  readonly significant?: number;
}

export interface Style {
  readonly us: readonly Step[];
  readonly metric: readonly Step[];
}

export type DisplayPurpose =
  | 'bore'
  | 'thickness'
  | 'droplet'
  | 'section'
  | 'liquid-speed'
  | 'wind'
  | 'turf-dose'
  | 'head'
  | 'capacity'
  | 'way'
  | 'lane-salt'
  | 'section-modulus';

const both = (...steps: Step[]): Style => ({ us: steps, metric: steps });

/** How values are rounded and in which unit they are read. Common practice of the trade, no source. */
export const STYLES: Readonly<Record<Dimension | DisplayPurpose, Style>> = {
  length: {
    us: [
      { unit: 'in', below: 0.1, significant: 2 },
      { unit: 'in', below: 12, fine: [Infinity, 1] },
      { unit: 'ft', fine: [100] },
    ],
    metric: [
      { unit: 'µm', below: 100, significant: 2 },
      { unit: 'mm', below: 1000, fine: [100, 1] },
      { unit: 'm', fine: [100, 10] },
    ],
  },
  way: {
    us: [
      { unit: 'ft', below: 2640 },
      { unit: 'mi', fine: [100] },
    ],
    metric: [
      { unit: 'm', below: 1000 },
      { unit: 'km', fine: [100] },
    ],
  },
  'section-modulus': { us: [{ unit: 'in3', significant: 3 }], metric: [{ unit: 'cm3', significant: 3 }] },
  'lane-salt': { us: [{ unit: 'lb/mi', fine: [10] }], metric: [{ unit: 'kg/km', fine: [10] }] },
  head: { us: [{ unit: 'ft', fine: [100] }], metric: [{ unit: 'm', fine: [100, 10] }] },
  bore: {
    us: [{ unit: 'in', fine: [Infinity, Infinity, Infinity] }],
    metric: [{ unit: 'mm', fine: [Infinity] }],
  },
  thickness: {
    us: [{ unit: 'in', fine: [Infinity, Infinity, Infinity] }],
    metric: [{ unit: 'mm', fine: [Infinity, 10] }],
  },
  droplet: both({ unit: 'µm' }),
  area: {
    us: [
      { unit: 'in2', below: 144, significant: 3 },
      { unit: 'ft2', below: 43560, fine: [100] },
      { unit: 'acre', fine: [100, 10] },
    ],
    metric: [
      { unit: 'mm2', below: 10000, significant: 3 },
      { unit: 'm2', below: 10000, fine: [100, 10] },
      { unit: 'ha', fine: [100, 10] },
    ],
  },
  section: { us: [{ unit: 'in2', significant: 3 }], metric: [{ unit: 'mm2', significant: 3 }] },
  volume: {
    us: [
      { unit: 'fl oz', below: 32, fine: [10] },
      { unit: 'gal', fine: [10] },
    ],
    metric: [
      { unit: 'mL', below: 1000, fine: [10] },
      { unit: 'L', fine: [10] },
    ],
  },
  capacity: { us: [{ unit: 'gal' }], metric: [{ unit: 'L' }] },
  secondMoment: { us: [{ unit: 'in4', significant: 3 }], metric: [{ unit: 'cm4', significant: 3 }] },
  time: both(
    { unit: 's', below: 60, fine: [10] },
    { unit: 'min', below: 60, fine: [10] },
    { unit: 'h', below: 48, fine: [Infinity] },
    { unit: 'day', label: 'days', fine: [10] },
  ),
  mass: {
    us: [
      { unit: 'oz', below: 16, fine: [10] },
      { unit: 'lb', fine: [10] },
    ],
    metric: [
      { unit: 'g', below: 1000, fine: [10] },
      { unit: 'kg', fine: [10] },
    ],
  },
  force: {
    us: [{ unit: 'lbf', fine: [10] }],
    metric: [
      { unit: 'N', below: 10000, fine: [10] },
      { unit: 'kN', fine: [Infinity] },
    ],
  },
  pressure: { us: [{ unit: 'psi', fine: [10] }], metric: [{ unit: 'bar', fine: [100, 1] }] },
  absolutePressure: {
    us: [{ unit: 'psi', label: 'psia', fine: [100] }],
    metric: [{ unit: 'bar', label: 'bar abs', fine: [100, 10] }],
  },
  stress: {
    us: [
      { unit: 'psi', below: 1000 },
      { unit: 'ksi', fine: [Infinity] },
    ],
    metric: [{ unit: 'MPa', fine: [10] }],
  },
  flow: { us: [{ unit: 'gpm', fine: [100, 1] }], metric: [{ unit: 'L/min', fine: [100, 1] }] },
  massFlow: { us: [{ unit: 'lb/min', fine: [100] }], metric: [{ unit: 'kg/min', fine: [100] }] },
  speed: { us: [{ unit: 'mph', fine: [100] }], metric: [{ unit: 'km/h', fine: [100] }] },
  'liquid-speed': { us: [{ unit: 'ft/s', fine: [100] }], metric: [{ unit: 'm/s', fine: [100] }] },
  wind: { us: [{ unit: 'mph', fine: [10] }], metric: [{ unit: 'm/s', fine: [10] }] },
  acceleration: { us: [{ unit: 'ft/s2', fine: [100] }], metric: [{ unit: 'm/s2', fine: [100, 10] }] },
  rotation: both({ unit: 'rpm' }),
  rate: both({ unit: '/min', label: 'per min', significant: 2 }),
  power: { us: [{ unit: 'hp', fine: [100, 1] }], metric: [{ unit: 'kW', fine: [100, 1] }] },
  energy: both({ unit: 'Wh', below: 1000, fine: [10] }, { unit: 'kWh', fine: [100] }),
  torque: { us: [{ unit: 'lbf.ft', fine: [10] }], metric: [{ unit: 'N.m', fine: [10] }] },
  temperature: { us: [{ unit: '°F' }], metric: [{ unit: '°C' }] },
  temperatureDifference: { us: [{ unit: '°F', fine: [10] }], metric: [{ unit: '°C', fine: [10] }] },
  density: { us: [{ unit: 'lb/gal', fine: [Infinity, 100] }], metric: [{ unit: 'kg/m3' }] },
  viscosity: both({ unit: 'cP', significant: 3 }),
  kinematicViscosity: both({ unit: 'cSt', significant: 3 }),
  surfaceTension: both({ unit: 'mN/m', fine: [Infinity] }),
  angle: both({ unit: 'deg', label: '°', fine: [10] }),
  current: both({ unit: 'mA', below: 100 }, { unit: 'A', fine: [100] }),
  voltage: both({ unit: 'V', fine: [100, 1] }),
  charge: both({ unit: 'Ah', fine: [10] }),
  resistance: both({ unit: 'mΩ', below: 1000, significant: 3 }, { unit: 'Ω', significant: 3 }),
  resistancePerLength: {
    us: [{ unit: 'ohm/1000 ft', significant: 3 }],
    metric: [{ unit: 'ohm/km', significant: 3 }],
  },
  massPerLength: { us: [{ unit: 'lb/ft', fine: [100, 10] }], metric: [{ unit: 'kg/m', fine: [100, 10] }] },
  massPerArea: { us: [{ unit: 'lb/acre', fine: [100] }], metric: [{ unit: 'kg/ha', fine: [100] }] },
  forcePerLength: { us: [{ unit: 'lbf/in' }], metric: [{ unit: 'N/mm' }] },
  pressurePerLength: {
    us: [{ unit: 'psi/100 ft', fine: [100] }],
    metric: [{ unit: 'bar/100 m', fine: [100, 10] }],
  },
  volumePerLength: { us: [{ unit: 'gal/mi', fine: [10] }], metric: [{ unit: 'L/km', fine: [10] }] },
  inertia: { us: [{ unit: 'lb.ft2', significant: 3 }], metric: [{ unit: 'kg.m2', significant: 3 }] },
  ratio: both({ unit: '%', fine: [10, 1] }),
  displacement: {
    us: [{ unit: 'in3/rev', fine: [Infinity, 10] }],
    metric: [{ unit: 'cm3/rev', fine: [100] }],
  },
  dose: { us: [{ unit: 'gal/acre', fine: [100] }], metric: [{ unit: 'L/ha', fine: [10] }] },
  'turf-dose': {
    us: [{ unit: 'gal/1000 ft2', fine: [100, 10] }],
    metric: [{ unit: 'L/100 m2', fine: [100] }],
  },
  areaRate: { us: [{ unit: 'acre/h', fine: [100] }], metric: [{ unit: 'ha/h', fine: [100, 10] }] },
  specificFuel: { us: [{ unit: 'lb/hp.h', fine: [Infinity, 10] }], metric: [{ unit: 'g/kWh' }] },
};
