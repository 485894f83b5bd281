import type { SourceId } from './sources.data.ts';

/**
 * What a strength counts. Trade % is grams of available chlorine in 100 mL; volume % is volume of concentrate in the
 * mix; they are never turned into each other without a density.
 */
export type StrengthUnit = 'trade %' | 'weight %' | 'g/L' | 'volume %';

export type LiquidId =
  | 'water'
  | 'naocl_12'
  | 'naocl_wash'
  | 'glyphosate_mix'
  | 'uan'
  | 'app_10_34_0'
  | 'kts'
  | 'ats'
  | 'cacl2_brine'
  | 'mgcl2_brine'
  | 'lignosulfonate'
  | 'polymer_dust'
  | 'quat'
  | 'citric'
  | 'oxalic'
  | 'sulfamic'
  | 'naoh'
  | 'hort_oil'
  | 'copper_suspension'
  | 'copper_sulfate'
  | 'wettable_powder'
  | 'foam_marker'
  | 'pg';

/** What has to keep the tank's contents together. */
export type AgitationClass = 'none' | 'solution' | 'emulsion' | 'suspension';

/** Groups that rules of handling speak of. */
export type LiquidGroup =
  | 'water'
  | 'bleach'
  | 'acid'
  | 'acidic'
  | 'caustic'
  | 'ammonium'
  | 'thiosulfate'
  | 'fertiliser'
  | 'chloride-brine'
  | 'dust-suppressant'
  | 'pesticide'
  | 'organic'
  | 'copper'
  | 'winterising';

/** How strong a liquid may be given, and what the number counts. */
export interface StrengthRule {
  /** First is the unit of the liquid's own data. */
  readonly units: readonly StrengthUnit[];
  /** What the number counts: the salt, the solids, the available chlorine. */
  readonly counts: string;
  /** Usual range, in the first unit. */
  readonly usual: { readonly min: number; readonly max: number };
  /** True when density or resistance cannot be told without it. */
  readonly required: boolean;
}

/** A number with the bounds of its doubt. */
export interface Doubt {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** The law that a liquid's density and viscosity follow. */
export type PropertyModel =
  | { readonly kind: 'water' }
  | { readonly kind: 'hypochlorite'; readonly viscosity: 'near-water' | 'unknown' }
  | { readonly kind: 'salt'; readonly salt: 'CaCl2' | 'MgCl2' | 'NaOH' | 'CuSO4' }
  | { readonly kind: 'glycol' }
  | { readonly kind: 'urea-ammonium-nitrate' }
  | { readonly kind: 'ammonium-polyphosphate' }
  /** One grade at one density [kg/m3]. */
  | { readonly kind: 'one-grade'; readonly density: Doubt }
  /** Volumes of water and stock add up; the stock holds `stockFraction` of the counted substance at `stockDensity`. */
  | {
      readonly kind: 'ideal-mix';
      readonly stockFraction: number;
      readonly stockDensity: Doubt;
      readonly viscosity: 'dispersion' | 'near-water' | 'unknown';
    }
  /** Water as near as matters, or nothing known but a bracket [kg/m3]. */
  | {
      readonly kind: 'dilute';
      readonly density: 'near-water' | 'unknown';
      readonly viscosity: 'near-water' | 'unknown';
    };

/** What is known of a liquid. */
export interface Liquid {
  readonly id: LiquidId;
  readonly name: string;
  readonly composition: string;
  readonly groups: readonly LiquidGroup[];
  readonly strength: StrengthRule | undefined;
  readonly model: PropertyModel;
  /** Viscosity as a multiple of water's between which judgement puts an unknown one. */
  readonly viscosityJudgement?: readonly [number, number];
  /** Density [kg/m3] between which judgement puts an unknown one. */
  readonly densityJudgement?: readonly [number, number];
  readonly propertyNote: string;
  readonly sources: readonly SourceId[];
  readonly seen: boolean;
  readonly agitation: AgitationClass;
  readonly agitationNote: string;
  /** Least specific gravity rating of a tank for it. */
  readonly tankRatingMin: number;
  readonly tankNote: string;
  /** True when closed vessels of it must vent. */
  readonly vented: boolean;
  readonly abrasive: boolean;
  readonly flush: string;
  readonly hazards: readonly string[];
}
