import {
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
} from '../quantity/index.ts';
import { bore, everyPart, length, power, pressure, speed } from './part-figures.ts';

// What drives, carries, feeds with current and holds a rig: parts that the liquid does not flow through.

export const engine = object({
  ...everyPart,
  power: power(),
  ratedSpeed: speed(),
  minSpeed: speed(),
  fuel: oneOf('petrol', 'diesel'),
  /** What the label says: SAE J1349 net or SAE J1995 gross. */
  label: oneOf('net', 'gross'),
  start: oneOf('recoil', 'electric'),
  chargingCurrent: withDefault(quantity('current', { min: '0 A', max: '100 A' }), 0),
  startingCurrent: withDefault(quantity('current', { min: '0 A', max: '800 A' }), 0),
  fuelTank: quantity('volume', { min: '0 l', max: '200 l' }),
});

/** Belt, gear or direct coupling between engine and pump. */
export const reduction = object({
  ...everyPart,
  type: oneOf('belt', 'gear', 'direct'),
  /** Pump turns per engine turn. */
  ratio: number({ above: 0, max: 5 }),
  efficiency: quantity('ratio', { above: '50 %', max: '100 %' }),
  maxPower: power(),
});

export const ptoDrive = object({
  ...everyPart,
  /** PTO speed the shaft is made for: 540 or 1000 per minute. */
  ptoSpeed: speed(),
  ratio: number({ above: 0, max: 8 }),
  efficiency: quantity('ratio', { above: '50 %', max: '100 %' }),
  maxPower: power(),
});

const axle = object({
  /** Distance behind the front of the deck. */
  position: quantity('length', { min: '-5 m', max: '15 m' }),
  rating: quantity('mass', { above: '0 kg', max: '20000 kg' }),
  tyreRating: quantity('mass', { above: '0 kg', max: '10000 kg' }),
  tyres: integer({ min: 1, max: 8 }),
  tyreDiameter: length(),
  track: length(),
});

export const carrier = object({
  ...everyPart,
  form: oneOf('skid', 'three-point', 'cart', 'wagon', 'tandem-trailer', 'utility-bed'),
  deckLength: length(),
  deckWidth: length(),
  deckHeight: length(),
  grossRating: quantity('mass', { above: '0 kg', max: '20000 kg' }),
  axles: list(axle, { max: 4 }),
  /** Coupler ahead of the deck (negative position) with its rating; absent on a skid. */
  coupler: optional(
    object({
      position: quantity('length', { min: '-10 m', max: '15 m' }),
      height: length(),
      rating: quantity('mass', { above: '0 kg', max: '20000 kg' }),
    }),
  ),
  /** Jack that holds the tongue when unhitched, by its place behind the front of the deck. */
  jack: optional(
    object({
      position: quantity('length', { min: '-10 m', max: '15 m' }),
      rating: quantity('mass', { above: '0 kg', max: '20000 kg' }),
    }),
  ),
  /** Eyes to lift it by with a sling, and the working load of each. */
  lifting: optional(
    object({
      points: integer({ min: 1, max: 8 }),
      workingLoad: quantity('force', { above: '0 N', max: '500 kN' }),
    }),
  ),
  hitchCategory: optional(oneOf('0', '1', '2', '3')),
  /** Brakes on all its wheels. */
  brakes: optional(oneOf('none', 'surge', 'electric', 'hydraulic')),
  /** Rails under the deck, for the frame estimate. */
  rail: optional(
    object({
      material: oneOf('steel-a36', 'steel-a500b', 'aluminium-6061-t6', 'aluminium-6061-t6-welded'),
      height: length(),
      width: length(),
      wall: length(),
      count: integer({ min: 1, max: 8 }),
      /** Where a three-point frame's rails are held beside the hitch points: foot of the braces behind the front of the deck. */
      braceAt: optional(length()),
    }),
  ),
});

export const battery = object({
  ...everyPart,
  voltage: quantity('voltage', { min: '6 V', max: '48 V' }),
  capacity: quantity('charge', { above: '0 Ah', max: '1000 Ah' }),
  ratedHours: number({ above: 0, max: 100 }),
  peukert: number({ min: 1, max: 1.6 }),
});

/** As the wire and its terminals are sold, AWG; 1/0 is 0, 2/0 is -1, 4/0 is -3. */
const wireGauge = () => integer({ min: -3, max: 40 });

/** Small things that hold, tie, wire and mark a rig. Wire is bought by the foot: cost, price and mass are for one foot. */
export const hardware = object({
  ...everyPart,
  purpose: tagged('form', {
    /** A clamp or crimped ferrule that holds hose of these outside diameters on a barb. */
    'hose-clamp': object({ smallest: bore(), largest: bore(), maxPressure: pressure() }),
    strap: object({ workingLoad: quantity('force', { above: '0 N', max: '200 kN' }) }),
    bolt: object({ thread: text({ min: 3, max: 12 }), grade: text({ min: 1, max: 8 }) }),
    wire: object({ gauge: wireGauge() }),
    terminal: object({ gauge: wireGauge() }),
    fuse: object({ rating: quantity('current', { above: '0 A', max: '1000 A' }) }),
    label: object({}),
  }),
});
