import { breakLines } from './dimension.ts';
import type { Palette } from './palette.ts';
import type { SceneScale } from './scene-scale.ts';
import { element, hatch, number, stroke } from './svg.ts';

/** The ground: an extra thick line over hatching, across the whole drawing. */
export function drawGround(width: number, scale: SceneScale, palette: Palette): string[] {
  return [
    hatch(0, scale.ground + 1.5, width, 8, 10, palette.ink, palette),
    element('path', {
      d: `M0 ${number(scale.ground)}H${number(width)}`,
      ...stroke('extra', palette.ink, palette),
      'stroke-linecap': 'butt',
    }),
  ];
}

interface Point {
  readonly x: number;
  readonly y: number;
}

/**
 * The hose from the rig along the ground to a hand; level behind the rig's parts until its edge, and cut by a pair of break lines
 * where length is left out.
 */
export function drawHose(
  from: Point,
  to: Point,
  look: { readonly edge: number; readonly cut: boolean; readonly lit: boolean },
  scale: SceneScale,
  palette: Palette,
): string {
  const { edge } = look;
  const low = scale.ground - 3;
  const bend = Math.min(26, Math.max(8, (to.x - edge) * 0.22));
  const at = (x: number, y: number) => `${number(x)} ${number(y)}`;
  return element(
    'g',
    { 'data-item': 'hose' },
    element('path', {
      d:
        `M${at(from.x, from.y)}H${number(edge)}` +
        `C${at(edge + bend * 0.5, from.y)} ${at(edge + bend * 0.4, low)} ${at(edge + bend, low)}` +
        `H${number(to.x - bend)}C${at(to.x - bend * 0.3, low)} ${at(to.x - bend * 0.5, to.y)} ${at(to.x, to.y)}`,
      ...stroke('liquid', palette.liquid, palette),
      'stroke-width': (look.lit ? 3.2 : 2.2) * palette.weight,
    }),
    ...(look.cut ? [breakLines((edge + to.x) / 2, scale.ground - 2, palette)] : []),
  );
}
