import {
  mates,
  portName,
  type Catalogue,
  type JointFinder,
  type Part,
  type PartOf,
  type Port,
} from '../catalogue/index.ts';
import type { Rig } from './rig-document.ts';

/** Two ports of a rig that must be joined, and what joins them. */
export interface RigJoint {
  /** "tank outlet", "hose end": the two sides in words. */
  readonly between: readonly [string, string];
  readonly line: string;
  readonly pieces: readonly PartOf<'fitting'>[];
  /** Set when nothing in the catalogue joins the two sides. */
  readonly gap?: string;
}

interface Side {
  readonly words: string;
  readonly port: Port | undefined;
}

/**
 * Walks every line port by port and makes each joint, from the tank's outlet to the last tip.
 *
 * Where more than two line ends meet, a row of tees of the size of the largest end makes the branches; a line that
 * comes back to the tank after the tank's own return port is taken gets a bulkhead fitting of its own.
 */
export function makeJoints(
  rig: Rig,
  catalogue: Catalogue,
  find: JointFinder,
  pressureOf: (line: string) => number,
): RigJoint[] {
  const joints: RigJoint[] = [];
  const meetings = new Map<string, { side: Side; line: string }[]>();
  const meet = (node: string, side: Side, line: string) => {
    const list = meetings.get(node) ?? [];
    list.push({ side, line });
    meetings.set(node, list);
  };
  const join = (a: Side, b: Side, line: string) => joints.push(joint(a, b, line, find, pressureOf(line)));

  for (const line of rig.lines) {
    let before: Side | undefined;
    for (const id of line.run) {
      const { part } = rig.items.get(id)!;
      const enter: Side = { words: `${id} in`, port: portNamed(part, 'in') };
      if (before === undefined) meet(line.from, enter, line.id);
      else join(before, enter, line.id);
      const leave = portNamed(part, part.kind === 'regulator' && line.to === 'tank' ? 'bypass' : 'out');
      before = leave === undefined && isLast(line.run, id) ? undefined : { words: `${id} out`, port: leave };
    }
    if (before !== undefined && line.to !== 'air') meet(line.to, before, line.id);
  }

  for (const [node, ends] of meetings) {
    if (node === 'tank') joinTank(rig, catalogue, ends, join);
    else if (ends.length === 2) join(ends[0]!.side, ends[1]!.side, ends[1]!.line);
    else if (ends.length > 2) joints.push(...branch(node, ends, catalogue, find, pressureOf));
  }
  return joints;
}

function joinTank(
  rig: Rig,
  catalogue: Catalogue,
  ends: readonly { side: Side; line: string }[],
  join: (a: Side, b: Side, line: string) => void,
): void {
  const tank = [...rig.items.values()].find(({ part }) => part.kind === 'tank')!.part;
  const outgoing = new Set(rig.lines.filter((l) => l.from === 'tank').map((l) => l.id));
  let returnTaken = false;
  for (const { side, line } of ends) {
    if (outgoing.has(line)) {
      join({ words: 'tank outlet', port: portNamed(tank, 'outlet') }, side, line);
    } else if (!returnTaken) {
      returnTaken = true;
      join(side, { words: 'tank return', port: portNamed(tank, 'return') }, line);
    } else {
      const wall = bulkheadFor(catalogue, side.port);
      join(side, { words: 'bulkhead through the tank wall', port: wall?.ports[0] }, line);
    }
  }
}

/** A row of n - 2 tees joins n line ends; every end joins a branch of the tee. */
function branch(
  node: string,
  ends: readonly { side: Side; line: string }[],
  catalogue: Catalogue,
  find: JointFinder,
  pressureOf: (line: string) => number,
): RigJoint[] {
  const largest = Math.max(...ends.map(({ side }) => side.port?.size ?? 0));
  const pressure = Math.max(...ends.map(({ line }) => pressureOf(line)));
  const tee = nearest(
    catalogue,
    (f) => f.form === 'tee' && f.maxPressure >= pressure && f.ports.length === 3,
    largest,
  );
  const row: RigJoint =
    tee === undefined
      ? {
          between: [node, node],
          line: node,
          pieces: [],
          gap: `no tee in the catalogue stands the pressure at ${node}`,
        }
      : {
          between: [node, `${ends.length} lines`],
          line: node,
          pieces: Array.from({ length: ends.length - 2 }, () => tee),
        };
  return [
    row,
    ...ends.map(({ side, line }) =>
      joint({ words: `${node} tee`, port: tee?.ports[0] }, side, line, find, pressureOf(line)),
    ),
  ];
}

function joint(a: Side, b: Side, line: string, find: JointFinder, pressure: number): RigJoint {
  const between = [a.words, b.words] as const;
  if (a.port === undefined || b.port === undefined)
    return {
      between,
      line,
      pieces: [],
      gap: `${a.port === undefined ? a.words : b.words}: the part lists no such port`,
    };
  if (mates(a.port, b.port)) return { between, line, pieces: [] };
  const found = find(a.port, b.port, pressure);
  return found.ok
    ? { between, line, pieces: found.pieces }
    : {
        between,
        line,
        pieces: [],
        gap: `${a.words} (${portName(a.port)}) to ${b.words} (${portName(b.port)}): ${found.gap}`,
      };
}

function portNamed(part: Part, id: string): Port | undefined {
  return part.ports.find((p) => p.id === id);
}

function isLast(run: readonly string[], id: string): boolean {
  return run[run.length - 1] === id;
}

function bulkheadFor(catalogue: Catalogue, port: Port | undefined): PartOf<'fitting'> | undefined {
  const isBulkhead = (f: PartOf<'fitting'>): boolean => f.form === 'bulkhead';
  return port === undefined
    ? catalogue.byKind.fitting.find(isBulkhead)
    : nearest(catalogue, isBulkhead, port.size);
}

/** Of the fittings that serve, the one nearest in size; of equals the cheapest. */
function nearest(
  catalogue: Catalogue,
  serves: (fitting: PartOf<'fitting'>) => boolean,
  size: number,
): PartOf<'fitting'> | undefined {
  let best: PartOf<'fitting'> | undefined;
  let least = Infinity;
  for (const fitting of catalogue.byKind.fitting) {
    if (!serves(fitting)) continue;
    const off = Math.abs((fitting.ports[0]?.size ?? 0) - size);
    if (best !== undefined && (off > least || (off === least && fitting.priceCents >= best.priceCents)))
      continue;
    best = fitting;
    least = off;
  }
  return best;
}
