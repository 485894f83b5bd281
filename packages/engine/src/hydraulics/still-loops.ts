/**
 * Loops that nothing drives. Where two heads differ by less than their rounding, squares of flows say nothing about the
 * flows: a Newton step halves what goes round such a loop and then gets lost. But nothing can go round: a part that hangs on
 * the rest by one head, with no pump in it, has that head everywhere, and no law passes anything between equal heads.
 */
import { branchLoss, lossOut } from './branch-loss.ts';
import type { Laws } from './branch-loss.ts';
import { fromIndex, toIndex } from './circuit.ts';
import type { Circuit } from './circuit.ts';

/** Sets the flows of all such parts of a solved circuit to nothing; what they carried was balanced among themselves. */
export function stillLoops(c: Circuit, laws: Laws): void {
  for (const part of partsOnOneHead(c)) {
    if (part.some((b) => drives(c, laws, b))) continue;
    for (const b of part) c.flow[b] = 0;
  }
}

/** Raises the head even at rest. */
function drives(c: Circuit, laws: Laws, b: number): boolean {
  branchLoss(c, laws, b, 0);
  return lossOut[0]! < 0;
}

/**
 * The blocks (parts that no single head takes apart) of the open branches, without those on a way from one fixed head to
 * another. Tarjan 1972, from a root that stands for all that holds fixed heads.
 */
function partsOnOneHead(c: Circuit): number[][] {
  const around: number[][] = Array.from({ length: c.heads }, () => []);
  for (let b = 0; b < c.branches; b++) {
    if (c.shut[b] === 1) continue;
    around[fromIndex(c, b)]!.push(b);
    around[toIndex(c, b)]!.push(b);
  }
  const parts: number[][] = [];
  /** Order in which heads are come upon, from 1; the earliest head that can be got back to; branches looked at. */
  const order = new Int32Array(c.heads);
  const back = new Int32Array(c.heads);
  const looked = new Int32Array(c.heads);
  const taken = new Uint8Array(c.branches);
  /** Branches that are in no part yet. */
  const open: number[] = [];
  /** Heads from the start to the present one, each with how many branches were open before the one that led there. */
  const way: { readonly head: number; readonly before: number }[] = [];
  let count = 0;

  const enter = (head: number, before: number): void => {
    order[head] = ++count;
    // Behind every fixed head stands the root.
    back[head] = head >= c.unknowns ? 0 : count;
    way.push({ head, before });
  };
  const leave = (): void => {
    const { head, before } = way.pop()!;
    const last = way.at(-1)?.head;
    if (last === undefined) return;
    if (back[head]! >= order[last]!) parts.push(open.splice(before));
    else back[last] = Math.min(back[last]!, back[head]!);
  };
  for (let start = c.unknowns; start < c.heads; start++) {
    if (order[start]! > 0) continue;
    enter(start, 0);
    while (way.length > 0) {
      const { head } = way.at(-1)!;
      const b = around[head]![looked[head]!++];
      if (b === undefined) leave();
      else if (taken[b] === 0) {
        taken[b] = 1;
        open.push(b);
        const other = fromIndex(c, b) === head ? toIndex(c, b) : fromIndex(c, b);
        if (other === head) parts.push([open.pop()!]);
        else if (order[other]! > 0) back[head] = Math.min(back[head]!, order[other]!);
        else enter(other, open.length - 1);
      }
    }
  }
  return parts;
}
