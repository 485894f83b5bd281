import { inRange } from '../in-range.ts';
import { checkBore } from './limits.ts';

/**
 * Loss coefficient of a sudden step down in bore.
 *
 * @formula K = 0.5 (1 - β²), β = small over large bore
 * @param smallBore the narrower bore [m] 0.0002..0.5
 * @param largeBore the wider bore [m] 0.0002..0.5
 * @returns loss coefficient on the velocity in the small bore [-]
 * @valid sharp edge, Reynolds number above 1e4
 * @throws RangeError when a parameter is outside its range
 * @source Crane TP-410 A-26
 */
export function lossCoefficientContraction(smallBore: number, largeBore: number): number {
  return 0.5 * areaStep(smallBore, largeBore);
}

/**
 * Loss coefficient of a sudden step down in bore, by a later fit that comes out higher.
 *
 * @formula K = 0.0696 (1 - β⁵) λ² + (λ - 1)², λ = 1 + 0.622 (1 - 0.215 β² - 0.785 β⁵)
 * @param smallBore the narrower bore [m] 0.0002..0.5
 * @param largeBore the wider bore [m] 0.0002..0.5
 * @returns loss coefficient on the velocity in the small bore [-]
 * @valid sharp edge, Reynolds number above 1e4; up to 40 % above the customary formula
 * @throws RangeError when a parameter is outside its range
 * @source Rennels and Hudson, Pipe Flow (2012)
 */
export function lossCoefficientContractionRennels(smallBore: number, largeBore: number): number {
  areaStep(smallBore, largeBore);
  const beta = smallBore / largeBore;
  const lambda = 1 + 0.622 * (1 - 0.215 * beta ** 2 - 0.785 * beta ** 5);
  return 0.0696 * (1 - beta ** 5) * lambda * lambda + (lambda - 1) ** 2;
}

/**
 * Loss coefficient of a sudden step up in bore.
 *
 * @formula K = (1 - β²)², β = small over large bore
 * @param smallBore the narrower bore [m] 0.0002..0.5
 * @param largeBore the wider bore [m] 0.0002..0.5
 * @returns loss coefficient on the velocity in the small bore [-]
 * @valid turbulent flow
 * @throws RangeError when a parameter is outside its range
 * @source Borda-Carnot
 */
export function lossCoefficientExpansion(smallBore: number, largeBore: number): number {
  return areaStep(smallBore, largeBore) ** 2;
}

/**
 * Loss coefficient of a conical reducer.
 *
 * @formula K = 0.8 sin(θ/2)(1 - β²) up to 45°, else 0.5 sqrt(sin(θ/2))(1 - β²)
 * @param smallBore the narrower bore [m] 0.0002..0.5
 * @param largeBore the wider bore [m] 0.0002..0.5
 * @param coneAngle included angle of the cone [rad] 0..3.1416
 * @returns loss coefficient on the velocity in the small bore [-]
 * @valid Reynolds number above 1e4
 * @throws RangeError when a parameter is outside its range
 * @source Crane TP-410 A-26, formulas 1 and 2
 */
export function lossCoefficientReducer(smallBore: number, largeBore: number, coneAngle: number): number {
  const step = areaStep(smallBore, largeBore);
  inRange('coneAngle', coneAngle, 0, 3.1416, 'rad');
  const half = Math.sin(Math.min(coneAngle, Math.PI) / 2);
  return coneAngle <= Math.PI / 4 ? 0.8 * half * step : 0.5 * Math.sqrt(half) * step;
}

/**
 * Loss coefficient of a conical expander.
 *
 * @formula K = 2.6 sin(θ/2)(1 - β²)² up to 45°, else (1 - β²)²
 * @param smallBore the narrower bore [m] 0.0002..0.5
 * @param largeBore the wider bore [m] 0.0002..0.5
 * @param coneAngle included angle of the cone [rad] 0..3.1416
 * @returns loss coefficient on the velocity in the small bore [-]
 * @valid Reynolds number above 1e4
 * @throws RangeError when a parameter is outside its range
 * @source Crane TP-410 A-26, formulas 3 and 4
 */
export function lossCoefficientExpander(smallBore: number, largeBore: number, coneAngle: number): number {
  const step = areaStep(smallBore, largeBore);
  inRange('coneAngle', coneAngle, 0, 3.1416, 'rad');
  return (coneAngle <= Math.PI / 4 ? 2.6 * Math.sin(coneAngle / 2) : 1) * step * step;
}

/**
 * Loss coefficient of a short throat in a line: a coupling, barb or swivel narrower than its hose.
 *
 * @formula K = (0.5 (1 - β²) + (1 - β²)²) / β⁴, β = throat over hose bore
 * @param bore bore of the hose [m] 0.0002..0.5
 * @param throatBore narrowest bore of the piece [m] 0.0002..0.5
 * @returns loss coefficient on the hose bore [-]
 * @valid sharp steps, throat at least 0.2 of the bore; nothing else in the throat: a valve or spring in it costs more
 * @throws RangeError when a parameter is outside its range
 * @source Sum of a sudden contraction (Crane TP-410) and Borda-Carnot; the sum is our estimate
 */
export function lossCoefficientThroat(bore: number, throatBore: number): number {
  checkBore(bore);
  inRange('throatBore', throatBore, 0.2 * bore, bore, 'm');
  const own = lossCoefficientContraction(throatBore, bore) + lossCoefficientExpansion(throatBore, bore);
  return own / (throatBore / bore) ** 4;
}

/** 1 - β², after checking both bores. */
function areaStep(smallBore: number, largeBore: number): number {
  checkBore(largeBore, 'largeBore');
  inRange('smallBore', smallBore, 0.0002, largeBore, 'm');
  return 1 - (smallBore / largeBore) ** 2;
}
