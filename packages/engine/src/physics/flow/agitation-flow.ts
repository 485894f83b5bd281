import { inRange } from '../in-range.ts';
import { wholeInRange } from '../whole-in-range.ts';
import { frictionFactorBlend } from './friction.ts';
import { frictionLossDarcy } from './friction-loss.ts';
import { checkBore, checkDensity, checkFlow, checkPressure, checkViscosity } from './limits.ts';
import { tipFlow, tipPressure } from './tip.ts';
import { boreArea, reynoldsNumber } from './velocity.ts';

export interface JetAgitator {
  readonly flow: number;
  readonly velocity: number;
  readonly thrust: number;
  readonly fluidPower: number;
}

/**
 * Motive jet of a tank agitator: its flow, speed, push and power.
 *
 * @formula Q = q1 sqrt(p/SG); v = Q/A; F = ρ Q v; P = p Q
 * @param flowAtOneBar flow of water through the jet at 1 bar [m3/s] 1e-9..1
 * @param diameter diameter of the jet's orifice [m] 0.0002..0.5
 * @param pressure pressure at the agitator, gauge [Pa] 0..1e8
 * @param density density of the liquid [kg/m3] 500..2500
 * @result flow motive flow taken from the pump [m3/s]
 * @result velocity velocity in the orifice [m/s]
 * @result thrust momentum flow, what does the mixing [N]
 * @result fluidPower power put into the tank [W]
 * @valid the liquid a jet drags along comes on top; how much is unknown for real agitators and not computed
 * @throws RangeError when a parameter is outside its range
 * @source Orifice law; momentum theorem
 */
export function jetAgitator(
  flowAtOneBar: number,
  diameter: number,
  pressure: number,
  density: number,
): JetAgitator {
  checkBore(diameter, 'diameter');
  const flow = tipFlow(flowAtOneBar, pressure, density);
  const velocity = flow / boreArea(diameter);
  return { flow, velocity, thrust: density * flow * velocity, fluidPower: pressure * flow };
}

export interface Sparger {
  readonly inletPressure: number;
  readonly bore: number;
  /** Distance between neighbouring holes, and from the inlet to the first. */
  readonly spacing: number;
  readonly holes: number;
  readonly flowAtOneBar: number;
  readonly roughness: number;
  readonly density: number;
  readonly viscosity: number;
}

export interface SpargerFlow {
  readonly flow: number;
  readonly firstHoleFlow: number;
  readonly lastHoleFlow: number;
  readonly evenness: number;
}

/**
 * Flow of a sparge pipe with a row of equal holes and a closed end, hole by hole.
 *
 * @formula from the closed end: Q_i = q1 sqrt(p_i/SG), p_(i-1) = p_i + f (L/D) ρ v²/2; the end pressure found by bisection
 * @param p.inletPressure pressure at the inlet of the pipe, gauge [Pa] 0..1e8
 * @param p.bore bore of the pipe [m] 0.0002..0.5
 * @param p.spacing distance between holes and from the inlet to the first [m] 0..100
 * @param p.holes number of holes [-] 1..500
 * @param p.flowAtOneBar flow of water through one hole at 1 bar [m3/s] 1e-9..1
 * @param p.roughness roughness of the wall [m] 0..0.001
 * @param p.density density of the liquid [kg/m3] 500..2500
 * @param p.viscosity dynamic viscosity [Pa.s] 1e-5..1000
 * @result flow flow of all holes [m3/s]
 * @result firstHoleFlow flow of the hole nearest the inlet [m3/s]
 * @result lastHoleFlow flow of the hole at the closed end [m3/s]
 * @result evenness flow of the last hole over the first [-]
 * @valid roughness at most a tenth of the bore; the pressure the slowing stream regains along the pipe is left out, which matters when the holes together are larger than the bore
 * @throws RangeError when a parameter is outside its range
 * @source Darcy-Weisbach between orifices; manifold calculation, textbook
 */
export function spargerFlow(p: Sparger): SpargerFlow {
  checkSparger(p);
  let low = 0;
  let high = p.inletPressure;
  for (let i = 0; i < 200 && high - low > 1e-13 * high; i++) {
    const middle = (low + high) / 2;
    if (march(p, middle).pressure > p.inletPressure) high = middle;
    else low = middle;
  }
  const { flow, firstHoleFlow, lastHoleFlow } = march(p, (low + high) / 2);
  return {
    flow,
    firstHoleFlow,
    lastHoleFlow,
    evenness: firstHoleFlow > 0 ? lastHoleFlow / firstHoleFlow : 1,
  };
}

/** From the pressure at the closed end to that at the inlet, adding each hole's flow and each piece's loss. */
function march(p: Sparger, endPressure: number): { pressure: number } & Omit<SpargerFlow, 'evenness'> {
  let pressure = endPressure;
  let flow = 0;
  let hole = 0;
  for (let i = 0; i < p.holes; i++) {
    hole = tipFlow(p.flowAtOneBar, pressure, p.density);
    flow += hole;
    if (flow > 0) pressure += pieceLoss(p, flow);
    // Far beyond the inlet pressure this guess of the end pressure is refuted already.
    if (pressure > 1e8 || flow > 1)
      return { pressure: Infinity, flow, firstHoleFlow: hole, lastHoleFlow: hole };
  }
  return {
    pressure,
    flow,
    firstHoleFlow: hole,
    lastHoleFlow: tipFlow(p.flowAtOneBar, endPressure, p.density),
  };
}

function pieceLoss(p: Sparger, flow: number): number {
  const reynolds = Math.max(1e-6, reynoldsNumber(Math.min(flow, 1), p.bore, p.density, p.viscosity));
  return frictionLossDarcy(
    frictionFactorBlend(reynolds, p.roughness / p.bore),
    p.spacing,
    p.bore,
    Math.min(flow, 1),
    p.density,
  );
}

function checkSparger(p: Sparger): void {
  checkPressure(p.inletPressure, 'inletPressure');
  checkBore(p.bore);
  inRange('spacing', p.spacing, 0, 100, 'm');
  wholeInRange('holes', p.holes, 1, 500);
  inRange('flowAtOneBar', p.flowAtOneBar, 1e-9, 1, 'm3/s');
  inRange('roughness', p.roughness, 0, Math.min(0.001, 0.1 * p.bore), 'm');
  checkDensity(p.density);
  checkViscosity(p.viscosity);
}

/**
 * Pressure a sparge pipe needs for a flow when its holes share it evenly.
 *
 * @formula p = 1 bar · SG (Q/(N q1))²
 * @param flow flow of all holes [m3/s] 0..1
 * @param holes number of holes [-] 1..500
 * @param flowAtOneBar flow of water through one hole at 1 bar [m3/s] 1e-9..1
 * @param density density of the liquid [kg/m3] 500..2500
 * @returns pressure at the inlet, gauge [Pa]
 * @valid friction along the pipe left out; compare spargerFlow
 * @throws RangeError when a parameter is outside its range
 * @source Orifice law
 */
export function spargerPressure(flow: number, holes: number, flowAtOneBar: number, density: number): number {
  checkFlow(flow);
  wholeInRange('holes', holes, 1, 500);
  return tipPressure(flow / holes, flowAtOneBar, density);
}
