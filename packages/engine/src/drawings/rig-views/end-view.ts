import { display } from '../../quantity/index.ts';
import { judge, wheelLoads, type DutyProof, type PlacedPart } from '../../rig/index.ts';
import { centreMark } from '../centre-mark.ts';
import { textWidth } from '../dimension.ts';
import { stateColor, stateMark } from '../marks.ts';
import { element, label, number, stroke } from '../svg.ts';
import { groundLine } from './side-view.ts';
import { supportArrows, type Bearing } from './support-arrows.ts';
import type { ViewOptions } from './view-options.ts';
import type { ViewsLayout } from './views-layout.ts';

const SHOWN = ['tank', 'reel', 'engine', 'pump', 'motor-pump'];
/** Width of a tyre where none is known [m]. */
const TYRE = 0.2;

/** Width drawn for a tyre of the vehicle that carries the rig [m]. */
const VEHICLE_TYRE = 0.3;

/** The rig from behind, tank full: its wheels' loads, and the slope at which it tips. */
export function endView(layout: ViewsLayout, _duty: DutyProof, options: ViewOptions): string[] {
  const { placement, k, end, rig } = layout;
  const { palette } = options;
  const { carrier, parts } = placement;
  const x = (left: number) => end.middle - left * k;
  const y = (up: number) => end.ground - up * k;
  const axle = placement.supports.find((s) => s.wheels !== undefined);
  const half = Math.max(carrier.deckWidth / 2, (placement.tip?.track ?? 0) / 2 + 0.12);
  const box = (p: Pick<PlacedPart, 'y' | 'z' | 'width' | 'height'>) => ({
    x: x(p.y + p.width / 2),
    y: y(p.z + p.height + rig.lift),
    width: p.width * k,
    height: p.height * k,
  });
  const seen = parts.filter((p) => SHOWN.includes(p.kind) && p.on === undefined).sort((a, b) => a.x - b.x);
  return [
    ...(axle?.wheels === undefined
      ? carried(layout, box, options)
      : [1, -1].map((s) =>
          element('rect', {
            ...box({
              y: (s * axle.wheels!.track) / 2,
              z: -rig.lift,
              width: TYRE,
              height: axle.wheels!.diameter,
            }),
            ...stroke('outline', palette.ink, palette),
            fill: palette.paper,
          }),
        )),
    element('rect', {
      ...box({ y: 0, z: carrier.deckHeight - 0.09, width: carrier.deckWidth, height: 0.09 }),
      ...stroke('outline', palette.ink, palette),
      fill: palette.paper,
    }),
    ...seen.map((p) =>
      element('rect', {
        'data-item': p.item,
        ...box(p),
        rx: p.kind === 'tank' ? Math.min(p.width, p.height) * k * 0.3 : p.kind === 'reel' ? 3 : 0,
        ...stroke('outline', palette.ink, palette),
        'stroke-width': (options.lit === p.item ? 2.4 : 1.3) * palette.weight,
        fill: palette.paper,
      }),
    ),
    ...groundLine(x(half) - 16, x(-half) + 16, end.ground, options),
    ...tipFan(layout, x, y, options),
    ...supportArrows(wheelBearings(layout, x), end.ground, options),
  ];
}

/** Wheels of the vehicle that carries the rig, a neighbour. */
function carried(
  { placement: { tip }, rig }: ViewsLayout,
  box: (p: Pick<PlacedPart, 'y' | 'z' | 'width' | 'height'>) => Record<string, number>,
  { palette }: ViewOptions,
): string[] {
  if (tip === undefined) return [];
  return [1, -1].map((s) =>
    element('rect', {
      ...box({ y: (s * tip.track) / 2, z: -rig.lift, width: VEHICLE_TYRE, height: 0.9 }),
      ...stroke('neighbour', palette.ink2, palette),
    }),
  );
}

/** Left and right wheels of the axle that bears most on one of them, when full. */
function wheelBearings({ placement }: ViewsLayout, x: (left: number) => number): Bearing[] {
  const { supports, centre } = placement;
  const axles = supports.filter((s) => s.wheels !== undefined);
  const worst = [...axles].sort((a, b) => b.full / b.wheels!.sideRating - a.full / a.wheels!.sideRating)[0];
  if (worst?.wheels === undefined) return [];
  const { track, sideRating } = worst.wheels;
  const at = (fill: 'full' | 'half' | 'empty') => wheelLoads(worst[fill], centre[fill].y, track);
  return (['left', 'right'] as const).map((side) => ({
    x: x(((side === 'left' ? 1 : -1) * track) / 2),
    name: `${axles.length === 1 ? '' : `${worst.name.toLowerCase()}, `}${side}`,
    now: at('full')[side],
    full: at('full')[side],
    most: Math.max(at('full')[side], at('half')[side], at('empty')[side]),
    rating: sideRating,
    figures: side,
  }));
}

/** From the centre of mass to the ground: straight down, on the slope that is asked, and where it tips. */
function tipFan(
  { placement, k }: ViewsLayout,
  x: (left: number) => number,
  y: (up: number) => number,
  options: ViewOptions,
): string[] {
  const { tip, slope } = placement;
  const { palette, units } = options;
  if (tip === undefined)
    return [
      label(x(0), y(0) + 44, 'Tip angle unknown: the vehicle is not told', {
        size: 12,
        color: palette.ink2,
        anchor: 'middle',
      }),
    ];
  const { state } = judge(slope.angle, tip.angle, 'at-least');
  const color = stateColor(state, palette);
  const [cx, cy] = [x(0), y(tip.height)];
  const foot = (angle: number) =>
    `L${number(cx + tip.height * Math.tan(Math.min(angle, 1.2)) * k)} ${number(y(0))}`;
  const from = `M${number(cx)} ${number(cy)}`;
  const figure = `tips at ${display(tip.angle, 'angle', units)}`;
  // Clear of the deck and of the wheel, rig's or vehicle's, whose outlines would cross the words.
  const axle = placement.supports.find((s) => s.wheels !== undefined)?.wheels;
  const wheel = axle === undefined ? tip.track / 2 + VEHICLE_TYRE / 2 : axle.track / 2 + TYRE / 2;
  const foremost = tip.height * Math.tan(Math.min(tip.angle, 1.2));
  const at = cx + Math.max(foremost, wheel, placement.carrier.deckWidth / 2) * k + 8;
  // Where the slope is a start value the words stand a line higher, to say so beneath.
  const lift = slope.given ? 0 : 14;
  const note = (text: string, up: number) =>
    label(at, up, text, { size: 12, color: palette.ink2, halo: palette.paper });
  return [
    element('path', { d: `${from}V${number(y(0))}`, ...stroke('centre', palette.ink2, palette) }),
    element('path', { d: from + foot(slope.angle), ...stroke('hidden', palette.ink, palette) }),
    element('path', { d: from + foot(tip.angle), ...stroke('outline', color, palette) }),
    centreMark(cx, cy, 7, palette),
    label(at, y(0) - 26 - lift, figure, { size: 14.5, weight: 640, color, halo: palette.paper }),
    stateMark(state, at + textWidth(figure, 14.5) + 16, y(0) - 31 - lift, palette),
    note(`asked ${display(slope.angle, 'angle', units)}`, y(0) - 11 - lift),
    ...(slope.given ? [] : [note('our start value', y(0) - 11)]),
  ];
}
