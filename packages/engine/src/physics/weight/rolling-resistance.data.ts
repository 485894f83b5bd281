import { NOT_CHECKED, type TableOrigin } from '../table-origin.ts';

export interface GroundResistance {
  readonly ground: string;
  readonly low: number;
  readonly high: number;
  /** Value to reckon with. */
  readonly design: number;
  readonly evidence: TableOrigin['evidence'];
  readonly source: string;
}

/** Rolling resistance as a share of the weight. Design is the high end where the source gives a range. */
export const GROUND_RESISTANCE = {
  'hard-road': {
    ground: 'concrete or new asphalt, pneumatic tyres',
    low: 0.008,
    high: 0.015,
    design: 0.015,
    evidence: 'seen',
    source: 'Moyer, in a mechanical engineers handbook; general reference 0.010-0.015',
  },
  'worn-asphalt': {
    ground: 'worn asphalt or tar',
    low: 0.02,
    high: 0.02,
    design: 0.02,
    evidence: 'seen',
    source: 'Carvill, data handbook',
  },
  'packed-gravel': {
    ground: 'dry firm well-packed gravel',
    low: 0.01,
    high: 0.02,
    design: 0.02,
    evidence: 'seen',
    source: 'Moyer 0.012; Carvill 0.01; general reference 0.02',
  },
  'loose-gravel': {
    ground: 'loose worn gravel',
    low: 0.04,
    high: 0.06,
    design: 0.06,
    evidence: 'seen',
    source: 'Carvill 0.04; Moyer, wet loose, 0.06',
  },
  soil: {
    ground: 'medium-hard soil',
    low: 0.04,
    high: 0.08,
    design: 0.08,
    evidence: 'seen',
    source: 'Carvill 0.08; general reference 0.04-0.08',
  },
  turf: {
    ground: 'turf, firm and dry',
    low: 0.05,
    high: 0.08,
    design: 0.08,
    evidence: 'memory',
    source: 'no published turf value found',
  },
  'wet-turf': {
    ground: 'wet turf or tilled soil',
    low: 0.1,
    high: 0.2,
    design: 0.15,
    evidence: 'memory',
    source: 'from memory',
  },
  sand: {
    ground: 'loose sand',
    low: 0.1,
    high: 0.4,
    design: 0.4,
    evidence: 'seen',
    source: 'Carvill 0.1-0.2; general reference 0.2-0.4',
  },
} as const satisfies Record<string, GroundResistance>;

export const GROUND_ORIGIN: TableOrigin = {
  place: 'any',
  edition: 'handbooks',
  date: 'unknown',
  source: 'As named beside each value',
  evidence: 'part seen',
  checkedBy: NOT_CHECKED,
  note: 'Wheels under about 400 mm and hard casters are worse by roughly the inverse of the diameter on soft ground (from memory).',
};

/** Guideline forces for pushing and pulling by hand, kgf: guidelines, not limits. */
export const HAND_FORCE_GUIDE = {
  start: { men: 20, women: 15 },
  sustained: { men: 10, women: 7 },
  origin: {
    place: 'United Kingdom',
    edition: 'HSE guidance on manual handling (L23)',
    date: 'unknown',
    source: 'HSE push and pull assessment page',
    evidence: 'seen',
    checkedBy: NOT_CHECKED,
    note: 'Hands between knuckle and shoulder height, not more than about 20 m without a break. ISO 11228-2:2007 gives the full method; its tables were not read.',
  },
} as const satisfies { origin: TableOrigin; [name: string]: unknown };
