import { inRange } from '../in-range.ts';
import { INCH } from '../us-measure.ts';
import { flowCoefficientLoss } from './flow-coefficient.ts';
import { interpolatePoints, type Point } from './interpolate-points.ts';

/**
 * Share of a square wire screen that is open.
 *
 * @formula a = (1 - m d)², m meshes per length
 * @param meshPerInch meshes per inch [-] 4..400
 * @param wireDiameter wire diameter [m] 1e-5..0.003
 * @returns open area over screen area [-]
 * @throws RangeError when a parameter is outside its range, or the wire fills the mesh
 * @source Geometry
 */
export function screenOpenFraction(meshPerInch: number, wireDiameter: number): number {
  inRange('meshPerInch', meshPerInch, 4, 400, '-');
  inRange('wireDiameter', wireDiameter, 1e-5, Math.min(0.003, (0.95 * INCH) / meshPerInch), 'm');
  return (1 - (meshPerInch * wireDiameter) / INCH) ** 2;
}

/**
 * Loss coefficient of a wire screen across a stream, by the gauze formula.
 *
 * @formula K = 1.3 (1 - a) + (1/a - 1)²
 * @param openFraction open area over screen area [-] 0.02..1
 * @returns loss coefficient on the velocity before the screen [-]
 * @valid wire Reynolds number above about 400
 * @throws RangeError when a parameter is outside its range
 * @source Idelchik, Handbook of Hydraulic Resistance, wire gauze, from memory
 */
export function lossCoefficientScreen(openFraction: number): number {
  inRange('openFraction', openFraction, 0.02, 1, '-');
  return 1.3 * (1 - openFraction) + (1 / openFraction - 1) ** 2;
}

/** Factor of the round-wire screen formula by wire Reynolds number. */
const ROUND_WIRE: readonly Point[] = [
  [20, 1.3],
  [30, 1.1],
  [40, 0.95],
  [60, 0.83],
  [80, 0.75],
  [100, 0.7],
  [200, 0.6],
  [400, 0.52],
];

/**
 * Loss coefficient of a round-wire screen across a stream, with its dependence on the wire Reynolds number.
 *
 * @formula K = b (1 - a²) / a², b a table of ρ v d / (a μ)
 * @param openFraction open area over screen area [-] 0.02..1
 * @param wireReynolds Reynolds number on wire diameter and velocity in the openings [-] 20..1e6
 * @returns loss coefficient on the velocity before the screen [-]
 * @valid from wire Reynolds number 400 up the table stays at 0.52
 * @throws RangeError when a parameter is outside its range
 * @source Blevins, Applied Fluid Dynamics Handbook (1984), round-wire screens
 */
export function lossCoefficientScreenBlevins(openFraction: number, wireReynolds: number): number {
  inRange('openFraction', openFraction, 0.02, 1, '-');
  inRange('wireReynolds', wireReynolds, 20, 1e6, '-');
  return (interpolatePoints(ROUND_WIRE, wireReynolds) * (1 - openFraction ** 2)) / openFraction ** 2;
}

/**
 * How many times its clean loss a screen takes when part of it is blinded.
 *
 * @formula F = K(a (1 - s)) / K(a), K of the gauze formula
 * @param openFraction open area over screen area when clean [-] 0.02..0.99
 * @param blindedShare share of the openings that is blocked [-] 0..0.95
 * @returns loss over the clean loss [-]
 * @valid open fraction left at least 0.02; the screen only, not the strainer's body
 * @throws RangeError when a parameter is outside its range
 * @source Ratio of the gauze formula (Idelchik, from memory) at two open fractions
 */
export function screenCloggingFactor(openFraction: number, blindedShare: number): number {
  inRange('openFraction', openFraction, 0.02, 0.99, '-');
  inRange('blindedShare', blindedShare, 0, 0.95, '-');
  return lossCoefficientScreen(openFraction * (1 - blindedShare)) / lossCoefficientScreen(openFraction);
}

/**
 * Pressure lost in a strainer, clean or clogged.
 *
 * @formula Δp = F · 1 bar · SG (Q/q1)²
 * @param flow volume flow [m3/s] 0..1
 * @param flowAtOneBar flow of water through the clean strainer at a loss of 1 bar [m3/s] 1e-9..1
 * @param density density of the liquid [kg/m3] 500..2500
 * @param cloggingFactor loss over the clean loss; default 1 is clean [-] 1..500
 * @returns pressure loss [Pa]
 * @valid judge a suction line with the factor at which the strainer is to be cleaned, not with the clean one
 * @throws RangeError when a parameter is outside its range
 * @source Definition of Kv; half the openings blocked gives a factor of 5.5 at 0.36 open area (gauze formula)
 */
export function strainerLoss(
  flow: number,
  flowAtOneBar: number,
  density: number,
  cloggingFactor = 1,
): number {
  inRange('cloggingFactor', cloggingFactor, 1, 500, '-');
  return cloggingFactor * flowCoefficientLoss(flow, flowAtOneBar, density);
}
