import { branchLoss, lossOut } from './branch-loss.ts';
import type { Laws } from './branch-loss.ts';
import * as layout from './circuit.ts';
import type { Circuit } from './circuit.ts';
import { UNKNOWN_TABLE } from './element-coefficients.ts';
import { FRICTION_COLEBROOK, FRICTION_SWAMEE_JAIN } from './friction-kernel.ts';
import { FIRST_W, frictionTables } from './friction-table.ts';

// Copies of its own: a constant of this module is compiled into the loop, an imported one is read anew each time.
const {
  CONDUCTANCE,
  CONSTANT,
  CUBIC,
  GROUP,
  GROUP_END,
  GROUP_NUMBERS,
  LINEAR,
  LOSS,
  LOWER,
  NOMINAL,
  NUMBERS,
  PLACES,
  PLAIN,
  QUADRATIC,
  UPPER,
  W,
} = layout;

/** Adds up the elements of branch b, from their coefficients. `nodeElevation` is that of each element's inlet. */
export function refreshBranch(
  c: Circuit,
  laws: Laws,
  b: number,
  inletElevation: Float64Array,
  outletElevation: Float64Array,
): void {
  const k = laws.coefficients;
  let constant = 0;
  let linear = 0;
  let quadratic = 0;
  let nominal = Infinity;
  let linear2 = 0;
  let quadratic2 = 0;
  const reducing = c.kind[b] !== PLAIN;
  for (let i = c.chainStart[b]!; i < c.chainStart[b + 1]!; i++) {
    const e = c.chainElement[i]!;
    const part = c.chainPart[i]!;
    if (k.nominal[e]! < nominal) nominal = k.nominal[e]!;
    if (part === 0) {
      constant += k.constant[e]!;
      linear += k.linear[e]!;
      quadratic += k.quadratic[e]!;
      continue;
    }
    // Check valves after a regulator keep their cracking pressure in front of it, where it acts the same.
    constant += part === 2 ? k.constant[e]! : 0;
    linear2 += k.linear[e]!;
    quadratic2 += k.quadratic[e]!;
    if (part === 1 && reducing) {
      const z = c.heldAbsolute[b] === 0 ? 0 : heldElevation(laws, e, inletElevation, outletElevation);
      c.held[b] = k.held[e]! + z;
      c.heldSlope[b] = k.heldSlope[e]!;
    }
  }
  const o = b * NUMBERS;
  c.numbers[o + CONSTANT] = constant;
  c.numbers[o + LINEAR] = linear;
  c.numbers[o + QUADRATIC] = quadratic;
  c.numbers[o + NOMINAL] = nominal;
  c.linear2[b] = linear2;
  c.quadratic2[b] = quadratic2;
  c.changed[b] = 1;
  if (c.stale[b] === 0) c.stale[b] = CONDUCTANCE_STALE;
  // An empty range: the curves are evaluated anew at the next step.
  c.cubic[b * CUBIC + LOWER] = Infinity;
  c.cubic[b * CUBIC + UPPER] = -Infinity;
}

function heldElevation(laws: Laws, e: number, inlet: Float64Array, outlet: Float64Array): number {
  return laws.laws[e]!.kind === 'reducing-regulator' ? outlet[e]! : inlet[e]!;
}

/** What is stale of a branch: its conductance, or the resistance behind it too. */
const CONDUCTANCE_STALE = 1;
const RESISTANCE_STALE = 2;

/** Brings conductances up to date, which only first guesses ask for. */
export function refreshConductances(c: Circuit, laws: Laws): void {
  for (let b = 0; b < c.branches; b++) {
    if (c.stale[b] === 0) continue;
    if (c.stale[b] === RESISTANCE_STALE) refreshResistance(c, laws, b);
    refreshConductance(c, b);
    c.stale[b] = 0;
  }
}

/** The branch's loss at its usual flow, as a square. */
function refreshConductance(c: Circuit, b: number): void {
  const o = b * NUMBERS;
  const resistance = c.numbers[o + QUADRATIC]! + c.numbers[o + LINEAR]! / c.usual[b]! + c.resistance[b]!;
  c.numbers[o + CONDUCTANCE] = 1 / Math.sqrt(Math.max(resistance, 1e-9));
}

/** What friction and curves lose at the usual flow, as a square. */
function refreshResistance(c: Circuit, laws: Laws, b: number): void {
  const o = b * NUMBERS;
  const usual = c.usual[b]!;
  branchLoss(c, laws, b, usual);
  const constant = c.numbers[o + CONSTANT]! + c.numbers[o + LINEAR]! * usual;
  c.resistance[b] = (lossOut[0]! - constant) / (usual * usual) - c.numbers[o + QUADRATIC]!;
}

/** Takes the branch's losses at another flow from now on [m3/s]. */
export function setUsualFlow(c: Circuit, b: number, flow: number): void {
  c.usual[b] = flow;
  c.stale[b] = RESISTANCE_STALE;
}

/** Pipes of equal bore, roughness, winding and count in one branch share a friction group. */
export function regroupFriction(c: Circuit, laws: Laws, b: number, prepare: boolean): void {
  const k = laws.coefficients;
  const p = b * PLACES;
  let end = c.places[p + GROUP]!;
  for (let part = 0; part <= 2; part += 2) {
    const first = end;
    for (let i = c.chainStart[b]!; i < c.chainStart[b + 1]!; i++) {
      const e = c.chainElement[i]!;
      if (c.chainPart[i] !== part || k.frictionLoss[e]! === 0) continue;
      const same = findGroup(c, laws, first, end, e);
      if (same >= 0) {
        c.group[same * GROUP_NUMBERS + LOSS]! += k.frictionLoss[e]!;
        continue;
      }
      const key = k.friction[e]!;
      const o = end * GROUP_NUMBERS;
      c.group[o + LOSS] = k.frictionLoss[e]!;
      c.group[o + W] = k.frictionW[e]!;
      c.groupLowW[end] = k.frictionLowW[e]!;
      c.groupElement[end] = e;
      if (prepare && key.table === UNKNOWN_TABLE) key.table = tableOf(laws, e);
      c.groupTable[end] = Math.max(key.table, 0);
      const newtonian = key.law === FRICTION_COLEBROOK || key.law === FRICTION_SWAMEE_JAIN;
      c.groupLaminar[end] = newtonian && key.coilRatio === 0 ? 1 : 0;
      end++;
    }
    if (part === 0) c.places[p + GROUP_END] = end;
    else c.groupEnd2[b] = end;
  }
  c.stale[b] = RESISTANCE_STALE;
}

function findGroup(c: Circuit, laws: Laws, first: number, end: number, e: number): number {
  const f = laws.coefficients.friction;
  const mine = f[e]!;
  for (let g = first; g < end; g++) {
    const theirs = f[c.groupElement[g]!]!;
    if (
      c.group[g * GROUP_NUMBERS + W] === laws.coefficients.frictionW[e] &&
      theirs.law === mine.law &&
      theirs.index === mine.index &&
      theirs.relativeRoughness === mine.relativeRoughness &&
      theirs.coilRatio === mine.coilRatio
    )
      return g;
  }
  return -1;
}

/** Offset of the prepared curve; 0 where the linear start of a power-law liquid reaches into the prepared range. */
function tableOf(laws: Laws, e: number): number {
  if (laws.coefficients.frictionLowW[e]! > FIRST_W) return 0;
  return frictionTables.offsetOf(laws.coefficients.friction[e]!);
}
