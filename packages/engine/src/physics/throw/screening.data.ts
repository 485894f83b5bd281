/** Coefficients of 1, a, b, c, a², ab, b², ac, bc, c², a³, a²b, ab², b³; a = ln(d/5 mm), b = ln(p/10 bar), c = ln(q/0.75). */
export type ScreeningFit = readonly [
  ...[number, number, number, number, number, number, number],
  ...[number, number, number, number, number, number, number],
];

/** Height of the farthest drops over the head: 2.9 % rms, 11 % at worst against the throw model. */
export const FARTHEST_HEIGHT: ScreeningFit = [
  -1.9169, 0.6544, -0.8788, 0.1566, 0.0142, 0.1196, -0.0259, 0.0701, 0.0136, 0.0486, -0.0039, 0.0144, -0.034,
  0.0302,
];

/** Height of half of the water over the head: 3.7 % rms, 18 % at worst. */
export const BULK_HEIGHT: ScreeningFit = [
  -2.2383, 0.7278, -0.724, 0.124, 0.0074, 0.0182, 0.0415, 0.0565, -0.0182, 0.041, -0.0054, 0.0156, -0.0486,
  0.0109,
];

/** Best range of the farthest drops over twice the head: 2.5 % rms, 10 % at worst. */
export const FARTHEST_RANGE: ScreeningFit = [
  -2.3682, 0.6594, -0.9489, 0.1411, 0.0117, 0.1182, -0.0202, 0.0643, 0.0124, 0.0459, 0.004, 0.0096, -0.0251,
  0.0221,
];
