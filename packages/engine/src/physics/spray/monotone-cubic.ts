/**
 * A smooth curve through rising points that never overshoots them (Fritsch & Carlson 1980, slopes by the
 * weighted harmonic mean).
 */
export function monotoneCubic(x: readonly number[], y: readonly number[]): (at: number) => number {
  const n = x.length;
  const xs = (i: number) => x[i] ?? NaN;
  const ys = (i: number) => y[i] ?? NaN;
  const chord = (i: number) => (ys(i + 1) - ys(i)) / (xs(i + 1) - xs(i));
  const slopes = x.map((_, i) => {
    if (i === 0) return chord(0);
    if (i === n - 1) return chord(n - 2);
    const left = chord(i - 1);
    const right = chord(i);
    if (left * right <= 0) return 0;
    const a = xs(i) - xs(i - 1);
    const b = xs(i + 1) - xs(i);
    return (3 * (a + b)) / ((2 * b + a) / left + (b + 2 * a) / right);
  });
  return (at) => {
    let i = 0;
    while (i < n - 2 && xs(i + 1) < at) i++;
    const h = xs(i + 1) - xs(i);
    const t = (at - xs(i)) / h;
    const u = 1 - t;
    return (
      ys(i) * u * u * (1 + 2 * t) +
      (slopes[i] ?? 0) * h * t * u * u +
      ys(i + 1) * t * t * (3 - 2 * t) -
      (slopes[i + 1] ?? 0) * h * t * t * u
    );
  };
}
