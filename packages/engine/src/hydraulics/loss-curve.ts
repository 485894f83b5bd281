/**
 * Measured curves as piecewise cubics of loss [m] against flow [m3/s], never falling. A pump is a negative loss.
 * Beyond its last point a curve goes on straight with the slope it has there.
 */
import type { ElementLaw, HeadPoint, PowerCurve, PressurePoint } from './network-model.ts';

const G = 9.80665;
/** Keeps the flow defined where a curve is level: 1e-6 m at 1 L/s. */
const LEAST_SLOPE = 1e-3;

export interface LossCurve {
  /** Doubles per piece: start flow, c0, c1, c2, c3 of the local variable. */
  readonly pieces: Float64Array;
  /** Flow of the last measured point. */
  readonly lastFlow: number;
  /** When set the curve is coefficient * q^exponent - shutOffHead instead. */
  readonly power?: PowerCurve;
}

const CURVE_PIECE = 5;

export type CurveProblem = { readonly code: 'bad-curve' | 'drooping-curve'; readonly message: string };

/** The curve of a law that has one, at relative speed 1; `undefined` for other laws. */
export function lossCurveOf(law: ElementLaw, density: number): LossCurve | CurveProblem | undefined {
  switch (law.kind) {
    case 'centrifugal-pump': {
      if ('shutOffHead' in law.curve) {
        const { shutOffHead, coefficient, exponent } = law.curve;
        if (!(shutOffHead > 0 && shutOffHead < 1e5 && coefficient > 0 && coefficient < 1e30))
          return bad('a power curve needs a shut-off head and a coefficient above zero');
        if (!(exponent >= 0.5 && exponent <= 8)) return bad(`exponent is ${exponent}; it must be 0.5 to 8`);
        return { pieces: new Float64Array(0), lastFlow: Infinity, power: law.curve };
      }
      const points = negated(law.curve);
      return build(law.drooping === 'level' ? levelled(points) : points, law.interpolation === 'smooth');
    }
    case 'demand-pump':
      return build(negated(inHead(law.curve, density)), false);
    case 'curve':
      return build(fromOrigin(law.curve), false);
    case 'eductor':
      return build(fromOrigin(inHead(law.curve, 1000)), false);
    default:
      return undefined;
  }
}

function inHead(points: readonly PressurePoint[], density: number): HeadPoint[] {
  return points.map((p) => ({ flow: p.flow, head: p.pressure / (density * G) }));
}

function negated(points: readonly HeadPoint[]): HeadPoint[] {
  return points.map((p) => ({ flow: p.flow, head: -p.head }));
}

function fromOrigin(points: readonly HeadPoint[]): readonly HeadPoint[] {
  return points.length > 0 && points[0]!.flow > 0 ? [{ flow: 0, head: 0 }, ...points] : points;
}

/** Lower envelope of the head that never rises: the humped part is cut level. */
function levelled(losses: readonly HeadPoint[]): HeadPoint[] {
  let least = -Infinity;
  return losses.map((p) => {
    least = Math.max(least, p.head);
    return { flow: p.flow, head: least };
  });
}

function bad(message: string): CurveProblem {
  return { code: 'bad-curve', message };
}

function build(points: readonly HeadPoint[], smooth: boolean): LossCurve | CurveProblem {
  if (points.length < 2) return bad(`the curve has ${points.length} points; it needs at least 2`);
  for (let i = 0; i < points.length; i++) {
    const p = points[i]!;
    if (
      !Number.isFinite(p.flow) ||
      !Number.isFinite(p.head) ||
      Math.abs(p.head) > 1e7 ||
      p.flow < 0 ||
      p.flow > 1e3
    )
      return bad(
        `point ${i + 1} of the curve is ${p.flow} m3/s, ${-p.head} m; both must be finite, flow 0 to 1000 m3/s`,
      );
    if (i === 0) continue;
    const before = points[i - 1]!;
    if (p.flow <= before.flow)
      return bad(
        `flow at point ${i + 1} of the curve is ${p.flow} m3/s; it must exceed the ${before.flow} m3/s before it`,
      );
    if (p.head < before.head)
      return {
        code: 'drooping-curve',
        message: `the curve turns back between ${before.flow} and ${p.flow} m3/s: there it has several duty points`,
      };
  }
  const kept = withoutCollinear(points);
  return {
    pieces: smooth ? smoothPieces(kept) : straightPieces(kept),
    lastFlow: kept[kept.length - 1]!.flow,
  };
}

function straightPieces(points: readonly HeadPoint[]): Float64Array {
  const n = points.length;
  const pieces = new Float64Array((n - 1) * CURVE_PIECE);
  for (let i = 0; i < n - 1; i++) {
    pieces[i * CURVE_PIECE] = points[i]!.flow;
    pieces[i * CURVE_PIECE + 1] = points[i]!.head;
    pieces[i * CURVE_PIECE + 2] = chordAt(points, i);
  }
  return tilted(pieces);
}

