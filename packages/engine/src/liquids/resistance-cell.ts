import type { LiquidId, StrengthUnit } from './liquid.ts';
import type { MaterialId } from './materials.data.ts';
import type { SourceId } from './sources.data.ts';

/**
 * How a material stands a liquid: suited lasts in continuous wet contact; limited stands short contact, flushed and
 * inspected; not-suited is not fitted; no-data means nothing was found, and is never a pass.
 */
export type Rating = 'suited' | 'limited' | 'not-suited' | 'no-data';

export type Confidence = 'high' | 'medium' | 'low' | 'none';

/** One material in one liquid. */
export interface ResistanceCell {
  readonly liquid: LiquidId;
  readonly material: MaterialId;
  readonly rating: Rating;
  readonly confidence: Confidence;
  /** True when evidence bearing on this very cell was read. */
  readonly seen: boolean;
  readonly sources: readonly SourceId[];
  /** Warmest contact that was rated [degC]; absent: ambient. */
  readonly maxC?: number;
  readonly strength?: { readonly min?: number; readonly max?: number; readonly unit: StrengthUnit };
  /** What else was said of the conditions. */
  readonly condition?: string;
  readonly note?: string;
  /** Where sources disagree: the cautious rating is kept and this says so. */
  readonly conflict?: string;
}
