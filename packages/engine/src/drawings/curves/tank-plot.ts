import { display } from '../../quantity/index.ts';
import type { DayProof, TankCurve } from '../../rig/index.ts';
import { asGiven } from '../dimension.ts';
import { drawing, label } from '../svg.ts';
import {
  curve,
  demandLine,
  layPlot,
  point,
  upright,
  valueAt,
  type CurveOptions,
  type Plot,
  type Values,
} from './plot.ts';

/** What is asked of a day's work. */
export interface DayAsked {
  readonly units?: number | undefined;
  /** [m2] */
  readonly area?: number | undefined;
}

/** The work of a day against the size of the tank, with the rig's own and the smallest that does as much. */
export function tankPlot(day: DayProof, tanks: TankCurve, asked: DayAsked, options: CurveOptions): string {
  const { palette, units, width } = options;
  const inArea = day.byArea || (asked.units === undefined && asked.area !== undefined);
  const done = inArea ? tanks.areas : tanks.units;
  const wanted = inArea ? asked.area : asked.units;
  const line: Values = tanks.sizes.map((size, i) => [size, done[i]!] as const);
  const own = day.input.tank;
  const unit = many(day.unit);
  const plot = layPlot(
    options,
    { to: tanks.sizes.at(-1)!, name: 'tank', dimension: 'volume' },
    {
      to: Math.max(...done, wanted ?? 0, 1e-6) * 1.12,
      name: inArea ? 'ground in a day' : `${unit} in a day`,
      ...(inArea ? { dimension: 'area' as const } : {}),
    },
    14,
  );
  const figure = inArea
    ? display(valueAt(line, own), 'area', units)
    : `${Math.floor(valueAt(line, own))} ${unit}`;
  return drawing(
    width,
    plot.height,
    `Day's work against the tank: ${figure} with ${display(own, 'volume', units)}; ${display(tanks.paying, 'volume', units)} would do as much as the best`,
    plot.frame,
    ...(wanted === undefined ? [] : [demandLine(plot, wanted), askedWords(plot, line, wanted, inArea)]),
    ...uprights(plot, own, tanks.paying),
    curve(plot, line, 'liquid', palette.liquid),
    point(plot, own, valueAt(line, own), palette.ink),
  );
}

/** Where this rig's tank stands, and where more of it no longer helps. */
function uprights(plot: Plot, own: number, paying: number): string[] {
  const say = (volume: number) => asGiven(display(volume, 'volume', plot.units));
  if (Math.abs(paying / own - 1) < 1e-3) return [upright(plot, own, `this rig, ${say(own)}: as good as any`)];
  const words = paying < own ? 'does as much as any' : 'does the most';
  return [
    upright(plot, paying, `${say(paying)} ${words}`, { line: 'hidden' }),
    upright(plot, own, `this rig, ${say(own)}`, { row: 1 }),
  ];
}

/** At the right end of the asked line, on the side where the curve is not. */
function askedWords(plot: Plot, line: Values, wanted: number, inArea: boolean): string {
  const figure = inArea ? asGiven(display(wanted, 'area', plot.units)) : String(wanted);
  const gap = plot.y(wanted) - plot.y(line.at(-1)![1]);
  return label(plot.right - 4, plot.y(wanted) + (gap > 0 && gap < 22 ? 16 : -7), `asked ${figure}`, {
    size: 12,
    weight: 640,
    color: plot.palette.ink,
    anchor: 'end',
    halo: plot.palette.paper,
  });
}

function many(unit: string): string {
  const [head = unit, ...rest] = unit.split(' ');
  return [head.endsWith('s') ? head : `${head}s`, ...rest].join(' ');
}