function smoothPieces(points: readonly HeadPoint[]): Float64Array {
  const n = points.length;
  const slopes = monotoneSlopes(points);
  const pieces = new Float64Array(n * CURVE_PIECE);
  for (let i = 0; i < n; i++) {
    const o = i * CURVE_PIECE;
    const a = slopes[i]!;
    pieces[o] = points[i]!.flow;
    pieces[o + 1] = points[i]!.head;
    pieces[o + 2] = a;
    if (i === n - 1) break;
    const width = points[i + 1]!.flow - points[i]!.flow;
    const chord = chordAt(points, i);
    const b = slopes[i + 1]!;
    pieces[o + 3] = (3 * chord - 2 * a - b) / width;
    pieces[o + 4] = (a + b - 2 * chord) / (width * width);
  }
  return tilted(pieces);
}

/** Level stretches get the least slope, by tilting the whole curve so that it stays in one piece. */
function tilted(pieces: Float64Array): Float64Array {
  let level = false;
  for (let o = 0; o < pieces.length; o += CURVE_PIECE) level ||= pieces[o + 2]! < LEAST_SLOPE;
  if (!level) return pieces;
  for (let o = 0; o < pieces.length; o += CURVE_PIECE) {
    pieces[o + 1]! += LEAST_SLOPE * pieces[o]!;
    pieces[o + 2]! += LEAST_SLOPE;
  }
  return pieces;
}

function chordAt(points: readonly HeadPoint[], i: number): number {
  return (points[i + 1]!.head - points[i]!.head) / (points[i + 1]!.flow - points[i]!.flow);
}

/** A straight curve given by many points costs no more than one given by two, and has no false kinks. */
function withoutCollinear(points: readonly HeadPoint[]): HeadPoint[] {
  const kept: HeadPoint[] = [points[0]!];
  for (let i = 1; i < points.length; i++) {
    const a = kept[kept.length - 1]!;
    const b = points[i]!;
    const c = points[i + 1];
    if (c !== undefined) {
      const onLine = a.head + ((c.head - a.head) * (b.flow - a.flow)) / (c.flow - a.flow);
      if (Math.abs(onLine - b.head) <= 1e-11 * Math.max(Math.abs(a.head), Math.abs(c.head))) continue;
    }
    kept.push(b);
  }
  return kept;
}

/** Slopes of Fritsch and Carlson's monotone cubic (weighted harmonic mean of the chords). */
function monotoneSlopes(points: readonly HeadPoint[]): number[] {
  const n = points.length;
  const width = (i: number): number => points[i + 1]!.flow - points[i]!.flow;
  return points.map((_, i) => {
    if (i === 0) return chordAt(points, 0);
    if (i === n - 1) return chordAt(points, n - 2);
    const before = chordAt(points, i - 1);
    const after = chordAt(points, i);
    if (before <= 0 || after <= 0) return 0;
    const w1 = 2 * width(i) + width(i - 1);
    const w2 = width(i) + 2 * width(i - 1);
    return (w1 + w2) / (w1 / before + w2 / after);
  });
}

/** Number of the piece that holds at this flow, counted from 1. */
export function pieceAt(curve: LossCurve, flow: number): number {
  const p = curve.pieces;
  let o = 0;
  while (o < p.length - CURVE_PIECE && flow >= p[o + CURVE_PIECE]!) o += CURVE_PIECE;
  return o / CURVE_PIECE + 1;
}

/** Where that piece begins and ends [m3/s]. */
export function pieceEnds(curve: LossCurve, piece: number): readonly [number, number] {
  const o = (piece - 1) * CURVE_PIECE;
  return [piece === 1 ? -Infinity : curve.pieces[o]!, curve.pieces[o + CURVE_PIECE] ?? Infinity];
}

/**
 * Writes the Taylor series [c0, c1, c2, c3] of the loss about the flow >= 0 that `out` begins with, and the range of flow
 * [from, to) in which it is exact, at relative speed 1. A held piece goes on beyond its ends.
 */
export function evaluateCurve(curve: LossCurve, out: Float64Array, held: number): void {
  const flow = out[0]!;
  const p = curve.pieces;
  const last = p.length - CURVE_PIECE;
  const o = ((held > 0 ? held : pieceAt(curve, flow)) - 1) * CURVE_PIECE;
  const d = flow - p[o]!;
  // Before its first point a curve goes on straight.
  const before = d < 0 && o === 0;
  const c2 = before ? 0 : p[o + 3]!;
  const c3 = before ? 0 : p[o + 4]!;
  out[0] = p[o + 1]! + d * (p[o + 2]! + d * (c2 + d * c3));
  out[1] = p[o + 2]! + d * (2 * c2 + 3 * d * c3);
  out[2] = c2 + 3 * d * c3;
  out[3] = c3;
  const straight = p[3] === 0 && p[4] === 0;
  out[4] = held > 0 || before || (o === 0 && straight) ? -Infinity : p[o]!;
  out[5] = before ? p[0]! : held > 0 || o === last ? Infinity : p[o + CURVE_PIECE]!;
}
