import { portKey, ratingOf, type PartOf, type Port } from '../../catalogue/index.ts';
import { capFor } from './caps.ts';
import type { Plan, Side } from './plan.ts';
import { cheapest, wayOf, type Supply, type Way } from './supply.ts';

/** One line end, or the gauge, at a node. */
export interface NodeEnd {
  readonly side: Side;
  readonly line: string;
  /** Liquid comes to the node here. */
  readonly feeds: boolean;
  /** Carries no flow, so what it stands on may be narrow. */
  readonly still?: boolean;
}

/** Joins all that meets at a node: two ends to each other, more by tees or a manifold, whichever costs less. */
export function joinAtNode(plan: Plan, node: string, ends: readonly NodeEnd[]): void {
  const flowing = ends.filter((e) => e.still !== true);
  if (flowing.length === 1) plan.gaps.push(`nothing is joined to ${flowing[0]!.side.words} at ${node}`);
  if (ends.length < 2) return;
  if (ends.length === 2) {
    plan.join(ends[0]!.side, ends[1]!.side, ends[1]!.line);
    return;
  }
  const unlisted = ends.find(({ side }) => side.at === undefined);
  if (unlisted !== undefined) {
    plan.gaps.push(`${unlisted.side.words}: the part lists no such port`);
    return;
  }
  // Liquid comes in at one end of the row; the widest follow, so that the narrow outlets of a manifold serve the narrow.
  const ordered = [...ends].sort(
    (a, b) =>
      Number(b.feeds) - Number(a.feeds) ||
      Number(a.still ?? false) - Number(b.still ?? false) ||
      b.side.at!.size - a.side.at!.size,
  );
  const least = Math.min(...ends.map(({ side }) => side.pressure));
  const pressure = Number.isFinite(least) ? least : 0;
  const parts = branchesFor(
    plan.supply,
    ordered.map(({ side, still }) => ({ port: side.at!, still: still === true })),
    pressure,
  );
  if (parts === undefined) {
    plan.gaps.push(`neither tees nor a manifold in the catalogue join ${ends.length} ends at ${node}`);
    return;
  }
  const rows = parts.map((part, i) =>
    plan.add(
      parts.length === 1 ? `${node}-branch` : `${node}-branch-${i + 1}`,
      part,
      node,
      part.form === node ? node : `${node} ${part.form}`,
      pressure,
    ),
  );
  rows.slice(1).forEach((row, i) => plan.join(rows[i]![1]!, row[0]!, ordered[0]!.line));
  freeOf(rows).forEach((port, i) => {
    const end = ordered[i];
    if (end !== undefined) plan.join(port, end.side, end.line);
  });
}

export interface EndPort {
  readonly port: Port;
  readonly still: boolean;
}

/** The manifold, or the row of tees, that joins some ends for least money with all adapters and plugs. */
export function branchesFor(
  supply: Supply,
  ends: readonly EndPort[],
  pressure: number,
): readonly PartOf<'fitting'>[] | undefined {
  const stands = supply.level(pressure);
  const key = ends.map(({ port, still }) => `${portKey(port)}${still ? ' still' : ''}`).join(' ');
  return supply.once(`branch ${key} ${stands}`, () => {
    let best: (Way & Row) | undefined;
    for (const row of rowsFor(supply, ends.length, stands)) {
      const way = branchWay(supply, row, ends, stands, best?.priceCents ?? Infinity);
      if (way !== undefined)
        best = best === undefined ? { ...row, ...way } : cheapest([best, { ...row, ...way }]);
    }
    return best?.parts;
  });
}

/** One manifold or some tees in a row that are joined to one another, with what closes the ports that no end takes. */
interface Row extends Way {
  readonly parts: readonly PartOf<'fitting'>[];
  /** Ports for the ends, in their order. */
  readonly ports: readonly Port[];
}

/** All rows with room for some ends. */
function rowsFor(supply: Supply, ends: number, pressure: number): readonly Row[] {
  return supply.once(`rows ${ends} ${pressure}`, () =>
    supply.branches.flatMap((part) => rowOf(supply, part, ends, pressure) ?? []),
  );
}

function rowOf(supply: Supply, part: PartOf<'fitting'>, ends: number, pressure: number): Row | undefined {
  const whole = part.form === 'manifold';
  if (ratingOf(part) < pressure || (whole && part.ports.length < ends)) return undefined;
  const parts = whole ? [part] : Array.from({ length: ends - 2 }, () => part);
  const rows = parts.map((p) => p.ports);
  const ports = freeOf(rows);
  const caps = ports.slice(ends).map((port) => capFor(supply, port, pressure));
  if (caps.some((cap) => cap === undefined)) return undefined;
  const way = wayOf(
    [...parts, ...caps.map((cap) => cap!)],
    [
      ...rows.slice(1).map((row, i) => supply.join(rows[i]![1]!, row[0]!, pressure)),
      ...caps.map((cap, i) => supply.join(ports[ends + i]!, cap!.ports[0]!, pressure)),
    ],
  );
  return way && { ...way, parts, ports };
}

/** A row with its joints to some ends; undefined when one of them cannot be made, or all cost more than some price. */
function branchWay(
  supply: Supply,
  { ports, ...row }: Row,
  ends: readonly EndPort[],
  pressure: number,
  most: number,
): Way | undefined {
  if (ends.some(({ port, still }, i) => !still && ports[i]!.size < port.size - 1e-4)) return undefined;
  let [priceCents, joints] = [row.priceCents, row.joints];
  for (const [i, { port }] of ends.entries()) {
    if (priceCents > most) return undefined;
    const joint = supply.join(ports[i]!, port, pressure);
    if (!joint.ok) return undefined;
    for (const piece of joint.pieces) priceCents += piece.priceCents;
    joints += joint.pieces.length + 1;
  }
  return { priceCents, joints };
}

/** Ports of a row that are not joined to the next fitting of it, in order; those of a manifold as it lists them. */
export function freeOf<T>(rows: readonly (readonly T[])[]): T[] {
  return rows.flatMap((row, i) =>
    row.filter((_, k) => !(k === 0 && i > 0) && !(k === 1 && i < rows.length - 1)),
  );
}
