import { NOT_CHECKED, type TableOrigin } from '../table-origin.ts';

/** Pins and spacing of a rear three-point hitch, mm. A category states no lift. */
export interface HitchCategory {
  readonly category: '0' | '1N' | '1' | '2' | '3N' | '3' | '4';
  readonly upperPinMm: number;
  readonly lowerPinMm: number;
  readonly lowerSpanMm: number;
  /** Absent: unknown. */
  readonly mastHeightMm?: number;
  /** Older American tractors of category 2 and 3 have masts about 125 mm shorter. */
  readonly oldMastHeightMm?: number;
  readonly ptoPower: string;
  readonly evidence: TableOrigin['evidence'];
  readonly note: string;
}

export const HITCH_CATEGORIES: readonly HitchCategory[] = [
  {
    category: '0',
    upperPinMm: 15.9,
    lowerPinMm: 15.9,
    lowerSpanMm: 508,
    ptoPower: 'up to 20 hp',
    evidence: 'seen',
    note: 'pins 5/8 in, span 20 in: encyclopaedia table',
  },
  {
    category: '1N',
    upperPinMm: 19,
    lowerPinMm: 22,
    lowerSpanMm: 400,
    mastHeightMm: 360,
    ptoPower: 'up to 35 kW',
    evidence: 'memory',
    note: 'all from memory',
  },
  {
    category: '1',
    upperPinMm: 19,
    lowerPinMm: 22,
    lowerSpanMm: 683,
    mastHeightMm: 460,
    oldMastHeightMm: 460,
    ptoPower: '20 to 45 hp (also quoted 20 to 50), up to 48 kW',
    evidence: 'part seen',
    note: 'pins 3/4 and 7/8 in, span quoted 26 to 28 in: seen; 683, 460 mm and 48 kW from memory',
  },
  {
    category: '2',
    upperPinMm: 25.5,
    lowerPinMm: 28,
    lowerSpanMm: 825,
    mastHeightMm: 610,
    oldMastHeightMm: 483,
    ptoPower: 'up to 92 kW; 40 to 100 hp (also quoted 50 to 90)',
    evidence: 'seen',
    note: 'pins 1 and 1-1/8 in',
  },
  {
    category: '3N',
    upperPinMm: 31.75,
    lowerPinMm: 36.6,
    lowerSpanMm: 825,
    mastHeightMm: 685,
    ptoPower: '60 to 185 kW (later edition), 80 to 185 (earlier)',
    evidence: 'part seen',
    note: 'mast from memory',
  },
  {
    category: '3',
    upperPinMm: 31.75,
    lowerPinMm: 36.6,
    lowerSpanMm: 965,
    mastHeightMm: 685,
    oldMastHeightMm: 559,
    ptoPower: '60 to 185 kW (later edition), 80 to 185 (earlier)',
    evidence: 'part seen',
    note: 'one manual prints 960 for the span, two print 965; also quoted 38 to 40 in; 559 from memory',
  },
  {
    category: '4',
    upperPinMm: 45,
    lowerPinMm: 50.8,
    lowerSpanMm: 1166,
    mastHeightMm: 685,
    ptoPower: '150 to 350 kW',
    evidence: 'part seen',
    note: 'mast from memory',
  },
];

export const HITCH_ORIGIN: TableOrigin = {
  place: 'any',
  edition: 'ISO 730-1 table as printed in two implement manuals; ASAE S217.12 DEC01 foreword',
  date: '2001',
  source: 'ISO 730-1; ASAE S217.12 DEC01; encyclopaedia table of pins and power',
  evidence: 'part seen',
  checkedBy: NOT_CHECKED,
  note: 'N: pins of the named category, span of the next smaller one. The lift test is for comparing tractors, not a statement of what can be carried.',
};

/** Lift that the standard asks at 610 mm behind the hitch points, from PTO power. */
export const LIFT_FORCE_RULE = {
  newtonPerKw: 310,
  breakKw: 65,
  constantAboveN: 20150,
  newtonPerKwAbove: 155,
  origin: {
    place: 'any',
    edition: 'ISO 730, ASABE S217, edition unknown',
    date: 'unknown',
    source: 'ISO 730 / ASABE S217 lift clause, from memory',
    evidence: 'memory',
    checkedBy: NOT_CHECKED,
  },
} as const satisfies { origin: TableOrigin; [name: string]: unknown };

/** Least share of the unladen tractor mass on the front axle, and on the rear axle with a front implement. */
export const AXLE_SHARE_RULE = {
  front: 0.2,
  rear: 0.45,
  origin: {
    place: 'Europe; asked for elsewhere as good practice',
    edition: 'operator manuals',
    date: 'unknown',
    source: "Ballast method printed in several operators' manuals; one calls it a legal requirement",
    evidence: 'seen',
    checkedBy: NOT_CHECKED,
    note: 'The text of one manual shows a minus sign before TV b: wrong; statics and two other manuals give plus.',
  },
} as const satisfies { origin: TableOrigin; [name: string]: unknown };
