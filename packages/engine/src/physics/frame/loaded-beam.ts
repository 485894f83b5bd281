import { inRange } from '../in-range.ts';
import { listInRange, sameLength } from '../lists-in-range.ts';

export interface LoadedBeamInput {
  readonly length: number;
  readonly supportA: number;
  readonly supportB: number;
  readonly pointLoads: readonly number[];
  readonly pointPlaces: readonly number[];
  readonly evenLoads: readonly number[];
  readonly evenFrom: readonly number[];
  readonly evenTo: readonly number[];
  readonly stiffness: number;
}

export interface LoadedBeam {
  readonly reactionA: number;
  readonly reactionB: number;
  readonly maxMoment: number;
  readonly maxMomentPlace: number;
  readonly maxShear: number;
  readonly maxSag: number;
  readonly maxSagPlace: number;
}

/** Pieces shorter than this bend nothing [m]. */
const SHORTEST_PIECE = 1e-9;

/**
 * Rail or cross-member on two supports under several loads.
 *
 * @formula moments about the supports; M(x) by sections; E I y'' = -M integrated exactly, y = 0 at both supports
 * @param p.length whole length of the beam [m] 0.05..30
 * @param p.supportA place of the first support from the beam's end [m] 0..30
 * @param p.supportB place of the second support [m] 0..30
 * @param p.pointLoads single loads, downward, dynamic factor in [list of N] -1e7..1e7
 * @param p.pointPlaces place of each [list of m] 0..30
 * @param p.evenLoads loads per length of each even load [list of N/m] -1e7..1e7
 * @param p.evenFrom start of each even load [list of m] 0..30
 * @param p.evenTo end of each even load [list of m] 0..30
 * @param p.stiffness modulus of elasticity times second moment, E I [N.m2] 1..1e10
 * @result reactionA load on the first support; negative when the beam must be held down [N]
 * @result reactionB load on the second support [N]
 * @result maxMoment moment of the largest size, positive sagging [N.m]
 * @result maxMomentPlace where it is [m]
 * @result maxShear largest shear force, without sign [N]
 * @result maxSag largest deflection, without sign [m]
 * @result maxSagPlace where it is, to 1/64 of the distance between loads [m]
 * @valid slender beam, small deflection; estimate: a qualified person must approve the frame
 * @throws RangeError when a value is outside its range or lists that belong together differ in length
 * @source Beam statics and Euler-Bernoulli bending (method of singularity functions)
 */
export function loadedBeam(p: LoadedBeamInput): LoadedBeam {
  checkBeam(p);
  const { reactionA, reactionB } = reactions(p);
  const shear = (x: number): number =>
    ramp(x - p.supportA, 0) * reactionA +
    ramp(x - p.supportB, 0) * reactionB -
    sumPoints(p, x, 0) -
    sumEven(p, x, 1);
  const moment = (x: number): number =>
    ramp(x - p.supportA, 1) * reactionA +
    ramp(x - p.supportB, 1) * reactionB -
    sumPoints(p, x, 1) -
    sumEven(p, x, 2) / 2;
  // Twice integrated moment, without the straight line that brings it to zero at the supports, and its slope.
  const bent = (x: number): number =>
    (ramp(x - p.supportA, 3) * reactionA + ramp(x - p.supportB, 3) * reactionB - sumPoints(p, x, 3)) / 6 -
    sumEven(p, x, 4) / 24;
  const bentSlope = (x: number): number =>
    (ramp(x - p.supportA, 2) * reactionA + ramp(x - p.supportB, 2) * reactionB - sumPoints(p, x, 2)) / 2 -
    sumEven(p, x, 3) / 6;
  const line = (bent(p.supportB) - bent(p.supportA)) / (p.supportB - p.supportA);
  const atA = bent(p.supportA);

  const stops = [0, p.length, p.supportA, p.supportB, ...p.pointPlaces, ...p.evenFrom, ...p.evenTo];
  const places = [...new Set(stops)].sort((a, b) => a - b);
  let maxMoment = 0;
  let maxMomentPlace = p.supportA;
  let maxShear = 0;
  let maxSag = 0;
  let maxSagPlace = p.supportA;
  const seeMoment = (x: number): void => {
    const m = moment(x);
    if (Math.abs(m) > Math.abs(maxMoment)) {
      maxMoment = m;
      maxMomentPlace = x;
    }
  };
  places.forEach((from, i) => {
    seeMoment(from);
    const to = places[i + 1];
    if (to === undefined) return;
    // Within a piece the shear is a straight line: its zero is where the moment turns.
    const first = shear(from + (to - from) * 1e-9);
    const last = shear(to - (to - from) * 1e-9);
    maxShear = Math.max(maxShear, Math.abs(first), Math.abs(last));
    if (first * last < 0) seeMoment(from + ((to - from) * first) / (first - last));
    // Within a piece the bent line is a quartic: its coefficients are taken once, then sampled.
    const y0 = bent(from) - atA - line * (from - p.supportA);
    const y1 = bentSlope(from) - line;
    const y2 = moment(from);
    // A piece of vanishing length has no slope of its own; dividing by it would overflow.
    const y4 = to - from < SHORTEST_PIECE ? 0 : (last - first) / (to - from);
    for (let k = 0; k <= 64; k++) {
      const s = ((to - from) * k) / 64;
      const y = Math.abs(y0 + s * (y1 + s * (y2 / 2 + s * (first / 6 + (s * y4) / 24)))) / p.stiffness;
      if (y > maxSag) {
        maxSag = y;
        maxSagPlace = from + s;
      }
    }
  });
  return { reactionA, reactionB, maxMoment, maxMomentPlace, maxShear, maxSag, maxSagPlace };
}

