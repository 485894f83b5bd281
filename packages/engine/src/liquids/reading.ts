import type { PropertyFlag } from './property-flag.ts';
import type { SourceId } from './sources.data.ts';

/** One property as a law gives it. */
export interface Reading {
  readonly value: number | undefined;
  readonly sources: readonly SourceId[];
  readonly flag?: Omit<PropertyFlag, 'property'>;
}

/** All that a liquid's model says at a strength and temperature. */
export interface Readings {
  readonly density: Reading;
  readonly viscosity: Reading;
  readonly coldLimit: Reading;
  readonly coldLimitKind: 'ice' | 'salt-out';
}

export const known = (value: number, ...sources: SourceId[]): Reading => ({ value, sources });

export const estimate = (
  value: number,
  low: number,
  high: number,
  reason: string,
  ...sources: SourceId[]
): Reading => ({ value, sources, flag: { kind: 'estimate', reason, low, high } });

export const unknown = (reason: string, bounds?: readonly [number, number]): Reading => ({
  value: undefined,
  sources: [],
  flag:
    bounds === undefined
      ? { kind: 'unknown', reason }
      : { kind: 'unknown', reason, low: bounds[0], high: bounds[1] },
});

/** Unknown when the law refuses: its own words are the reason. */
export function readingOf(law: () => Reading, bounds?: readonly [number, number]): Reading {
  try {
    return law();
  } catch (problem) {
    if (problem instanceof RangeError) return unknown(problem.message, bounds);
    throw problem;
  }
}
