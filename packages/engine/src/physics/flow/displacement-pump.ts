import { inRange } from '../in-range.ts';
import { checkPressure, checkViscosity } from './limits.ts';

/** A displacement pump with its leakage. */
export interface DisplacementPump {
  /** Volume displaced per turn [m3]. */
  readonly displacement: number;
  /** Shaft speed [rad/s]. */
  readonly speed: number;
  /** Leakage per pressure rise at the reference viscosity [m3/(s.Pa)]. */
  readonly slip: number;
  /** 0 for pumps with valves, 1 for gap pumps. */
  readonly viscosityExponent?: number;
  readonly viscosity?: number;
  readonly referenceViscosity?: number;
  /** Share of the displaced flow lost whatever the pressure. */
  readonly constantSlip?: number;
}

/**
 * Flow that a displacement pump delivers against a pressure.
 *
 * @formula Q = D n (1 - c) - s Δp (μ_ref/μ)^e
 * @param p.displacement volume displaced per turn [m3] 1e-9..0.1
 * @param p.speed shaft speed [rad/s] 0..2000
 * @param p.pressureRise pressure rise across the pump [Pa] 0..1e8
 * @param p.slip leakage per pressure rise at the reference viscosity [m3/s/Pa] 0..1e-6
 * @param p.viscosityExponent 0 for pumps with valves (piston, diaphragm), 1 for gap pumps (roller, gear); default 0 [-] 0..1
 * @param p.viscosity dynamic viscosity of the liquid; default the reference [Pa.s] 1e-5..1000
 * @param p.referenceViscosity viscosity at which the slip was measured; default 0.001 [Pa.s] 1e-5..1000
 * @param p.constantSlip share of the displaced flow lost whatever the pressure; default 0 [-] 0..0.9
 * @returns volume flow, 0 from the stall pressure up [m3/s]
 * @valid suction full: no cavitation; very thick liquid starves the inlet, which this law does not show
 * @throws RangeError when a parameter is outside its range
 * @source Wilson's slip model, from memory; slip does not depend on speed, so volumetric efficiency falls at low speed
 */
export function displacementPumpFlow(p: DisplacementPump & { readonly pressureRise: number }): number {
  checkPressure(p.pressureRise, 'pressureRise');
  return Math.max(0, idealFlow(p) - slipPerPascal(p) * p.pressureRise);
}

/**
 * Pressure at which a displacement pump leaks all it displaces: what a dead-headed pump without relief would reach.
 *
 * @formula Δp = D n (1 - c) / (s (μ_ref/μ)^e)
 * @param p.displacement volume displaced per turn [m3] 1e-9..0.1
 * @param p.speed shaft speed [rad/s] 0..2000
 * @param p.slip leakage per pressure rise at the reference viscosity [m3/s/Pa] 1e-18..1e-6
 * @param p.viscosityExponent 0 for pumps with valves (piston, diaphragm), 1 for gap pumps (roller, gear); default 0 [-] 0..1
 * @param p.viscosity dynamic viscosity of the liquid; default the reference [Pa.s] 1e-5..1000
 * @param p.referenceViscosity viscosity at which the slip was measured; default 0.001 [Pa.s] 1e-5..1000
 * @param p.constantSlip share of the displaced flow lost whatever the pressure; default 0 [-] 0..0.9
 * @returns pressure rise [Pa]
 * @valid a figure to compare with ratings: most pumps burst or stall their engine first
 * @throws RangeError when a parameter is outside its range
 * @source Wilson's slip model, from memory
 */
export function displacementPumpStallPressure(p: DisplacementPump): number {
  inRange('slip', p.slip, 1e-18, 1e-6, 'm3/s/Pa');
  return idealFlow(p) / slipPerPascal(p);
}

/**
 * Leakage per pressure from the volumetric loss a maker states at one pressure.
 *
 * @formula s = D n φ / p
 * @param displacement volume displaced per turn [m3] 1e-9..0.1
 * @param speed shaft speed at which the loss was stated [rad/s] 0.1..2000
 * @param lossShare share of the displaced flow lost at the pressure [-] 0.0001..0.9
 * @param pressure pressure at which the loss was stated [Pa] 1e4..1e8
 * @returns leakage per pressure rise [m3/s/Pa]
 * @valid a packed reciprocating pump in good order loses 3 to 5 % (seen in a pump handbook); roller and gear pumps far more
 * @throws RangeError when a parameter is outside its range
 * @source Definition of slip
 */
export function slipFromVolumetricLoss(
  displacement: number,
  speed: number,
  lossShare: number,
  pressure: number,
): number {
  inRange('displacement', displacement, 1e-9, 0.1, 'm3');
  inRange('speed', speed, 0.1, 2000, 'rad/s');
  inRange('lossShare', lossShare, 0.0001, 0.9, '-');
  inRange('pressure', pressure, 1e4, 1e8, 'Pa');
  return (displacement * (speed / (2 * Math.PI)) * lossShare) / pressure;
}

function idealFlow(p: DisplacementPump): number {
  inRange('displacement', p.displacement, 1e-9, 0.1, 'm3');
  inRange('speed', p.speed, 0, 2000, 'rad/s');
  const constantSlip = p.constantSlip ?? 0;
  inRange('constantSlip', constantSlip, 0, 0.9, '-');
  return p.displacement * (p.speed / (2 * Math.PI)) * (1 - constantSlip);
}

function slipPerPascal(p: DisplacementPump): number {
  inRange('slip', p.slip, 0, 1e-6, 'm3/s/Pa');
  const exponent = p.viscosityExponent ?? 0;
  inRange('viscosityExponent', exponent, 0, 1, '-');
  const reference = p.referenceViscosity ?? 0.001;
  const viscosity = p.viscosity ?? reference;
  checkViscosity(reference, 'referenceViscosity');
  checkViscosity(viscosity);
  return p.slip * (reference / viscosity) ** exponent;
}
