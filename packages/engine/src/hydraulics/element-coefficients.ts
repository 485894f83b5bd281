/**
 * What each element adds to the loss of its branch, from its present parameters:
 * loss = constant + linear Q + quadratic Q^2 (+ friction + curve), with Q the flow of all `count` together.
 */
import { evaluateCurve } from './loss-curve.ts';
import type { LossCurve } from './loss-curve.ts';
import * as layout from './circuit.ts';
import * as parameters from './element-parameters.ts';
import * as kernel from './friction-kernel.ts';
import { POWER_LAW_CRITICAL_W, criticalReynoldsPowerLaw } from './power-law-friction.ts';
import type { ElementLaw, FrictionLaw, NetworkLiquid, PowerCurve } from './network-model.ts';
import { registers } from './registers.ts';

// Copies of its own: a constant of this module is compiled into the loop, an imported one is read anew each time.
const { CENTRE, LOWER, UPPER } = layout;
const { COUNT, SLOTS } = parameters;
const {
  FRICTION_COLEBROOK,
  FRICTION_LAMINAR,
  FRICTION_POWER_LAW,
  FRICTION_PURE_POWER,
  FRICTION_SWAMEE_JAIN,
  W_PER_REYNOLDS,
} = kernel;

const G = 9.80665;
/** Density that flow factors are referred to [kg/m3]. */
const FACTOR_DENSITY = 1000;
/** Flattest regulator kept: held head rises 2e-5 m per L/s. */
const LEAST_HELD_SLOPE = 0.02;
const LEAST_SHEAR_RATE = 1;
/** A pump at standstill passes liquid as it would at this relative speed. */
const LEAST_SPEED = 1e-3;
/** w at the flow at which a power curve has lost half its head. */
const POWER_CURVE_W = 1024;

export const UNKNOWN_TABLE = -1;

/** The key of a pipe's friction curve; changed in place. */
interface PipeFriction {
  /** Where its prepared curve starts, or SPARE_TABLE; 0 there is none; UNKNOWN_TABLE after the key has changed. */
  table: number;
  law: number;
  relativeRoughness: number;
  coilRatio: number;
  index: number;
}

export interface Coefficients {
  readonly constant: Float64Array;
  readonly linear: Float64Array;
  readonly quadratic: Float64Array;
  /** Friction of pipes: loss = frictionLoss psi(frictionW |Q|), linear below lowW. */
  readonly frictionLoss: Float64Array;
  readonly frictionW: Float64Array;
  readonly frictionLowW: Float64Array;
  readonly friction: readonly PipeFriction[];
  /** Regulators: held pressure as head, its slope. */
  readonly held: Float64Array;
  readonly heldSlope: Float64Array;
  /** A flow of ordinary size for the element [m3/s]. */
  readonly nominal: Float64Array;
}

export function newCoefficients(elements: number): Coefficients {
  return {
    constant: new Float64Array(elements),
    linear: new Float64Array(elements),
    quadratic: new Float64Array(elements),
    frictionLoss: new Float64Array(elements),
    frictionW: new Float64Array(elements),
    frictionLowW: new Float64Array(elements),
    friction: Array.from({ length: elements }, () => ({
      table: UNKNOWN_TABLE,
      law: 0,
      relativeRoughness: 0,
      coilRatio: 0,
      index: 1,
    })),
    held: new Float64Array(elements),
    heldSlope: new Float64Array(elements),
    nominal: new Float64Array(elements),
  };
}

export interface ElementContext {
  readonly values: Float64Array;
  readonly curves: readonly (LossCurve | undefined)[];
  readonly frictionLaw: FrictionLaw;
  /** Part of its law that an element is held on, whatever its flow; 0 where it is free. See `held-parts.ts`. */
  readonly heldPart: Uint16Array;
}

/** 3 m/s in a bore, 10 m of head over an outlet: yardsticks for first guesses and step limits, not results. */
const NOMINAL_VELOCITY = 3;
const NOMINAL_PER_FACTOR = Math.sqrt(20 * FACTOR_DENSITY * G);

