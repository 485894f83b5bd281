import { FOOT, INCH } from '../us-measure.ts';
import { NOT_CHECKED, type TableOrigin } from '../table-origin.ts';

export const DELIVERIES = ['aerial', 'air-blast', 'fog', 'spray'] as const;
export type Delivery = (typeof DELIVERIES)[number];

/** One line of the rule: the first that fits gives the distance. */
export interface ExclusionRow {
  readonly deliveries: readonly Delivery[];
  /** Applies to droplets finer than medium only. */
  readonly finerThanMedium?: true;
  /** Applies when sprayed from higher than this [m]. */
  readonly above?: number;
  /** [m] */
  readonly distance: number;
}

const rows: readonly ExclusionRow[] = [
  { deliveries: ['aerial', 'air-blast', 'fog'], distance: 100 * FOOT },
  { deliveries: ['spray'], finerThanMedium: true, distance: 100 * FOOT },
  { deliveries: ['spray'], above: 12 * INCH, distance: 25 * FOOT },
  { deliveries: ['spray'], distance: 0 },
];

export const EXCLUSION_RULES: readonly {
  readonly id: string;
  readonly rows: readonly ExclusionRow[];
  readonly origin: TableOrigin;
  readonly note: string;
}[] = [
  {
    id: 'us-2024',
    rows,
    origin: {
      place: 'United States, outdoor agricultural production',
      edition: '40 CFR 170.405(a)(1), as amended by 89 FR 80767',
      date: '2024-12-03',
      checkedBy: NOT_CHECKED,
      source: '40 CFR 170.405(a)(1); 89 FR 80767 (4 October 2024)',
      evidence: 'seen',
    },
    note: 'Medium in the meaning of S572 to S572.3. An amendment of 2020 was stayed by a court and never applied.',
  },
];

/** Dose bands of the British buffer-zone scheme, as shares of the full label dose. */
export const DOSE_BANDS = {
  bands: [0.25, 0.5, 0.75, 1],
  origin: {
    place: 'United Kingdom',
    edition: 'PB5621, LERAPs guide for horizontal boom sprayers',
    date: 'unknown',
    checkedBy: NOT_CHECKED,
    source: 'Defra PB5621, how to carry out a LERAP',
    evidence: 'seen',
  } satisfies TableOrigin,
} as const;
