import { display } from '../../quantity/index.ts';
import { judge, type DutyProof, type HoseReach } from '../../rig/index.ts';
import { asGiven } from '../dimension.ts';
import { stateColor } from '../marks.ts';
import { drawing } from '../svg.ts';
import {
  curve,
  demandLine,
  endWords,
  layPlot,
  point,
  upright,
  valueAt,
  type CurveOptions,
  type Values,
} from './plot.ts';

interface Line {
  readonly values: Values;
  readonly text: string;
  readonly line: 'farthest' | 'liquid' | 'outline';
  readonly color: string;
}

/**
 * Reach against the length of the hose: farthest drops, half the water, and what is kept nine times in ten, each by name.
 * Without a target the flow at the outlet stands for it.
 */
export function reachPlot(duty: DutyProof, hose: HoseReach, options: CurveOptions): string {
  const { palette, width, units } = options;
  const { reach, lengths, own } = hose;
  const out = Math.min(duty.duty.hoseOut ?? own, own);
  const asked = duty.reach?.asked;
  const say = (value: number) => asGiven(display(value, 'length', units));
  const lines = reach === undefined ? flowLine(hose, options) : reachLines(duty, reach, lengths, options);
  const most = Math.max(asked ?? 0, ...lines.flatMap(({ values }) => values.map(([, y]) => y)));
  const plot = layPlot(
    options,
    { to: lengths.at(-1)!, name: 'hose on the rig', dimension: 'length' },
    reach === undefined
      ? { to: most * 1.1, name: 'flow at the outlet', dimension: 'flow' }
      : { to: most * 1.08, name: wordOf(duty), dimension: 'length' },
    96,
  );
  return drawing(
    width,
    plot.height,
    sentence(duty, lines, own, options),
    plot.frame,
    ...(out < own * 0.98 ? [upright(plot, out, `${say(out)} walked out`, { line: 'hidden', row: 1 })] : []),
    upright(plot, own, `this rig, ${say(own)}`),
    ...(asked === undefined ? [] : [demandLine(plot, asked)]),
    ...lines.map(({ values, line, color }) => curve(plot, values, line, color)),
    ...lines.map(({ values, color }) => point(plot, own, valueAt(values, own), color)),
    endWords(plot, [
      ...(asked === undefined
        ? []
        : [{ y: plot.y(asked), text: `asked ${say(asked)}`, color: palette.ink, strong: true }]),
      ...lines.map(({ values, text, color }) => ({ y: plot.y(values.at(-1)![1]), text, color })),
    ]),
  );
}

function flowLine({ lengths, flows }: HoseReach, { palette }: CurveOptions): Line[] {
  return [{ values: over(lengths, flows), text: 'flow', line: 'liquid', color: palette.liquid }];
}

function reachLines(
  duty: DutyProof,
  reach: NonNullable<HoseReach['reach']>,
  lengths: readonly number[],
  { palette }: CurveOptions,
): Line[] {
  const state =
    duty.reach === undefined ? 'kept' : judge(duty.reach.asked, duty.reach.promised, 'at-least').state;
  return [
    {
      values: over(lengths, reach.farthest),
      text: 'farthest drops',
      line: 'farthest',
      color: palette.liquid,
    },
    { values: over(lengths, reach.bulk), text: 'half the water', line: 'liquid', color: palette.liquid },
    {
      values: over(lengths, reach.promised),
      text: '9 in 10',
      line: 'outline',
      color: stateColor(state, palette),
    },
  ];
}

function over(lengths: readonly number[], values: readonly number[]): Values {
  return lengths.map((length, i) => [length, values[i]!] as const);
}

function wordOf({ duty }: DutyProof): string {
  return duty.target?.aim === 'height' ? 'height reached' : 'distance reached';
}

function sentence(duty: DutyProof, lines: readonly Line[], own: number, { units }: CurveOptions): string {
  const figures = lines.map(
    ({ values, text }) =>
      `${text} ${display(valueAt(values, own), text === 'flow' ? 'flow' : 'length', units)}`,
  );
  return `${duty.name}, with ${asGiven(display(own, 'length', units))} of hose on the rig: ${figures.join(', ')}`;
}
