/**
 * Points that fill a box more evenly than chance: Sobol's sequence, four dimensions at a time, each group shuffled and
 * scrambled by a hash of the seed (nested uniform scrambling). Source: B. Burley, Practical hash-based Owen scrambling,
 * Journal of Computer Graphics Techniques 9(4), 2020; S. Joe and F. Y. Kuo's direction numbers (2008).
 */

const GROUP = 4;
const BITS = 32;

/** Degree, coefficients of the primitive polynomial and first direction numbers of dimensions 2 to 4. */
const POLYNOMIALS = [
  { degree: 1, inner: 0, first: [1] },
  { degree: 2, inner: 1, first: [1, 3] },
  { degree: 3, inner: 1, first: [1, 3, 1] },
];

const DIRECTIONS: readonly Uint32Array[] = [
  Uint32Array.from({ length: BITS }, (_, i) => 2 ** (BITS - 1 - i)),
  ...POLYNOMIALS.map(({ degree, inner, first }) => {
    const v = new Uint32Array(BITS);
    for (let i = 0; i < BITS; i++) {
      if (i < degree) {
        v[i] = first[i]! * 2 ** (BITS - 1 - i);
        continue;
      }
      v[i] = v[i - degree]! ^ (v[i - degree]! >>> degree);
      for (let k = 1; k < degree; k++) if ((inner >>> (degree - 1 - k)) & 1) v[i]! ^= v[i - k]!;
    }
    return v;
  }),
];

/**
 * Point number `index` in one dimension of any number of them, between 0 and 1, ends excluded. The first 2^m points have
 * exactly one in each 2^m-th of every dimension.
 */
export function sobolPoint(index: number, dimension: number, seed: number): number {
  const group = Math.floor(dimension / GROUP);
  const within = dimension % GROUP;
  const groupSeed = hash(seed, group);
  let bits = scrambled(index, groupSeed);
  const directions = DIRECTIONS[within]!;
  let x = 0;
  for (let bit = 0; bits !== 0; bits >>>= 1, bit++) if (bits & 1) x ^= directions[bit]!;
  return ((scrambled(x, hash(groupSeed, within + 1)) >>> 0) + 0.5) / 2 ** BITS;
}

/** Owen's scrambling of a binary fraction: each bit is turned over or not, as the bits before it and the seed decide. */
function scrambled(x: number, seed: number): number {
  return reversed(permuted(reversed(x), seed));
}

function permuted(x: number, seed: number): number {
  x = (x + seed) | 0;
  x ^= Math.imul(x, 0x6c50b47c);
  x ^= Math.imul(x, 0xb82f1e52);
  x ^= Math.imul(x, 0xc7afe638);
  x ^= Math.imul(x, 0x8d22f6e6);
  return x >>> 0;
}

function reversed(x: number): number {
  x = ((x >>> 1) & 0x55555555) | ((x & 0x55555555) << 1);
  x = ((x >>> 2) & 0x33333333) | ((x & 0x33333333) << 2);
  x = ((x >>> 4) & 0x0f0f0f0f) | ((x & 0x0f0f0f0f) << 4);
  x = ((x >>> 8) & 0x00ff00ff) | ((x & 0x00ff00ff) << 8);
  return ((x >>> 16) | (x << 16)) >>> 0;
}

/** Mixes a number into a seed (finaliser of MurmurHash3, from memory). */
function hash(seed: number, value: number): number {
  let h = (seed ^ Math.imul(value + 1, 0x9e3779b9)) | 0;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
}
