/** Area and first moments of the part of a centred rectangle where x gx + y gy is at most k. */
export function clippedRectangle(
  length: number,
  width: number,
  gx: number,
  gy: number,
  k: number,
): { area: number; momentX: number; momentY: number } {
  const corners: [number, number][] = [
    [-length / 2, -width / 2],
    [length / 2, -width / 2],
    [length / 2, width / 2],
    [-length / 2, width / 2],
  ];
  const kept: [number, number][] = [];
  corners.forEach(([x, y], i) => {
    const [xn, yn] = corners[(i + 1) % 4]!;
    const here = k - x * gx - y * gy;
    const next = k - xn * gx - yn * gy;
    if (here >= 0) kept.push([x, y]);
    if (here >= 0 !== next >= 0) {
      const share = here / (here - next);
      kept.push([x + (xn - x) * share, y + (yn - y) * share]);
    }
  });
  let area = 0;
  let momentX = 0;
  let momentY = 0;
  kept.forEach(([x, y], i) => {
    const [xn, yn] = kept[(i + 1) % kept.length]!;
    const cross = (x * yn - xn * y) / 2;
    area += cross;
    momentX += (cross * (x + xn)) / 3;
    momentY += (cross * (y + yn)) / 3;
  });
  return { area, momentX, momentY };
}
