import { INCH } from '../us-measure.ts';
import { NOT_CHECKED, type TableOrigin } from '../table-origin.ts';

/** Gap between the fill pipe and the highest level the tank can reach. */
export const AIR_GAP_RULE = {
  timesBore: 2,
  least: 1 * INCH,
  origin: {
    place: 'Capital Regional District, British Columbia; same rule in several US city codes',
    edition: 'air-gap backflow prevention',
    date: 'unknown',
    source: 'Capital Regional District (BC), air-gap backflow prevention',
    evidence: 'seen',
    checkedBy: NOT_CHECKED,
  } satisfies TableOrigin,
} as const;

/** What a place accepts between a water main and a pesticide tank. */
export const BACKFLOW_RULES = [
  {
    place: 'New York',
    accepted: ['air gap', 'reduced-pressure assembly'],
    origin: {
      place: 'New York, United States',
      edition: 'DSHM-PES-05-09',
      date: 'unknown',
      source: 'New York State Department of Environmental Conservation, DSHM-PES-05-09',
      evidence: 'seen',
      checkedBy: NOT_CHECKED,
    } satisfies TableOrigin,
  },
  {
    place: 'Netherlands',
    accepted: [
      'air gap',
      'any means that keeps spray liquid from running back through suction hose or filler',
    ],
    origin: {
      place: 'Netherlands',
      edition: 'PT regulation 2009 (BWBR0025530)',
      date: '2009',
      source: 'Productschap Tuinbouw regulation 2009',
      evidence: 'part seen',
      checkedBy: NOT_CHECKED,
      note: 'the text only forbids running back; it lists no devices',
    } satisfies TableOrigin,
  },
] as const;
