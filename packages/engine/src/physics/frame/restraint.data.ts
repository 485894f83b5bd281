import { NOT_CHECKED, type TableOrigin } from '../table-origin.ts';

/** One set of restraint accelerations, in g, and the strength it must be compared with. The two sets may not be mixed. */
export interface RestraintSet {
  readonly forward: number;
  readonly rearward: number;
  readonly sideways: number;
  readonly strengthBasis: 'breaking strength' | 'working load limit';
}

export const RESTRAINT_SETS = {
  breaking: { forward: 0.8, rearward: 0.5, sideways: 0.5, strengthBasis: 'breaking strength' },
  'working-load': { forward: 0.435, rearward: 0.5, sideways: 0.25, strengthBasis: 'working load limit' },
} as const satisfies Record<string, RestraintSet>;

export type RestraintSetId = keyof typeof RESTRAINT_SETS;

/** Downward hold as a share of the weight when the vehicle does not contain the load. */
export const DOWNWARD_SHARE = 0.2;
/** Least sum of working load limits as a share of the weight. */
export const AGGREGATE_WLL_SHARE = 0.5;
/** How much of its working load limit a tiedown counts. */
export const TIEDOWN_COUNT_FACTOR = { direct: 0.5, over: 1 } as const;

export const RESTRAINT_ORIGIN: TableOrigin = {
  place: 'United States, interstate commercial use',
  edition: '49 CFR 393.102, 393.106',
  date: 'unknown',
  source:
    '49 CFR 393.102 as published by the agency; 393.106: sum of working load limits at least half the weight',
  evidence: 'seen',
  checkedBy: NOT_CHECKED,
  note: 'Pair each set with its own strength: 0.8 g with working load limits oversizes by 1.84, 0.435 g with breaking strength undersizes by as much.',
};

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
