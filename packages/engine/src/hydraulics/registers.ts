/** Numbers that functions hand to each other: as arguments or results, fractions may cost a heap number each. */

/** Doubles of any such array. Above 64 bytes its memory never moves, so that the compiler knows the address. */
const SIZE = 16;

export function registers(): Float64Array {
  return new Float64Array(SIZE);
}
