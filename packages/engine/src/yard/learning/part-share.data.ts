import type { ToleranceKind } from '../../rig/index.ts';

/** How the doubt of one kind of input divides, and how its drift is said. */
export interface PartShare {
  /** Share of the variance that belongs to the catalogue part and so to every copy of it; the rest is one copy's own [-]. */
  readonly share: number;
  readonly source: string;
  /** What the part is held against: "its leaflet". */
  readonly against: string;
}

/** Inputs that a test with water, or a scale, teaches. Nobody has published how their doubt divides: shares are judgement. */
export const PART_SHARES: Readonly<Partial<Record<ToleranceKind, PartShare>>> = {
  'pump-flow': {
    share: 0.7,
    source: 'judgement: leaflets round and favour; copies of one casting differ less',
    against: 'its leaflet',
  },
  'pump-slip': {
    share: 0.5,
    source: 'judgement: half the design, half the fit of one copy',
    against: 'its leaflet',
  },
  'drive-speed': {
    share: 0.2,
    source: 'judgement: a governor is set by hand, copy by copy',
    against: 'its setting',
  },
  'hose-bore': {
    share: 0.6,
    source: 'judgement: one mandrel makes many lengths',
    against: 'its nominal bore',
  },
  'hose-roughness': {
    share: 0.8,
    source: 'judgement: roughness is of the compound, not of the copy',
    against: 'its data',
  },
  passage: {
    share: 0.7,
    source: 'judgement: the shape of the passage is the design',
    against: 'its leaflet',
  },
  'set-pressure': {
    share: 0.2,
    source: 'judgement: it is set by hand, by one gauge',
    against: 'its setting',
  },
  override: {
    share: 0.7,
    source: 'judgement: spring and seat are the design',
    against: 'its leaflet',
  },
  'tip-flow': {
    share: 0.5,
    source: 'judgement: half the drawing and the chart, half the copy',
    against: 'its chart',
  },
  'jet-flow': {
    share: 0.6,
    source: 'judgement: the bore of a jet is the design, its finish the copy',
    against: 'its chart',
  },
  current: {
    share: 0.7,
    source: 'judgement: as the flow of a pump',
    against: 'its leaflet',
  },
  'dry-mass': {
    share: 0.6,
    source:
      'judgement: a leaflet rounds, or tells what is shipped, for every copy; brackets, wire and paint are of the design; how thick a casting or a weld comes out is of the copy',
    against: 'the list',
  },
  throw: {
    share: 0.8,
    source: 'judgement: mostly what the throw model does not know of this gun',
    against: 'the throw model',
  },
};
