import type { Kind } from '../../catalogue/index.ts';

/**
 * How far one input of a rig may be off what its catalogue or its setting says. Input = nominal × exp(x), where x is
 * normal with this mean and standard deviation: a deviation of 0.03 is 3 % either way, two times in three.
 */
export interface Tolerance {
  /** The input, as a builder says it; the part's name goes in front: "Plunger pump: flow". */
  readonly name: string;
  /** What takes the doubt away. */
  readonly check: string;
  /** Kinds of parts that have it; none: it belongs to the rig as a whole. */
  readonly kinds: readonly Kind[];
  /** Mean of the logarithm of the factor [-]. */
  readonly mean: number;
  /** Standard deviation of the logarithm of the factor [-]. */
  readonly deviation: number;
  readonly source: string;
}

/** Tolerances of new parts as bought and set with care. "Nine in ten" stands for 1.645 standard deviations either way. */
export const TOLERANCES = {
  'pump-flow': {
    name: 'flow',
    check: 'catch its flow in a bucket, by the clock',
    kinds: ['pump', 'motor-pump'],
    mean: 0,
    deviation: 0.03,
    source:
      'judgement: within 5 % nine times in ten; ISO 9906 grade 2 gives rotodynamic pumps 8 % of flow and 5 % of head (as quoted in an encyclopedia of pumps)',
  },
  'pump-slip': {
    name: 'slip under pressure',
    check: 'catch its flow at low and at working pressure',
    kinds: ['pump'],
    mean: 0,
    deviation: 0.25,
    source: 'judgement: within half and one and a half times nine times in ten',
  },
  'pump-efficiency': {
    name: 'efficiency',
    check: 'none in a yard: it takes a dynamometer',
    kinds: ['pump'],
    mean: 0,
    deviation: 0.04,
    source: 'judgement; ISO 9906 grade 2 gives 5 % (as quoted in an encyclopedia of pumps)',
  },
  'suction-need': {
    name: 'suction head it needs',
    check: 'watch the vacuum gauge with a dirty strainer',
    kinds: ['pump', 'motor-pump'],
    mean: 0,
    deviation: 0.1,
    source: 'judgement',
  },
  'drive-speed': {
    name: 'speed under load',
    check: 'read a tachometer while it sprays',
    kinds: ['engine', 'pto-drive'],
    mean: 0,
    deviation: 0.02,
    source: 'judgement: a governor holds its setting within some 3 % nine times in ten',
  },
  'engine-power': {
    name: 'power',
    check: 'none in a yard: see that it holds its speed for an hour',
    kinds: ['engine'],
    mean: 0,
    deviation: 0.03,
    source: 'judgement: within the 5 % by which SAE J1940 lets an engine miss its label, nine times in ten',
  },
  'hose-bore': {
    name: 'inside diameter',
    check: 'measure the pressure at both ends while it sprays',
    kinds: ['hose'],
    mean: 0,
    deviation: 0.02,
    source:
      'ISO 1307:2006 (as quoted in a table of hose sizes): 12.5 mm is 11.9 to 13.5 mm, 25 mm is 24.2 to 26.6 mm, 38 mm is 36.5 to 39.7 mm; spread evenly that is 3.7, 2.8 and 2.4 %; 2 % where the ends are rare',
  },
  'hose-roughness': {
    name: 'roughness of the bore',
    check: 'measure the pressure at both ends while it sprays',
    kinds: ['hose'],
    mean: 0,
    deviation: 0.7,
    source: 'roughness tables: smooth rubber 0.006 to 0.07 mm, plastic 0.0015 to 0.007 mm, taken as nine in ten',
  },
  passage: {
    name: 'flow it passes',
    check: 'measure the pressure in front of it and behind it',
    kinds: ['strainer', 'valve', 'reel', 'gun'],
    mean: 0,
    deviation: 0.06,
    source: 'IEC 60534 gives valves 10 % of their flow factor, taken as nine in ten; from memory',
  },
  'strainer-dirt': {
    name: 'loss when it is cleaned at last',
    check: 'clean it by the vacuum gauge, not by the calendar',
    kinds: ['strainer'],
    mean: 0,
    deviation: 0.25,
    source: 'judgement',
  },
  'set-pressure': {
    name: 'set pressure',
    check: 'set it by a gauge that was checked',
    kinds: ['regulator'],
    mean: 0,
    deviation: 0.03,
    source: 'judgement: a gauge of class 2.5 (EN 837-1: 2.5 % of its range) read at half its range, nine times in ten',
  },
  override: {
    name: 'rise of the held pressure with flow',
    check: 'read the gauge with the gun open and shut',
    kinds: ['regulator'],
    mean: 0,
    deviation: 0.25,
    source: 'judgement: direct spring valves differ by 5 to 25 % of the set pressure; from memory',
  },
  'tip-flow': {
    name: 'flow when new',
    check: 'catch its flow in a bucket, by the clock',
    kinds: ['tip', 'nozzle'],
    mean: 0,
    deviation: 0.025,
    source: 'ISO 5682-1 lets new tips differ by 5 %, taken as two deviations; from memory',
  },
  'tip-wear': {
    name: 'wear',
    check: 'catch its flow every season, and change it when 10 % over',
    kinds: ['tip', 'nozzle'],
    mean: 0.03,
    deviation: 0.02,
    source: 'judgement: new to worn out, which is 10 % over (US extension guidance), mostly in the first half',
  },
  'jet-flow': {
    name: 'flow of its jet',
    check: 'catch its flow in a bucket, by the clock',
    kinds: ['agitator', 'eductor'],
    mean: 0,
    deviation: 0.04,
    source: 'judgement',
  },
  current: {
    name: 'current',
    check: 'put a clamp meter on its lead',
    kinds: ['motor-pump'],
    mean: 0,
    deviation: 0.08,
    source: 'judgement',
  },
  throw: {
    name: 'throw',
    check: 'water-test it against a tape in still air',
    kinds: ['gun'],
    mean: 0,
    deviation: 0.08,
    source:
      'throws kept out of the calibration of the model; the least there is: more at high pressure, with small bores, cones and fans (see reachSigma)',
  },
  'rewind-current': {
    name: 'current of its motor',
    check: 'put a clamp meter on its lead while it winds in',
    kinds: ['reel'],
    mean: 0,
    deviation: 0.12,
    source: 'judgement: it follows the pull of the hose on the ground',
  },
  'starting-current': {
    name: 'current of its starter',
    check: 'put a clamp meter on its lead while it cranks',
    kinds: ['engine'],
    mean: 0,
    deviation: 0.12,
    source: 'judgement: more in the cold and with thick oil',
  },
  charging: {
    name: 'charging current',
    check: 'put a clamp meter on its lead while it runs',
    kinds: ['engine'],
    mean: 0,
    deviation: 0.12,
    source: 'judgement',
  },
  'battery-capacity': {
    name: 'charge it holds',
    check: 'have it load-tested',
    kinds: ['battery'],
    mean: -0.05,
    deviation: 0.06,
    source: 'judgement: between new, within 5 % of its label, and two years old',
  },
  'eductor-suction': {
    name: 'suction',
    check: 'time it on a measured bucket of water',
    kinds: ['eductor'],
    mean: 0,
    deviation: 0.1,
    source: 'judgement: its curve is for water and a new nozzle',
  },
  'dry-mass': {
    name: 'mass of the empty rig',
    check: 'weigh it',
    kinds: [],
    mean: 0,
    deviation: 0.02,
    source: 'judgement: catalogue masses, and what is on no list',
  },
  'liquid-mass': {
    name: 'mass of the liquid in the full tank',
    check: 'weigh it full',
    kinds: [],
    mean: 0,
    deviation: 0.015,
    source: 'judgement: strength of the mix, and where the tank is called full',
  },
  wind: {
    name: 'wind',
    check: 'hold up a wind meter before the work',
    kinds: [],
    mean: 0,
    deviation: 0.3,
    source: 'judgement: the wind of the day against the wind of the brief',
  },
  'ground-speed': {
    name: 'speed over the ground',
    check: 'time it over 100 paced-out yards or metres',
    kinds: [],
    mean: 0,
    deviation: 0.03,
    source: 'judgement: within 5 % nine times in ten, by a speedometer that was checked',
  },
  residual: {
    name: 'what stays in tank, pump and fittings',
    check: 'drain it into a bucket after it has sucked air',
    kinds: [],
    mean: -0.2,
    deviation: 0.25,
    source:
      'judgement: the proof takes 2 % of the tank, the most expected; 1.3 to 2 % taken as the middle half (see expectedResidual)',
  },
  'fill-flow': {
    name: 'flow of the water it is filled from',
    check: 'fill a bucket by the clock where it will be filled',
    kinds: [],
    mean: 0,
    deviation: 0.2,
    source: 'judgement: hydrants and taps differ from place to place and hour to hour',
  },
  'crew-pace': {
    name: 'time besides spraying at each place',
    check: 'time the crew over ten of them',
    kinds: [],
    mean: 0,
    deviation: 0.2,
    source: 'judgement: crews differ by half from the slowest to the fastest',
  },
  handling: {
    name: 'time for making ready, coupling up, mixing and parking',
    check: 'time one load from empty to spraying again',
    kinds: [],
    mean: 0,
    deviation: 0.2,
    source: 'judgement',
  },
  'unit-volume': {
    name: 'mix that each place takes',
    check: 'read the tank before and after ten of them',
    kinds: [],
    mean: 0,
    deviation: 0.15,
    source: 'judgement: trees, roofs and hands differ',
  },
  'trigger-time': {
    name: 'time the trigger is open at each tree',
    check: 'time ten trees',
    kinds: [],
    mean: 0,
    deviation: 0.15,
    source: 'judgement',
  },
  'hand-timing': {
    name: 'how closely a hand times a gulp',
    check: 'catch ten gulps and weigh them',
    kinds: [],
    mean: 0,
    deviation: 0.3,
    source: 'judgement: 0.12 to 0.33 s either way nine times in ten',
  },
  pouring: {
    name: 'time to open and pour a container',
    check: 'time ten containers',
    kinds: [],
    mean: 0,
    deviation: 0.3,
    source: 'judgement: caps, seals and gloves',
  },
  'fuel-use': {
    name: 'fuel the engine burns',
    check: 'fill it up, run it an hour at work, fill it up again',
    kinds: [],
    mean: 0,
    deviation: 0.12,
    source: 'judgement: the proof takes the middle of 0.5 to 0.8 lb/hp.h (petrol) or 0.40 to 0.50 (diesel), from memory',
  },
  'charge-use': {
    name: 'how long the electric parts run',
    check: 'count rewinds and starts on a day of work',
    kinds: [],
    mean: 0,
    deviation: 0.25,
    source: 'judgement: days differ',
  },
  cable: {
    name: 'resistance of the cables',
    check: 'measure the voltage at both ends while it runs',
    kinds: [],
    mean: 0.08,
    deviation: 0.08,
    source:
      'judgement: copper at 40 °C has 8 % more than at 20 °C (0.393 %/K, IEC 60028, from memory); lengths as they are laid, crimps and terminals',
  },
  drying: {
    name: 'how dry the air is',
    check: 'read a wet and a dry thermometer before the work',
    kinds: [],
    mean: 0,
    deviation: 0.2,
    source: 'judgement: the air of the day against the air of the brief',
  },
  slope: {
    name: 'slope it stands on',
    check: 'lay a level with degrees on the frame',
    kinds: [],
    mean: 0,
    deviation: 0.1,
    source: 'judgement: the slope of the place against the slope of the brief',
  },
  'stock-strength': {
    name: 'strength of the stock as delivered',
    check: 'test it on delivery with strips or a hydrometer',
    kinds: [],
    mean: 0,
    deviation: 0.03,
    source: 'judgement: within 5 % of its label nine times in ten',
  },
  'bleach-loss': {
    name: 'how fast bleach loses strength in store',
    check: 'test it on the day of use',
    kinds: [],
    mean: -0.13,
    deviation: 0.08,
    source:
      'field factor 1.0 to 1.3 from a published strength table, taken as nine in ten about 1.14; the proof takes 1.3',
  },
} as const satisfies Record<string, Tolerance>;

export type ToleranceKind = keyof typeof TOLERANCES;
