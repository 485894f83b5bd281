import { display } from '../quantity/index.ts';
import { judge, type DutyReach, type Target } from '../rig/index.ts';
import { asGiven, levelDimension } from './dimension.ts';
import { stateColor } from './marks.ts';
import type { SceneScale } from './scene-scale.ts';
import { element, hatch, number, stroke } from './svg.ts';
import type { ThrowSceneOptions } from './scene-options.ts';

const FIRST = 30;
const PITCH = 21;
/** Room that the rows take under the ground line. */
export const DISTANCE_FOOT = FIRST + 3 * PITCH + 16;

/** Dimensions under the ground, one a row: the four distances that are never to be confused. */
export function distanceRows(
  reach: DutyReach,
  promise: DutyReach['meaning'],
  target: Target,
  scale: SceneScale,
  { units, palette }: ThrowSceneOptions,
): string[] {
  const say = (value: number) => display(value, 'length', units);
  const { state } = judge(reach.asked, reach.promised, 'at-least');
  const where = target.aim === 'roof' ? ' at that height' : '';
  const short =
    state === 'broken' ? `, ${say(reach.asked - reach.promised)} short` : state === 'thin' ? ', thin' : '';
  const rows = [
    { value: reach.asked, words: `asked${where}`, color: palette.ink, boxed: true },
    {
      value: reach.promised,
      words: `9 in 10${short}`,
      color: state === 'kept' ? palette.ink : stateColor(state, palette),
      boxed: false,
    },
    { value: reach.bulk, words: 'half the water', color: palette.liquid, boxed: false },
    { value: reach.farthest, words: 'farthest drops', color: palette.liquid, boxed: false },
  ];
  const y = (row: number) => scale.ground + FIRST + row * PITCH;
  const bandRow = promise === 'wetted' ? 2 : 3;
  const [x5, x95] = [scale.x(reach.band5), scale.x(reach.band95)];
  const landing = target.aim === 'roof' ? scale.y(target.height) : scale.ground;
  return [
    element('rect', {
      x: x5,
      y: y(bandRow) + 5,
      width: Math.max(0, x95 - x5),
      height: 5,
      ...stroke('thin', palette.liquid, palette),
      fill: palette.liquidTint,
    }),
    ...(landing < scale.ground ? landings(reach, landing, scale, palette) : []),
    ...(state === 'broken'
      ? [
          hatch(
            scale.x(reach.promised),
            scale.ground - 7,
            scale.x(reach.asked) - scale.x(reach.promised),
            7,
            6,
            palette.broken,
            palette,
          ),
        ]
      : []),
    ...rows.map((row, i) =>
      levelDimension(
        {
          from: scale.x(0),
          to: scale.x(Math.max(0, row.value)),
          y: y(i),
          above: i === 0 ? scale.ground + 4 : y(i) - 6,
          text: row.boxed ? asGiven(say(row.value)) : say(row.value),
          boxed: row.boxed,
          words: row.words,
          color: row.color,
        },
        palette,
      ),
    ),
  ];
}

/** On a roof the distances hold at the height of its edge: a level line there, with a dot where each stream comes down to it. */
function landings(
  reach: DutyReach,
  y: number,
  scale: SceneScale,
  palette: ThrowSceneOptions['palette'],
): string[] {
  const dot = (x: number, color: string) => element('circle', { cx: scale.x(x), cy: y, r: 2.6, fill: color });
  const down = (x: number) => `M${number(scale.x(x))} ${number(y)}V${number(scale.ground)}`;
  return [
    element('path', {
      d: `M${number(scale.x(0))} ${number(y)}H${number(scale.x(reach.farthest))}`,
      ...stroke('hidden', palette.ink2, palette),
    }),
    element('path', {
      d: down(reach.asked),
      ...stroke('thin', palette.ink, palette),
    }),
    element('path', {
      d: down(reach.bulk) + down(reach.farthest),
      ...stroke('thin', palette.liquid, palette),
    }),
    dot(reach.asked, palette.ink),
    dot(reach.bulk, palette.liquid),
    dot(reach.farthest, palette.liquid),
  ];
}
