import { NOT_CHECKED, type TableOrigin } from '../table-origin.ts';

const COMPILATION: TableOrigin = {
  place: 'United States, by state of registration',
  edition: 'a secondary compilation',
  date: 'undated, about 2000',
  source: 'A secondary compilation of state trailer brake thresholds',
  evidence: 'seen',
  checkedBy: NOT_CHECKED,
  note: 'Low confidence: a second compilation disagrees (Colorado 3000, Alaska 5000). Only says: check the state of registration.',
};

const TEXAS: TableOrigin = {
  place: 'Texas, United States',
  edition: 'state police brake page',
  date: 'unknown',
  source: 'Texas Department of Public Safety, brakes page',
  evidence: 'seen',
  checkedBy: NOT_CHECKED,
};

/** Gross trailer weight above which brakes are required. */
export interface TrailerBrakeRule {
  /** null: the compilation gives no weight (a stopping distance, or all trailers). */
  readonly thresholdLb: number | null;
  /** Up to this weight brakes are not required when the trailer is drawn no faster than the speed. */
  readonly slowExemption?: { readonly maxGrossLb: number; readonly maxSpeedMph: number };
  /** What another compilation says; a conflict is shown, not settled. */
  readonly alsoPrintedLb?: number;
  readonly origin: TableOrigin;
}

// prettier-ignore
const THRESHOLDS: Readonly<Record<string, number | null>> = {
  AL: 3000, AK: 3000, AZ: 3000, AR: 3000, CA: 1500, CO: 1500, CT: 3000, DE: 4000, DC: 3000, FL: 3000, GA: 2500, HI: 3000,
  ID: 1500, IL: 3000, IN: 3000, IA: 3000, KS: null, KY: null, LA: 3000, ME: 3000, MD: 3000, MA: null, MI: 3300, MN: 1500,
  MS: 2000, MO: null, MT: 3000, NE: 2000, NV: 1500, NH: 1500, NJ: 3000, NM: 3000, NY: 3000, NC: 4000, ND: null, OH: 2000,
  OK: 3000, OR: null, PA: 3000, RI: 4000, SC: 3000, SD: 3000, TN: 1500, UT: 3000, VT: 3000, VA: 3000, WA: 3000, WV: 3000,
  WI: 3000, WY: 1500,
};

const CONFLICTS: Readonly<Record<string, number>> = { CO: 3000, AK: 5000 };

export const TRAILER_BRAKE_RULES: Readonly<Record<string, TrailerBrakeRule>> = {
  ...Object.fromEntries(
    Object.entries(THRESHOLDS).map(([state, thresholdLb]) => {
      const other = CONFLICTS[state];
      return [
        state,
        { thresholdLb, origin: COMPILATION, ...(other === undefined ? {} : { alsoPrintedLb: other }) },
      ];
    }),
  ),
  TX: { thresholdLb: 4500, slowExemption: { maxGrossLb: 15000, maxSpeedMph: 30 }, origin: TEXAS },
};

/** Interstate commercial use: brakes on all wheels, with one exemption. */
export const FEDERAL_BRAKE_RULE = {
  combinationFromLb: 10001,
  exemptGrossLb: 3000,
  exemptShareOnTowVehicle: 0.4,
  origin: {
    place: 'United States, interstate commercial use',
    edition: '49 CFR 393.42(b)(3), as quoted in an interpretation',
    date: 'unknown',
    source: '49 CFR 393.42(b)(3)',
    evidence: 'seen',
    checkedBy: NOT_CHECKED,
    note: 'A breakaway device holds 15 minutes where brakes are required (49 CFR 393.43).',
  },
} as const satisfies { origin: TableOrigin; [name: string]: unknown };

/** Surge brakes: largest trailer gross rating as a multiple of the tow vehicle's. */
export const SURGE_BRAKE_RULE = {
  steps: [
    { maxTrailerGvwrLb: 12000, multiple: 1.75 },
    { maxTrailerGvwrLb: 20000, multiple: 1.25 },
  ],
  origin: {
    place: 'United States, interstate commercial use',
    edition: '49 CFR 393.48(d)',
    date: 'unknown',
    source: '49 CFR 393.48(d)',
    evidence: 'seen',
    checkedBy: NOT_CHECKED,
  },
} as const satisfies { origin: TableOrigin; [name: string]: unknown };
