/**
 * Order in which unknown heads are eliminated, chosen once per topology so that the least fill-in arises (minimum degree),
 * and the elimination itself as a list of positions. The matrix has a symmetric pattern but, with regulators, not always
 * symmetric values; it is diagonally dominant, so no pivoting is needed.
 */
export interface Elimination {
  readonly size: number;
  /** Unknown of the network -> its place in the order. */
  readonly place: Int32Array;
  /** Off-diagonal positions, fill-in included. */
  readonly slots: number;
  /** Per pivot: where its row starts in `neighbour`. The position of a pair in the matrix is its place in that list. */
  readonly start: Int32Array;
  /** Later pivots connected to this one, ascending. */
  readonly neighbour: Int32Array;
  /** Positions of the pairs among the neighbours of each pivot, in the order (a, b), a < b. */
  readonly pair: Int32Array;
  slotOf(a: number, b: number): number;
}

export function orderElimination(size: number, edges: readonly (readonly [number, number])[]): Elimination {
  const around: Set<number>[] = Array.from({ length: size }, () => new Set<number>());
  for (const [a, b] of edges) {
    if (a === b) continue;
    around[a]!.add(b);
    around[b]!.add(a);
  }
  const place = new Int32Array(size).fill(-1);
  const rows: number[][] = [];
  const order: number[] = [];
  for (let step = 0; step < size; step++) {
    let best = -1;
    for (let i = 0; i < size; i++) {
      if (place[i]! >= 0) continue;
      if (best < 0 || around[i]!.size < around[best]!.size) best = i;
    }
    place[best] = step;
    order.push(best);
    const row = [...around[best]!];
    rows.push(row);
    for (const a of row) {
      around[a]!.delete(best);
      for (const b of row) if (a !== b) around[a]!.add(b);
    }
  }
  const start = new Int32Array(size + 1);
  const neighbour: number[] = [];
  for (let k = 0; k < size; k++) {
    const row = rows[k]!.map((i) => place[i]!).sort((a, b) => a - b);
    neighbour.push(...row);
    start[k + 1] = neighbour.length;
  }
  const slotOf = (a: number, b: number): number => neighbour.indexOf(Math.max(a, b), start[Math.min(a, b)]);
  const pair: number[] = [];
  for (let k = 0; k < size; k++) {
    for (let a = start[k]!; a < start[k + 1]!; a++) {
      for (let b = a + 1; b < start[k + 1]!; b++) pair.push(slotOf(neighbour[a]!, neighbour[b]!));
    }
  }
  return {
    size,
    place,
    slots: neighbour.length,
    start,
    neighbour: new Int32Array(neighbour),
    pair: new Int32Array(pair),
    slotOf,
  };
}
