import { NOT_CHECKED, type TableOrigin } from '../table-origin.ts';

/** Peukert exponent of lead-acid batteries by kind. */
export const PEUKERT_EXPONENT = {
  flooded: { low: 1.15, high: 1.3 },
  agm: { low: 1.05, high: 1.15 },
  gel: { low: 1.1, high: 1.2 },
  unknown: { low: 1.25, high: 1.25 },
} as const;

/** Share of the capacity to plan with, so that the battery lasts: from memory. */
export const PLANNED_DEPTH = { 'deep-cycle': 0.5, starting: 0.2 } as const;

/** Capacity left in the cold, share of that at 27 degC; straight lines between: from memory. */
export const COLD_CAPACITY: readonly (readonly [temperatureC: number, share: number])[] = [
  [-18, 0.6],
  [0, 0.8],
  [27, 1],
];

/** Charging coils of small engines, A at 3600 turns per minute. */
export const CHARGING_COILS = {
  sizes: [3, 5, 9, 10, 16, 20],
  usefulFraction: 0.8,
  chargeAcceptance: 0.85,
} as const;

export const BATTERY_ORIGIN: TableOrigin = {
  place: 'any',
  edition: 'two battery references',
  date: 'unknown',
  source:
    'Exponent ranges, default 1.25, reserve capacity and cranking definitions seen in two references; coils of 5, 9, 10, 16 A in a small-engine service manual',
  evidence: 'part seen',
  checkedBy: NOT_CHECKED,
  note: 'Planned depth, cold capacity, coils of 3 and 20 A, useful fraction and acceptance are from memory.',
};
