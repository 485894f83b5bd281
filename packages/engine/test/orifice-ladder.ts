/** Pipes with outlets along them, written out piece by piece. */
import type { NetworkElement, NetworkNode, PipeLaw } from '../src/hydraulics/index.ts';

export interface OrificeLadder {
  /** Starts the ids of what is made. */
  readonly id: string;
  /** Node that feeds the first piece. */
  readonly from: string;
  /** Number of outlets, one at the end of each piece. */
  readonly outlets: number;
  /** Pipe from one outlet to the next. */
  readonly piece: PipeLaw;
  /** Pipe from the feeding node to the first outlet; default a piece. */
  readonly firstPiece?: PipeLaw;
  /** Flow factor of each outlet [m3/s per sqrt(Pa)]. */
  readonly k: number;
  /** Part between the pipe and its outlet, such as a nozzle body; default none. */
  readonly body?: PipeLaw;
  /** Height of the pipe, and of the outlets when they discharge elsewhere [m]. */
  readonly elevation: number;
  readonly outletElevation?: number;
  /** Elevation of the liquid surface the outlets are under, for a sparge pipe in a tank; default the open air. */
  readonly surface?: number;
}

/**
 * A boom section or a sparge pipe as a ladder: feed, piece, outlet, piece, outlet ... The exact form of what a `sparger`
 * lumps into one outlet. The outlets are called `<id>-outlet-1` and so on.
 */
export function orificeLadder(ladder: OrificeLadder): { nodes: NetworkNode[]; elements: NetworkElement[] } {
  if (!(Number.isInteger(ladder.outlets) && ladder.outlets >= 1 && ladder.outlets <= 1000))
    throw new RangeError(
      `outlets of '${ladder.id}' is ${ladder.outlets}; it must be a whole number from 1 to 1000`,
    );
  const nodes: NetworkNode[] = [];
  const elements: NetworkElement[] = [];
  const outletElevation = ladder.outletElevation ?? ladder.elevation;
  let before = ladder.from;
  for (let i = 1; i <= ladder.outlets; i++) {
    const joint = `${ladder.id}-joint-${i}`;
    nodes.push({ id: joint, elevation: ladder.elevation });
    const law = i === 1 ? (ladder.firstPiece ?? ladder.piece) : ladder.piece;
    elements.push({ id: `${ladder.id}-piece-${i}`, from: before, to: joint, law });
    let tip = joint;
    if (ladder.body !== undefined) {
      tip = `${ladder.id}-body-${i}`;
      nodes.push({ id: tip, elevation: outletElevation });
      elements.push({ id: tip, from: joint, to: tip, law: ladder.body });
    }
    const out = `${ladder.id}-out-${i}`;
    nodes.push(
      ladder.surface === undefined
        ? { id: out, elevation: outletElevation, atmosphere: true }
        : { id: out, elevation: outletElevation, surface: ladder.surface },
    );
    elements.push({
      id: `${ladder.id}-outlet-${i}`,
      from: tip,
      to: out,
      law: { kind: 'orifice', k: ladder.k },
    });
    before = joint;
  }
  return { nodes, elements };
}
