/**
 * The network as the solve loop sees it: branches (whole series chains) between unknown and fixed heads, in flat arrays.
 * Heads 0..unknowns-1 are in elimination order; fixed heads follow.
 */
import type { Stored } from './circuit-store.ts';
import type { Elimination } from './elimination.ts';
import type { Skeleton } from './skeleton.ts';

/** Two-terminal branch. */
export const PLAIN = 0;
/** Chain with a back-pressure regulator whose downstream side ends at a fixed head: loss = up(q) + max(held, down(q)). */
export const RELIEF_CHAIN = 1;
/** Back-pressure regulator between unknown heads: inlet head = max(held, outlet head + capacity loss). */
export const RELIEF = 2;
/** Reducing regulator: outlet head = min(held, inlet head - capacity loss). */
export const REDUCER = 3;

/** A regulator's branch: which of its two terms rules. */
export const HOLDING = 1;
export const WIDE_OPEN = 2;

/** Conductance [(m3/s)/m] that stands for a shut branch in the matrix; it carries no flow. */
export const SHUT_CONDUCTANCE = 1e-13;
/**
 * Least slope of a loss [m/(m3/s)] used in a Newton step. Short wide pipes side by side have real slopes near 1e-4: a higher
 * floor makes their steps too small, and steps too small look like a solution. A lower one would let the rounding of heads
 * (1e-14 m) move flows by more than the tolerance.
 */
export const LEAST_SLOPE = 1e-5;

/**
 * Offsets in the loops are ANDed with this, which changes none of them: it tells the compiler that nothing added to one
 * overflows or has a sign, so that it need not look at every access.
 */
export const OFFSET = 0x3fffffff;

/** Doubles per branch in `numbers`: loss = CONSTANT + LINEAR q + QUADRATIC q|q| + friction groups + curves. */
export const NUMBERS = 8;
export const CONSTANT = 0;
export const LINEAR = 1;
export const QUADRATIC = 2;
/** Conductance of the present step, the flow it aims at before heads change, half the loss's second derivative. */
export const SLOPE = 3;
export const TARGET = 4;
export const BEND = 5;
/** Flow a branch of its size ordinarily carries [m3/s]: the yardstick of step limits. */
export const NOMINAL = 6;
/** Flow per square root of head, its loss taken as a pure square: what first guesses are made with. */
export const CONDUCTANCE = 7;

/** Integers per branch in `places`. FROM and TO are offsets into `node`. */
export const PLACES = 8;
export const FROM = 0;
export const TO = 1;
export const SLOT = 2;
export const GROUP = 3;
export const GROUP_END = 4;
export const HAS_CURVE = 5;
export const ONE_WAY = 6;
/** SLOT, counted from the start of the arena. */
export const AT = 7;

/** Doubles per friction group: loss = LOSS psi(w), w = |q| W. */
export const GROUP_NUMBERS = 2;
export const LOSS = 0;
export const W = 1;

/** Doubles per head in `node`. */
export const NODE = 4;
export const HEAD = 0;
export const DIAGONAL = 1;
export const CORRECTION = 2;
export const STEP = 3;

/** Doubles per branch in `cubic`: the curves' loss as a cubic about CENTRE, true from LOWER to UPPER. */
export const CUBIC = 8;
export const CENTRE = 4;
export const LOWER = 5;
export const UPPER = 6;

export interface Circuit {
  readonly branches: number;
  /** Branches 0..plain-1 are PLAIN. */
  readonly plain: number;
  readonly unknowns: number;
  /** No regulator ties a flow to one head only. */
  readonly symmetric: boolean;
  readonly elimination: Elimination;
  /** How first guesses run through the network; undefined where flows start at their nominal size. */
  readonly skeleton: Skeleton | undefined;

  /**
   * One block for all the doubles of a step, in the store that all circuits share (`circuit-store.ts`); the arrays below are
   * windows on it, `node` at its start. Loops read the store itself.
   */
  readonly arena: Float64Array;
  /** The same for integers; `places` is at its start. */
  readonly plan: Int32Array;
  readonly kept: Stored['kept'];
  readonly shutAt: number;
  readonly changedAt: number;
  readonly tableAt: number;
  readonly laminarAt: number;
  /** Lists of the elimination: `start` and `neighbour`. */
  readonly startAt: number;
  readonly neighbourAt: number;
  readonly upperAt: number;
  readonly flowAt: number;
  readonly numbersAt: number;
  readonly groupAt: number;
  readonly cubicAt: number;

