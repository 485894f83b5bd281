import type { AgitationClass, LiquidGroup } from './liquid.ts';
import type { SourceId } from './sources.data.ts';

/** What to do after a kind of liquid; the first entry that fits a liquid holds. */
export interface FlushRule {
  readonly groups: readonly LiquidGroup[];
  readonly after: string;
  readonly steps: readonly string[];
}

export const FLUSH_RULES: readonly FlushRule[] = [
  {
    groups: ['bleach'],
    after: 'bleach',
    steps: [
      'Fresh water through pump, hose, reel and gun the same day, until no smell is left.',
      'Rinse the frame.',
      'Never follow with acid.',
    ],
  },
  {
    groups: ['chloride-brine'],
    after: 'chloride brine',
    steps: ['Fresh water inside and out before it dries.', 'Drain crevices and low points.'],
  },
  {
    groups: ['fertiliser'],
    after: 'fertiliser',
    steps: ['Water through everything daily.', 'Drain low points.', 'Never leave it standing in brass.'],
  },
  {
    groups: ['acid', 'caustic'],
    after: 'acid or caustic',
    steps: ['Water through everything until the rinse reads pH 6 to 8, before any other chemical.'],
  },
  {
    groups: ['pesticide'],
    after: 'pesticide',
    steps: [
      'Triple rinse as the label says.',
      'Strip strainers and dead ends.',
      'Apply the rinse water on a site of the label.',
    ],
  },
  {
    groups: ['winterising'],
    after: 'winter',
    steps: [
      'Drain, then fill with glycol until the drained fluid still stands the target cold after the water left inside has thinned it.',
      'Flush the glycol out before bleach or another strong oxidiser.',
    ],
  },
];

/** Share of the tank that must be moved in a minute. */
export const AGITATION_SHARES: Readonly<
  Record<AgitationClass, { readonly perMinute: number; readonly source: SourceId }>
> = {
  none: { perMinute: 0, source: 'GRDC_AGIT' },
  solution: { perMinute: 0.03, source: 'GRDC_AGIT' },
  emulsion: { perMinute: 0.03, source: 'GRDC_AGIT' },
  suspension: { perMinute: 0.05, source: 'GRDC_AGIT' },
};

export const AGITATION_CONFLICT =
  'The source states 2-3 % of the tank a minute and a turnover in 15-20 minutes; they differ (33-50 minutes against 5-6.7 % a minute). Suspensions keep the stronger.';

/** What else is known of stirring a tank. */
export const AGITATION_ADVICE: readonly { readonly text: string; readonly source: SourceId }[] = [
  { text: 'Feed jets from the pressure side, never from the bypass return.', source: 'PEST_SAFETY_HB' },
  {
    text: 'One jet of 1.0-3.0 mm at 3-8 bar in 400 L missed the uniformity limit of ISO 5682-2 every time: use several.',
    source: 'JET_400L',
  },
  {
    text: 'A paddle at about 225 a minute kept oil emulsions even in tanks of 200-465 gal.',
    source: 'OILSPRAY',
  },
];

export type StrainerPlace = 'fill opening' | 'suction' | 'pressure line' | 'nozzle body';
export type StrainerPump = 'centrifugal' | 'diaphragm' | 'other';

export interface MeshRange {
  readonly coarsest: number;
  readonly finest: number;
  readonly source: SourceId;
  readonly seen: boolean;
  readonly note: string;
}

export const STRAINER_MESH: Readonly<Record<StrainerPlace, MeshRange>> = {
  'fill opening': { coarsest: 12, finest: 25, source: 'PEST_SAFETY_HB', seen: true, note: '' },
  suction: { coarsest: 15, finest: 40, source: 'PEST_SAFETY_HB', seen: true, note: '' },
  'pressure line': {
    coarsest: 25,
    finest: 100,
    source: 'PEST_SAFETY_HB',
    seen: true,
    note: '80-100 in another handbook',
  },
  'nozzle body': { coarsest: 50, finest: 100, source: 'PEST_SAFETY_HB', seen: true, note: '' },
};

export const SUCTION_MESH_BY_PUMP: Readonly<Partial<Record<StrainerPump, MeshRange>>> = {
  centrifugal: {
    coarsest: 12,
    finest: 16,
    source: 'GRDC_FILT',
    seen: true,
    note: 'one handbook wants no suction strainer at all on a centrifugal pump: 16 mesh or a screen in the tank, never finer',
  },
  diaphragm: { coarsest: 30, finest: 50, source: 'GRDC_FILT', seen: true, note: '' },
};

/** Finest mesh that a tank mix passes; recalled. */
export const FINEST_MESH: Readonly<Record<AgitationClass, number>> = {
  none: 100,
  solution: 100,
  emulsion: 100,
  suspension: 50,
};

/** Open width of a mesh [m]; recalled test sieves. */
export const MESH_OPENINGS: readonly (readonly [number, number])[] = [
  [12, 1.7e-3],
  [16, 1.18e-3],
  [20, 0.85e-3],
  [25, 0.71e-3],
  [30, 0.6e-3],
  [40, 0.425e-3],
  [50, 0.3e-3],
  [80, 0.18e-3],
  [100, 0.15e-3],
  [200, 0.075e-3],
];

/** Habits that hold for every rig. */
export const SAFE_HANDLING: readonly string[] = [
  'Protection that the label or the safety sheet asks for comes first; this program repeats it, never replaces it.',
  'Eyewash water on the rig for bleach, acid and caustic.',
  'Add bleach or caustic to water, not the reverse.',
  'One rig of its own, or a recorded water flush, between bleach and anything else.',
  'Label tanks and hoses by liquid; lock the bleach fill.',
];
