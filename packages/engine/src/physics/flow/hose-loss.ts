import { inRange } from '../in-range.ts';
import { frictionFactorCoil } from './coil-friction.ts';
import { frictionLossDarcy } from './friction-loss.ts';
import { frictionFactorBlend } from './friction.ts';
import { checkBore, checkLength } from './limits.ts';
import { boreArea, meanVelocity, reynoldsNumber } from './velocity.ts';

/** The laws are stated up to 200 m/s. */
const FASTEST = 199;
/** Widest bore of the laws [m]. */
const WIDEST = 0.5;

/** One hose, partly wound on a drum or not, with the liquid in it. */
export interface HoseLine {
  readonly flow: number;
  readonly bore: number;
  readonly length: number;
  readonly roughness: number;
  readonly density: number;
  readonly viscosity: number;
  /** Length still wound on the drum, part of `length`. */
  readonly woundLength?: number;
  readonly coilDiameter?: number;
}

export interface HoseLineLoss {
  readonly pressureLoss: number;
  readonly velocity: number;
  readonly reynolds: number;
  readonly uncertain: boolean;
}

/**
 * Pressure lost in one hose at a flow, laid out or partly wound on its reel.
 *
 * @formula Δp = (f L_straight + f_coil L_wound)/D ρ v²/2
 * @param p.flow volume flow [m3/s] 0..1
 * @param p.bore inside diameter [m] 0.0002..0.5
 * @param p.length length of the whole hose [m] 0..1e5
 * @param p.roughness roughness of the wall [m] 0..0.001
 * @param p.density density of the liquid [kg/m3] 500..2500
 * @param p.viscosity dynamic viscosity [Pa.s] 1e-5..1000
 * @param p.woundLength length still wound on the reel; default 0 [m] 0..1e5
 * @param p.coilDiameter diameter of the centreline of the turns, needed when any is wound [m] 0.002..20
 * @result pressureLoss pressure loss [Pa]
 * @result velocity mean velocity [m/s]
 * @result reynolds Reynolds number [-]
 * @result uncertain whether the flow is between laminar and turbulent, where published laws differ by 25 % [yes/no]
 * @valid Newtonian liquid; fittings and couplings not included
 * @throws RangeError when a parameter is outside its range
 * @source Darcy-Weisbach with Hagen-Poiseuille, Colebrook-White, White and Schmidt
 */
export function hoseLoss(p: HoseLine): HoseLineLoss {
  checkBore(p.bore);
  checkLength(p.length);
  const wound = p.woundLength ?? 0;
  inRange('woundLength', wound, 0, p.length, 'm');
  inRange('roughness', p.roughness, 0, Math.min(0.001, 0.1 * p.bore), 'm');
  const velocity = meanVelocity(p.flow, p.bore);
  const reynolds = reynoldsNumber(p.flow, p.bore, p.density, p.viscosity);
  const uncertain = reynolds > 2000 && reynolds < 4000;
  if (reynolds < 1e-6) return { pressureLoss: 0, velocity, reynolds, uncertain };
  const relative = p.roughness / p.bore;
  let pressureLoss = frictionLossDarcy(
    frictionFactorBlend(reynolds, relative),
    p.length - wound,
    p.bore,
    p.flow,
    p.density,
  );
  if (wound > 0) {
    if (p.coilDiameter === undefined)
      throw new RangeError('coilDiameter is missing; it must be given when woundLength is');
    const coil = frictionFactorCoil(reynolds, p.bore, p.coilDiameter, relative);
    pressureLoss += frictionLossDarcy(coil, wound, p.bore, p.flow, p.density);
  }
  return { pressureLoss, velocity, reynolds, uncertain };
}

/**
 * Flow that a pressure difference drives through one straight hose.
 *
 * @formula the flow whose Darcy-Weisbach loss equals Δp, by bisection
 * @param pressureLoss pressure difference over the hose [Pa] 0..1e8
 * @param bore inside diameter [m] 0.0002..0.5
 * @param length length [m] 0.01..1e5
 * @param roughness roughness of the wall [m] 0..0.001
 * @param density density of the liquid [kg/m3] 500..2500
 * @param viscosity dynamic viscosity [Pa.s] 1e-5..1000
 * @returns volume flow [m3/s]
 * @valid Newtonian liquid, velocities up to 199 m/s; unique because the loss always rises with the flow
 * @throws RangeError when a parameter is outside its range, or the flow would be above 1 m3/s or 199 m/s
 * @source Darcy-Weisbach with Hagen-Poiseuille and Colebrook-White
 */
export function hoseFlow(
  pressureLoss: number,
  bore: number,
  length: number,
  roughness: number,
  density: number,
  viscosity: number,
): number {
  inRange('pressureLoss', pressureLoss, 0, 1e8, 'Pa');
  inRange('length', length, 0.01, 1e5, 'm');
  const lossAt = (flow: number): number =>
    hoseLoss({ flow, bore, length, roughness, density, viscosity }).pressureLoss;
  let low = 0;
  let high = Math.min(1, FASTEST * boreArea(bore));
  inRange('pressureLoss', pressureLoss, 0, lossAt(high), 'Pa');
  for (let i = 0; i < 200 && high - low > 1e-15 * high; i++) {
    const middle = (low + high) / 2;
    if (lossAt(middle) > pressureLoss) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

/**
 * Smallest bore of a straight hose that keeps its loss within what is allowed.
 *
 * @formula the bore whose Darcy-Weisbach loss equals Δp, by bisection
 * @param flow volume flow [m3/s] 1e-9..1
 * @param pressureLoss pressure that the hose may lose [Pa] 1..1e8
 * @param length length [m] 0.01..1e5
 * @param roughness roughness of the wall [m] 0..0.001
 * @param density density of the liquid [kg/m3] 500..2500
 * @param viscosity dynamic viscosity [Pa.s] 1e-5..1000
 * @returns inside diameter: take the next hose that is at least as wide [m]
 * @valid Newtonian liquid, straight hose without its couplings, bores of 0.2 mm to 0.5 m and at least ten times the roughness
 * @throws RangeError when a parameter is outside its range, or a bore of 0.5 m still loses more
 * @source Darcy-Weisbach with Hagen-Poiseuille and Colebrook-White
 */
export function boreForLoss(
  flow: number,
  pressureLoss: number,
  length: number,
  roughness: number,
  density: number,
  viscosity: number,
): number {
  inRange('flow', flow, 1e-9, 1, 'm3/s');
  inRange('length', length, 0.01, 1e5, 'm');
  inRange('roughness', roughness, 0, 0.001, 'm');
  const lossAt = (bore: number): number =>
    hoseLoss({ flow, bore, length, roughness, density, viscosity }).pressureLoss;
  let high = WIDEST;
  inRange('pressureLoss', pressureLoss, Math.max(1, lossAt(high)), 1e8, 'Pa');
  let low = Math.max(0.0002, 10 * roughness, Math.sqrt((4 * flow) / (Math.PI * FASTEST)));
  if (lossAt(low) <= pressureLoss) return low;
  for (let i = 0; i < 200 && high - low > 1e-15 * high; i++) {
    const middle = (low + high) / 2;
    if (lossAt(middle) > pressureLoss) low = middle;
    else high = middle;
  }
  return high;
}
