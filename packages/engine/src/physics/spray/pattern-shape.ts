/** Ideal distributions across the width of one fan, as a share of the volume per metre. */
export const PATTERN_SHAPES = ['triangular', 'parabolic', 'flat'] as const;
export type PatternShape = (typeof PATTERN_SHAPES)[number];

/** Volume of a unit fan on each metre at a distance from its middle; zero outside the width. */
export function patternDensity(shape: PatternShape, width: number, distance: number): number {
  const u = Math.abs(distance) / (width / 2);
  if (u > 1) return 0;
  switch (shape) {
    case 'triangular':
      return (2 * (1 - u)) / width;
    case 'parabolic':
      return (1.5 * (1 - u * u)) / width;
    case 'flat':
      return 1 / width;
  }
}
