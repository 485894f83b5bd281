/** A point of a published or measured curve: where, and how much. */
export type Point = readonly [number, number];

/** Straight lines between points of rising x; beyond the ends the end values hold. */
export function interpolatePoints(points: readonly Point[], x: number): number {
  const [first, ...rest] = points;
  if (first === undefined) throw new RangeError('a curve needs at least one point');
  let [lowX, lowY] = first;
  if (x <= lowX) return lowY;
  for (const [highX, highY] of rest) {
    if (x <= highX) return lowY + ((highY - lowY) * (x - lowX)) / (highX - lowX);
    [lowX, lowY] = [highX, highY];
  }
  return lowY;
}
