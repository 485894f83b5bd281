import type { Palette } from './palette.ts';
import { element, number, stroke } from './svg.ts';

/** Centre of mass: a circle in quarters, two of them filled, with its axes past the edge; its middle at (x, y). */
export function centreMark(x: number, y: number, radius: number, palette: Palette): string {
  const quarter = (from: readonly [number, number], to: readonly [number, number]) =>
    `M${number(x)} ${number(y)}L${number(x + radius * from[0])} ${number(y + radius * from[1])}` +
    `A${number(radius)} ${number(radius)} 0 0 1 ${number(x + radius * to[0])} ${number(y + radius * to[1])}Z`;
  const past = radius + 4;
  return (
    element('circle', {
      cx: x,
      cy: y,
      r: radius,
      ...stroke('thin', palette.ink, palette),
      'stroke-width': 1.3 * palette.weight,
      fill: palette.paper,
    }) +
    element('path', { d: quarter([-1, 0], [0, -1]) + quarter([1, 0], [0, 1]), fill: palette.ink }) +
    element('path', {
      d: `M${number(x - past)} ${number(y)}h${number(2 * past)}M${number(x)} ${number(y - past)}v${number(2 * past)}`,
      ...stroke('thin', palette.ink, palette),
    })
  );
}
