/** Most steps of one search: halves alone would do with fewer. */
const MOST_STEPS = 60;

/**
 * Where a function that falls comes down to zero, from below: it is still above zero there; 0 where it never is. By chords,
 * of which one end that stays is drawn nearer (Illinois), and by halves where the function has no end.
 *
 * @param high where it is at zero or below
 * @param close how near to zero's place it comes
 */
export function fallsToZero(left: (x: number) => number, high: number, close: number): number {
  let low = 0;
  let [over, under] = [left(low), left(high)];
  if (over <= 0) return 0;
  let stayed = 0;
  for (let i = 0; i < MOST_STEPS && high - low > close; i++) {
    const chord = (over * high - under * low) / (over - under);
    const x =
      Number.isFinite(chord) && i < MOST_STEPS / 2
        ? Math.min(high - close / 4, Math.max(low + close / 4, chord))
        : (low + high) / 2;
    const at = left(x);
    if (at > 0) {
      [low, over] = [x, at];
      if (stayed > 0) under /= 2;
      stayed = 1;
    } else {
      [high, under] = [x, at];
      if (stayed < 0) over /= 2;
      stayed = -1;
    }
  }
  return low;
}