function reactions(p: LoadedBeamInput): { reactionA: number; reactionB: number } {
  let load = 0;
  let turn = 0;
  p.pointLoads.forEach((f, i) => {
    load += f;
    turn += f * (p.pointPlaces[i]! - p.supportA);
  });
  p.evenLoads.forEach((w, i) => {
    const f = w * (p.evenTo[i]! - p.evenFrom[i]!);
    load += f;
    turn += f * ((p.evenTo[i]! + p.evenFrom[i]!) / 2 - p.supportA);
  });
  const reactionB = turn / (p.supportB - p.supportA);
  return { reactionA: load - reactionB, reactionB };
}

/** Singularity function: 0 before the place, the n-th power behind it. */
function ramp(x: number, n: number): number {
  if (x <= 0) return 0;
  let power = 1;
  for (let i = 0; i < n; i++) power *= x;
  return power;
}

// Loops, not `reduce`: a beam asks them thousands of times.
function sumPoints({ pointLoads, pointPlaces }: LoadedBeamInput, x: number, n: number): number {
  let sum = 0;
  for (let i = 0; i < pointLoads.length; i++) {
    const behind = x - pointPlaces[i]!;
    if (behind > 0) sum += pointLoads[i]! * ramp(behind, n);
  }
  return sum;
}

function sumEven({ evenLoads, evenFrom, evenTo }: LoadedBeamInput, x: number, n: number): number {
  let sum = 0;
  for (let i = 0; i < evenLoads.length; i++)
    sum += evenLoads[i]! * (ramp(x - evenFrom[i]!, n) - ramp(x - evenTo[i]!, n));
  return sum;
}

function checkBeam(p: LoadedBeamInput): void {
  inRange('length', p.length, 0.05, 30, 'm');
  inRange('supportA', p.supportA, 0, p.length, 'm');
  inRange('supportB', p.supportB, p.supportA + 0.01, p.length, 'm');
  inRange('stiffness', p.stiffness, 1, 1e10, 'N.m2');
  sameLength('pointLoads', p.pointLoads, 'pointPlaces', p.pointPlaces);
  sameLength('evenLoads', p.evenLoads, 'evenFrom', p.evenFrom);
  sameLength('evenLoads', p.evenLoads, 'evenTo', p.evenTo);
  listInRange('pointLoads', p.pointLoads, -1e7, 1e7, 'N');
  listInRange('pointPlaces', p.pointPlaces, 0, p.length, 'm');
  listInRange('evenLoads', p.evenLoads, -1e7, 1e7, 'N/m');
  listInRange('evenFrom', p.evenFrom, 0, p.length, 'm');
  p.evenTo.forEach((to, i) => inRange(`evenTo[${i}]`, to, p.evenFrom[i]!, p.length, 'm'));
}
