import { inRange } from '../in-range.ts';
import { NOT_CHECKED, type TableOrigin } from '../table-origin.ts';

/** Deviation at which a tip is worn out, by who says so. */
export const WEAR_LIMITS = {
  'us-extension': {
    limit: 0.1,
    origin: {
      place: 'guidance (USA)',
      edition: 'Texas Cooperative Extension (Redmon); Illinois exam text',
      date: 'unknown',
      checkedBy: NOT_CHECKED,
      source: 'Texas Cooperative Extension (Redmon); Illinois Department of Agriculture exam text',
      evidence: 'seen',
    },
  },
  'iso-new-tip': {
    limit: 0.05,
    origin: {
      place: 'ISO',
      edition: 'ISO 5682-1, new tips',
      date: 'unknown',
      checkedBy: NOT_CHECKED,
      source: 'ISO 5682-1; from memory',
      evidence: 'memory',
    },
  },
} as const satisfies Record<string, { limit: number; origin: TableOrigin }>;

/**
 * How far the flow of a tip is off what it should be.
 *
 * @formula e = Q / Q_n - 1
 * @param nominal flow of a new tip at the same pressure [m3/s] 1e-8..1
 * @param measured flow caught [m3/s] 0..1
 * @returns relative deviation, positive when worn wide [-]
 * @throws RangeError when a parameter is outside its range
 * @source Definition.
 */
export function flowDeviation(nominal: number, measured: number): number {
  inRange('nominal', nominal, 1e-8, 1, 'm3/s');
  inRange('measured', measured, 0, 1, 'm3/s');
  return measured / nominal - 1;
}

/**
 * Whether a tip is worn beyond the limit.
 *
 * @formula Q / Q_n - 1 > limit
 * @param nominal flow of a new tip at the same pressure [m3/s] 1e-8..1
 * @param measured flow caught [m3/s] 0..1
 * @param limit deviation allowed [-] 0..1
 * @returns replace it [yes/no]
 * @valid The limit defaults to 0.1. A tip that gives too little is blocked, not worn: clean it.
 * @throws RangeError when a parameter is outside its range
 * @source Texas Cooperative Extension (Redmon); Illinois Department of Agriculture exam text: 10 % over new.
 */
export function tipIsWorn(
  nominal: number,
  measured: number,
  limit: number = WEAR_LIMITS['us-extension'].limit,
): boolean {
  inRange('limit', limit, 0, 1);
  return flowDeviation(nominal, measured) > limit;
}
