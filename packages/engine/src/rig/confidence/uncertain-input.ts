import type { ToleranceKind } from './tolerances.data.ts';

/**
 * One input of one rig that is not known exactly. Input = nominal × exp(x), x normal with this mean and deviation:
 * of the tolerance table, or of a correction that readings have taught.
 */
export interface UncertainInput {
  /** `kind:item`, such as `tip-flow:tip`; `dry-mass:rig` and `wind:rig` for the rig as a whole. */
  readonly id: string;
  readonly kind: ToleranceKind;
  /** Item of the rig; `rig` for what belongs to none. */
  readonly item: string;
  /** "Plunger pump: flow". */
  readonly name: string;
  /** Mean and standard deviation of the logarithm of the factor [-]. */
  readonly mean: number;
  readonly deviation: number;
  readonly source: string;
  /** Whether mean and deviation come from readings of this part instead of the table. */
  readonly taught: boolean;
}

/** What readings have taught of one input, in place of its tolerance. */
export type Correction = Pick<UncertainInput, 'id' | 'mean' | 'deviation' | 'source'>;
