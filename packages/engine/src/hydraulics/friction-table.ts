/**
 * Friction curves prepared once and shared by all networks. psi(w) is cut into 256 pieces per octave of w; a piece becomes
 * a cubic when it is first needed, so that no flow depends on what was solved before. It is checked against the law itself
 * and refused (the law is used instead) where it misses by more than 1e-10, which happens only across a kink. The octave
 * and the piece are the top bits of the number itself, so finding a piece costs no logarithm.
 */
import { evaluatePsi, psiOut } from './friction-kernel.ts';
import type { FrictionKey } from './friction-kernel.ts';
import { registers } from './registers.ts';

/** Doubles per piece: four coefficients of w - centre, then the centre: 0 never needed yet, below zero refused. */
export const PIECE = 5;
export const PIECE_CENTRE = 4;
const REFUSED = -1;

const FIRST_OCTAVE = 3;
/** Up to Re 1.6 million. */
const OCTAVES = 11;
/** 2^8: the piece within an octave is the eight bits after the exponent. */
const PIECES_PER_OCTAVE = 256;
/** The upper word of a double holds sign, exponent and twenty bits of the fraction: this many lie below those eight. */
export const PIECE_SHIFT = 12;
/** The first w prepared, Re 800, and the number of its piece counted from zero. */
export const FIRST_W = 2 ** FIRST_OCTAVE;
export const FIRST_PIECE = (1023 + FIRST_OCTAVE) * PIECES_PER_OCTAVE;
export const PIECES = OCTAVES * PIECES_PER_OCTAVE;
const TABLE_SIZE = PIECES * PIECE;
/** Curves kept whole; of further ones single pieces are kept, see `spare-pieces.ts`. */
export const MOST_TABLES = 192;
/** In place of the offset of a curve that is not kept whole. */
export const SPARE_TABLE = -2;

const POINTS = 4;
const ACCEPTED_ERROR = 1e-10;
const nodes = Float64Array.from({ length: POINTS }, (_, i) => Math.cos((Math.PI * (i + 0.5)) / POINTS));
const toMonomials = invertVandermonde(nodes);
const sample = new Float64Array(POINTS);
const CHECKS = [-1, -0.7, 0, 0.7, 1];

class FrictionTables {
  /** The first table is never prepared: it stands for "none". */
  pieces = new Float64Array(TABLE_SIZE * 8);
  private readonly keys: FrictionKey[] = [{ law: -1, relativeRoughness: 0, coilRatio: 0, index: 1 }];
  /** Offsets of the curves of each relative roughness. */
  private readonly byRoughness = new Map<number, number[]>();

  /** Offset of the curve's first piece in `pieces`, or SPARE_TABLE. */
  offsetOf(key: FrictionKey): number {
    const alike = this.byRoughness.get(key.relativeRoughness);
    if (alike !== undefined) {
      for (const known of alike) {
        const own = this.keys[known / TABLE_SIZE]!;
        if (own.law === key.law && own.coilRatio === key.coilRatio && own.index === key.index) return known;
      }
    }
    if (this.keys.length >= MOST_TABLES) return SPARE_TABLE;
    const offset = this.keys.length * TABLE_SIZE;
    const { law, relativeRoughness, coilRatio, index } = key;
    this.keys.push({ law, relativeRoughness, coilRatio, index });
    if (alike === undefined) this.byRoughness.set(relativeRoughness, [offset]);
    else alike.push(offset);
    if (offset + TABLE_SIZE > this.pieces.length) {
      const grown = new Float64Array(this.pieces.length * 2);
      grown.set(this.pieces);
      this.pieces = grown;
    }
    return offset;
  }

  /** Any w, prepared or not; the result is in `psiOut`. */
  evaluate(offset: number, w: number): void {
    const key = this.keys[offset / TABLE_SIZE]!;
    const index = pieceOf(w);
    if (index < 0 || index >= PIECES) return evaluateLaw(key, w);
    const o = offset + index * PIECE;
    if (this.pieces[o + PIECE_CENTRE] === 0) this.prepare(o);
    evaluatePiece(this.pieces, o, key, w);
  }

