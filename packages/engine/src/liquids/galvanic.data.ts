import type { LiquidGroup } from './liquid.ts';
import type { SourceId } from './sources.data.ts';

/** Potentials in flowing sea water, volt against the saturated calomel electrode, noble first. */
export const GALVANIC_SERIES: readonly (readonly [string, number])[] = [
  ['graphite', 0.25],
  ['platinum', 0.15],
  ['zirconium', -0.04],
  ['316 passive', -0.05],
  ['304 passive', -0.08],
  ['nickel-copper alloy 400', -0.08],
  ['Ni-Cr-Mo alloy C', -0.08],
  ['titanium', -0.1],
  ['silver', -0.13],
  ['410 passive', -0.15],
  ['316 active', -0.18],
  ['nickel', -0.2],
  ['430 passive', -0.22],
  ['70/30 cupronickel', -0.25],
  ['90/10 cupronickel', -0.28],
  ['admiralty brass', -0.29],
  ['G bronze', -0.31],
  ['aluminium brass', -0.32],
  ['copper', -0.36],
  ['naval brass', -0.4],
  ['410 active', -0.52],
  ['304 active', -0.53],
  ['430 active', -0.57],
  ['carbon steel', -0.61],
  ['cast iron', -0.61],
  ['aluminium 3003', -0.79],
  ['zinc', -1.03],
];

export const GALVANIC_SERIES_SOURCE: SourceId = 'ASM13_TI';

export interface GalvanicRule {
  readonly groups: readonly LiquidGroup[];
  readonly liquids: string;
  /** Greatest difference that passes without a warning [V]. */
  readonly limit: number;
  readonly source: SourceId;
  readonly seen: boolean;
}

/** Differences above which two metals in one liquid are warned of; the first rule that fits a liquid holds. */
export const GALVANIC_RULES: readonly GalvanicRule[] = [
  {
    groups: ['chloride-brine', 'fertiliser', 'bleach', 'acid'],
    liquids: 'chloride brine, fertiliser, bleach, acid',
    limit: 0.15,
    source: 'MILSTD889',
    seen: false,
  },
  {
    groups: ['water', 'pesticide', 'organic', 'winterising'],
    liquids: 'fresh water, dilute pesticide',
    limit: 0.25,
    source: 'MILSTD889',
    seen: false,
  },
  { groups: [], liquids: 'any other, a published limit', limit: 0.2, source: 'GALV_200MV', seen: true },
];
