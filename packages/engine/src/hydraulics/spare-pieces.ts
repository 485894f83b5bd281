/**
 * Pieces of friction curves that are not kept whole. A piece is what it is whoever asks for it, so that the next one that
 * needs the place may have it: flows do not depend on how many curves were met before.
 */
import type { FrictionKey } from './friction-kernel.ts';
import { PIECE, PIECES, evaluateLaw, evaluatePiece, layPiece, pieceOf } from './friction-table.ts';
import { registers } from './registers.ts';

const PLACES = 4096;
const pieces = new Float64Array(PLACES * PIECE);
/** Doubles per place that tell whose piece lies there: the key's four and the number of the piece, counted from 1. */
const OWNER = 5;
const owners = new Float64Array(PLACES * OWNER);

const bits = registers();
const words = new Int32Array(bits.buffer);

/** The curve at any w; the result is in `psiOut`. */
export function evaluateSpare(key: FrictionKey, w: number): void {
  const index = pieceOf(w);
  if (index < 0 || index >= PIECES) return evaluateLaw(key, w);
  const place = placeOf(key, index);
  if (!isOwner(place * OWNER, key, index)) {
    layPiece(pieces, place * PIECE, key, index);
    setOwner(place * OWNER, key, index);
  }
  evaluatePiece(pieces, place * PIECE, key, w);
}

/** Neighbouring pieces of one curve lie side by side. */
function placeOf(key: FrictionKey, index: number): number {
  let hash = key.law;
  hash = mixed(hash, key.relativeRoughness);
  hash = mixed(hash, key.coilRatio);
  hash = mixed(hash, key.index);
  return ((hash >>> 16) + index) % PLACES;
}

function mixed(hash: number, value: number): number {
  bits[0] = value;
  return Math.imul(hash ^ words[0]! ^ Math.imul(words[1]!, 0x85ebca6b), 0x9e3779b1);
}

function isOwner(o: number, key: FrictionKey, index: number): boolean {
  return (
    owners[o] === index + 1 &&
    owners[o + 1] === key.relativeRoughness &&
    owners[o + 2] === key.coilRatio &&
    owners[o + 3] === key.index &&
    owners[o + 4] === key.law
  );
}

function setOwner(o: number, key: FrictionKey, index: number): void {
  owners[o] = index + 1;
  owners[o + 1] = key.relativeRoughness;
  owners[o + 2] = key.coilRatio;
  owners[o + 3] = key.index;
  owners[o + 4] = key.law;
}