  /** Prepares the piece at `o` of `pieces`, or refuses it. */
  prepare(o: number): void {
    const table = Math.floor(o / TABLE_SIZE);
    layPiece(this.pieces, o, this.keys[table]!, (o - table * TABLE_SIZE) / PIECE);
  }
}

/** Lays piece `index` of a curve at `o` of `p`, or refuses it there. */
export function layPiece(p: Float64Array, o: number, key: FrictionKey, index: number): void {
  const octave = 2 ** (FIRST_OCTAVE + Math.floor(index / PIECES_PER_OCTAVE));
  const half = octave / (2 * PIECES_PER_OCTAVE);
  const centre = octave * (1 + ((index % PIECES_PER_OCTAVE) + 0.5) / PIECES_PER_OCTAVE);
  for (let i = 0; i < POINTS; i++) {
    evaluatePsi(key, centre + half * nodes[i]!);
    sample[i] = psiOut[0]!;
  }
  let scale = 1;
  for (let k = 0; k < POINTS; k++) {
    let c = 0;
    for (let i = 0; i < POINTS; i++) c += toMonomials[k * POINTS + i]! * sample[i]!;
    p[o + k] = c * scale;
    scale /= half;
  }
  p[o + PIECE_CENTRE] = centre;
  let worst = 0;
  for (const t of CHECKS) {
    evaluatePiece(p, o, key, centre + half * t);
    const approximate = psiOut[0]!;
    evaluatePsi(key, centre + half * t);
    worst = Math.max(worst, Math.abs(approximate / psiOut[0]! - 1));
  }
  if (!(worst <= ACCEPTED_ERROR)) p[o + PIECE_CENTRE] = REFUSED;
}

/** A memory of pure functions: what it holds changes no result. */
export const frictionTables = new FrictionTables();

const bits = registers();
const words = new Int32Array(bits.buffer);

/** Number of the piece that w lies on; below 0, or PIECES and more, where nothing is prepared. */
export function pieceOf(w: number): number {
  bits[0] = w;
  return (words[1]! >>> PIECE_SHIFT) - FIRST_PIECE;
}

/** A curve at w, by its piece at `o` of `p`, or by the law itself where that was refused; the result is in `psiOut`. */
export function evaluatePiece(p: Float64Array, o: number, key: FrictionKey, w: number): void {
  const centre = p[o + PIECE_CENTRE]!;
  if (!(centre > 0)) return evaluateLaw(key, w);
  const d = w - centre;
  const c1 = p[o + 1]!;
  const c2 = p[o + 2]!;
  const c3 = p[o + 3]!;
  const half = c2 + 3 * c3 * d;
  psiOut[0] = p[o]! + d * (c1 + d * (c2 + d * c3));
  psiOut[1] = c1 + d * (c2 + half);
  psiOut[2] = half;
}

/** The law itself, which may have a kink nearby: there is no saying how it bends. */
export function evaluateLaw(key: FrictionKey, w: number): void {
  psiOut[2] = Infinity;
  evaluatePsi(key, w);
}

/** Row k: weights of the sample values in the coefficient of t^k. */
function invertVandermonde(t: Float64Array): Float64Array {
  const n = t.length;
  const inverse = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    // Lagrange polynomial of node i, expanded.
    let poly = [1];
    for (let j = 0; j < n; j++) {
      if (j === i) continue;
      const next: number[] = new Array<number>(poly.length + 1).fill(0);
      for (let k = 0; k < poly.length; k++) {
        next[k + 1]! += poly[k]! / (t[i]! - t[j]!);
        next[k]! -= (poly[k]! * t[j]!) / (t[i]! - t[j]!);
      }
      poly = next;
    }
    for (let k = 0; k < n; k++) inverse[k * n + i] = poly[k]!;
  }
  return inverse;
}
