import { inRange } from '../in-range.ts';
import { checkBore, checkDensity, checkFlow, checkFlowAtOneBar, checkPressure } from './limits.ts';
import { boreArea } from './velocity.ts';

const ONE_BAR = 1e5;
const REFERENCE_DENSITY = 1000;

/**
 * Flow of a tip, nozzle or jet at a pressure.
 *
 * @formula q = q1 sqrt((p / 1 bar) / SG)
 * @param flowAtOneBar flow of water at 1 bar [m3/s] 1e-9..1
 * @param pressure pressure before the tip, gauge [Pa] 0..1e8
 * @param density density of the liquid [kg/m3] 500..2500
 * @returns volume flow [m3/s]
 * @valid tips discharge only: no flow at zero pressure and never air in; Reynolds number in the orifice above about 5000
 * @throws RangeError when a parameter is outside its range
 * @source Orifice law; the density correction as in University of Nebraska CropWatch 2016, Setting the Sprayer Flow Rate for Non-Water Solutions
 */
export function tipFlow(flowAtOneBar: number, pressure: number, density: number): number {
  checkFlowAtOneBar(flowAtOneBar);
  checkPressure(pressure);
  return (flowAtOneBar * Math.sqrt(pressure / ONE_BAR)) / tipDensityFactor(density);
}

/**
 * Pressure a tip needs for a flow.
 *
 * @formula p = 1 bar · SG (q/q1)²
 * @param flow volume flow [m3/s] 0..1
 * @param flowAtOneBar flow of water at 1 bar [m3/s] 1e-9..1
 * @param density density of the liquid [kg/m3] 500..2500
 * @returns pressure before the tip, gauge [Pa]
 * @valid Reynolds number in the orifice above about 5000
 * @throws RangeError when a parameter is outside its range
 * @source Orifice law
 */
export function tipPressure(flow: number, flowAtOneBar: number, density: number): number {
  checkFlow(flow);
  checkFlowAtOneBar(flowAtOneBar);
  checkDensity(density);
  return ONE_BAR * (density / REFERENCE_DENSITY) * (flow / flowAtOneBar) ** 2;
}

/**
 * Factor between the flow of water and the flow of a heavier or lighter solution through the same tip.
 *
 * @formula c = sqrt(SG)
 * @param density density of the solution [kg/m3] 500..2500
 * @returns water flow over solution flow at the same pressure [-]
 * @throws RangeError when a parameter is outside its range
 * @source Orifice law; table 1 of University of Nebraska CropWatch 2016, Setting the Sprayer Flow Rate for Non-Water Solutions
 */
export function tipDensityFactor(density: number): number {
  checkDensity(density);
  return Math.sqrt(density / REFERENCE_DENSITY);
}

/**
 * Flow of water at one bar through an orifice of known size.
 *
 * @formula q1 = Cd (π d²/4) sqrt(2 · 1 bar / 1000 kg/m3)
 * @param diameter orifice diameter [m] 0.0002..0.5
 * @param dischargeCoefficient discharge coefficient [-] 0.3..1
 * @returns flow of water at 1 bar [m3/s]
 * @valid free jet from a much wider bore
 * @throws RangeError when a parameter is outside its range
 * @source Torricelli with a discharge coefficient
 */
export function flowAtOneBarFromOrifice(diameter: number, dischargeCoefficient: number): number {
  inRange('dischargeCoefficient', dischargeCoefficient, 0.3, 1, '-');
  checkBore(diameter, 'diameter');
  return dischargeCoefficient * boreArea(diameter) * Math.sqrt((2 * ONE_BAR) / REFERENCE_DENSITY);
}

/**
 * Diameter of the hole that gives a flow at a pressure: what to drill or which smooth bore to take.
 *
 * @formula d = sqrt(4 q / (π Cd sqrt(2 p/ρ)))
 * @param flow volume flow wanted [m3/s] 1e-9..1
 * @param pressure pressure before the hole, gauge [Pa] 1e3..1e8
 * @param density density of the liquid [kg/m3] 500..2500
 * @param dischargeCoefficient discharge coefficient: about 0.6 for a sharp edge, 0.8 for a short drilled hole, 0.95 and more for a smooth bore [-] 0.3..1
 * @returns diameter [m]
 * @valid free jet from a much wider bore; the coefficients named are from memory: measure one tip before drilling a row
 * @throws RangeError when a parameter is outside its range
 * @source Torricelli with a discharge coefficient, solved for the diameter
 */
export function orificeForFlow(
  flow: number,
  pressure: number,
  density: number,
  dischargeCoefficient: number,
): number {
  inRange('flow', flow, 1e-9, 1, 'm3/s');
  inRange('pressure', pressure, 1e3, 1e8, 'Pa');
  checkDensity(density);
  inRange('dischargeCoefficient', dischargeCoefficient, 0.3, 1, '-');
  return Math.sqrt((4 * flow) / (Math.PI * dischargeCoefficient * Math.sqrt((2 * pressure) / density)));
}

/**
 * Reynolds number of a free jet in its orifice.
 *
 * @formula Re = ρ d sqrt(2 p/ρ) / μ
 * @param pressure pressure before the orifice, gauge [Pa] 0..1e8
 * @param diameter orifice diameter [m] 0.0002..0.5
 * @param density density of the liquid [kg/m3] 500..2500
 * @param viscosity dynamic viscosity [Pa.s] 1e-5..1000
 * @returns Reynolds number on the ideal jet velocity [-]
 * @throws RangeError when a parameter is outside its range
 * @source Definition
 */
export function orificeReynolds(
  pressure: number,
  diameter: number,
  density: number,
  viscosity: number,
): number {
  checkPressure(pressure);
  checkBore(diameter, 'diameter');
  checkDensity(density);
  inRange('viscosity', viscosity, 1e-5, 1000, 'Pa.s');
  return (diameter * Math.sqrt(2 * pressure * density)) / viscosity;
}

/**
 * Discharge coefficient of a sharp-edged round orifice that discharges freely.
 *
 * @formula Cd = 0.592 + 4.5 / sqrt(Re)
 * @param reynolds Reynolds number on the ideal jet velocity, see orificeReynolds [-] 1e4..1e8
 * @returns discharge coefficient [-]
 * @valid sharp edge, thin plate, much wider bore before it; below Re 1e4 no constant coefficient holds and the law refuses
 * @throws RangeError when a parameter is outside its range
 * @source Fit to the measurements of Medaugh and Johnson 1940, from memory; compared with the 1910 table of the Encyclopaedia Britannica in the tests
 */
export function dischargeCoefficientSharpOrifice(reynolds: number): number {
  inRange('reynolds', reynolds, 1e4, 1e8, '-');
  return 0.592 + 4.5 / Math.sqrt(reynolds);
}
