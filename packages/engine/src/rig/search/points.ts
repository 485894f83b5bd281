import type { Adds } from './money.ts';

/** Points of a front; more are put together, each figure at its best. */
const MOST_POINTS = 24;

/** What some slots add at least, with the most spare that their parts allow one another. */
export interface Point extends Adds {
  readonly margin: number;
}

export const ORIGIN: Point = { cents: 0, mass: 0, late: 0, margin: Infinity };

/** Two points as one. */
export function both(a: Point, b: Point): Point {
  return {
    cents: a.cents + b.cents,
    mass: a.mass + b.mass,
    late: Math.max(a.late, b.late),
    margin: Math.min(a.margin, b.margin),
  };
}

/** Every point of one front with every point of another, as far as no other is as good. */
export function joinedPoints(some: readonly Point[], others: readonly Point[]): readonly Point[] {
  return frontOf(some.flatMap((p) => others.map((q) => both(p, q))));
}

/** Points that no other is as good as, cheapest first. */
export function frontOf(points: Point[]): readonly Point[] {
  points.sort((a, b) => a.cents - b.cents || a.mass - b.mass || a.late - b.late || b.margin - a.margin);
  const kept: Point[] = [];
  for (const p of points)
    if (!kept.some((k) => k.mass <= p.mass && k.late <= p.late && k.margin >= p.margin)) kept.push(p);
  return kept;
}

/** The same in fewer points where they are too many: neighbours are put together. */
export function fewer(points: readonly Point[]): readonly Point[] {
  const each = Math.ceil(points.length / MOST_POINTS);
  if (each <= 1) return points;
  const out: Point[] = [];
  for (let i = 0; i < points.length; i += each) out.push(points.slice(i, i + each).reduce(best));
  return out;
}

function best(a: Point, b: Point): Point {
  return {
    cents: Math.min(a.cents, b.cents),
    mass: Math.min(a.mass, b.mass),
    late: Math.min(a.late, b.late),
    margin: Math.max(a.margin, b.margin),
  };
}
