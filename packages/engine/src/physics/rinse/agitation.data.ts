import { US_GALLON } from '../us-measure.ts';
import { NOT_CHECKED, type TableOrigin } from '../table-origin.ts';

/** What keeps the tank mixed. */
export type AgitationMeans = 'return only' | 'return with jets or paddle' | 'any';

/** Least flow through the tank per volume of tank. */
export interface AgitationRule {
  readonly id: string;
  readonly means: AgitationMeans;
  readonly liquid: 'any' | 'solution' | 'suspension';
  /** Share of the nominal tank volume in a second [1/s]. */
  readonly share: number;
  readonly origin: TableOrigin;
}

const perMinute = (percent: number) => percent / 100 / 60;
const netherlands: TableOrigin = {
  place: 'Netherlands',
  edition: 'PT regulation 2009 (BWBR0025530) and 2012 (BWBR0033050), Annex 1-2',
  date: '2012',
  source: 'Productschap Tuinbouw, Verordening gebruik verdeelapparatuur bij gewasbeschermingsmiddelen',
  evidence: 'seen',
  checkedBy: NOT_CHECKED,
  note: 'measured with the largest tips at their highest pressure; jets shut while measuring the lower return',
};
const australia: TableOrigin = {
  place: 'Australia (guidance)',
  edition: 'Spray Application Manual 2025',
  date: '2025',
  source: 'GRDC Spray Application Manual 2025, pumps',
  evidence: 'seen',
  checkedBy: NOT_CHECKED,
  note: '2 to 3 % a minute and a turnover in 15 to 20 min are both printed, and differ: suspensions keep the stronger, 5 %',
};

export const AGITATION_RULES: readonly AgitationRule[] = [
  {
    id: 'netherlands-return-only',
    means: 'return only',
    liquid: 'any',
    share: perMinute(5),
    origin: netherlands,
  },
  {
    id: 'netherlands-with-jets',
    means: 'return with jets or paddle',
    liquid: 'any',
    share: perMinute(2.5),
    origin: netherlands,
  },
  { id: 'solution', means: 'any', liquid: 'solution', share: perMinute(3), origin: australia },
  { id: 'suspension', means: 'any', liquid: 'suspension', share: perMinute(5), origin: australia },
];

/** Jets a tank wants at least, by its size [m3]. */
export const JETS_BY_TANK = {
  rows: [
    { upTo: 55 * US_GALLON, jets: 1 },
    { upTo: 100 * US_GALLON, jets: 3 },
    { upTo: 200 * US_GALLON, jets: 5 },
  ],
  origin: {
    place: 'United States (guidance)',
    edition: 'pesticide safety handbook: 55 gal 1, 100 gal 3, 200 gal 5',
    date: 'unknown',
    source: 'extension pesticide safety handbook, jet agitators by tank size',
    evidence: 'seen',
    checkedBy: NOT_CHECKED,
    note: 'feed jets from the pressure side, never from the bypass return',
  } satisfies TableOrigin,
} as const;
