/**
 * Friction as the solver sees it: psi(w) = f w^2 and d psi / d w, with w = Re/100 (for a power-law liquid w is likewise
 * proportional to the flow). In this measure the Reynolds numbers 2000, 2300 and 4000 where laws change, 20, 23 and 40,
 * are short binary fractions, so that they fall between the pieces of the prepared curves.
 * No validation here: the model was checked when it was compiled. A test holds these equal to the documented laws of
 * the physics layer.
 */
import { coilFriction, coilOut } from './coil-friction.ts';
import { powerLawPsi } from './power-law-friction.ts';
import { registers } from './registers.ts';

/** Result of the last evaluation: [psi, d psi / d w]; of a prepared piece also half the second derivative. */
export const psiOut = registers();

export const FRICTION_COLEBROOK = 0;
export const FRICTION_SWAMEE_JAIN = 1;
export const FRICTION_POWER_LAW = 2;
/** psi = w^index: a pump curve given as a power. */
export const FRICTION_PURE_POWER = 3;
/** The three parts of the Colebrook law, each going on beyond its ends as if there were no other. */
export const FRICTION_LAMINAR = 4;
export const FRICTION_BLEND = 5;
export const FRICTION_TURBULENT = 6;

const C = 2 / Math.LN10;
const LN_2300 = Math.log(2300);
const SPAN = Math.log(4000 / 2300);
const LN_F_2300 = Math.log(64 / 2300);
const SJ_4000 = 5.74 / 4000 ** 0.9;

/** What distinguishes one friction curve from another. */
export interface FrictionKey {
  readonly law: number;
  readonly relativeRoughness: number;
  /** Bore over drum diameter; 0 for a straight pipe. */
  readonly coilRatio: number;
  /** Flow index of a power-law liquid, or exponent of a pure power; 1 otherwise. */
  readonly index: number;
}

/** w of Reynolds number 1. */
export const W_PER_REYNOLDS = 0.01;
/** Re 10, up to which coiling makes no difference (Dean number below 11.6 on any drum). */
const CREEPING_W = 10 * W_PER_REYNOLDS;
/** Re 2000, up to which every straight law is 64/Re. */
const LAMINAR_W = 2000 * W_PER_REYNOLDS;
export const LAMINAR_PSI = 64 * W_PER_REYNOLDS;

export function evaluatePsi(key: FrictionKey, w: number): void {
  if (key.law === FRICTION_POWER_LAW) {
    powerLawPsi(key.index, w, psiOut);
    return;
  }
  if (key.law === FRICTION_PURE_POWER) {
    const psi = w ** key.index;
    return setPsi(psi, w > 0 ? (key.index * psi) / w : 0);
  }
  if (key.law >= FRICTION_LAMINAR) return partPsi(key, w);
  if (w <= (key.coilRatio === 0 ? LAMINAR_W : CREEPING_W)) return setPsi(LAMINAR_PSI * w, LAMINAR_PSI);
  const re = w / W_PER_REYNOLDS;
  straightPsi(key.law, key.relativeRoughness, re);
  if (key.coilRatio > 0) raiseToCoil(key.coilRatio, re);
  psiOut[0]! *= W_PER_REYNOLDS * W_PER_REYNOLDS;
  psiOut[1]! *= W_PER_REYNOLDS;
}

function partPsi(key: FrictionKey, w: number): void {
  if (key.law === FRICTION_LAMINAR || w <= 0) return setPsi(LAMINAR_PSI * w, LAMINAR_PSI);
  const a = key.relativeRoughness / 3.7;
  const re = w / W_PER_REYNOLDS;
  if (key.law === FRICTION_BLEND) blendPsi(a, re);
  else turbulentPsi(a, re);
  psiOut[0]! *= W_PER_REYNOLDS * W_PER_REYNOLDS;
  psiOut[1]! *= W_PER_REYNOLDS;
}

