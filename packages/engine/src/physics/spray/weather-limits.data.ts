import { NOT_CHECKED, type TableOrigin } from '../table-origin.ts';

/** A wind rule with the height its speeds are meant at; null when the source does not say. */
export interface WindRule {
  readonly id: string;
  /** [m] */
  readonly height: number | null;
  readonly heightNote: string;
  /** Below this the air may be an inversion [m/s]. */
  readonly least: number;
  /** Above this take care [m/s]. */
  readonly most: number;
  /** From this on do not spray [m/s]; null when the source gives no second step. */
  readonly stop: number | null;
  readonly origin: TableOrigin;
}

const kmh = (v: number) => v / 3.6;

export const WIND_RULES: readonly WindRule[] = [
  {
    id: 'victoria',
    height: 10,
    heightNote: 'standard Beaufort height, 10 m in the open',
    least: kmh(6),
    most: kmh(19),
    stop: kmh(20),
    origin: {
      place: 'Victoria, Australia',
      edition: 'Beaufort wind scale for pesticide spraying, Table 1',
      date: 'unknown',
      checkedBy: NOT_CHECKED,
      source: 'Victoria Dept of Health, Beaufort wind scale for pesticide spraying',
      evidence: 'seen',
    },
  },
  {
    id: 'uk-guide',
    height: null,
    heightNote:
      'called force 2 with lower speeds than the standard scale: near boom height, metres not stated',
    least: kmh(3.2),
    most: kmh(6.5),
    stop: null,
    origin: {
      place: 'United Kingdom',
      edition: 'Defra practical guide on drift',
      date: 'unknown',
      checkedBy: NOT_CHECKED,
      source: 'Defra, practical guide to reducing drift',
      evidence: 'seen',
    },
  },
  {
    id: 'south-australia-24d',
    height: null,
    heightNote: 'height of measurement not stated in the stored text',
    least: kmh(3),
    most: kmh(15),
    stop: kmh(15),
    origin: {
      place: 'South Australia',
      edition: 'summer weed code, 2,4-D products',
      date: 'unknown',
      checkedBy: NOT_CHECKED,
      source: 'South Australian summer weed spraying code',
      evidence: 'seen',
    },
  },
];

/** Delta T bands: good between, then with care, then not [K]. */
export const DELTA_T_RULE = {
  least: 2,
  good: 8,
  stop: 10,
  origin: {
    place: 'guidance (Australia)',
    edition: 'Spray Application Manual 2025',
    date: '2025',
    checkedBy: NOT_CHECKED,
    source: 'Australian met service scale in the GRDC Spray Application Manual 2025',
    evidence: 'seen',
  } satisfies TableOrigin,
} as const;

/** When still, layered air must be expected: it carries fine drops for miles. */
export const INVERSION_HOURS = {
  text: 'from one to two hours before sunset until one hour after sunrise',
  origin: {
    place: 'guidance (Australia)',
    edition: 'Spray Application Manual 2025',
    date: '2025',
    checkedBy: NOT_CHECKED,
    source: 'GRDC Spray Application Manual 2025',
    evidence: 'seen',
  } satisfies TableOrigin,
} as const;
