import { NOT_CHECKED, type TableOrigin } from '../table-origin.ts';

/** Crop groups of the published drift regressions. */
export const DRIFT_CROPS = [
  'arable',
  'hops',
  'vines-late',
  'vines-early',
  'fruit-late',
  'fruit-early',
  'aerial',
] as const;
export type DriftCrop = (typeof DRIFT_CROPS)[number];

/** Drift in per cent of the applied rate: a x^b up to the hinge, c x^d beyond it, x in metres. */
export interface DriftRow {
  readonly crop: DriftCrop;
  readonly applications: number;
  /** Percentile of each single application, so that the season stays at the 90th. */
  readonly percentile: number;
  readonly a: number;
  readonly b: number;
  readonly beyond?: { readonly hinge: number; readonly c: number; readonly d: number };
}

export const DRIFT_ROWS: readonly DriftRow[] = [
  { crop: 'arable', applications: 1, percentile: 90, a: 2.7593, b: -0.9778 },
  { crop: 'arable', applications: 2, percentile: 82, a: 2.4376, b: -1.01 },
  { crop: 'arable', applications: 3, percentile: 77, a: 2.0244, b: -0.9956 },
  { crop: 'arable', applications: 4, percentile: 74, a: 1.8619, b: -0.9861 },
  { crop: 'arable', applications: 5, percentile: 72, a: 1.7942, b: -0.9943 },
  { crop: 'arable', applications: 6, percentile: 70, a: 1.6314, b: -0.9861 },
  { crop: 'arable', applications: 7, percentile: 69, a: 1.5784, b: -0.9811 },
  { crop: 'arable', applications: 8, percentile: 67, a: 1.5119, b: -0.9832 },
  {
    crop: 'hops',
    applications: 1,
    percentile: 90,
    a: 58.247,
    b: -1.0042,
    beyond: { hinge: 15.3, c: 8654.9, d: -2.8354 },
  },
  {
    crop: 'hops',
    applications: 2,
    percentile: 82,
    a: 66.243,
    b: -1.2001,
    beyond: { hinge: 15.3, c: 5555.3, d: -2.8231 },
  },
  {
    crop: 'hops',
    applications: 3,
    percentile: 77,
    a: 60.397,
    b: -1.2132,
    beyond: { hinge: 15.1, c: 4060.9, d: -2.7625 },
  },
  {
    crop: 'hops',
    applications: 4,
    percentile: 74,
    a: 58.559,
    b: -1.2171,
    beyond: { hinge: 14.6, c: 3670.4, d: -2.7619 },
  },
  {
    crop: 'hops',
    applications: 5,
    percentile: 72,
    a: 59.548,
    b: -1.2481,
    beyond: { hinge: 14.3, c: 2860.6, d: -2.7036 },
  },
  {
    crop: 'hops',
    applications: 6,
    percentile: 70,
    a: 60.136,
    b: -1.2699,
    beyond: { hinge: 14.5, c: 2954.0, d: -2.7269 },
  },
  {
    crop: 'hops',
    applications: 7,
    percentile: 69,
    a: 59.774,
    b: -1.2813,
    beyond: { hinge: 14.6, c: 3191.6, d: -2.7665 },
  },
  {
    crop: 'hops',
    applications: 8,
    percentile: 67,
    a: 53.2,
    b: -1.2469,
    beyond: { hinge: 14.6, c: 3010.1, d: -2.7549 },
  },
  { crop: 'vines-late', applications: 1, percentile: 90, a: 44.769, b: -1.5643 },
  { crop: 'vines-late', applications: 2, percentile: 82, a: 40.262, b: -1.5771 },
  { crop: 'vines-late', applications: 3, percentile: 77, a: 39.314, b: -1.5842 },
  { crop: 'vines-late', applications: 4, percentile: 74, a: 37.401, b: -1.5746 },
  { crop: 'vines-late', applications: 5, percentile: 72, a: 37.767, b: -1.5829 },
  { crop: 'vines-late', applications: 6, percentile: 70, a: 36.908, b: -1.5905 },
  { crop: 'vines-late', applications: 7, percentile: 69, a: 35.498, b: -1.5844 },
  { crop: 'vines-late', applications: 8, percentile: 67, a: 35.094, b: -1.5819 },
  { crop: 'vines-early', applications: 1, percentile: 90, a: 15.793, b: -1.608 },
  { crop: 'vines-early', applications: 2, percentile: 82, a: 15.461, b: -1.6599 },
  { crop: 'vines-early', applications: 3, percentile: 77, a: 16.887, b: -1.7223 },
  { crop: 'vines-early', applications: 4, percentile: 74, a: 16.484, b: -1.7172 },
  { crop: 'vines-early', applications: 5, percentile: 72, a: 15.648, b: -1.7072 },
  { crop: 'vines-early', applications: 6, percentile: 70, a: 15.119, b: -1.6999 },
  { crop: 'vines-early', applications: 7, percentile: 69, a: 14.675, b: -1.6936 },
  { crop: 'vines-early', applications: 8, percentile: 67, a: 14.948, b: -1.7177 },
  {
    crop: 'fruit-late',
    applications: 1,
    percentile: 90,
    a: 60.396,
    b: -1.2249,
    beyond: { hinge: 10.3, c: 210.7, d: -1.7599 },
  },
  {
    crop: 'fruit-late',
    applications: 2,
    percentile: 82,
    a: 42.002,
    b: -1.1306,
    beyond: { hinge: 11.1, c: 298.76, d: -1.9464 },
  },
  {
    crop: 'fruit-late',
    applications: 3,
    percentile: 77,
    a: 40.12,
    b: -1.1769,
    beyond: { hinge: 11.2, c: 247.78, d: -1.9299 },
  },
  {
    crop: 'fruit-late',
    applications: 4,
    percentile: 74,
    a: 36.273,
    b: -1.1616,
    beyond: { hinge: 11.0, c: 201.98, d: -1.8769 },
  },
  {
    crop: 'fruit-late',
    applications: 5,
    percentile: 72,
    a: 34.591,
    b: -1.1533,
    beyond: { hinge: 11.0, c: 197.08, d: -1.8799 },
  },
  {
    crop: 'fruit-late',
    applications: 6,
    percentile: 70,
    a: 31.64,
    b: -1.1239,
    beyond: { hinge: 10.9, c: 228.69, d: -1.9519 },
  },
  {
    crop: 'fruit-late',
    applications: 7,
    percentile: 69,
    a: 31.561,
    b: -1.1318,
    beyond: { hinge: 12.1, c: 281.84, d: -2.0087 },
  },
  {
    crop: 'fruit-late',
    applications: 8,
    percentile: 67,
    a: 29.136,
    b: -1.1048,
    beyond: { hinge: 11.7, c: 256.33, d: -1.9902 },
  },
  {
    crop: 'fruit-early',
    applications: 1,
    percentile: 90,
    a: 66.702,
    b: -0.752,
    beyond: { hinge: 11.4, c: 3867.9, d: -2.4183 },
  },
  {
    crop: 'fruit-early',
    applications: 2,
    percentile: 82,
    a: 62.272,
    b: -0.8116,
    beyond: { hinge: 13.3, c: 7961.7, d: -2.6854 },
  },
  {
    crop: 'fruit-early',
    applications: 3,
    percentile: 77,
    a: 58.796,
    b: -0.8171,
    beyond: { hinge: 13.6, c: 9598.8, d: -2.7706 },
  },
  {
    crop: 'fruit-early',
    applications: 4,
    percentile: 74,
    a: 58.947,
    b: -0.8331,
    beyond: { hinge: 13.3, c: 8609.8, d: -2.7592 },
  },
  {
    crop: 'fruit-early',
    applications: 5,
    percentile: 72,
    a: 58.111,
    b: -0.8391,
    beyond: { hinge: 13.1, c: 7684.6, d: -2.7366 },
  },
  {
    crop: 'fruit-early',
    applications: 6,
    percentile: 70,
    a: 58.829,
    b: -0.8644,
    beyond: { hinge: 13.0, c: 7065.6, d: -2.7323 },
  },
  {
    crop: 'fruit-early',
    applications: 7,
    percentile: 69,
    a: 59.912,
    b: -0.8838,
    beyond: { hinge: 13.2, c: 7292.9, d: -2.7463 },
  },
  {
    crop: 'fruit-early',
    applications: 8,
    percentile: 67,
    a: 59.395,
    b: -0.8941,
    beyond: { hinge: 13.3, c: 7750.9, d: -2.7752 },
  },
  {
    crop: 'aerial',
    applications: 1,
    percentile: 90,
    a: 50.47,
    b: -0.3819,
    beyond: { hinge: 16.2, c: 281.1, d: -0.9989 },
  },
];

