import { NOT_CHECKED, type TableOrigin } from '../table-origin.ts';

export interface FreightScale {
  /** Class when the density is below the first number, lb/ft3; the last row has no upper end. */
  readonly steps: readonly (readonly [belowLbFt3: number, freightClass: number])[];
  readonly origin: TableOrigin;
}

const note =
  'The classification itself is proprietary: item, handling and carrier rules can override the density. An estimate.';

/** Density-only scales of freight classes. */
export const FREIGHT_SCALES = {
  '13-level': {
    // prettier-ignore
    steps: [
      [1, 400], [2, 300], [4, 250], [6, 175], [8, 125], [10, 100], [12, 92.5], [15, 85], [22.5, 70], [30, 65], [35, 60],
      [50, 55], [Infinity, 50],
    ],
    origin: {
      place: 'United States',
      edition: '13-level density scale',
      date: '2025-07-19',
      source: 'Density chart of a freight calculator page',
      evidence: 'seen',
      checkedBy: NOT_CHECKED,
      note,
    },
  },
  '18-level': {
    // prettier-ignore
    steps: [
      [1, 500], [2, 400], [3, 300], [4, 250], [5, 200], [6, 175], [7, 150], [8, 125], [9, 110], [10.5, 100], [12, 92.5],
      [13.5, 85], [15, 77.5], [22.5, 70], [30, 65], [35, 60], [50, 55], [Infinity, 50],
    ],
    origin: {
      place: 'United States',
      edition: 'older 18-level density scale',
      date: 'before 2025-07-19',
      source: 'Density chart of a freight calculator page',
      evidence: 'seen',
      checkedBy: NOT_CHECKED,
      note,
    },
  },
} as const satisfies Record<string, FreightScale>;

export type FreightScaleId = keyof typeof FREIGHT_SCALES;
