/**
 * Flows a cold start begins with. Every loss is taken as a pure square of the flow; on the skeleton, a tree, squares in
 * series and side by side add up exactly, so the pump's duty point and the share of every outlet follow from one sweep up
 * and one down. A few percent off is good enough: it saves two of five Newton steps.
 */
import { branchLossAt, flowIn, lossOut } from './branch-loss.ts';
import type { Laws } from './branch-loss.ts';
import * as store from './circuit-store.ts';
import * as layout from './circuit.ts';
import { fromHead } from './circuit.ts';
import type { Circuit } from './circuit.ts';
import { refreshConductances, setUsualFlow } from './refresh-branch.ts';
import type { Skeleton } from './skeleton.ts';

// Copies of its own: a constant of this module is compiled into the loop, an imported one is read anew each time.
const { CONDUCTANCE, CORRECTION, DIAGONAL, HEAD, NODE, NOMINAL, NUMBERS, OFFSET, PLACES, STEP, TO } = layout;
const { doubles, integers } = store;

/** Of its nominal flow, what a branch off the skeleton starts with. */
const LITTLE = 0.01;
/** A duty point further off than this share from where the pump's loss was taken is looked at again. */
const CLOSE = 0.05;
/** Less than this share of the pump's flow is no excess but the guess's own error. */
const SPILLS = 1e-6;
/** Times that usual flows are looked for. */
const ROUNDS = 2;

export function guessFlows(c: Circuit, laws: Laws): void {
  const s = c.skeleton;
  if (s === undefined) {
    c.shut.set(c.blocked);
    for (let b = 0; b < c.branches; b++)
      c.flow[b] = c.blocked[b] === 1 ? 0 : c.numbers[b * NUMBERS + NOMINAL]!;
    for (let k = 0; k < c.unknowns; k++) c.node[k * NODE + HEAD] = 0;
    return;
  }
  if (c.usual[s.source] === 0) findUsualFlows(c, laws, s);
  guessOnce(c, laws, s);
}

function guessOnce(c: Circuit, laws: Laws, s: Skeleton): void {
  for (let b = 0; b < c.branches; b++) c.shut[b] = c.blocked[b]!;
  if (c.stale[s.source] !== 0) c.sourceAtUsual[0] = NaN;
  refreshConductances(c, laws);
  addUp(c, s);
  dutyPoint(c, laws, s);
  shareOut(c, s, 0, s.ahead);
  if (s.relief.length > 0) spill(c, s);
  shareOut(c, s, s.ahead, s.node.length);
  letOut(c, s);
  startLittle(c, s.rest);
}

/** Losses are taken as squares at nominal flows first, then at those that were guessed with them. */
function findUsualFlows(c: Circuit, laws: Laws, s: Skeleton): void {
  for (let b = 0; b < c.branches; b++) setUsualFlow(c, b, c.numbers[b * NUMBERS + NOMINAL]!);
  for (let round = 0; round < ROUNDS; round++) {
    guessOnce(c, laws, s);
    for (let b = 0; b < c.branches; b++) {
      const least = LITTLE * c.numbers[b * NUMBERS + NOMINAL]!;
      setUsualFlow(c, b, Math.max(Math.abs(c.flow[b]!), least));
    }
  }
}

/** Up: DIAGONAL collects conductance below each node, CORRECTION the elevation of its outlets weighted with it. */
function addUp(c: Circuit, s: Skeleton): void {
  const x = doubles;
  const ints = integers;
  const { numbersAt } = c;
  const { node, parent, branch, outlet, outletNode, apart } = s;
  for (let k = 0; k < c.unknowns; k++) {
    const i = (k * NODE) & OFFSET;
    x[i + DIAGONAL] = 1e-12;
    x[i + CORRECTION] = 0;
  }
  for (let i = 0; i < outlet.length; i++) {
    const b = outlet[i]!;
    const n = (outletNode[i]! * NODE) & OFFSET;
    const conductance = x[((numbersAt + b * NUMBERS) & OFFSET) + CONDUCTANCE]!;
    x[n + DIAGONAL]! += conductance;
    x[n + CORRECTION]! += conductance * x[(ints[((b * PLACES) & OFFSET) + TO]! & OFFSET) + HEAD]!;
  }
  for (let i = node.length - 1; i >= 0; i--) {
    const n = (node[i]! * NODE) & OFFSET;
    const up = (parent[i]! * NODE) & OFFSET;
    const own = x[((numbersAt + branch[i]! * NUMBERS) & OFFSET) + CONDUCTANCE]!;
    const below = x[n + DIAGONAL]!;
    const squares = own * own + below * below;
    // Over their root; the machine divides while it takes the root.
    const both = ((own * below) / squares) * Math.sqrt(squares);
    const z = x[n + CORRECTION]! / below;
    x[n + CORRECTION] = z;
    x[n + STEP] = both;
    x[up + DIAGONAL]! += both;
    x[up + CORRECTION]! += both * z;
  }
  const root = s.root * NODE;
  x[root + CORRECTION]! /= x[root + DIAGONAL]!;
  const supply = fromHead(c, s.source);
  for (let i = 0; i < apart.length; i++) x[apart[i]! * NODE + HEAD] = supply;
}