export function refreshElement(
  c: Coefficients,
  context: ElementContext,
  law: ElementLaw,
  e: number,
  liquid: NetworkLiquid,
): void {
  const v = context.values;
  const o = e * SLOTS;
  const count = v[o + COUNT]!;
  const headPerPascal = 1 / (liquid.density * G);
  switch (law.kind) {
    case 'pipe': {
      const bore = v[o + 1]!;
      c.quadratic[e] = v[o + 3]! * velocityHeadPerFlow2(bore, count);
      c.nominal[e] = NOMINAL_VELOCITY * count * area(bore);
      refreshFriction(c, context, e, liquid);
      return;
    }
    case 'fitting': {
      const bore = v[o]!;
      c.quadratic[e] = v[o + 1]! * velocityHeadPerFlow2(bore, count);
      // K1/Re v2/2g = K1 nu v / (2 g D): linear in flow.
      c.linear[e] = (v[o + 2]! * liquid.viscosity) / (liquid.density * 2 * G * bore * area(bore) * count);
      c.nominal[e] = NOMINAL_VELOCITY * count * area(bore);
      return;
    }
    case 'flow-factor':
    case 'strainer':
    case 'orifice':
    case 'jet-agitator':
      return setFlowFactor(c, e, v[o]! * count);
    case 'sparger':
      return setFlowFactor(c, e, v[o]! * v[o + 1]! * count);
    case 'check-valve': {
      const bore = v[o]!;
      c.quadratic[e] = v[o + 1]! * velocityHeadPerFlow2(bore, count);
      c.constant[e] = v[o + 2]! * headPerPascal;
      c.nominal[e] = NOMINAL_VELOCITY * count * area(bore);
      return;
    }
    case 'positive-displacement-pump': {
      const reference = law.referenceViscosity ?? 1e-3;
      const slip = v[o + 2]! * (reference / liquid.viscosity) ** (law.viscosityExponent ?? 0);
      const free = v[o]! * v[o + 1]! * (1 - v[o + 3]!);
      c.linear[e] = headPerPascal / (slip * count);
      c.constant[e] = (-free * headPerPascal) / slip;
      c.nominal[e] = Math.max(free * count, 1e-9);
      return;
    }
    case 'centrifugal-pump':
    case 'demand-pump':
    case 'curve':
    case 'eductor': {
      const curve = context.curves[e]!;
      if (curve.power !== undefined) return refreshPowerCurve(c, curve.power, e, v[o]!, count);
      c.nominal[e] = (count * curve.lastFlow) / 2;
      return;
    }
    case 'back-pressure-regulator':
    case 'unloader':
    case 'relief-valve':
    case 'reducing-regulator':
      setFlowFactor(c, e, v[o + 2]! * count);
      c.held[e] = v[o]! * headPerPascal;
      c.heldSlope[e] = Math.max((v[o + 1]! * headPerPascal) / count, LEAST_HELD_SLOPE);
      return;
  }
}

function setFlowFactor(c: Coefficients, e: number, k: number): void {
  c.quadratic[e] = 1 / (k * k * FACTOR_DENSITY * G);
  c.nominal[e] = NOMINAL_PER_FACTOR * k;
}

/** H = n^2 A - B n^(2-C) q^C: a constant and a friction group whose psi is a pure power. */
function refreshPowerCurve(
  c: Coefficients,
  power: PowerCurve,
  e: number,
  speed: number,
  count: number,
): void {
  const { shutOffHead, coefficient, exponent } = power;
  const n = Math.max(speed, LEAST_SPEED);
  const half = (shutOffHead / (2 * coefficient)) ** (1 / exponent);
  c.constant[e] = -n * n * shutOffHead;
  c.nominal[e] = count * half;
  setKey(c.friction[e]!, FRICTION_PURE_POWER, 0, 0, exponent);
  c.frictionW[e] = POWER_CURVE_W / (half * count);
  c.frictionLoss[e] = coefficient * n ** (2 - exponent) * (half / POWER_CURVE_W) ** exponent;
  c.frictionLowW[e] = 0;
}

function area(bore: number): number {
  return (Math.PI / 4) * bore * bore;
}

function velocityHeadPerFlow2(bore: number, count: number): number {
  const a = area(bore) * count;
  return 1 / (2 * G * a * a);
}