export const DRIFT_ROWS_ORIGIN: TableOrigin = {
  place: 'European Union',
  edition: 'FOCUS Surface Water Scenarios, Appendix B, Table B.1 (regressions of Rautmann et al. 2001)',
  date: '2001',
  checkedBy: NOT_CHECKED,
  source: 'FOCUS SWS Appendix B, Table B.1; Rautmann et al. 2001',
  evidence: 'seen',
};

/** Groups of the table of basic drift values for one application. */
export const DRIFT_TABLE_GROUPS = [
  'field-crops',
  'fruit-early',
  'fruit-late',
  'vines-early',
  'vines-late',
  'hops',
  'area-crops-over-900-l-per-ha',
  'railway',
] as const;
export type DriftTableGroup = (typeof DRIFT_TABLE_GROUPS)[number];

/** Distances of the table [m]. */
export const DRIFT_TABLE_DISTANCES: readonly number[] = [1, 3, 5, 10, 15, 20, 30, 40, 50];

/** Drift in per cent of the applied rate, one application; null where the table has none. */
export const DRIFT_TABLE: Readonly<Record<DriftTableGroup, readonly (number | null)[]>> = {
  'field-crops': [2.77, 0.95, 0.57, 0.29, 0.2, 0.15, 0.1, 0.07, 0.06],
  'fruit-early': [null, 29.2, 19.89, 11.81, 5.55, 2.77, 1.04, 0.52, 0.3],
  'fruit-late': [null, 15.73, 8.41, 3.6, 1.81, 1.09, 0.54, 0.32, 0.22],
  'vines-early': [null, 2.7, 1.18, 0.39, 0.2, 0.13, 0.07, 0.04, 0.03],
  'vines-late': [null, 8.02, 3.62, 1.23, 0.65, 0.42, 0.22, 0.14, 0.1],
  hops: [null, 19.33, 11.57, 5.77, 3.84, 1.79, 0.56, 0.25, 0.13],
  'area-crops-over-900-l-per-ha': [4.44, null, 0.18, 0.05, 0.02, 0.012, 0.005, 0.003, 0.002],
  railway: [
    null,
    0.018721696,
    0.014363896,
    0.010026007,
    0.008124366,
    0.006998158,
    0.005670811,
    null,
    0.004350831,
  ],
};

export const DRIFT_TABLE_ORIGIN: TableOrigin = {
  place: 'Germany',
  edition: 'JKI table of basic drift values',
  date: '2010',
  checkedBy: NOT_CHECKED,
  source: 'JKI 2010, basic drift values, as tabulated in the R package pfm',
  evidence: 'seen',
};

/** Conditions of the drift trials: outside them the curves promise nothing. */
export const DRIFT_TRIAL_LIMITS = {
  /** [m/s] */
  wind: 5,
  /** 8 km/h [m/s]. */
  speed: 8 / 3.6,
  note: 'no drift-reducing tip',
  source: 'summary of the JKI trials (fairway-is.eu drift note)',
} as const;