function straightPsi(law: number, relativeRoughness: number, re: number): void {
  if (law === FRICTION_SWAMEE_JAIN) swameeJainPsi(relativeRoughness, re);
  else colebrookPsi(relativeRoughness, re);
}

function colebrookPsi(relativeRoughness: number, re: number): void {
  if (re <= 2300) return setPsi(64 * re, 64);
  const a = relativeRoughness / 3.7;
  if (re >= 4000) turbulentPsi(a, re);
  else blendPsi(a, re);
}

function turbulentPsi(a: number, re: number): void {
  const x = colebrookX(a, re);
  const cb = (C * 2.51) / (re * a + 2.51 * x);
  setFromSlope(re, 1 / (x * x), (-2 * cb) / (1 + cb));
}

/** From Re 2300 to 4000: a cubic of ln f in ln Re that goes on from either side with its slope. */
function blendPsi(a: number, re: number): void {
  const x = colebrookX(a, 4000);
  const cb = (C * 2.51) / (4000 * a + 2.51 * x);
  const endSlope = (-2 * cb) / (1 + cb);
  const rise = -2 * Math.log(x) - LN_F_2300;
  const c2 = (3 * rise) / (SPAN * SPAN) - (endSlope - 2) / SPAN;
  const c3 = (-2 * rise) / (SPAN * SPAN * SPAN) + (endSlope - 1) / (SPAN * SPAN);
  const t = Math.log(re) - LN_2300;
  setFromSlope(re, Math.exp(LN_F_2300 + t * (-1 + t * (c2 + t * c3))), -1 + t * (2 * c2 + 3 * t * c3));
}

/** 1/sqrt(f) by Newton from an explicit start; three steps reach rounding everywhere. */
function colebrookX(a: number, re: number): number {
  const b = 2.51 / re;
  let x = -C * Math.log(a + (2.51 / re) * (-C * Math.log(a + 5.02 / re + 13 / (re * re))));
  for (let i = 0; i < 3; i++) {
    const u = a + b * x;
    const step = (x + C * Math.log(u)) / (1 + (C * b) / u);
    x -= step;
    if (step * step < 1e-18 * x * x) break;
  }
  return x;
}

function swameeJainPsi(relativeRoughness: number, re: number): void {
  if (re <= 2000) return setPsi(64 * re, 64);
  const a = relativeRoughness / 3.7;
  if (re >= 4000) {
    const t = 5.74 / re ** 0.9;
    const x = -C * Math.log(a + t);
    return setFromSlope(re, 1 / (x * x), (-1.8 * C * t) / ((a + t) * x));
  }
  const y2 = a + SJ_4000;
  const y3 = -C * Math.log(y2);
  const fa = 1 / (y3 * y3);
  const fb = fa * (2 - (1.8 * C * SJ_4000) / (y2 * y3));
  const r = re / 2000;
  const x1 = 7 * fa - fb;
  const x2 = 0.128 - 17 * fa + 2.5 * fb;
  const x3 = -0.128 + 13 * fa - 2 * fb;
  const x4 = 0.032 - 3 * fa + 0.5 * fb;
  const f = x1 + r * (x2 + r * (x3 + r * x4));
  const df = (x2 + r * (2 * x3 + 3 * r * x4)) / 2000;
  setPsi(f * re * re, 2 * f * re + df * re * re);
}

function raiseToCoil(coilRatio: number, re: number): void {
  const straight = psiOut[0]! / (re * re);
  coilFriction(re, coilRatio, straight, (psiOut[1]! * re) / psiOut[0]! - 2);
  setFromSlope(re, coilOut[0]!, coilOut[1]!);
}

function setPsi(psi: number, slope: number): void {
  psiOut[0] = psi;
  psiOut[1] = slope;
}

function setFromSlope(re: number, f: number, logSlope: number): void {
  psiOut[0] = f * re * re;
  psiOut[1] = f * re * (2 + logSlope);
}
