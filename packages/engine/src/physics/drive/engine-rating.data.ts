import { NOT_CHECKED, type TableOrigin } from '../table-origin.ts';

/** Share of the site power that an engine gives all day. */
export const CONTINUOUS_FRACTION = {
  value: 0.85,
  low: 0.8,
  high: 0.9,
  origin: {
    place: 'any',
    edition: 'none',
    date: 'unknown',
    source: 'Common practice, no source; choose by duty',
    evidence: 'memory',
    checkedBy: NOT_CHECKED,
  },
} as const satisfies { origin: TableOrigin; [name: string]: unknown };

/** Share of the label power that the mean engine of a production must reach. */
export const LABEL_FRACTION = {
  value: 0.95,
  before2012: 0.85,
  origin: {
    place: 'United States',
    edition: 'SAE J1940, 2012',
    date: '2012',
    source: 'SAE J1940 as told in a standards digest',
    evidence: 'seen',
    checkedBy: NOT_CHECKED,
    note: 'Ask whether the label is gross (SAE J1995) or net (SAE J1349): net is 5 to 15 % lower (from memory).',
  },
} as const satisfies { origin: TableOrigin; [name: string]: unknown };
