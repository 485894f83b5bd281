/**
 * Area and first moment, about the centre, of the part of the unit circle below a level.
 *
 * @param depth level above the lowest point, 0 to 2; outside it the circle is empty or full
 */
export function unitSegment(depth: number): { area: number; moment: number } {
  if (depth <= 0) return { area: 0, moment: 0 };
  if (depth >= 2) return { area: Math.PI, moment: 0 };
  const half = 2 * Math.asin(Math.sqrt(depth / 2));
  const s = Math.sin(half);
  return { area: half < 0.3 ? thinArea(half) : half - s * Math.cos(half), moment: (-2 / 3) * s * s * s };
}

/** The same area as half - sin cos, in a series: the difference would lose its digits in a nearly empty circle. */
function thinArea(half: number): number {
  const q = half * half;
  return half * q * (2 / 3 - q * (2 / 15 - q * (4 / 315 - q * (2 / 2835 - (q * 4) / 155925))));
}
