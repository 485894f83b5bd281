import { NOT_CHECKED, type TableOrigin } from '../table-origin.ts';

const limit = (source: string, evidence: TableOrigin['evidence'], note?: string): TableOrigin => ({
  place: 'United States',
  edition: 'unknown',
  date: 'unknown',
  source,
  evidence,
  checkedBy: NOT_CHECKED,
  ...(note === undefined ? {} : { note }),
});

/** Size and weight limits on the road; states and special vehicles differ. */
export const LEGAL_SIZE = {
  widthIn: { value: 102, origin: limit('23 CFR 658.15, national network', 'memory') },
  clearanceLampsFromIn: {
    value: 80,
    origin: limit('FMVSS 108: 80 in or wider', 'part seen', 'a state leaflet that was seen says over 80 in'),
  },
  singleAxleLb: { value: 20000, origin: limit('23 CFR 658, Interstate', 'memory') },
  tandemAxleLb: { value: 34000, origin: limit('23 CFR 658, Interstate', 'memory') },
  grossLb: { value: 80000, origin: limit('23 CFR 658, Interstate', 'memory') },
  commercialCombinationLb: {
    value: 10001,
    origin: limit('Commercial motor vehicle threshold of 49 CFR 390', 'seen'),
  },
  placardMaxGvwrLb: {
    value: 10000,
    origin: limit(
      '49 CFR 571.110 S4.3.5: trailer to 10000 lb shows cargo capacity = GVWR - weighed empty weight',
      'seen',
    ),
  },
} as const satisfies Record<string, { value: number; origin: TableOrigin }>;

/** Who counts as the maker of a road vehicle, and what follows. Guidance to check, never a ruling. */
export const ROAD_TRAILER_DUTIES: readonly { readonly what: string; readonly origin: TableOrigin }[] = [
  {
    what: 'A field implement of abnormal configuration that cannot exceed 20 mph and uses the road only now and then is not a motor vehicle.',
    origin: limit('NHTSA interpretation letters of 1975 and 1994', 'seen'),
  },
  {
    what: 'The maker of a road trailer registers, certifies and labels it, gives it an identification number and meets the lighting and tyre standards.',
    origin: limit(
      'NHTSA interpretation of 1985: 49 CFR 565, 566, 567; FMVSS 108, 110 or 120 (106, 116, 121 if so braked)',
      'seen',
    ),
  },
  {
    what: 'A trailer follows within 3 in of the tow path on a straight level road.',
    origin: limit('49 CFR 393.70(a)', 'seen'),
  },
];
