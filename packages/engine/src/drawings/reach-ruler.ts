import { display } from '../quantity/index.ts';
import { judge, type DutyReach } from '../rig/index.ts';
import { arrowhead, asGiven, given, textWidth } from './dimension.ts';
import { stateColor, stateMark } from './marks.ts';
import type { SceneScale } from './scene-scale.ts';
import { element, label, number, stroke } from './svg.ts';
import type { ThrowSceneOptions } from './scene-options.ts';

interface Height {
  readonly z: number;
  readonly figure: string;
  readonly words: string;
  readonly color: string;
  readonly boxed?: boolean;
  readonly note?: string;
  readonly mark?: 'kept' | 'thin' | 'broken';
}

const PITCH = 18;
/** The highest that the ruler may stand [px from the top]. */
const SKY_EDGE = 12;

/** Upright ruler beside a crown: the four heights that are never to be confused. */
export function heightRuler(
  reach: DutyReach,
  place: { readonly scale: SceneScale; readonly x: number; readonly crown: { left: number; right: number } },
  { units, palette, width }: ThrowSceneOptions,
): string[] {
  const { scale, x, crown } = place;
  const narrow = width < 560;
  const say = (value: number) => display(value, 'length', units);
  const { state } = judge(reach.asked, reach.promised, 'at-least');
  const short = state === 'broken' ? `${say(reach.asked - reach.promised)} short` : undefined;
  const heights: Height[] = [
    {
      z: reach.farthest,
      figure: say(reach.farthest),
      words: narrow ? 'farthest' : 'farthest drops',
      color: palette.liquid,
    },
    {
      z: reach.bulk,
      figure: say(reach.bulk),
      words: narrow ? 'half' : 'half the water',
      color: palette.liquid,
    },
    {
      z: reach.promised,
      figure: say(reach.promised),
      words: '9 in 10',
      color: state === 'kept' ? palette.ink : stateColor(state, palette),
      mark: state,
      ...(short === undefined ? {} : { note: short }),
    },
    { z: reach.asked, figure: asGiven(say(reach.asked)), words: 'asked', color: palette.ink, boxed: true },
  ];
  const standoff = scale.x(reach.standoff);
  const line = (z: number, from: number, look: ReturnType<typeof stroke>) =>
    element('path', { d: `M${number(from)} ${number(scale.y(z))}H${number(x)}`, ...look });
  return [
    line(reach.farthest, standoff, stroke('farthest', palette.liquid, palette)),
    line(reach.bulk, standoff, { ...stroke('hidden', palette.liquid, palette) }),
    line(reach.asked, crown.left, stroke('outline', palette.ink, palette)),
    line(
      reach.promised,
      state === 'broken' ? crown.left : crown.right,
      stroke('outline', state === 'broken' ? palette.broken : palette.ink, palette),
    ),
    ...bar(reach, scale, x, palette),
    element('path', {
      d: `M${number(x)} ${number(scale.y(reach.asked))}V${number(scale.ground)}`,
      ...stroke('thin', palette.ink, palette),
    }),
    arrowhead(x, scale.ground - 1.5, 0, 1, palette.ink),
    arrowhead(x, scale.y(reach.asked), 0, -1, palette.ink),
    ...labels(heights, reach, place, { units, palette, width }),
  ];
}

/** The band of what is promised, 5 to 95 %, with its middle. */
function bar(
  reach: DutyReach,
  scale: SceneScale,
  x: number,
  palette: ThrowSceneOptions['palette'],
): string[] {
  // A long band runs out of the sky; its end is in words.
  const [top, bottom] = [Math.max(SKY_EDGE, scale.y(reach.band95)), scale.y(reach.band5)];
  return [
    element('rect', {
      x: x - 3.5,
      y: top,
      width: 7,
      height: Math.max(0, bottom - top),
      ...stroke('thin', palette.liquid, palette),
      fill: palette.liquidTint,
    }),
    element('path', {
      d: `M${number(x - 8)} ${number(scale.y(reach.meaning === 'touched' ? reach.farthest : reach.bulk))}h16`,
      ...stroke('liquid', palette.liquid, palette),
      'stroke-linecap': 'butt',
    }),
  ];
}

function labels(
  heights: readonly Height[],
  reach: DutyReach,
  { scale, x }: { readonly scale: SceneScale; readonly x: number },
  { units, palette, width }: Pick<ThrowSceneOptions, 'units' | 'palette' | 'width'>,
): string[] {
  const say = (value: number) => display(value, 'length', units);
  const narrow = width < 560;
  const rows: (Height & { readonly plain?: boolean })[] = [
    ...heights,
    {
      z: reach.band95,
      figure: '',
      words: `5 to 95 %: ${say(reach.band5)} to ${say(reach.band95)}`,
      color: palette.ink2,
      plain: true,
    },
  ].sort((a, b) => b.z - a.z);
  const ys = spread(
    rows.map((r) => Math.max(SKY_EDGE + 6, scale.y(r.z))),
    rows.map((r) => (r.note === undefined ? PITCH : PITCH * 1.8)),
  );
  // Words begin in one column, behind the widest figure.
  const column = Math.max(
    ...rows.map((r) => (r.boxed === true ? textWidth(r.figure, 13.5) + 13 : textWidth(r.figure, 14.5))),
  );
  const wordsAt = x + 15 + column + 7;
  return rows.flatMap((r, i) => {
    const y = ys[i]!;
    const tied =
      Math.abs(y - scale.y(r.z)) < 2 || r.plain === true
        ? []
        : [
            element('path', {
              d: `M${number(x + 5)} ${number(scale.y(r.z))}L${number(x + 13)} ${number(y)}`,
              ...stroke('hatch', palette.ink2, palette),
            }),
          ];
    if (r.plain === true)
      return narrow
        ? []
        : [label(x + 15, y + 4, r.words, { size: 11.5, color: r.color, halo: palette.paper })];
    const box = textWidth(r.figure, 13.5) + 13;
    return [
      ...tied,
      r.boxed === true
        ? given(x + 15 + box / 2, y, r.figure, palette)
        : label(x + 15, y + 5, r.figure, { size: 14.5, weight: 640, color: r.color, halo: palette.paper }),
      label(wordsAt, y + 4.6, r.words, {
        size: 12,
        color: r.color === palette.liquid ? palette.ink : r.color,
        halo: palette.paper,
      }),
      ...(r.mark === undefined || narrow
        ? []
        : [stateMark(r.mark, wordsAt + textWidth(r.words, 12) + 14, y, palette)]),
      ...(r.note === undefined
        ? []
        : [label(x + 15, y + 20, r.note, { size: 13, weight: 640, color: r.color, halo: palette.paper })]),
    ];
  });
}

/** Moves labels apart until none covers the next, as little as may be, keeping their order. */
export function spread(wanted: readonly number[], room: readonly number[]): number[] {
  const out = [...wanted];
  for (let pass = 0; pass < 60; pass++) {
    let moved = false;
    for (let i = 1; i < out.length; i++) {
      const lack = out[i - 1]! + room[i - 1]! - out[i]!;
      if (lack <= 0.01) continue;
      out[i - 1] = out[i - 1]! - lack / 2;
      out[i] = out[i]! + lack / 2;
      moved = true;
    }
    if (!moved) break;
  }
  return out;
}