function refreshFriction(c: Coefficients, context: ElementContext, e: number, liquid: NetworkLiquid): void {
  const o = e * SLOTS;
  const length = context.values[o]!;
  const bore = context.values[o + 1]!;
  const drum = context.values[o + 4]!;
  const count = context.values[o + COUNT]!;
  const key = c.friction[e]!;
  const power = liquid.powerLaw;
  const velocityPerFlow = 1 / (area(bore) * count);
  if (power === undefined) {
    const held = context.heldPart[e]!;
    const free = context.frictionLaw === 'swamee-jain' ? FRICTION_SWAMEE_JAIN : FRICTION_COLEBROOK;
    const law = held > 0 ? FRICTION_LAMINAR + held - 1 : free;
    setKey(key, law, Math.min(context.values[o + 2]! / bore, 0.1), drum > 0 ? bore / drum : 0, 1);
    const wPerVelocity = (W_PER_REYNOLDS * liquid.density * bore) / liquid.viscosity;
    c.frictionW[e] = wPerVelocity * velocityPerFlow;
    c.frictionLoss[e] = length / (bore * 2 * G * wPerVelocity * wPerVelocity);
    c.frictionLowW[e] = 0;
    return;
  }
  const n = power.index;
  // Roughness and coiling have no accepted law for power-law liquids.
  setKey(key, FRICTION_POWER_LAW, 0, 0, n);
  const wall = (3 * n + 1) / (4 * n);
  const reScale = (liquid.density * bore ** n) / (8 ** (n - 1) * power.consistency * wall ** n);
  const wPerVelocity = POWER_LAW_CRITICAL_W * (reScale / criticalReynoldsPowerLaw(n)) ** (1 / (2 - n));
  c.frictionW[e] = wPerVelocity * velocityPerFlow;
  c.frictionLoss[e] = length / (bore * 2 * G * wPerVelocity * wPerVelocity);
  const lowestVelocity = ((power.shearRateMin ?? LEAST_SHEAR_RATE) * bore) / (8 * wall);
  const lowest = wPerVelocity * lowestVelocity;
  if (c.frictionLowW[e] !== lowest) key.table = UNKNOWN_TABLE;
  c.frictionLowW[e] = lowest;
}

function setKey(
  key: PipeFriction,
  law: number,
  relativeRoughness: number,
  coilRatio: number,
  index: number,
): void {
  const same =
    key.law === law &&
    key.relativeRoughness === relativeRoughness &&
    key.coilRatio === coilRatio &&
    key.index === index;
  if (same) return;
  key.table = UNKNOWN_TABLE;
  key.law = law;
  key.relativeRoughness = relativeRoughness;
  key.coilRatio = coilRatio;
  key.index = index;
}

/**
 * Adds an element's curve to a Taylor series [c0, c1, c2, c3] about the total flow in CENTRE, at `o` of `sum`, with affinity
 * and count applied, and narrows the range LOWER..UPPER in which that series is exact.
 */
export function addElementCurve(
  context: ElementContext,
  law: ElementLaw,
  e: number,
  sum: Float64Array,
  o: number,
): void {
  const v = e * SLOTS;
  const speed = law.kind === 'centrifugal-pump' || law.kind === 'demand-pump' ? context.values[v]! : 1;
  const s = Math.max(speed, LEAST_SPEED);
  const headScale = law.kind === 'centrifugal-pump' ? s * s : 1;
  const flowScale = 1 / (s * context.values[v + COUNT]!);
  piece[0] = sum[o + CENTRE]! * flowScale;
  evaluateCurve(context.curves[e]!, piece, context.heldPart[e]!);
  sum[o]! += headScale * piece[0];
  sum[o + 1]! += headScale * flowScale * piece[1]!;
  sum[o + 2]! += headScale * flowScale * flowScale * piece[2]!;
  sum[o + 3]! += headScale * flowScale * flowScale * flowScale * piece[3]!;
  sum[o + LOWER] = Math.max(sum[o + LOWER]!, piece[4]! / flowScale);
  sum[o + UPPER] = Math.min(sum[o + UPPER]!, piece[5]! / flowScale);
}

/** Taylor series and range of a curve, from `evaluateCurve`. */
const piece = registers();