/** Where the pump's curve meets the network's square; sets the root's head and the pump's flow. */
function dutyPoint(c: Circuit, laws: Laws, s: Skeleton): void {
  const root = s.root * NODE;
  const conductance = c.node[root + DIAGONAL]!;
  const z = c.node[root + CORRECTION]!;
  const square = 1 / (conductance * conductance);
  const supply = fromHead(c, s.source);
  const nominal = c.numbers[s.source * NUMBERS + NOMINAL]!;
  const cap = lowestRelief(c, s);
  let q = c.usual[s.source]!;
  for (let i = 0; i < 2; i++) {
    if (i > 0) {
      flowIn[0] = q;
      branchLossAt(c, laws, s.source);
    } else sourceAtUsual(c, laws, s);
    const g = lossOut[1]!;
    // Head at the root by the tangent of the pump's curve: rest - g Q.
    const rest = supply - lossOut[0]! + g * q;
    const room = rest - z;
    const meeting = room > 0 ? (2 * room) / (g + Math.sqrt(g * g + 4 * square * room)) : 0;
    const capped = z + square * meeting * meeting > cap;
    const next = Math.max(capped ? (rest - cap) / g : meeting, LITTLE * nominal);
    const close = Math.abs(next - q) < CLOSE * q;
    c.node[root + HEAD] = capped ? cap : z + square * next * next;
    q = next;
    if (close) break;
  }
  c.flow[s.source] = q;
}

/** Loss and slope of the pump's branch at its usual flow, which change with the branch only; into `lossOut`. */
function sourceAtUsual(c: Circuit, laws: Laws, s: Skeleton): void {
  const known = c.sourceAtUsual;
  if (Number.isNaN(known[0]!)) {
    flowIn[0] = c.usual[s.source]!;
    branchLossAt(c, laws, s.source);
    known[0] = lossOut[0]!;
    known[1] = lossOut[1]!;
    return;
  }
  lossOut[0] = known[0]!;
  lossOut[1] = known[1]!;
}

function lowestRelief(c: Circuit, s: Skeleton): number {
  let cap = Infinity;
  for (let i = 0; i < s.relief.length; i++) {
    const b = s.relief[i]!;
    if (c.heldAbsolute[b] === 1 && c.held[b]! < cap) cap = c.held[b]!;
  }
  return cap;
}

/** Down: every node passes its head on. */
function shareOut(c: Circuit, s: Skeleton, first: number, end: number): void {
  const x = doubles;
  const { numbersAt, flowAt } = c;
  const { node, parent, branch, sign } = s;
  for (let i = first; i < end; i++) {
    const n = (node[i]! * NODE) & OFFSET;
    const b = branch[i]!;
    const o = (numbersAt + b * NUMBERS) & OFFSET;
    const own = x[o + CONDUCTANCE]!;
    const above = x[((parent[i]! * NODE) & OFFSET) + HEAD]!;
    const both = x[n + STEP]!;
    const drive = above - x[n + CORRECTION]!;
    const push = drive > 0 ? drive : 0;
    const q = both * Math.sqrt(push);
    x[(flowAt + b) & OFFSET] = sign[i]! * (q > 0 ? q : LITTLE * x[o + NOMINAL]!);
    // Not by way of the flow: the next head need not wait for its root.
    x[n + HEAD] = above - push * ((both * both) / (own * own));
  }
}

function letOut(c: Circuit, s: Skeleton): void {
  const x = doubles;
  const ints = integers;
  const { numbersAt, flowAt } = c;
  const { outlet, outletNode } = s;
  for (let i = 0; i < outlet.length; i++) {
    const b = outlet[i]!;
    const o = (numbersAt + b * NUMBERS) & OFFSET;
    const below = x[(ints[((b * PLACES) & OFFSET) + TO]! & OFFSET) + HEAD]!;
    const push = x[((outletNode[i]! * NODE) & OFFSET) + HEAD]! - below;
    x[(flowAt + b) & OFFSET] = push > 0 ? x[o + CONDUCTANCE]! * Math.sqrt(push) : LITTLE * x[o + NOMINAL]!;
  }
}

function startLittle(c: Circuit, branches: Int32Array): void {
  for (let i = 0; i < branches.length; i++) {
    const b = branches[i]!;
    c.flow[b] = LITTLE * c.numbers[b * NUMBERS + NOMINAL]!;
  }
}

/**
 * What the outlets do not take goes through the regulator that sets the lowest head, and on behind it; one that holds more
 * head than there is stays shut.
 */
function spill(c: Circuit, s: Skeleton): void {
  const root = s.root * NODE;
  const drive = c.node[root + HEAD]! - c.node[root + CORRECTION]!;
  const taken = drive > 0 ? c.node[root + DIAGONAL]! * Math.sqrt(drive) : 0;
  const excess = c.flow[s.source]! - taken;
  startLittle(c, s.relief);
  let lowest = 0;
  for (let i = 1; i < s.relief.length; i++) {
    if (c.held[s.relief[i]!]! < c.held[s.relief[lowest]!]!) lowest = i;
  }
  const spills = excess > SPILLS * c.flow[s.source]!;
  if (spills) {
    c.flow[s.relief[lowest]!] = excess;
    for (let n = s.reliefNode[lowest]!, i = s.ahead - 1; i >= 0 && n !== s.root; i--) {
      if (s.node[i] !== n) continue;
      c.flow[s.branch[i]!]! += s.sign[i]! * excess;
      n = s.parent[i]!;
    }
  }
  for (let i = 0; i < s.relief.length; i++) {
    const b = s.relief[i]!;
    const holds = c.heldAbsolute[b] === 1 && c.node[s.reliefNode[i]! * NODE + HEAD]! < c.held[b]!;
    if (holds && !(spills && i === lowest)) {
      c.shut[b] = 1;
      c.flow[b] = 0;
    }
    if (s.reliefRoot[i]! >= 0) fillBehind(c, s.reliefRoot[i]! * NODE, c.flow[b]!);
  }
}

/** The head at which what hangs on a node takes this flow. */
function fillBehind(c: Circuit, n: number, flow: number): void {
  const conductance = c.node[n + DIAGONAL]!;
  c.node[n + CORRECTION]! /= conductance;
  c.node[n + HEAD] = c.node[n + CORRECTION]! + (flow / conductance) ** 2;
}
