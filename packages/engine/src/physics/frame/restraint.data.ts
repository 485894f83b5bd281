import { NOT_CHECKED, type TableOrigin } from '../table-origin.ts';

/** One set of restraint accelerations, in g, and the strength it must be compared with. Sets may not be mixed. */
export interface RestraintSet {
  readonly forward: number;
  readonly rearward: number;
  readonly sideways: number;
  /** Sideways for a load that could tip over before it slides; absent where the rule asks no more. */
  readonly sidewaysTipping?: number;
  /** Hold-down as a share of the weight; 0 where the rule asks none. */
  readonly downward: number;
  /** Least sum of working load limits as a share of the weight; 0 where the rule asks none. */
  readonly aggregate: number;
  readonly strengthBasis: 'breaking strength' | 'working load limit' | 'lashing capacity';
  readonly origin: TableOrigin;
}

const UNITED_STATES: TableOrigin = {
  place: 'United States, interstate commercial use',
  edition: '49 CFR 393.102, 393.106',
  date: 'unknown',
  source:
    '49 CFR 393.102 as published by the agency; 393.106: sum of working load limits at least half the weight',
  evidence: 'seen',
  checkedBy: NOT_CHECKED,
  note: 'Pair each set with its own strength: 0.8 g with working load limits oversizes by 1.84, 0.435 g with breaking strength undersizes by as much.',
};

const AUSTRALIA: TableOrigin = {
  place: 'Australia',
  edition: 'Load Restraint Guide 2018, loading performance standards',
  date: '2018',
  source: 'National Transport Commission, Load Restraint Guide, and its page on the guide',
  evidence: 'part seen',
  checkedBy: NOT_CHECKED,
  note: 'The accelerations were read; that direct lashings are used up to the lashing capacity on their label is from memory. 0.2 g upward counts where friction or little lifting is relied on.',
};

const EUROPE: TableOrigin = {
  place: 'Europe',
  edition: 'EN 12195-1:2010',
  date: '2010',
  source: 'EN 12195-1:2010 as told by a road transport union and in a published design note',
  evidence: 'part seen',
  checkedBy: NOT_CHECKED,
  note: 'Second-hand: the standard itself was not read. It does not hold for vehicles of 3.5 t and less, which brake and corner harder; national rules may ask more of them.',
};

export const RESTRAINT_SETS = {
  breaking: {
    forward: 0.8,
    rearward: 0.5,
    sideways: 0.5,
    downward: 0.2,
    aggregate: 0.5,
    strengthBasis: 'breaking strength',
    origin: UNITED_STATES,
  },
  'working-load': {
    forward: 0.435,
    rearward: 0.5,
    sideways: 0.25,
    downward: 0.2,
    aggregate: 0.5,
    strengthBasis: 'working load limit',
    origin: UNITED_STATES,
  },
  australia: {
    forward: 0.8,
    rearward: 0.5,
    sideways: 0.5,
    downward: 0.2,
    aggregate: 0,
    strengthBasis: 'lashing capacity',
    origin: AUSTRALIA,
  },
  europe: {
    forward: 0.8,
    rearward: 0.5,
    sideways: 0.5,
    sidewaysTipping: 0.6,
    downward: 0,
    aggregate: 0,
    strengthBasis: 'lashing capacity',
    origin: EUROPE,
  },
} as const satisfies Record<string, RestraintSet>;

export type RestraintSetId = keyof typeof RESTRAINT_SETS;

/** Least sum of working load limits as a share of the weight, United States. */
export const AGGREGATE_WLL_SHARE = RESTRAINT_SETS['working-load'].aggregate;
/** How much of its working load limit a tiedown counts, United States. */
export const TIEDOWN_COUNT_FACTOR = { direct: 0.5, over: 1 } as const;

/** Number of tiedowns by length and weight. */
export const TIEDOWN_NUMBER = {
  shortFt: 5,
  lightLb: 1100,
  perFt: 10,
  origin: {
    place: 'United States, interstate commercial use',
    edition: '49 CFR 393.110',
    date: 'unknown',
    source: '49 CFR 393.110 as told in the agency cargo securement rules, read in a quotation',
    evidence: 'seen',
    checkedBy: NOT_CHECKED,
  },
} as const satisfies { origin: TableOrigin; [name: string]: unknown };

/** Working load limits when a tiedown carries no other mark, lb. Unmarked chain counts as grade 30. */
export const DEFAULT_WLL_LB = {
  chain: {
    '1/4': { '30': 1300, '43': 2600, '70': 3150, '80': 3500, '100': 4300 },
    '5/16': { '30': 1900, '43': 3900, '70': 4700, '80': 4500, '100': 5700 },
    '3/8': { '30': 2650, '43': 5400, '70': 6600, '80': 7100, '100': 8800 },
    '7/16': { '30': 3700, '43': 7200, '70': 8750 },
    '1/2': { '30': 4500, '43': 9200, '70': 11300, '80': 12000, '100': 15000 },
    '5/8': { '30': 6900, '43': 13000, '70': 15800, '80': 18100, '100': 22600 },
  },
  webbing: { '1-3/4': 1750, '2': 2000, '3': 3000, '4': 4000 },
  wireRope: { '1/4': 1400, '5/16': 2100, '3/8': 3000, '7/16': 4100, '1/2': 5300, '5/8': 8300, '3/4': 10900 },
} as const;

export const DEFAULT_WLL_ORIGIN: TableOrigin = {
  place: 'United States, interstate commercial use',
  edition: '49 CFR 393.108',
  date: 'unknown',
  source: '49 CFR 393.108 tables as reprinted',
  evidence: 'seen',
  checkedBy: NOT_CHECKED,
  note: '5/16 in grade 80 (4500) below grade 70 (4700) is as printed. Grades 80 and 100 of 7/16 in are not printed: unknown. Wire rope is 6x37. Breaking strength is about 4 times for grades 30, 70, 80, 100 and 3 times for 43 (from memory).',
};
