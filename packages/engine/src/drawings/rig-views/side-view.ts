import { centreMark } from '../centre-mark.ts';
import { element, hatch, label, number, stroke } from '../svg.ts';
import { massText, supportArrows } from './support-arrows.ts';
import type { ViewOptions } from './view-options.ts';
import type { ViewsLayout } from './views-layout.ts';

/** The rig from its left side, with what it rests on and where its mass is. */
export function sideView(layout: ViewsLayout, options: ViewOptions): string[] {
  const { placement, rig, side, x } = layout;
  const { palette, units, lit } = options;
  const { scale, right, bearings } = side;
  const { centre, supports, carrier } = placement;
  const from = Math.min(x(0), ...bearings.map((b) => b.x)) - 24;
  const to =
    x(Math.max(carrier.deckLength, ...placement.parts.map((p) => (p.on === undefined ? p.x : 0)))) + 24;
  return [
    rig.draw(right, scale, palette, lit),
    ...groundLine(from, to, scale.ground, options),
    ...(['empty', 'full'] as const).map((fill) => {
      const [cx, cy] = [x(centre[fill].x), scale.y(centre[fill].z + rig.lift)];
      return fill === 'full'
        ? centreMark(cx, cy, 7, palette)
        : element('circle', { cx, cy, r: 3.2, ...stroke('thin', palette.ink, palette), fill: palette.paper });
    }),
    ...supportArrows(bearings, scale.ground, options),
    ...(supports.length === 0
      ? [
          label(
            x(0),
            scale.ground + 26,
            `${massText(centre.full.mass, units)} full on its ${restOf(carrier.form)}`,
            {
              size: 13,
              color: palette.ink,
            },
          ),
          ...(carrier.form === 'skid'
            ? []
            : [
                label(
                  x(0),
                  scale.ground + 42,
                  "The vehicle's axle loads are unknown: the brief does not give its weights.",
                  {
                    size: 12,
                    color: palette.ink2,
                  },
                ),
              ]),
        ]
      : []),
  ];
}

function restOf(form: string): string {
  return form === 'three-point' ? 'hitch' : form === 'utility-bed' ? "vehicle's bed" : 'skid';
}

/** The ground under one view. */
export function groundLine(from: number, to: number, ground: number, { palette }: ViewOptions): string[] {
  return [
    hatch(from, ground + 1.5, to - from, 6, 8, palette.ink, palette),
    element('path', {
      d: `M${number(from)} ${number(ground)}H${number(to)}`,
      ...stroke('outline', palette.ink, palette),
    }),
  ];
}
