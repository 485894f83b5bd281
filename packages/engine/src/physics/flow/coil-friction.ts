import { inRange } from '../in-range.ts';
import { frictionFactorBlend } from './friction.ts';
import { checkBore, checkReynolds } from './limits.ts';

/** Steepness with which the factor climbs to the turbulent law just below the critical Reynolds number. */
const CLIMB = 6;

/**
 * Dean number: Reynolds number of a coil, weighted by its curvature.
 *
 * @formula De = Re sqrt(D/Dc)
 * @param reynolds Reynolds number in the bore [-] 1e-6..1e9
 * @param bore inside diameter of the hose [m] 0.0002..0.5
 * @param coilDiameter diameter of the centreline of the turn [m] 0.002..20
 * @returns Dean number [-]
 * @throws RangeError when a parameter is outside its range or the turn is tighter than three bores
 * @source Dean 1927
 */
export function deanNumber(reynolds: number, bore: number, coilDiameter: number): number {
  checkReynolds(reynolds);
  return reynolds * Math.sqrt(curvature(bore, coilDiameter));
}

/**
 * Reynolds number up to which flow in a coil stays laminar.
 *
 * @formula Re_c = 2300 (1 + 8.6 (D/Dc)^0.45)
 * @param bore inside diameter of the hose [m] 0.0002..0.5
 * @param coilDiameter diameter of the centreline of the turn [m] 0.002..20
 * @returns critical Reynolds number [-]
 * @throws RangeError when a parameter is outside its range or the turn is tighter than three bores
 * @source Schmidt, Chemie Ingenieur Technik 39 (1967) 781
 */
export function coilCriticalReynoldsSchmidt(bore: number, coilDiameter: number): number {
  return 2300 * (1 + 8.6 * curvature(bore, coilDiameter) ** 0.45);
}

/**
 * Reynolds number up to which flow in a coil stays laminar, by the older law.
 *
 * @formula Re_c = 20000 (D/Dc)^0.32
 * @param bore inside diameter of the hose [m] 0.0002..0.5
 * @param coilDiameter diameter of the centreline of the turn [m] 0.002..20
 * @returns critical Reynolds number [-]
 * @valid D/Dc from 0.0012 to 0.067; falls to zero for a straight hose, where it means nothing
 * @throws RangeError when a parameter is outside its range or the turn is tighter than three bores
 * @source Ito, J. Basic Engineering 81 (1959) 123
 */
export function coilCriticalReynoldsIto(bore: number, coilDiameter: number): number {
  return 20000 * curvature(bore, coilDiameter) ** 0.32;
}

/**
 * Reynolds number up to which flow in a coil stays laminar, by a third law.
 *
 * @formula Re_c = 2100 (1 + 12 sqrt(D/Dc))
 * @param bore inside diameter of the hose [m] 0.0002..0.5
 * @param coilDiameter diameter of the centreline of the turn [m] 0.002..20
 * @returns critical Reynolds number [-]
 * @valid D/Dc from 0.004 to 0.1
 * @throws RangeError when a parameter is outside its range or the turn is tighter than three bores
 * @source Srinivasan, Nandapurkar and Holland 1970
 */
export function coilCriticalReynoldsSrinivasan(bore: number, coilDiameter: number): number {
  return 2100 * (1 + 12 * Math.sqrt(curvature(bore, coilDiameter)));
}

/**
 * Reynolds number up to which flow in a coil stays laminar, by the law that gives the lowest value.
 *
 * @formula Re_c = 1900 (1 + 8 sqrt(D/Dc))
 * @param bore inside diameter of the hose [m] 0.0002..0.5
 * @param coilDiameter diameter of the centreline of the turn [m] 0.002..20
 * @returns critical Reynolds number [-]
 * @throws RangeError when a parameter is outside its range or the turn is tighter than three bores
 * @source Seth and Stahel, Industrial and Engineering Chemistry 61(6) (1969) 39
 */
export function coilCriticalReynoldsSethStahel(bore: number, coilDiameter: number): number {
  return 1900 * (1 + 8 * Math.sqrt(curvature(bore, coilDiameter)));
}

/**
 * Friction factor of laminar flow in a coil.
 *
 * @formula f = (64/Re) / (1 - (1 - (11.6/De)^0.45)^(1/0.45)), De = Re sqrt(D/Dc); f = 64/Re below De 11.6
 * @param reynolds Reynolds number in the bore [-] 1e-6..1e9
 * @param bore inside diameter of the hose [m] 0.0002..0.5
 * @param coilDiameter diameter of the centreline of the turn [m] 0.002..20
 * @returns Darcy friction factor [-]
 * @valid Dean number up to 2000, below the critical Reynolds number of the coil
 * @throws RangeError when a parameter is outside its range or the turn is tighter than three bores
 * @source White, Proc. Royal Society A 123 (1929) 645
 */
