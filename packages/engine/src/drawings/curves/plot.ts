import { displayParts, unitOf, type Dimension, type UnitSystem } from '../../quantity/index.ts';
import type { Palette } from '../palette.ts';
import { roundStep } from '../round-step.ts';
import { element, hatch, label, number, path, stroke } from '../svg.ts';
import { textWidth } from '../dimension.ts';

/** How a curve is to be drawn. */
export interface CurveOptions {
  readonly width: number;
  readonly units: UnitSystem;
  readonly palette: Palette;
}

/** What runs along one side of a plot. */
export interface Axis {
  /** Smallest value [SI], zero when not said. */
  readonly from?: number;
  /** Largest value [SI]. */
  readonly to: number;
  readonly name: string;
  /** Without one the values are plain counts, or written as `figure` says. */
  readonly dimension?: Dimension;
  readonly figure?: (value: number) => string;
}

/** A plot with its scales: values in SI to pixels of the drawing. */
export interface Plot extends CurveOptions {
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly base: number;
  /** Largest value upward [SI]. */
  readonly toUp: number;
  readonly x: (value: number) => number;
  readonly y: (value: number) => number;
  readonly frame: string;
}

const TOP = 34;
const FOOT = 38;
const LEFT = 46;

/** Lays a plot out: axes with round steps, hairlines across, the unit at each axis' end. */
export function layPlot(
  options: CurveOptions,
  across: Axis,
  up: Axis,
  /** Room for words right of the curves [px]. */
  rightRoom: number,
): Plot {
  const { width, palette, units } = options;
  const height = Math.round(Math.min(300, Math.max(230, width * 0.66)));
  const [left, right, top, base] = [LEFT, width - rightRoom, TOP, height - FOOT];
  const share = ({ from = 0, to }: Axis, value: number) => (value - from) / (to - from);
  const x = (value: number) => left + (right - left) * share(across, value);
  const y = (value: number) => base - (base - top) * share(up, value);
  const hairline = stroke('hatch', palette.rule, palette);
  const small = { size: 12, color: palette.ink2 } as const;
  const ticksUp = ticks(up, units, 4);
  const ticksAcross = ticks(across, units, Math.max(3, (right - left) / 74));
  const frame = [
    ...ticksUp.marks.map(
      ({ value, figure }) =>
        element('path', { d: `M${number(left)} ${number(y(value))}H${number(right)}`, ...hairline }) +
        label(left - 7, y(value) + 4, figure, { ...small, anchor: 'end' }),
    ),
    ...ticksAcross.marks.map(
      ({ value, figure }) =>
        element('path', {
          d: `M${number(x(value))} ${number(base)}v4`,
          ...stroke('thin', palette.ink, palette),
        }) + label(x(value), base + 16, figure, { ...small, anchor: 'middle' }),
    ),
    element('path', {
      d: `M${number(left)} ${number(top - 6)}V${number(base)}H${number(right)}`,
      ...stroke('thin', palette.ink, palette),
    }),
    label(4, top - 18, named(up.name, ticksUp.unit), small),
    label(right, base + 32, named(across.name, ticksAcross.unit), { ...small, anchor: 'end' }),
  ].join('');
  return { ...options, height, left, right, top, base, toUp: up.to, x, y, frame };
}

function named(name: string, unit: string): string {
  return unit === '' ? name : `${name}, ${unit}`;
}

function ticks(
  { from = 0, to, dimension, figure: written }: Axis,
  units: UnitSystem,
  wanted: number,
): { marks: { value: number; figure: string }[]; unit: string } {
  const unit = dimension === undefined ? '' : displayParts(to, dimension, units).unit;
  const factor = dimension === undefined ? 1 : (unitOf(unit, dimension)?.factor ?? 1);
  const step = roundStep((to - from) / factor / wanted);
  const decimals = Math.max(0, -Math.floor(Math.log10(step)));
  const marks = [];
  for (let k = Math.ceil(from / factor / step); k * step * factor <= to * 1.0001; k++) {
    const value = k * step * factor;
    const figure =
      written !== undefined
        ? written(value)
        : dimension === undefined
          ? (k * step).toFixed(decimals)
          : displayParts(value, dimension, units, { unit, decimals }).figure;
    marks.push({ value, figure });
  }
  return { marks, unit };
}

/** Points of a curve [SI]. */
export type Values = readonly (readonly [x: number, y: number])[];

