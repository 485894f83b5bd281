import { display } from '../../quantity/index.ts';
import type { DutyProof, Proof } from '../../rig/index.ts';
import { balloon } from '../balloon.ts';
import { centreMark } from '../centre-mark.ts';
import { arrowhead, asGiven, breakLines } from '../dimension.ts';
import { partNumbers } from '../part-numbers.ts';
import { element, label, number, stroke } from '../svg.ts';
import type { ViewOptions } from './view-options.ts';
import type { ViewsLayout } from './views-layout.ts';

const TYRE = 0.2;
/** Breadth of a person's shoulders, and the head seen from above [m]. */
const SHOULDERS = 0.5;
const HEAD = 0.28;

/** The rig from above, front at the left: its parts by number, and the way that hose, operator and jet take. */
export function topView(layout: ViewsLayout, proof: Proof, duty: DutyProof, options: ViewOptions): string[] {
  const { placement, k, top, x } = layout;
  const { palette, lit } = options;
  const { carrier, parts, supports, centre } = placement;
  const numbers = partNumbers(proof);
  // Looking forward, which is left on the sheet, the left side is the lower one.
  const y = (left: number) => top.middle + left * k;
  const standing = parts
    .filter((p) => p.on === undefined && p.kind !== 'boom')
    .sort((a, b) => a.z + a.height - (b.z + b.height));
  const rect = (cx: number, cy: number, length: number, width: number) => ({
    x: x(cx - length / 2),
    y: y(cy - width / 2),
    width: length * k,
    height: width * k,
  });
  return [
    element('path', {
      d: `M${number(x(0) - 22)} ${number(top.middle)}H${number(x(carrier.deckLength) + 18)}`,
      ...stroke('centre', palette.ink2, palette),
    }),
    ...supports.flatMap((s) =>
      s.id === 'coupler'
        ? [drawbar(x(s.x), x(0), y, carrier.deckWidth, options)]
        : s.wheels === undefined
          ? []
          : [1, -1].map((side) =>
              element('rect', {
                ...rect(s.x, (side * s.wheels!.track) / 2, s.wheels!.diameter, TYRE),
                ...stroke('thin', palette.ink, palette),
                fill: palette.paper,
              }),
            ),
    ),
    element('rect', {
      ...rect(carrier.deckLength / 2, 0, carrier.deckLength, carrier.deckWidth),
      ...stroke('outline', palette.ink, palette),
      fill: palette.paper,
    }),
    ...standing.map((p) =>
      element('rect', {
        'data-item': p.item,
        ...rect(p.x, p.y, p.length, p.width),
        rx: p.kind === 'tank' ? Math.min(p.length, p.width) * k * 0.2 : 0,
        ...stroke('outline', palette.ink, palette),
        'stroke-width': (lit === p.item ? 2.4 : 1.2) * palette.weight,
        fill: palette.paper,
      }),
    ),
    ...afield(layout, duty, y, options),
    ...numberPlaces(
      standing.map((p) => {
        const [dx, dy] = corner(p, k);
        return [x(p.x) + dx, y(p.y) + dy] as const;
      }),
    ).map(([cx, cy], i) => {
      const { item } = standing[i]!;
      return balloon(numbers.get(item) ?? 0, cx, cy, lit === item, palette);
    }),
    ...(['empty', 'full'] as const).map((fill) => {
      const [cx, cy] = [x(centre[fill].x), y(centre[fill].y)];
      return fill === 'full'
        ? centreMark(cx, cy, 6, palette)
        : element('circle', { cx, cy, r: 3.2, ...stroke('thin', palette.ink, palette), fill: palette.paper });
    }),
  ];
}

/** Steps aside that a number may take, nearest first [px]. */
const ASIDE = [
  [0, 0],
  [0, -22],
  [0, 22],
  [-22, 0],
  [22, 0],
  [-22, -22],
  [22, 22],
  [0, -44],
  [0, 44],
] as const;

/** Numbers where they were wanted, or as near as leaves the others readable. */
function numberPlaces(wanted: readonly (readonly [number, number])[]): [number, number][] {
  const taken: [number, number][] = [];
  for (const [x, y] of wanted) {
    const free = ASIDE.map(([dx, dy]): [number, number] => [x + dx, y + dy]).find(([cx, cy]) =>
      taken.every(([tx, ty]) => Math.hypot(tx - cx, ty - cy) >= 20),
    );
    taken.push(free ?? [x, y]);
  }
  return taken;
}

/** A large part's number stands in its corner, where the marks of the mass leave room. */
function corner(p: { readonly length: number; readonly width: number }, k: number): [number, number] {
  return Math.min(p.length, p.width) * k > 60 ? [-(p.length * k) / 2 + 16, -(p.width * k) / 2 + 16] : [0, 0];
}

function drawbar(
  ball: number,
  deck: number,
  y: (left: number) => number,
  deckWidth: number,
  { palette }: ViewOptions,
): string {
  return element('path', {
    d:
      `M${number(deck)} ${number(y(-deckWidth * 0.3))}L${number(ball)} ${number(y(0))}L${number(deck)} ${number(y(deckWidth * 0.3))}` +
      `M${number(ball - 4)} ${number(y(0))}a4 4 0 1 0 8 0a4 4 0 1 0 -8 0`,
    ...stroke('thin', palette.ink, palette),
    'stroke-width': 1.3 * palette.weight,
  });
}

