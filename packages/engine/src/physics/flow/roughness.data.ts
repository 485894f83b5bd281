import { NOT_CHECKED, type TableOrigin } from '../table-origin.ts';

export interface SurfaceRoughness {
  /** Absolute roughness [m]: lowest, customary and highest value in the tables read. */
  readonly low: number;
  readonly typical: number;
  readonly high: number;
}

/** Absolute roughness of the inside walls a rig has. */
export const ROUGHNESS = {
  plastic: { low: 1.5e-6, typical: 1.5e-6, high: 7e-6 },
  rubber: { low: 6e-6, typical: 1e-5, high: 7e-5 },
  'brass-or-copper-new': { low: 1e-6, typical: 1.5e-6, high: 2e-6 },
  'stainless-steel': { low: 1e-6, typical: 2e-6, high: 1.5e-5 },
  'steel-new': { low: 4e-5, typical: 4.5e-5, high: 5e-5 },
  'steel-galvanised': { low: 1.5e-4, typical: 1.5e-4, high: 1.5e-4 },
} as const satisfies Record<string, SurfaceRoughness>;

export const ROUGHNESS_ORIGIN: TableOrigin = {
  place: 'everywhere',
  edition: 'roughness tables of four engineering pages',
  date: 'unknown',
  source:
    'Absolute roughness tables at caetool.com (surface roughness), efunda.com (roughness), a petroleum glossary (surface roughness) and a pipe roughness page; where they differ the ends of the range are kept',
  evidence: 'seen',
  checkedBy: NOT_CHECKED,
  note: 'Hose makers seldom publish roughness; a worn or scaled wall is rougher than any of these.',
};