/** A curve through points in SI, cut at the top of the plot. */
export function curve(plot: Plot, points: Values, line: Parameters<typeof stroke>[0], color: string): string {
  const top = plot.top - 6;
  const drawn: [number, number][] = [];
  let before: [number, number] | undefined;
  for (const [a, b] of points) {
    const now: [number, number] = [Math.min(plot.x(a), plot.right), plot.y(b)];
    if (now[1] >= top) {
      if (before !== undefined && before[1] < top) drawn.push(cut(before, now, top));
      drawn.push(now);
    } else if (before !== undefined && before[1] >= top) drawn.push(cut(before, now, top));
    before = now;
  }
  return drawn.length < 2 ? '' : element('path', { d: path(drawn), ...stroke(line, color, plot.palette) });
}

function cut([x1, y1]: [number, number], [x2, y2]: [number, number], y: number): [number, number] {
  return [x1 + ((x2 - x1) * (y - y1)) / (y2 - y1), y];
}

/** Value of a curve between its points. */
export function valueAt(points: Values, x: number): number {
  const next = points.findIndex(([px]) => px >= x);
  if (next <= 0) return (next === 0 ? points[0] : points.at(-1))?.[1] ?? 0;
  const [x1, y1] = points[next - 1]!;
  const [x2, y2] = points[next]!;
  return x2 === x1 ? y2 : y1 + ((y2 - y1) * (x - x1)) / (x2 - x1);
}

/** Words at the right ends of curves, moved apart where they would lie on each other. */
export function endWords(
  plot: Plot,
  words: readonly {
    readonly y: number;
    readonly text: string;
    readonly color: string;
    readonly strong?: boolean;
  }[],
): string {
  const pitch = 15;
  const placed = words
    .map((w) => ({ ...w, at: Math.max(plot.top, Math.min(plot.base - 2, w.y)) }))
    .sort((a, b) => a.at - b.at);
  for (let i = 1; i < placed.length; i++) placed[i]!.at = Math.max(placed[i]!.at, placed[i - 1]!.at + pitch);
  const over = (placed.at(-1)?.at ?? 0) - plot.base;
  if (over > 0)
    for (let i = placed.length - 1; i >= 0; i--)
      placed[i]!.at = Math.min(placed[i]!.at, plot.base - (placed.length - 1 - i) * pitch);
  return placed
    .map((w) =>
      label(plot.right + 6, w.at + 4, w.text, {
        size: 12,
        weight: w.strong === true ? 640 : 480,
        color: w.color,
      }),
    )
    .join('');
}

/** Solid point of what is, hollow of what would be: a diamond as on the scales of the promises. */
export function point(plot: Plot, x: number, y: number, color: string, hollow = false): string {
  return element('path', {
    d: `M${number(plot.x(x))} ${number(plot.y(y) - 5)}l5 5l-5 5l-5 -5Z`,
    fill: hollow ? plot.palette.paper : color,
    stroke: color,
    'stroke-width': 1.3,
  });
}

/** An upright through the plot with words at its head, kept inside the drawing. */
export function upright(
  plot: Plot,
  x: number,
  text: string,
  { line = 'thin', row = 0 }: { line?: 'thin' | 'hidden'; row?: number } = {},
): string {
  const at = plot.x(x);
  const half = textWidth(text, 12) / 2;
  const middle = Math.max(plot.left + half + 3, Math.min(at, plot.width - half - 4));
  const y = plot.base - 9 - row * 16;
  return (
    element('path', {
      d: `M${number(at)} ${number(plot.top - 6)}V${number(plot.base)}`,
      ...stroke(line, plot.palette.ink2, plot.palette),
    }) +
    label(middle, y, text, { size: 12, color: plot.palette.ink, anchor: 'middle', halo: plot.palette.paper })
  );
}

/** What is asked, as the thickest line of a plot. */
export function demandLine(plot: Plot, y: number): string {
  const at = number(plot.y(y));
  return element('path', {
    d: `M${number(plot.left)} ${at}H${number(plot.right)}`,
    ...stroke('extra', plot.palette.ink, plot.palette),
  });
}

/** A rating as a ceiling: an outline hatched on its far side. */
export function ceilingLine(plot: Plot, y: number, text: string): string {
  const { left, right, palette } = plot;
  const at = plot.y(y);
  return (
    hatch(left, at - 7, right - left, 7, 8, palette.ink, palette) +
    element('path', {
      d: `M${number(left)} ${number(at)}H${number(right)}`,
      ...stroke('outline', palette.ink, palette),
    }) +
    label(right - 2, at - 11, text, { size: 12, color: palette.ink, anchor: 'end', halo: palette.paper })
  );
}
