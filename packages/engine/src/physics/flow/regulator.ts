import { inRange } from '../in-range.ts';
import { checkFlowAtOneBar, checkPressure } from './limits.ts';
import { flowCoefficientLoss } from './flow-coefficient.ts';

/** Does the valve stand shut, hold its pressure, or is it wide open and out of capacity. */
export type RegulatorState = 'shut' | 'holding' | 'wide-open';

export interface RegulatorInlet {
  readonly pressure: number;
  readonly state: RegulatorState;
}

/**
 * Pressure before an unloader, relief valve or bypass regulator that passes a flow to the tank.
 *
 * @formula p = max(p_set + b Q, p_return + 1 bar · SG (Q/q1)²)
 * @param p.flow flow through the bypass [m3/s] 0..1
 * @param p.setPressure pressure at which it begins to open, gauge [Pa] 0..1e8
 * @param p.gradient rise of the held pressure with flow [Pa.s/m3] 0..1e12
 * @param p.flowAtOneBar flow of water through it wide open at a loss of 1 bar [m3/s] 1e-9..1
 * @param p.density density of the liquid [kg/m3] 500..2500
 * @param p.returnPressure pressure in the return line at this flow, gauge; default 0 [Pa] 0..1e8
 * @result pressure pressure before the valve, gauge; at no flow the least pressure that opens it [Pa]
 * @result state shut, holding or wide-open [one of shut, holding, wide-open]
 * @valid wide open its capacity and the return line set the pressure, and the set pressure is out of reach. Real valves rise 5 to 25 % of the set pressure over their range (from memory)
 * @throws RangeError when a parameter is outside its range
 * @source Spring-loaded valve with a linear override; orifice law for its capacity; textbook
 */
export function bypassRegulatorPressure(p: {
  readonly flow: number;
  readonly setPressure: number;
  readonly gradient: number;
  readonly flowAtOneBar: number;
  readonly density: number;
  readonly returnPressure?: number;
}): RegulatorInlet {
  const returnPressure = p.returnPressure ?? 0;
  checkPressure(p.setPressure, 'setPressure');
  checkPressure(returnPressure, 'returnPressure');
  inRange('gradient', p.gradient, 0, 1e12, 'Pa.s/m3');
  const held = p.setPressure + p.gradient * p.flow;
  const open = returnPressure + flowCoefficientLoss(p.flow, p.flowAtOneBar, p.density);
  if (p.flow === 0) return { pressure: Math.max(held, open), state: 'shut' };
  return open > held ? { pressure: open, state: 'wide-open' } : { pressure: held, state: 'holding' };
}

/**
 * Largest flow a bypass regulator can take before the pressure climbs away from its setting.
 *
 * @formula p_set + b Q = p_return + 1 bar · SG (Q/q1)²
 * @param setPressure pressure at which it begins to open, gauge [Pa] 0..1e8
 * @param gradient rise of the held pressure with flow [Pa.s/m3] 0..1e12
 * @param flowAtOneBar flow of water through it wide open at a loss of 1 bar [m3/s] 1e-9..1
 * @param density density of the liquid [kg/m3] 500..2500
 * @returns largest flow at which it still holds [m3/s]
 * @valid no pressure in the return line; with one, the capacity is less
 * @throws RangeError when a parameter is outside its range
 * @source Intersection of the two branches of the valve's characteristic
 */
export function bypassRegulatorCapacity(
  setPressure: number,
  gradient: number,
  flowAtOneBar: number,
  density: number,
): number {
  checkPressure(setPressure, 'setPressure');
  inRange('gradient', gradient, 0, 1e12, 'Pa.s/m3');
  checkFlowAtOneBar(flowAtOneBar);
  const curvature = flowCoefficientLoss(flowAtOneBar, flowAtOneBar, density) / flowAtOneBar ** 2;
  return (gradient + Math.sqrt(gradient * gradient + 4 * curvature * setPressure)) / (2 * curvature);
}

export interface ReducerOutlet {
  readonly pressure: number;
  readonly state: RegulatorState;
}

/**
 * Pressure behind a pressure-reducing regulator that passes a flow.
 *
 * @formula p_out = min(p_set - b Q, p_in - 1 bar · SG (Q/q1)²)
 * @param p.flow flow through it [m3/s] 0..1
 * @param p.inletPressure pressure before it, gauge [Pa] 0..1e8
 * @param p.setPressure pressure it holds behind itself at no flow, gauge [Pa] 0..1e8
 * @param p.gradient fall of the held pressure with flow [Pa.s/m3] 0..1e12
 * @param p.flowAtOneBar flow of water through it wide open at a loss of 1 bar [m3/s] 1e-9..1
 * @param p.density density of the liquid [kg/m3] 500..2500
 * @result pressure pressure behind it, gauge; negative when the inlet cannot drive this flow [Pa]
 * @result state holding, or wide-open when the inlet pressure is the limit; shut at no flow [one of shut, holding, wide-open]
 * @throws RangeError when a parameter is outside its range
 * @source Spring-loaded reducer with a linear droop; orifice law for its capacity; textbook
 */
export function reducingRegulatorPressure(p: {
  readonly flow: number;
  readonly inletPressure: number;
  readonly setPressure: number;
  readonly gradient: number;
  readonly flowAtOneBar: number;
  readonly density: number;
}): ReducerOutlet {
  checkPressure(p.inletPressure, 'inletPressure');
  checkPressure(p.setPressure, 'setPressure');
  inRange('gradient', p.gradient, 0, 1e12, 'Pa.s/m3');
  const held = p.setPressure - p.gradient * p.flow;
  const open = p.inletPressure - flowCoefficientLoss(p.flow, p.flowAtOneBar, p.density);
  if (p.flow === 0) return { pressure: Math.min(held, open), state: 'shut' };
  return open < held ? { pressure: open, state: 'wide-open' } : { pressure: held, state: 'holding' };
}
