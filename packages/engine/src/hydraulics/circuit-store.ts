/**
 * Where circuits are worked on. What loops read of a circuit lies at the start of two arrays that are the same for every
 * circuit, never move and never grow: the compiler knows where they are, and need not find that out at every access, as it
 * must with arrays that differ from circuit to circuit. That makes a solve faster by a sixth. One circuit is there at a time;
 * `bringIn` brings another one there and keeps what the one before had written.
 */

/** Of both arrays; memory that no circuit reaches is never touched. A few times what the largest model needs. */
const SIZE = 2 ** 21;

export const doubles = new Float64Array(SIZE);
export const integers = new Int32Array(SIZE);

export interface Stored {
  /** Its windows on the two arrays, true only while it is there. */
  readonly arena: Float64Array;
  readonly plan: Int32Array;
  /** What stood in them when it last had to leave. */
  readonly kept: { doubles: Float64Array | undefined; integers: Int32Array | undefined };
}

let there: Stored | undefined;

/** The circuit, there. Its windows are to be asked for anew after another circuit was there. */
export function bringIn<T extends Stored>(circuit: T): T {
  if (there !== circuit) exchange(circuit);
  return circuit;
}

function exchange(circuit: Stored): void {
  leave();
  circuit.arena.set(circuit.kept.doubles!);
  circuit.plan.set(circuit.kept.integers!);
  there = circuit;
}

function leave(): void {
  if (there === undefined) return;
  const { arena, plan, kept } = there;
  if (kept.doubles === undefined) kept.doubles = arena.slice();
  else kept.doubles.set(arena);
  if (kept.integers === undefined) kept.integers = plan.slice();
  else kept.integers.set(plan);
  there = undefined;
}

/** Windows for a circuit that is being made, all zero: they hold it once it is `settle`d. */
export function makeRoom(doublesNeeded: number, integersNeeded: number): Stored {
  const most = Math.max(doublesNeeded, integersNeeded);
  if (most > SIZE) throw new RangeError(`the circuit needs ${most} numbers; there is room for ${SIZE}`);
  leave();
  return {
    arena: doubles.subarray(0, doublesNeeded).fill(0),
    plan: integers.subarray(0, integersNeeded).fill(0),
    kept: { doubles: undefined, integers: undefined },
  };
}

/** The circuit just made is there. */
export function settle<T extends Stored>(circuit: T): T {
  there = circuit;
  return circuit;
}
