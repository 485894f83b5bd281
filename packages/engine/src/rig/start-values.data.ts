import type { Work } from '../catalogue/index.ts';
import type { DropletClass, PatternShape } from '../physics/index.ts';

/** A figure that stands in for what the brief leaves out, and where it comes from. */
export interface StartValue<T> {
  readonly value: T;
  readonly source: string;
}

const PRACTICE = 'start value: common practice, no source';
const value = <T>(of: T, source = PRACTICE): StartValue<T> => ({ value: of, source });

const GALLON = 231 * 0.0254 ** 3;
const FOOT = 0.3048;
const ACRE = 43560 * FOOT ** 2;
const THOUSAND_SQUARE_FEET = 1000 * FOOT ** 2;
const GALLON_PER_MINUTE = GALLON / 60;
const MINUTE = 60;

/** What a day of one kind of work is made of, where the brief does not say; every figure may be replaced by its own. */
export interface WorkStart {
  readonly unit: StartValue<string>;
  readonly unitVolume: StartValue<number>;
  readonly unitArea: StartValue<number>;
  readonly fillFlow: StartValue<number>;
  readonly connectTime: StartValue<number>;
  readonly mixTime: StartValue<number>;
  /** Walking, aiming or turning for each unit. */
  readonly pauseTime: StartValue<number>;
  /** Parking and making ready at each place. */
  readonly stopTime: StartValue<number>;
  readonly droplets: StartValue<DropletClass>;
}

const mains = value(10 * GALLON_PER_MINUTE);
const hydrant = value(100 * GALLON_PER_MINUTE);
const table8 = 'start value: ranges by kind of work, class from memory';
const spots = {
  unit: value('bed of 1000 sq ft'),
  unitVolume: value(2 * GALLON, 'start value: 1 to 5 gal/1000 ft2 for lawns and beds (extension guidance)'),
  unitArea: value(THOUSAND_SQUARE_FEET),
  fillFlow: mains,
  connectTime: value(3 * MINUTE),
  mixTime: value(5 * MINUTE),
  pauseTime: value(1 * MINUTE),
  stopTime: value(2 * MINUTE),
  droplets: value<DropletClass>('coarse', table8),
};

export const WORK_STARTS: Readonly<Record<Work, WorkStart>> = {
  'roof-wash': {
    unit: value('roof'),
    unitVolume: value(60 * GALLON),
    unitArea: value(2000 * FOOT ** 2),
    fillFlow: mains,
    connectTime: value(5 * MINUTE),
    mixTime: value(5 * MINUTE),
    pauseTime: value(25 * MINUTE, 'start value: 15 to 20 min of dwell (from memory) and the wetting of plants'),
    stopTime: value(15 * MINUTE),
    droplets: value<DropletClass>('very-coarse', table8),
  },
  'tractor-spot-and-boom': {
    ...spots,
    unit: value('acre'),
    unitVolume: value(15 * GALLON, 'start value: 10 to 20 gal/acre for pasture booms (extension guidance)'),
    unitArea: value(ACRE),
    pauseTime: value(1 * MINUTE),
    droplets: value<DropletClass>('medium', table8),
  },
  'spot-and-drench': spots,
  'tall-trees': {
    unit: value('tree'),
    unitVolume: value(15 * GALLON),
    unitArea: value((40 * FOOT) ** 2),
    fillFlow: value(40 * GALLON_PER_MINUTE),
    connectTime: value(5 * MINUTE),
    mixTime: value(8 * MINUTE),
    pauseTime: value(3 * MINUTE),
    stopTime: value(4 * MINUTE),
    droplets: value<DropletClass>('medium', table8),
  },
  'nurse-and-batch': {
    unit: value('sprayer filled'),
    unitVolume: value(300 * GALLON),
    unitArea: value(20 * ACRE),
    fillFlow: hydrant,
    connectTime: value(5 * MINUTE),
    mixTime: value(10 * MINUTE),
    pauseTime: value(5 * MINUTE),
    stopTime: value(0),
    droplets: value<DropletClass>('coarse', table8),
  },
  'road-and-dust': {
    unit: value('acre of road'),
    unitVolume: value(1300 * GALLON, 'start value: 0.27 gal/yd2 of chloride brine (agency guidance)'),
    unitArea: value(ACRE),
    fillFlow: hydrant,
    connectTime: value(5 * MINUTE),
    mixTime: value(0),
    pauseTime: value(2 * MINUTE),
    stopTime: value(0),
    droplets: value<DropletClass>('very-coarse', table8),
  },
  'utility-spot': { ...spots, unitVolume: value(1 * GALLON, 'start value: 1 to 5 gal/1000 ft2 (extension guidance)') },
};

/** Start values that do not depend on the work. */
export const STARTS = {
  dayLength: value(8 * 3600),
  preparation: value(20 * MINUTE),
  closing: value(10 * MINUTE),
  /** Speed on the way to the water [m/s]. */
  roadSpeed: value(8),
  /** Water to clear a hose: times its contents. */
  hoseChanges: value(2.5, 'two to three contents clear a line: common practice, no source'),
  /** Dilution that ends a rinse. */
  dilution: value(300, 'ISO 16119-4:2014 (excerpt): residue thinned 300 times'),
  /** Boom above the target [m]. */
  boomHeight: value(0.5, 'start value: 0.5 to 0.7 m (French inspection of booms)'),
  patternShape: value<PatternShape>('triangular', 'start value: wide fans fall off to the edges; no test report given'),
  /** Speeds between which a rate is expected to hold, as shares of the speed named. */
  /** Only to choose a bar by: what it covers stays unknown until somebody says. */
  laneWidth: value(12 * FOOT),
  slower: value(0.8),
  faster: value(1.2),
  /** Height at which a wind from a forecast is meant [m]. */
  windHeight: value(10, 'forecasts speak of 10 m in the open (standard height)'),
  /** How well a hand times a gulp [s]. */
  handTiming: value(0.2, 'judgement, no source'),
  /** Uneven booms: coefficient of variation in use. */
  boomVariation: value(0.1, 'ISO 16122-2: 10 % in use; from memory'),
  /** Fuel per work of a small petrol and a diesel engine [kg/J]. */
  petrolConsumption: value((0.65 * 0.45359237) / (745.69987 * 3600), '0.5 to 0.8 lb/hp.h; from memory'),
  dieselConsumption: value((0.45 * 0.45359237) / (745.69987 * 3600), '0.40 to 0.50 lb/hp.h; from memory'),
  petrolDensity: value(745, 'from memory'),
  dieselDensity: value(840, 'from memory'),
  /** Share of a battery's charge that may be used. */
  batteryShare: value(0.5, 'half of a lead-acid battery in daily use: common practice, no source'),
  /** Wear that a pump is bought with in reserve. */
  pumpReserve: value(0.2, 'Grisso, Virginia Cooperative Extension 442-452: 20 %'),
} as const;
