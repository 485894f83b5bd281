import type { Palette } from './palette.ts';
import type { SceneScale } from './scene-scale.ts';
import { element, hatch, number, path, stroke } from './svg.ts';

interface House {
  /** The near edge of the roof, or the wall, from the operator's feet [m]. */
  readonly at: number;
  /** Height of the roof's edge [m]. */
  readonly height: number;
}

/** Run from the edge to the ridge, and all that is drawn before the house is cut off: a brief gives neither [m]. */
const RUN = 3.2;
export const HOUSE_DEPTH = 5.2;
const PITCH = 7 / 12;
const OVERHANG = 0.4;
const STOREY = 2.75;

/** Height of the roof over the run from its edge. */
function roofHeight(house: House, run: number): number {
  return house.height + (run <= RUN ? run : 2 * RUN - run) * PITCH;
}

/** A house seen along its eaves in light lines, cut where its depth is not given; the jet is drawn over it. */
export function drawHouse(house: House, scale: SceneScale, palette: Palette): string {
  const at = (run: number, z: number): [number, number] => [scale.x(house.at + run), scale.y(z)];
  const top = (run: number) => at(run, roofHeight(house, run));
  const thick = Math.max(2, 0.18 * scale.k);
  const [wallX, wallTop] = at(OVERHANG, house.height);
  const [cutX] = at(HOUSE_DEPTH, 0);
  return element(
    'g',
    {},
    siding(wallX, cutX, wallTop, scale, palette),
    ...windows(house, scale, palette),
    element('path', {
      d: path([at(OVERHANG, 0), [wallX, wallTop]]),
      ...stroke('outline', palette.ink, palette),
    }),
    roof([top(0), top(RUN), top(HOUSE_DEPTH)], thick, palette),
    cut(cutX, top(HOUSE_DEPTH)[1] - 4, scale.ground, palette),
  );
}

function siding(left: number, right: number, top: number, scale: SceneScale, palette: Palette): string {
  const pitch = Math.max(5, 0.25 * scale.k);
  let d = '';
  for (let y = scale.ground - pitch; y > top; y -= pitch)
    d += `M${number(left)} ${number(y)}H${number(right)}`;
  return element('path', { d, ...stroke('hatch', palette.rule, palette) });
}

/** One window a storey; a storey is taken as 9 ft. */
function windows(house: House, scale: SceneScale, palette: Palette): string[] {
  const out: string[] = [];
  for (let storey = 0; (storey + 1) * STOREY <= house.height + 0.4; storey++) {
    const [x, y] = [scale.x(house.at + 1.7), scale.y(storey * STOREY + 2.1)];
    const [w, h] = [0.95 * scale.k, 1.25 * scale.k];
    const line = { ...stroke('outline', palette.ink, palette), 'stroke-width': 1.2 * palette.weight };
    out.push(
      element('rect', { x, y, width: w, height: h, ...line, fill: palette.paper }),
      element('path', {
        d: `M${number(x + w / 2)} ${number(y)}v${number(h)}M${number(x)} ${number(y + h / 2)}h${number(w)}`,
        ...stroke('thin', palette.ink, palette),
      }),
    );
  }
  return out;
}

/** The slab of the roof with its shingles as short ticks, and a gutter at its edge. */
function roof(upper: readonly [number, number][], thick: number, palette: Palette): string {
  const under = upper.map(([x, y]): [number, number] => [x, y + thick]).reverse();
  const edge = upper[0]!;
  let ticks = '';
  for (let i = 1; i < upper.length; i++) {
    const [[x0, y0], [x1, y1]] = [upper[i - 1]!, upper[i]!];
    for (let x = x0 + 6; x < x1 - 2; x += 9)
      ticks += `M${number(x)} ${number(y0 + ((y1 - y0) * (x - x0)) / (x1 - x0))}v${number(thick)}`;
  }
  return (
    element('path', {
      d: path([...upper, ...under], true),
      ...stroke('outline', palette.ink, palette),
      'stroke-width': 1.4 * palette.weight,
      fill: palette.paper,
    }) +
    element('path', { d: ticks, ...stroke('hatch', palette.ink2, palette) }) +
    element('rect', {
      x: edge[0] - thick,
      y: edge[1],
      width: thick,
      height: thick * 0.9,
      ...stroke('thin', palette.ink, palette),
      fill: palette.paper,
    })
  );
}

/** The upright line that says: the house goes on, how far was not given. */
function cut(x: number, top: number, ground: number, palette: Palette): string {
  const middle = (top + ground) / 2;
  return element('path', {
    d: `M${number(x)} ${number(top)}V${number(middle - 8)}l-4 4l8 8l-4 4V${number(ground)}`,
    ...stroke('thin', palette.ink, palette),
  });
}

/** A bare wall, for a height to be wetted on it; what stays dry up to the asked height is hatched. */
export function drawWall(house: House, wetTo: number, scale: SceneScale, palette: Palette): string {
  const x = scale.x(house.at);
  const right = scale.x(house.at + 2.4);
  const top = scale.y(house.height);
  const wet = scale.y(Math.max(0, Math.min(wetTo, house.height)));
  return element(
    'g',
    {},
    element('rect', { x, y: top, width: right - x, height: scale.ground - top, fill: palette.paper }),
    siding(x, right, top, scale, palette),
    element('path', {
      d: `M${number(x)} ${number(scale.ground)}V${number(top)}H${number(right)}`,
      ...stroke('outline', palette.ink, palette),
    }),
    element('path', {
      d: `M${number(x - 2.4)} ${number(scale.ground)}V${number(wet)}`,
      ...stroke('liquid', palette.liquid, palette),
      'stroke-width': 4 * palette.weight,
    }),
    ...(wetTo < house.height ? [hatch(x, top, right - x, wet - top, 7, palette.broken, palette)] : []),
    cut(right, top - 4, scale.ground, palette),
  );
}
