import type { Palette } from './palette.ts';
import type { SceneScale } from './scene-scale.ts';
import { element, number, path, stroke } from './svg.ts';

/** A person of 5 ft 9 in [m]. */
const STATURE = 1.753;

/**
 * The operator with the gun, feet at the origin: solid while small, an outline with a hat from 50 px on. The hands follow the gun,
 * whose tip is at (tipX, tipZ) in metres and points up by the elevation [rad].
 */
export function drawOperator(
  tip: { readonly x: number; readonly z: number; readonly elevation: number },
  scale: SceneScale,
  palette: Palette,
): string {
  const large = STATURE * scale.k >= 50;
  const at = (x: number, z: number): [number, number] => [scale.x(x), scale.y(z)];
  const look = large
    ? {
        ...stroke('outline', palette.ink, palette),
        'stroke-width': 1.3 * palette.weight,
        fill: palette.paper,
      }
    : { fill: palette.ink };
  const thick = { ...stroke('outline', palette.ink, palette), 'stroke-linecap': 'round' as const };
  // The grip lies half a metre behind the tip, along the gun.
  const grip: [number, number] = [
    tip.x - 0.5 * Math.cos(tip.elevation),
    tip.z - 0.5 * Math.sin(tip.elevation),
  ];
  const fore: [number, number] = [
    tip.x - 0.24 * Math.cos(tip.elevation),
    tip.z - 0.24 * Math.sin(tip.elevation),
  ];
  const arm = Math.max(1.6, 0.1 * scale.k);
  const limb = (points: [number, number][]) =>
    element('path', {
      d: path(points.map(([x, z]) => at(x, z))),
      ...thick,
      'stroke-width': large ? 1.3 : arm,
    });
  return element(
    'g',
    { 'data-item': 'gun' },
    element('path', {
      d: path(
        [
          [-0.32, 0],
          [-0.14, 0],
          [-0.1, 0.45],
          [0, 0.82],
          [0.08, 0.45],
          [0.12, 0],
          [0.31, 0],
          [0.31, 0.06],
          [0.22, 0.1],
          [0.2, 0.5],
          [0.16, 0.92],
          [0.19, 1.42],
          [0.06, 1.5],
          [-0.1, 1.46],
          [-0.16, 0.92],
          [-0.22, 0.45],
          [-0.26, 0.08],
        ].map(([x, z]) => at(x! - 0.08, z!)),
        true,
      ),
      ...look,
      'stroke-linejoin': 'round',
    }),
    element('circle', { cx: scale.x(-0.02), cy: scale.y(1.63), r: 0.115 * scale.k, ...look }),
    element('path', {
      d: path([at(-0.17, 1.68), at(0.17, 1.66)]),
      ...thick,
      'stroke-width': Math.max(1.2, 0.04 * scale.k) * palette.weight,
    }),
    limb([[0.04, 1.38], [(0.04 + grip[0]) / 2 + 0.05, (1.38 + grip[1]) / 2 - 0.12], grip]),
    limb([[0.06, 1.34], fore]),
    element('path', {
      d: path([at(...grip), at(tip.x, tip.z)]),
      ...thick,
      'stroke-width': Math.max(1.8, 0.05 * scale.k) * palette.weight,
    }),
  );
}

/** Where the hose meets the gun [m]. */
export function gripOf(tip: { readonly x: number; readonly z: number; readonly elevation: number }): {
  readonly x: number;
  readonly z: number;
} {
  return { x: tip.x - 0.5 * Math.cos(tip.elevation), z: tip.z - 0.5 * Math.sin(tip.elevation) };
}

/** Small arc of the elevation angle at the tip, with its figure. */
export function angleMark(x: number, y: number, elevation: number, radius: number): string {
  return (
    `M${number(x)} ${number(y)}H${number(x + radius + 8)}` +
    `M${number(x + radius)} ${number(y)}A${number(radius)} ${number(radius)} 0 0 0 ${number(x + radius * Math.cos(elevation))} ${number(y - radius * Math.sin(elevation))}`
  );
}
