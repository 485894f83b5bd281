import { inRange } from '../in-range.ts';
import { checkBore, checkDensity, checkFlow, checkLength, checkReynolds } from './limits.ts';
import { frictionLossDarcy } from './friction-loss.ts';
import { meanVelocity } from './velocity.ts';

/** The transition spans the same ratio of Reynolds numbers as that of Newtonian liquids, 2300 to 4000. */
const SPAN = Math.log(4000 / 2300);

/**
 * Reynolds number of a thickened (power-law) liquid.
 *
 * @formula Re_MR = ρ v^(2-n) D^n / (8^(n-1) K ((3n+1)/(4n))^n)
 * @param flow volume flow [m3/s] 0..1
 * @param bore inside diameter [m] 0.0002..0.5
 * @param density density of the liquid [kg/m3] 500..2500
 * @param consistency consistency K of τ = K γ^n [Pa.s^n] 1e-5..1000
 * @param index flow index n [-] 0.1..1.5
 * @returns Metzner-Reed Reynolds number [-]
 * @throws RangeError when a parameter is outside its range
 * @source Metzner and Reed, AIChE Journal 1 (1955) 434; form as in Darby, equation 6-45
 */
export function reynoldsMetznerReed(
  flow: number,
  bore: number,
  density: number,
  consistency: number,
  index: number,
): number {
  checkFlow(flow);
  checkBore(bore);
  checkDensity(density);
  inRange('consistency', consistency, 1e-5, 1000, 'Pa.s^n');
  checkIndex(index);
  const velocity = meanVelocity(flow, bore);
  const shape = ((3 * index + 1) / (4 * index)) ** index;
  return (density * velocity ** (2 - index) * bore ** index) / (8 ** (index - 1) * consistency * shape);
}

/**
 * Reynolds number up to which a power-law liquid flows laminar.
 *
 * @formula Re_c = 6464 n (2 + n)^((2+n)/(1+n)) / (1 + 3n)²
 * @param index flow index n [-] 0.1..1.5
 * @returns critical Metzner-Reed Reynolds number [-]
 * @throws RangeError when a parameter is outside its range
 * @source Ryan and Johnson, AIChE Journal 5 (1959) 433, from memory
 */
export function criticalReynoldsRyanJohnson(index: number): number {
  checkIndex(index);
  return (6464 * index * (2 + index) ** ((2 + index) / (1 + index))) / (1 + 3 * index) ** 2;
}

/**
 * Friction factor of a power-law liquid in turbulent flow, smooth wall.
 *
 * @formula 1/sqrt(f_F) = (4/n^0.75) log10(Re f_F^(1-n/2)) - 0.4/n^1.2; f = 4 f_F
 * @param reynolds Metzner-Reed Reynolds number [-] 2000..1e8
 * @param index flow index n [-] 0.2..1.5
 * @returns Darcy friction factor, four times the Fanning one [-]
 * @valid smooth hose; no accepted law includes roughness; n = 1 is the law of smooth pipes
 * @throws RangeError when a parameter is outside its range
 * @source Dodge and Metzner, AIChE Journal 5 (1959) 189, from memory
 */
export function frictionFactorDodgeMetzner(reynolds: number, index: number): number {
  inRange('reynolds', reynolds, 2000, 1e8, '-');
  inRange('index', index, 0.2, 1.5, '-');
  return 4 / dodgeMetznerRoot(reynolds, index) ** 2;
}

/**
 * Friction factor of a power-law liquid at any Reynolds number: the law this program uses.
 *
 * @formula 64/Re up to Ryan-Johnson's limit Re_c; Dodge-Metzner from 1.74 Re_c; between them ln f a cubic in ln Re, slopes matched; nowhere less than 64/Re
 * @param reynolds Metzner-Reed Reynolds number [-] 1e-6..1e8
 * @param index flow index n [-] 0.2..1.5
 * @returns Darcy friction factor [-]
 * @valid smooth hose, laid straight. Dodge and Metzner measured n from 0.36 to 1 (from memory); for n below 0.28 their law falls under 64/Re near the transition, and the floor keeps the loss rising with the flow
 * @throws RangeError when a parameter is outside its range
 * @source Metzner-Reed 1955, Ryan and Johnson 1959, Dodge and Metzner 1959; the joining cubic and the floor are ours
 */
export function frictionFactorPowerLaw(reynolds: number, index: number): number {
  inRange('reynolds', reynolds, 1e-6, 1e8, '-');
  inRange('index', index, 0.2, 1.5, '-');
  const laminar = 64 / reynolds;
  const critical = criticalReynoldsRyanJohnson(index);
  if (reynolds <= critical) return laminar;
  const turbulent = critical * Math.exp(SPAN);
  const root = dodgeMetznerRoot(Math.max(reynolds, turbulent), index);
  if (reynolds >= turbulent) return Math.max(laminar, 4 / (root * root));
  const start = Math.log(64 / critical);
  const rise = Math.log(4 / (root * root)) - start;
  const a = dodgeMetznerSlope(index);
  const endSlope = (-2 * a) / (root + a * (2 - index));
  const c2 = (3 * rise) / SPAN ** 2 - (endSlope - 2) / SPAN;
  const c3 = (-2 * rise) / SPAN ** 3 + (endSlope - 1) / SPAN ** 2;
  const t = Math.log(reynolds / critical);
  return Math.max(laminar, Math.exp(start + t * (-1 + t * (c2 + t * c3))));
}