/** What lies behind the rig in this duty: hose, operator and the way to the target, cut short; or the boom and its width. */
function afield(
  { placement, rig, k, x, top }: ViewsLayout,
  { duty }: DutyProof,
  y: (left: number) => number,
  options: ViewOptions,
): string[] {
  const { palette, units, width, lit } = options;
  const say = (value: number) => asGiven(display(value, 'length', units));
  const deck = x(placement.carrier.deckLength);
  const boom = placement.parts.find((p) => p.kind === 'boom');
  if (boom !== undefined || duty.application !== undefined) {
    const at = boom === undefined ? deck + 14 : Math.max(x(boom.x), deck + 6);
    const reach = top.half * k + 10;
    return [
      element('path', {
        'data-item': boom?.item,
        d: `M${number(at)} ${number(top.middle - reach)}V${number(top.middle + reach)}`,
        ...stroke('liquid', palette.liquid, palette),
        'stroke-width': (lit === boom?.item && boom !== undefined ? 3.4 : 2.4) * palette.weight,
      }),
      arrowhead(at, top.middle - reach - 8, 0, -1, palette.liquid),
      arrowhead(at, top.middle + reach + 8, 0, 1, palette.liquid),
      ...(duty.application === undefined
        ? []
        : [
            label(at + 8, top.middle - 6, `${say(duty.application.width)} wide`, {
              size: 13.5,
              weight: 560,
              color: palette.ink,
              halo: palette.paper,
            }),
          ]),
    ];
  }
  if (duty.open[0] === 'transfer') return vessel(deck, top.middle, options);
  const reel = placement.parts.find((p) => p.kind === 'reel');
  const start: [number, number] =
    reel === undefined ? [x(placement.carrier.deckLength - rig.outlet.from), y(0)] : [x(reel.x), y(reel.y)];
  const person = Math.min(width - 78, deck + 74);
  const shoulders = Math.max(14, SHOULDERS * k);
  const { target } = duty;
  const off = target === undefined ? undefined : target.aim === 'height' ? target.standoff : target.distance;
  return [
    element('path', {
      'data-item': 'hose',
      d: `M${number(start[0])} ${number(start[1])}C${number(deck + 10)} ${number(start[1])} ${number(deck)} ${number(top.middle + 12)} ${number(deck + 22)} ${number(top.middle + 12)}H${number(person - 4)}`,
      ...stroke('liquid', palette.liquid, palette),
      'stroke-width': (lit === 'hose' ? 3.2 : 2.2) * palette.weight,
    }),
    ...(duty.hoseOut === undefined
      ? []
      : [
          ...(person - deck > 60 ? [breakLines(deck + 36, top.middle + 12, palette)] : []),
          label(deck + 8, top.middle + 30 + shoulders / 2, `${say(duty.hoseOut)} of hose`, {
            size: 12,
            color: palette.ink2,
            halo: palette.paper,
          }),
        ]),
    element('ellipse', {
      'data-item': 'gun',
      cx: person,
      cy: top.middle + 8,
      rx: shoulders * 0.3,
      ry: shoulders / 2,
      ...stroke('outline', palette.ink, palette),
      'stroke-width': 1.3 * palette.weight,
      fill: palette.paper,
    }),
    element('circle', {
      cx: person,
      cy: top.middle + 8,
      r: Math.max(4, (HEAD / 2) * k),
      ...stroke('outline', palette.ink, palette),
      'stroke-width': 1.3 * palette.weight,
      fill: palette.ink,
    }),
    element('path', {
      d: `M${number(person + 6)} ${number(top.middle + 3)}H${number(width - 22)}`,
      ...stroke('farthest', palette.liquid, palette),
    }),
    arrowhead(width - 14, top.middle + 3, 1, 0, palette.liquid),
    ...(off === undefined
      ? []
      : [
          label(width - 14, top.middle - 6, `target ${say(off)}`, {
            size: 12,
            color: palette.ink2,
            anchor: 'end',
            halo: palette.paper,
          }),
        ]),
  ];
}

/** A hose to another vessel, which is a neighbour. */
function vessel(deck: number, middle: number, { palette, width }: ViewOptions): string[] {
  const left = Math.min(deck + 70, width - 96);
  return [
    element('path', {
      'data-item': 'transfer-hose',
      d: `M${number(deck)} ${number(middle)}C${number(deck + 30)} ${number(middle)} ${number(deck + 20)} ${number(middle + 16)} ${number(left + 20)} ${number(middle + 16)}`,
      ...stroke('liquid', palette.liquid, palette),
    }),
    element('rect', {
      x: left,
      y: middle - 34,
      width: 84,
      height: 80,
      ...stroke('neighbour', palette.ink2, palette),
    }),
    label(left + 42, middle - 14, 'to be filled', { size: 12, color: palette.ink2, anchor: 'middle' }),
  ];
}
