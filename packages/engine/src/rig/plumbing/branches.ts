import { ratingOf, type PartOf } from '../../catalogue/index.ts';
import { pressureBetween, type Plan, type Side } from './plan.ts';
import { cheapest, priceOf } from './supply.ts';

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
  // Liquid comes in at one end of the row; the widest follow, so that the narrow outlets of a manifold serve the narrow.
  const ordered = [...ends].sort(
    (a, b) =>
      Number(b.feeds) - Number(a.feeds) ||
      Number(a.still ?? false) - Number(b.still ?? false) ||
      (b.side.at?.size ?? 0) - (a.side.at?.size ?? 0),
  );
  const pressure = Math.min(...ends.map(({ side }) => side.pressure));
  const best = cheapest(plan.supply.branches.flatMap((part) => wayWith(plan, part, ordered, pressure) ?? []));
  if (best === undefined) {
    plan.gaps.push(`neither tees nor a manifold in the catalogue join ${ends.length} ends at ${node}`);
    return;
  }
  const rows = best.parts.map((part, i) =>
    plan.add(
      best.parts.length === 1 ? `${node}-branch` : `${node}-branch-${i + 1}`,
      part,
      node,
      `${node} ${part.form}`,
      pressure,
    ),
  );
  rows.slice(1).forEach((row, i) => plan.join(rows[i]![1]!, row[0]!, ordered[0]!.line));
  freePorts(rows).forEach((port, i) => {
    const end = ordered[i];
    if (end !== undefined) plan.join(port, end.side, end.line);
  });
}

interface Way {
  readonly parts: readonly PartOf<'fitting'>[];
  readonly priceCents: number;
  readonly joints: number;
}

/** What it costs to join the ends with one manifold or a row of this tee; undefined when it cannot be done so. */
function wayWith(
  plan: Plan,
  part: PartOf<'fitting'>,
  ends: readonly NodeEnd[],
  pressure: number,
): Way | undefined {
  const stands = Number.isFinite(pressure) ? pressure : 0;
  if (ratingOf(part) < stands || (part.form === 'manifold' && part.ports.length < ends.length))
    return undefined;
  const parts = part.form === 'manifold' ? [part] : Array.from({ length: ends.length - 2 }, () => part);
  let priceCents = priceOf(parts);
  let joints = parts.length;
  const take = (a: Side, b: Side): boolean => {
    if (a.at === undefined || b.at === undefined) return true;
    const joint = plan.supply.join(a.at, b.at, pressureBetween(a, b));
    if (joint.ok) {
      priceCents += priceOf(joint.pieces);
      joints += joint.pieces.length + 1;
    }
    return joint.ok;
  };
  const rows = parts.map((p) =>
    p.ports.map((at): Side => ({ of: '', port: at.id, words: '', at, pressure, count: 1 })),
  );
  for (let i = 1; i < rows.length; i++) if (!take(rows[i - 1]![1]!, rows[i]![0]!)) return undefined;
  const ports = freePorts(rows);
  for (const [i, { side, still }] of ends.entries()) {
    const port = ports[i]!;
    if (still !== true && port.at!.size < (side.at?.size ?? 0) - 1e-4) return undefined;
    if (!take(port, side)) return undefined;
  }
  for (const port of ports.slice(ends.length)) {
    const cap = cheapestCap(plan, port);
    if (cap === undefined) return undefined;
    priceCents += cap.priceCents;
    joints += cap.joints;
  }
  return { parts, priceCents, joints };
}

/** Ports of a row that are not joined to the next fitting of it, in order; those of a manifold as it lists them. */
function freePorts(rows: readonly (readonly Side[])[]): Side[] {
  return rows.flatMap((row, i) =>
    row.filter((_, k) => !(k === 0 && i > 0) && !(k === 1 && i < rows.length - 1)),
  );
}

/** The cheapest cap or plug that closes a port, with what joins it. */
export function cheapestCap(
  plan: Plan,
  side: Side,
): { part: PartOf<'fitting'>; priceCents: number; joints: number } | undefined {
  const { at } = side;
  if (at === undefined) return undefined;
  const pressure = pressureBetween(side, side);
  return cheapest(
    plan.supply.caps.flatMap((part) => {
      if (ratingOf(part) < pressure) return [];
      const joint = plan.supply.join(at, part.ports[0]!, pressure);
      return joint.ok
        ? [{ part, priceCents: part.priceCents + priceOf(joint.pieces), joints: joint.pieces.length + 1 }]
        : [];
    }),
  );
}
