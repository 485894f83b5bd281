import type { PartAt } from './space.ts';

/**
 * A necessary condition on the parts of a few slots: an upper bound of the least margin of every rig that has these
 * parts there. Below zero no such rig keeps its promises, or none can be built.
 */
export interface Limit {
  readonly slots: readonly string[];
  readonly margin: (partAt: PartAt) => number;
  /** What the parts break, in words. */
  readonly why: string;
  /** Takes long to judge: not for the many sets that are tried before the search. */
  readonly costly?: true;
  /** Takes so long that it is judged of decided parts only, never of all that may stand in open slots. */
  readonly slow?: true;
  /** All that it reads of outlet lines, or of pump and drive, where that is less than their parts. */
  readonly reads?: (partAt: PartAt) => string;
  /** Says what belongs in the space, where the others say what no rig can keep its promises with. */
  readonly rule?: true;
}
