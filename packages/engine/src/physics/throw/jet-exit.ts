import { inRange } from '../in-range.ts';
import { oneOfChoices } from '../lists-in-range.ts';
import { JET_COEFFICIENTS, type JetCoefficients, type TipForm, TIP_FORMS } from './tip-forms.data.ts';

function checkExit(pressure: number, density: number, velocityCoefficient: number): void {
  inRange('pressure', pressure, 0, 1e7, 'Pa');
  inRange('density', density, 500, 2500, 'kg/m3');
  inRange('velocityCoefficient', velocityCoefficient, 0.3, 1);
}

/**
 * Speed at which a jet leaves its tip.
 *
 * @formula U0 = Cv sqrt(2 p / ρ)
 * @param pressure pressure before the tip while it flows, gauge [Pa] 0..1e7
 * @param density density of the liquid [kg/m3] 500..2500
 * @param velocityCoefficient velocity coefficient Cv; default 0.97 [-] 0.3..1
 * @returns exit speed [m/s]
 * @throws RangeError when a parameter is outside its range
 * @source Torricelli with a velocity coefficient
 */
export function jetExitSpeed(pressure: number, density: number, velocityCoefficient = 0.97): number {
  checkExit(pressure, density, velocityCoefficient);
  return velocityCoefficient * Math.sqrt((2 * pressure) / density);
}

/**
 * Diameter of the jet that a hole makes, after it has contracted.
 *
 * @formula dj = d sqrt(Cc)
 * @param bore diameter of the hole [m] 0.0002..0.2
 * @param contractionCoefficient contraction coefficient Cc [-] 0.5..1
 * @returns jet diameter [m]
 * @throws RangeError when a parameter is outside its range
 * @source Definition of the contraction coefficient; Encyclopaedia Britannica 11th ed. (1911), Hydraulics
 */
export function jetDiameterFromBore(bore: number, contractionCoefficient: number): number {
  inRange('bore', bore, 0.0002, 0.2, 'm');
  inRange('contractionCoefficient', contractionCoefficient, 0.5, 1);
  return bore * Math.sqrt(contractionCoefficient);
}

/**
 * Diameter of the jet that carries a known flow, such as a catalogue flow at one pressure.
 *
 * @formula dj = sqrt(4 Q / (π Cv sqrt(2 p / ρ)))
 * @param flow volume flow [m3/s] 0..1
 * @param pressure pressure before the tip at which it was measured, gauge [Pa] 1..1e7
 * @param density density of the liquid it was measured with [kg/m3] 500..2500
 * @param velocityCoefficient velocity coefficient Cv; default 0.97 [-] 0.3..1
 * @returns jet diameter [m]
 * @valid preferred to the diameter of the hole whenever a flow is known
 * @throws RangeError when a parameter is outside its range
 * @source Continuity with the exit speed
 */
export function jetDiameterFromFlow(
  flow: number,
  pressure: number,
  density: number,
  velocityCoefficient = 0.97,
): number {
  inRange('flow', flow, 0, 1, 'm3/s');
  inRange('pressure', pressure, 1, 1e7, 'Pa');
  return Math.sqrt((4 * flow) / (Math.PI * jetExitSpeed(pressure, density, velocityCoefficient)));
}

/**
 * Flow of a jet of known diameter.
 *
 * @formula Q = π dj²/4 · Cv sqrt(2 p / ρ)
 * @param jetDiameter diameter of the jet, not of the hole [m] 0.0002..0.2
 * @param pressure pressure before the tip, gauge [Pa] 0..1e7
 * @param density density of the liquid [kg/m3] 500..2500
 * @param velocityCoefficient velocity coefficient Cv; default 0.97 [-] 0.3..1
 * @returns volume flow [m3/s]
 * @throws RangeError when a parameter is outside its range
 * @source Continuity with the exit speed
 */
export function jetFlow(
  jetDiameter: number,
  pressure: number,
  density: number,
  velocityCoefficient = 0.97,
): number {
  inRange('jetDiameter', jetDiameter, 0.0002, 0.2, 'm');
  return (Math.PI / 4) * jetDiameter ** 2 * jetExitSpeed(pressure, density, velocityCoefficient);
}

/**
 * Discharge coefficient that a measured or catalogue flow implies.
 *
 * @formula Cd = Q / ((π d²/4) sqrt(2 p / ρ))
 * @param flow volume flow [m3/s] 0..1
 * @param bore diameter of the hole [m] 0.0002..0.2
 * @param pressure pressure before the tip, gauge [Pa] 1..1e7
 * @param density density of the liquid it was measured with [kg/m3] 500..2500
 * @returns discharge coefficient [-]
 * @valid above 1 the flow, the pressure or the hole is stated wrongly
 * @throws RangeError when a parameter is outside its range
 * @source Definition; Cd = Cv Cc
 */
export function impliedDischargeCoefficient(
  flow: number,
  bore: number,
  pressure: number,
  density: number,
): number {
  inRange('flow', flow, 0, 1, 'm3/s');
  inRange('bore', bore, 0.0002, 0.2, 'm');
  inRange('pressure', pressure, 1, 1e7, 'Pa');
  return flow / ((Math.PI / 4) * bore ** 2 * jetExitSpeed(pressure, density, 1));
}

/**
 * Velocity, contraction and discharge coefficient of a form of tip.
 *
 * @formula Cd = Cv Cc, from the table of tip forms
 * @param form form of the tip [one of smooth-taper, straight-bore, sharp-disc, drilled-tube, long-pipe, adjustable-gun]
 * @result velocity velocity coefficient Cv [-]
 * @result contraction contraction coefficient Cc [-]
 * @result discharge discharge coefficient Cd [-]
 * @valid middle of a published range; a flow measured at one pressure is better (see jetDiameterFromFlow)
 * @throws RangeError when the form is not one of these
 * @source Each line of the table names its own
 */
export function jetCoefficients(form: TipForm): JetCoefficients {
  oneOfChoices('form', form, TIP_FORMS);
  return JET_COEFFICIENTS[form];
}