  readonly numbers: Float64Array;
  readonly places: Int32Array;
  readonly kind: Uint8Array;
  /** What friction and curves of the branch lose at its usual flow, over that flow squared. */
  readonly resistance: Float64Array;
  /** Flow at which losses are taken as a square [m3/s]: that of a first guess at the network as it was laid out; 0 before. */
  readonly usual: Float64Array;
  /** Loss and slope of the skeleton's source at its usual flow; not a number where they are to be found again. */
  readonly sourceAtUsual: Float64Array;
  /** Not 0 where the resistance, or what follows from it, is no longer that of the branch; only first guesses ask for it. */
  readonly stale: Uint8Array;
  /** Never passes anything: one-way parts facing each other. */
  readonly blocked: Uint8Array;

  /** Downstream part of a RELIEF_CHAIN, wide-open capacity of regulators included. */
  readonly linear2: Float64Array;
  readonly quadratic2: Float64Array;
  /** Regulators: held head at no flow, its slope, and 1 when it is an absolute head, 0 when it is a difference. */
  readonly held: Float64Array;
  readonly heldAbsolute: Uint8Array;
  readonly heldSlope: Float64Array;
  /** Head between a regulator's two terms at the present step, and how fast it changes with the flow. */
  readonly margin: Float64Array;
  readonly marginSlope: Float64Array;

  /** Groups of branch b: GROUP .. GROUP_END-1, then those downstream of its regulator to groupEnd2[b]-1. */
  readonly groupEnd2: Int32Array;
  readonly group: Float64Array;
  /** Below this w the loss is linear (power-law liquids). */
  readonly groupLowW: Float64Array;
  /** Offset of the group's prepared curve; the first table of all is never ready and stands for none. */
  readonly groupTable: Int32Array;
  /** 1 when psi is 64/100 w below the prepared range. */
  readonly groupLaminar: Int32Array;
  /** Element that stands for the group. */
  readonly groupElement: Int32Array;

  /** Curves of branch b: curveStart[b] .. curveStart[b+1]-1; each belongs to an element. */
  readonly curveStart: Int32Array;
  readonly curveElement: Int32Array;
  readonly cubic: Float64Array;

  /** Chain of branch b: elements with their direction along the branch; part 0 before, 1 at, 2 after the regulator. */
  readonly chainStart: Int32Array;
  readonly chainElement: Int32Array;
  readonly chainSign: Int8Array;
  readonly chainPart: Uint8Array;
  readonly chainFrom: Int32Array;
  readonly chainTo: Int32Array;

  /** Branches at unknown k: junctionStart[k] .. junctionStart[k+1]-1. */
  readonly junctionStart: Int32Array;
  readonly junctionBranch: Int32Array;

  /** State: flows, branches that pass nothing, the ruling term of regulators, and heads with their work space. */
  readonly flow: Float64Array;
  readonly shut: Int32Array;
  /** Not 0 where SLOPE and BEND are no longer those of the branch at the last solution. */
  readonly changed: Int32Array;
  readonly ruling: Uint8Array;
  /** The last node is a ground for branches whose two ends are the same node. */
  readonly node: Float64Array;
  readonly heads: number;
  readonly upper: Float64Array;
  readonly lower: Float64Array;

  /** Element -> branch, or -1 (shut, dead end, isolated); direction along it. */
  readonly branchOf: Int32Array;
  readonly signOf: Int8Array;
  /** Node -> index of its head, or -1 (inside a chain, dead end, isolated). */
  readonly headOf: Int32Array;
  /** Dead-end elements in the order that leads away from the network, each with the node it adds. */
  readonly deadElement: Int32Array;
  readonly deadNode: Int32Array;
  /** Pumps that circulate in a part with no path to a tank or the atmosphere. */
  readonly recirculating: readonly number[];
  /** One-way elements that block a chain. */
  readonly facing: readonly (readonly number[])[];
}

export function headAt(c: Circuit, index: number): number {
  return c.node[index * NODE + HEAD]!;
}

export function setHead(c: Circuit, index: number, head: number): void {
  c.node[index * NODE + HEAD] = head;
}

/** Sets a fixed head of a circuit that may hold a solution: what is connected to it has changed. */
export function moveHead(c: Circuit, index: number, head: number): void {
  setHead(c, index, head);
  for (let b = 0; b < c.branches; b++) {
    if (c.places[b * PLACES + FROM] === index * NODE || c.places[b * PLACES + TO] === index * NODE)
      c.changed[b] = 1;
  }
}

export function fromHead(c: Circuit, b: number): number {
  return c.node[c.places[b * PLACES + FROM]! + HEAD]!;
}

/** The heads at the ends of branch b. */
export function fromIndex(c: Circuit, b: number): number {
  return c.places[b * PLACES + FROM]! / NODE;
}

export function toIndex(c: Circuit, b: number): number {
  return c.places[b * PLACES + TO]! / NODE;
}
