import { NOT_CHECKED, type TableOrigin } from '../table-origin.ts';

export interface CouplerClass {
  readonly class: 1 | 2 | 3 | 4;
  readonly maxGrossLb: number;
  readonly ballIn: readonly string[];
  /** Least breaking strengths, lb; class 4 is given by factors on the gross trailer weight instead. */
  readonly strengthLb?: CouplerStrengthRow;
  readonly strengthFactor?: CouplerStrengthRow;
  /** Most load on the tongue, weight-carrying: absolute lb, or a share of the gross weight. */
  readonly maxTongueLb?: number;
  readonly maxTongueShare?: number;
}

export interface CouplerStrengthRow {
  readonly longitudinalTension: number;
  readonly longitudinalCompression: number;
  readonly transverse: number;
  readonly verticalTension: number;
  readonly verticalCompression: number;
}

const row = (lt: number, lc: number, t: number, vt: number, vc: number): CouplerStrengthRow => ({
  longitudinalTension: lt,
  longitudinalCompression: lc,
  transverse: t,
  verticalTension: vt,
  verticalCompression: vc,
});

/** Ball couplings and hitches of light trailers. Forces are breaking strengths. */
export const COUPLER_CLASSES: readonly CouplerClass[] = [
  {
    class: 1,
    maxGrossLb: 2000,
    ballIn: ['1-7/8'],
    strengthLb: row(6000, 6000, 2000, 2500, 2500),
    maxTongueLb: 200,
  },
  {
    class: 2,
    maxGrossLb: 3500,
    ballIn: ['2'],
    strengthLb: row(10500, 10500, 3000, 4500, 4500),
    maxTongueLb: 300,
  },
  {
    class: 3,
    maxGrossLb: 5000,
    ballIn: ['2'],
    strengthLb: row(15000, 15000, 4000, 7000, 7000),
    maxTongueShare: 0.15,
  },
  {
    class: 4,
    maxGrossLb: 10000,
    ballIn: ['2', '2-5/16'],
    strengthFactor: row(3, 3, 1, 1.3, 1.4),
    maxTongueShare: 0.15,
  },
];

export const COUPLER_ORIGIN: TableOrigin = {
  place: 'Maryland, United States',
  edition: 'COMAR 11.13.08.10, values of the SAE J684 kind',
  date: 'unknown',
  source: 'Maryland COMAR 11.13.08.10 tables; tongue limits: a table of largest recommended tongue loads',
  evidence: 'seen',
  checkedBy: NOT_CHECKED,
  note: 'Class 4 vertical compression 1.4 against tension 1.3 is as printed; memory has 1.3 for both. Above 10000 lb no ball coupler of this table fits: pintle and lunette (SAE J847, J849, from memory), fifth wheel or gooseneck (SAE J2638).',
};

/** Test forces of hitches, lb, from the gross trailer weight R in lb: a R + b. */
export const HITCH_TEST = {
  'weight-carrying': {
    verticalAndLongitudinal: { slope: 0.47, constant: 480 },
    longitudinal: { slope: 0.23, constant: 1530 },
    verticalShare: 0.15,
    transverse: { slope: 0.2, constant: 500 },
  },
  'weight-distributing': {
    verticalAndLongitudinal: { slope: 0.045, constant: 1650 },
    longitudinal: { slope: 0.067, constant: 2070 },
    verticalShare: 0.15,
    transverse: { slope: 0.2, constant: 500 },
  },
} as const;

/** Usual capacity of tow balls by ball and shank diameter, lb. The ball's own stamp goes before it. */
export const BALL_CAPACITIES = [
  { ballIn: '1-7/8', shankIn: '3/4', capacityLb: 2000 },
  { ballIn: '2', shankIn: '3/4', capacityLb: 3500 },
  { ballIn: '2', shankIn: '1', capacityLb: 6000 },
  { ballIn: '2', shankIn: '1-3/8', capacityLb: 10000 },
  { ballIn: '2-5/16', shankIn: '1', capacityLb: 6000 },
  { ballIn: '2-5/16', shankIn: '1-1/4', capacityLb: 10000 },
] as const;

/** How strong each of two safety chains must be, as a share of the gross trailer weight, in breaking strength. */
export const SAFETY_CHAIN_RULES = {
  'us-federal': {
    shareEach: 0.5,
    origin: {
      place: 'United States, interstate commercial use',
      edition: '49 CFR 393.70(d), agency guidance',
      date: 'unknown, archived',
      source: 'FMCSA guidance: two chains may add up to the gross weight',
      evidence: 'seen',
      checkedBy: NOT_CHECKED,
    },
  },
  'each-at-gross': {
    shareEach: 1,
    origin: {
      place: 'New Hampshire, United States',
      edition: 'RSA 266:63',
      date: 'unknown',
      source:
        'RSA 266:63: each chain at least the gross weight, farm trailers included with a hitch-pin exception',
      evidence: 'seen',
      checkedBy: NOT_CHECKED,
      note: 'The stricter rule: design to it.',
    },
  },
} as const satisfies Record<string, { shareEach: number; origin: TableOrigin }>;

export type SafetyChainRule = keyof typeof SAFETY_CHAIN_RULES;
