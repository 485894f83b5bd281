import { NOT_CHECKED, type TableOrigin } from '../table-origin.ts';

/** Droplet classes from finest to coarsest. */
export const DROPLET_CLASSES = [
  'extremely-fine',
  'very-fine',
  'fine',
  'medium',
  'coarse',
  'very-coarse',
  'extremely-coarse',
  'ultra-coarse',
] as const;
export type DropletClass = (typeof DROPLET_CLASSES)[number];

/** Reference tips whose spectrum, measured on the same instrument, is the border between two classes. */
export const CLASS_BORDERS: readonly {
  readonly finer: DropletClass;
  readonly coarser: DropletClass;
  /** Fan angle [rad]. */
  readonly angle: number;
  /** ISO size. */
  readonly size: string;
  /** [Pa] */
  readonly pressure: number;
}[] = [
  { finer: 'very-fine', coarser: 'fine', angle: (110 * Math.PI) / 180, size: '01', pressure: 4.5e5 },
  { finer: 'fine', coarser: 'medium', angle: (110 * Math.PI) / 180, size: '03', pressure: 3e5 },
  { finer: 'medium', coarser: 'coarse', angle: (110 * Math.PI) / 180, size: '06', pressure: 2e5 },
  { finer: 'coarse', coarser: 'very-coarse', angle: (80 * Math.PI) / 180, size: '08', pressure: 2.5e5 },
  {
    finer: 'very-coarse',
    coarser: 'extremely-coarse',
    angle: (65 * Math.PI) / 180,
    size: '10',
    pressure: 2e5,
  },
  {
    finer: 'extremely-coarse',
    coarser: 'ultra-coarse',
    angle: (65 * Math.PI) / 180,
    size: '15',
    pressure: 1.5e5,
  },
];

export const CLASS_BORDERS_ORIGIN: TableOrigin = {
  place: 'ASABE / ISO',
  edition: 'ASABE S572.1, ISO 25358',
  date: 'unknown',
  checkedBy: NOT_CHECKED,
  source: 'ASABE S572.1 / ISO 25358; from memory',
  evidence: 'memory',
};

/** Published bands of the median diameter, which disagree: a class is never taken from the median alone. */
export const MEDIAN_DIAMETER_BANDS = [
  {
    who: 'secondary table attributed to S572.1 (seen)',
    /** Upper ends [m]. */
    upTo: [
      { droplets: 'very-fine', diameter: 145e-6 },
      { droplets: 'fine', diameter: 225e-6 },
      { droplets: 'medium', diameter: 325e-6 },
      { droplets: 'coarse', diameter: 400e-6 },
      { droplets: 'very-coarse', diameter: 500e-6 },
    ],
  },
  {
    who: 'US EPA, Worker Protection Standard of 2015 (seen): medium or larger from 294 um',
    upTo: [{ droplets: 'fine', diameter: 294e-6 }],
  },
] as const;

/** Most of the volume that may be in drops below 150 um, by class. */
export const DRIFTABLE_SHARE: readonly { readonly droplets: DropletClass; readonly share: number }[] = [
  { droplets: 'medium', share: 0.2 },
  { droplets: 'coarse', share: 0.1 },
  { droplets: 'very-coarse', share: 0.05 },
];
export const DRIFTABLE_SHARE_ORIGIN: TableOrigin = {
  place: 'guidance (Australia)',
  edition: 'Spray Application Manual module 4.2',
  date: '2025',
  checkedBy: NOT_CHECKED,
  source: 'GRDC Spray Application Manual 2025, module 4.2',
  evidence: 'seen',
};
