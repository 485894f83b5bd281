import { inRange } from '../in-range.ts';
import { PSI, US_GALLON } from '../us-measure.ts';
import { checkDensity, checkFlow, checkFlowAtOneBar } from './limits.ts';
import { boreArea } from './velocity.ts';

const ONE_BAR = 1e5;
/** Density that specific gravity 1 stands for in flow coefficients [kg/m3]. */
const REFERENCE_DENSITY = 1000;

/**
 * Flow of water at one bar, from the metric flow coefficient.
 *
 * @formula q1 = Kv / 3600
 * @param kv flow coefficient Kv [m3/h] 1e-6..1e4
 * @returns flow of water at a loss of 1 bar [m3/s]
 * @throws RangeError when a parameter is outside its range
 * @source Definition of Kv: m3/h of water of density 1000 kg/m3 at 1 bar
 */
export function flowAtOneBarFromKv(kv: number): number {
  inRange('kv', kv, 1e-6, 1e4, 'm3/h');
  return kv / 3600;
}

/**
 * Metric flow coefficient from the flow of water at one bar.
 *
 * @formula Kv = 3600 q1
 * @param flowAtOneBar flow of water at a loss of 1 bar [m3/s] 1e-9..1
 * @returns Kv [m3/h]
 * @throws RangeError when a parameter is outside its range
 * @source Definition of Kv
 */
export function kvFromFlowAtOneBar(flowAtOneBar: number): number {
  checkFlowAtOneBar(flowAtOneBar);
  return flowAtOneBar * 3600;
}

/**
 * Flow of water at one bar, from the US flow coefficient.
 *
 * @formula q1 = Cv (US gal/min) sqrt(1 bar / 1 psi)
 * @param cv flow coefficient Cv: US gallons a minute at 1 psi [gpm] 1e-6..1e4
 * @returns flow of water at a loss of 1 bar [m3/s]
 * @throws RangeError when a parameter is outside its range
 * @source Definition of Cv; Kv = 0.865 Cv
 */
export function flowAtOneBarFromCv(cv: number): number {
  inRange('cv', cv, 1e-6, 1e4, 'gpm');
  return ((cv * US_GALLON) / 60) * Math.sqrt(ONE_BAR / PSI);
}

/**
 * US flow coefficient from the flow of water at one bar.
 *
 * @formula Cv = q1 / ((US gal/min) sqrt(1 bar / 1 psi))
 * @param flowAtOneBar flow of water at a loss of 1 bar [m3/s] 1e-9..1
 * @returns Cv [gpm]
 * @throws RangeError when a parameter is outside its range
 * @source Definition of Cv; Cv = 1.156 Kv
 */
export function cvFromFlowAtOneBar(flowAtOneBar: number): number {
  checkFlowAtOneBar(flowAtOneBar);
  return (flowAtOneBar * 60) / (US_GALLON * Math.sqrt(ONE_BAR / PSI));
}

/**
 * Loss coefficient that a flow coefficient stands for.
 *
 * @formula K = 2 · 1 bar / (1000 kg/m3 · (q1/A)²)
 * @param flowAtOneBar flow of water at a loss of 1 bar [m3/s] 1e-9..1
 * @param bore bore the loss coefficient shall refer to [m] 0.0002..0.5
 * @returns loss coefficient on the bore [-]
 * @throws RangeError when a parameter is outside its range
 * @source Definitions of K and Kv
 */
export function lossCoefficientFromFlowAtOneBar(flowAtOneBar: number, bore: number): number {
  checkFlowAtOneBar(flowAtOneBar);
  const velocity = flowAtOneBar / boreArea(bore);
  return (2 * ONE_BAR) / (REFERENCE_DENSITY * velocity * velocity);
}

/**
 * Flow of water at one bar that a loss coefficient stands for.
 *
 * @formula q1 = A sqrt(2 · 1 bar / (1000 kg/m3 · K))
 * @param lossCoefficient loss coefficient on the bore [-] 1e-6..1e9
 * @param bore bore the loss coefficient refers to [m] 0.0002..0.5
 * @returns flow of water at a loss of 1 bar [m3/s]
 * @throws RangeError when a parameter is outside its range
 * @source Definitions of K and Kv
 */
export function flowAtOneBarFromLossCoefficient(lossCoefficient: number, bore: number): number {
  inRange('lossCoefficient', lossCoefficient, 1e-6, 1e9, '-');
  return boreArea(bore) * Math.sqrt((2 * ONE_BAR) / (REFERENCE_DENSITY * lossCoefficient));
}

/**
 * Pressure lost in a part whose flow of water at one bar is known.
 *
 * @formula Δp = 1 bar · SG (Q/q1)²
 * @param flow volume flow [m3/s] 0..1
 * @param flowAtOneBar flow of water at a loss of 1 bar [m3/s] 1e-9..1
 * @param density density of the liquid [kg/m3] 500..2500
 * @returns pressure loss [Pa]
 * @valid turbulent flow; a coefficient measured with water does not hold for thick mixes
 * @throws RangeError when a parameter is outside its range
 * @source Definition of Kv
 */
export function flowCoefficientLoss(flow: number, flowAtOneBar: number, density: number): number {
  checkFlow(flow);
  checkFlowAtOneBar(flowAtOneBar);
  checkDensity(density);
  return ONE_BAR * (density / REFERENCE_DENSITY) * (flow / flowAtOneBar) ** 2;
}