export function frictionFactorCoilLaminarWhite(reynolds: number, bore: number, coilDiameter: number): number {
  const dean = deanNumber(reynolds, bore, coilDiameter);
  const straight = 64 / reynolds;
  if (dean <= 11.6) return straight;
  return straight / (1 - (1 - (11.6 / dean) ** 0.45) ** (1 / 0.45));
}

/**
 * Friction of turbulent flow in a coil over that of the same hose laid straight.
 *
 * @formula f/f_straight = 1 + 28800/Re (D/Dc)^0.62 for Re < 22000, else 1 + 0.0823 (1 + D/Dc) (D/Dc)^0.53 Re^0.25
 * @param reynolds Reynolds number in the bore [-] 2300..150000
 * @param bore inside diameter of the hose [m] 0.0002..0.5
 * @param coilDiameter diameter of the centreline of the turn [m] 0.002..20
 * @returns friction over that of a straight hose [-]
 * @valid above the critical Reynolds number of the coil; rigid pipe: other laws give 0.8 to 1.9 where this gives 1.15 to 1.41, so an honest band on a reel is 20 % either way
 * @throws RangeError when a parameter is outside its range or the turn is tighter than three bores
 * @source Schmidt, Chemie Ingenieur Technik 39 (1967) 781, as in the Heat Exchanger Design Handbook
 */
export function coilFrictionRatioSchmidt(reynolds: number, bore: number, coilDiameter: number): number {
  inRange('reynolds', reynolds, 2300, 150000, '-');
  const ratio = curvature(bore, coilDiameter);
  return reynolds < 22000 ? ratioLow(reynolds, ratio) : ratioHigh(reynolds, ratio);
}

/**
 * Friction factor of turbulent flow in a smooth coil, by another law.
 *
 * @formula f = 0.304 Re^-0.25 + 0.029 sqrt(D/Dc)
 * @param reynolds Reynolds number in the bore [-] 2300..150000
 * @param bore inside diameter of the hose [m] 0.0002..0.5
 * @param coilDiameter diameter of the centreline of the turn [m] 0.002..20
 * @returns Darcy friction factor [-]
 * @valid smooth wall; Re (D/Dc)² from 0.034 to 300
 * @throws RangeError when a parameter is outside its range or the turn is tighter than three bores
 * @source Ito, J. Basic Engineering 81 (1959) 123, from memory
 */
export function frictionFactorCoilTurbulentIto(reynolds: number, bore: number, coilDiameter: number): number {
  inRange('reynolds', reynolds, 2300, 150000, '-');
  return 0.304 * reynolds ** -0.25 + 0.029 * Math.sqrt(curvature(bore, coilDiameter));
}

/**
 * Friction factor of hose wound on a drum at any Reynolds number: the law this program uses.
 *
 * @formula from Re_c up f_straight times Schmidt's ratio; below it the largest of f_straight, White's laminar law and the value at Re_c times (Re/Re_c)^6
 * @param reynolds Reynolds number in the bore [-] 1e-6..1e9
 * @param bore inside diameter of the hose [m] 0.0002..0.5
 * @param coilDiameter diameter of the centreline of the turn [m] 0.002..20
 * @param relativeRoughness roughness over bore [-] 0..0.1
 * @returns Darcy friction factor [-]
 * @valid rigid coils; a band of 20 % either way on a reel. Above Re 150000 Schmidt's ratio is an extrapolation
 * @throws RangeError when a parameter is outside its range or the turn is tighter than three bores
 * @source White 1929; Schmidt 1967, the larger of its two ranges; the steep climb that joins them is ours, since Schmidt's law starts with a step
 */
export function frictionFactorCoil(
  reynolds: number,
  bore: number,
  coilDiameter: number,
  relativeRoughness: number,
): number {
  const critical = coilCriticalReynoldsSchmidt(bore, coilDiameter);
  const ratio = curvature(bore, coilDiameter);
  const straight = frictionFactorBlend(reynolds, relativeRoughness);
  const laminar = Math.max(straight, frictionFactorCoilLaminarWhite(reynolds, bore, coilDiameter));
  if (reynolds >= critical) return Math.max(laminar, straight * largerRatio(reynolds, ratio));
  return Math.max(laminar, straight * largerRatio(critical, ratio) * (reynolds / critical) ** CLIMB);
}

/** Schmidt's two ranges meet with a step of about 1 %; the larger of them keeps the loss rising. */
function largerRatio(reynolds: number, ratio: number): number {
  return Math.max(ratioLow(reynolds, ratio), ratioHigh(reynolds, ratio));
}

const ratioLow = (reynolds: number, ratio: number): number => 1 + (28800 / reynolds) * ratio ** 0.62;
const ratioHigh = (reynolds: number, ratio: number): number =>
  1 + 0.0823 * (1 + ratio) * ratio ** 0.53 * reynolds ** 0.25;

/** D/Dc, after checking both. */
function curvature(bore: number, coilDiameter: number): number {
  checkBore(bore);
  inRange('coilDiameter', coilDiameter, Math.max(0.002, 3 * bore), 20, 'm');
  return bore / coilDiameter;
}