/**
 * Shear rate at the wall of a hose: what the fitted K and n must cover.
 *
 * @formula γ = (8 v/D) (3n + 1)/(4n)
 * @param flow volume flow [m3/s] 0..1
 * @param bore inside diameter [m] 0.0002..0.5
 * @param index flow index n, 1 for a Newtonian liquid [-] 0.1..1.5
 * @returns shear rate [1/s]
 * @valid laminar flow; in turbulent flow a lower bound
 * @throws RangeError when a parameter is outside its range
 * @source Rabinowitsch-Mooney for a power-law liquid
 */
export function wallShearRate(flow: number, bore: number, index: number): number {
  checkIndex(index);
  return ((8 * meanVelocity(flow, bore)) / bore) * ((3 * index + 1) / (4 * index));
}

/** Liquid, hose and the range of shear rates in which the liquid was measured. */
export interface PowerLawHose {
  readonly flow: number;
  readonly bore: number;
  readonly length: number;
  readonly density: number;
  readonly consistency: number;
  readonly index: number;
  readonly shearRateMin?: number;
  readonly shearRateMax?: number;
}

export interface PowerLawLoss {
  readonly reynolds: number;
  readonly frictionFactor: number;
  readonly pressureLoss: number;
  readonly wallShearRate: number;
}

/**
 * Pressure lost along a hose by a thickened (power-law) liquid.
 *
 * @formula Δp = f (L/D) ρ v²/2 with f at the Metzner-Reed Reynolds number
 * @param p.flow volume flow [m3/s] 1e-9..1
 * @param p.bore inside diameter [m] 0.0002..0.5
 * @param p.length length [m] 0..1e5
 * @param p.density density of the liquid [kg/m3] 500..2500
 * @param p.consistency consistency K of τ = K γ^n [Pa.s^n] 1e-5..1000
 * @param p.index flow index n [-] 0.2..1.5
 * @param p.shearRateMin lowest shear rate in which K and n were fitted; default none [1/s] 0..
 * @param p.shearRateMax highest shear rate in which K and n were fitted; default none [1/s] 0..
 * @result reynolds Metzner-Reed Reynolds number [-]
 * @result frictionFactor Darcy friction factor [-]
 * @result pressureLoss pressure loss [Pa]
 * @result wallShearRate shear rate at the wall [1/s]
 * @valid smooth hose, laid straight; refuses a wall shear rate outside the range in which K and n were fitted
 * @throws RangeError when a parameter is outside its range
 * @source Metzner-Reed 1955, Ryan and Johnson 1959, Dodge and Metzner 1959
 */
export function frictionLossPowerLaw(p: PowerLawHose): PowerLawLoss {
  inRange('flow', p.flow, 1e-9, 1, 'm3/s');
  checkLength(p.length);
  const { shearRateMin = 0, shearRateMax = Infinity } = p;
  inRange('shearRateMin', shearRateMin, 0, Infinity, '1/s');
  inRange('shearRateMax', shearRateMax, 0, Infinity, '1/s');
  const shear = wallShearRate(p.flow, p.bore, p.index);
  inRange('wallShearRate', shear, shearRateMin, shearRateMax, '1/s');
  const reynolds = reynoldsMetznerReed(p.flow, p.bore, p.density, p.consistency, p.index);
  const frictionFactor = frictionFactorPowerLaw(reynolds, p.index);
  const pressureLoss = frictionLossDarcy(frictionFactor, p.length, p.bore, p.flow, p.density);
  return { reynolds, frictionFactor, pressureLoss, wallShearRate: shear };
}

function checkIndex(index: number): void {
  inRange('index', index, 0.1, 1.5, '-');
}

/** Slope of 1/sqrt(f_F) in the natural logarithm. */
const dodgeMetznerSlope = (index: number): number => 4 / (index ** 0.75 * Math.LN10);

/** 1/sqrt(f_F) by Newton. */
function dodgeMetznerRoot(reynolds: number, index: number): number {
  checkReynolds(reynolds);
  const a = dodgeMetznerSlope(index);
  const b = 0.4 / index ** 1.2;
  let y = 12;
  for (let i = 0; i < 50; i++) {
    const step = (y - a * (Math.log(reynolds) - (2 - index) * Math.log(y)) + b) / (1 + (a * (2 - index)) / y);
    y = Math.max(y - step, 0.2 * y);
    if (Math.abs(step) < 1e-14 * y) break;
  }
  return y;
}
