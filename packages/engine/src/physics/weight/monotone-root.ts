/**
 * Argument between `low` and `high` where a rising function takes the target value.
 *
 * Regula falsi with the Illinois step: always inside the bracket, so it cannot run away, and quick on smooth functions.
 */
export function monotoneRoot(f: (x: number) => number, target: number, low: number, high: number): number {
  let a = low;
  let b = high;
  let fa = f(a) - target;
  let fb = f(b) - target;
  if (fa >= 0) return a;
  if (fb <= 0) return b;
  const close = 1e-13 * Math.max(Math.abs(low), Math.abs(high), 1e-3);
  const enough = 1e-12 * Math.abs(target);
  let side = 0;
  for (let i = 0; i < 200 && b - a > close; i++) {
    // Every sixth step halves, so that a flat end of the function cannot stall the search.
    const x = i % 6 === 5 ? (a + b) / 2 : (a * fb - b * fa) / (fb - fa);
    const fx = f(x) - target;
    if (Math.abs(fx) <= enough) return x;
    if (fx < 0) {
      a = x;
      fa = fx;
      if (side === -1) fb /= 2;
      side = -1;
    } else {
      b = x;
      fb = fx;
      if (side === 1) fa /= 2;
      side = 1;
    }
  }
  return (a + b) / 2;
}
