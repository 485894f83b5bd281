import { inRange } from '../in-range.ts';
import { PATTERN_SHAPES, patternDensity, type PatternShape } from './pattern-shape.ts';

/** Nodes and weights of the three-point Gauss rule on 0..1: exact for the squares of the parabolic pieces. */
const GAUSS: readonly (readonly [number, number])[] = [
  [0.5 - Math.sqrt(0.15), 5 / 18],
  [0.5, 8 / 18],
  [0.5 + Math.sqrt(0.15), 5 / 18],
];
/** Grooves looked at when the spacing is no whole number of grooves and so the picture never repeats. */
const GROOVES_WITHOUT_REPEAT = 500;

/** Places within a spacing, 0..spacing, where the summed pattern has a corner. */
function corners(width: number, spacing: number): number[] {
  const wrap = (x: number) => x - Math.floor(x / spacing) * spacing;
  return [...new Set([0, spacing, wrap(width / 2), wrap(-width / 2)])].sort((a, b) => a - b);
}

/** Volume on each metre at x under an endless boom with tips at 0, spacing, 2 spacing ... */
function summedDensity(shape: PatternShape, width: number, spacing: number, x: number): number {
  let sum = 0;
  for (let k = Math.ceil((x - width / 2) / spacing); k * spacing <= x + width / 2; k++)
    sum += patternDensity(shape, width, x - k * spacing);
  return sum;
}

/** Integral of f over a..b, cut at the corners so that each piece is a polynomial. */
function integrate(f: (x: number) => number, a: number, b: number, spacing: number, at: number[]): number {
  const cuts = [a];
  for (let period = Math.floor(a / spacing); period * spacing < b; period++)
    for (const corner of at) {
      const x = period * spacing + corner;
      if (x > a && x < b) cuts.push(x);
    }
  cuts.push(b);
  let sum = 0;
  for (let i = 1; i < cuts.length; i++) {
    const from = cuts[i - 1] ?? a;
    const length = (cuts[i] ?? b) - from;
    for (const [node, weight] of GAUSS) sum += weight * length * f(from + node * length);
  }
  return sum;
}

/**
 * Evenness across an endless boom of equal tips whose single pattern has an ideal shape.
 *
 * @formula CV = sqrt(mean (S sum_k f(x - k S) - 1)^2), continuous and summed into grooves
 * @param shape distribution of one tip [one of triangular, parabolic, flat]
 * @param width width of one tip's pattern at the target [m] 0.05..60
 * @param spacing spacing of the tips [m] 0.05..5
 * @param groove width of the collecting grooves [m] 0.005..1
 * @result continuous coefficient of variation without grooves [-]
 * @result grooves coefficient of variation of the grooves [-]
 * @result most fullest groove over the mean [-]
 * @result least emptiest groove over the mean [-]
 * @valid Grooves default to 0.1 m with a tip on a groove edge. Ideal patterns only: a real boom is worse, and a hand gun or boomless nozzle is not one of these shapes.
 * @throws RangeError when a parameter is outside its range
 * @source Superposition of single patterns; computed. Population standard deviation.
 */
export function boomUniformity(
  shape: PatternShape,
  width: number,
  spacing: number,
  groove = 0.1,
): { continuous: number; grooves: number; most: number; least: number } {
  if (!PATTERN_SHAPES.includes(shape))
    throw new RangeError(`shape is '${String(shape)}'; it must be one of ${PATTERN_SHAPES.join(', ')}`);
  inRange('width', width, 0.05, 60, 'm');
  inRange('spacing', spacing, 0.05, 5, 'm');
  inRange('groove', groove, 0.005, 1, 'm');
  const at = corners(width, spacing);
  const relative = (x: number) => summedDensity(shape, width, spacing, x) * spacing;
  // About the mean, which is 1: the difference of two squares would lose a small variation to rounding.
  const variance = integrate((x) => (relative(x) - 1) ** 2, 0, spacing, spacing, at) / spacing;
  const whole = Math.abs(spacing / groove - Math.round(spacing / groove)) < 1e-6;
  const count = whole ? Math.round(spacing / groove) : GROOVES_WITHOUT_REPEAT;
  const step = whole ? spacing / count : groove;
  const volumes: number[] = [];
  for (let i = 0; i < count; i++)
    volumes.push(integrate(relative, i * step, (i + 1) * step, spacing, at) / step);
  const mean = volumes.reduce((a, b) => a + b, 0) / count;
  return {
    continuous: Math.sqrt(variance),
    grooves: Math.sqrt(volumes.reduce((sum, v) => sum + (v - mean) ** 2, 0) / count) / mean,
    most: Math.max(...volumes) / mean,
    least: Math.min(...volumes) / mean,
  };
}
