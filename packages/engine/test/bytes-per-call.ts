import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';

/** Few enough that what a bad loop leaves behind is not collected within a round: that happens each 16 MB or so. */
const CALLS = 1_000;
/** Before the compiler is done, which it is later on a busy machine, a loop leaves numbers behind: it is given this long. */
const ROUNDS = 150;

setFlagsFromString('--expose-gc');
const collect = runInNewContext('gc') as () => void;

/**
 * Bytes of heap a call leaves behind, garbage included. What else runs in the process, and a compiler that has not come to
 * it yet, can only add: the least of the rounds is the call's own, and a round below `enough` ends them.
 */
export function bytesPerCall(enough: number, call: (i: number) => void): number {
  let least = Infinity;
  for (let round = 0; round < ROUNDS && least >= enough; round++) {
    collect();
    const before = process.memoryUsage().heapUsed;
    for (let i = 0; i < CALLS; i++) call(i);
    // A collection in between takes away more than was left behind: such a round tells nothing.
    const left = process.memoryUsage().heapUsed - before;
    if (left >= 0) least = Math.min(least, left / CALLS);
  }
  return least;
}
