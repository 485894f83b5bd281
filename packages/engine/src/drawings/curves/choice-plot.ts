import { priceText } from '../../quantity/index.ts';
import { drawing, element, hatch, label, number, path, stroke } from '../svg.ts';
import { layPlot, type CurveOptions, type Plot } from './plot.ts';

/** A rig among others. */
export interface ChoicePoint {
  readonly priceCents: number;
  /** Least margin of its promises, as a share; those nobody can judge, or that have no share, are left out. */
  readonly margin: number;
  readonly broken: boolean;
  /** Those that are compared carry a letter. */
  readonly letter?: string;
}

interface ChoicePlotOptions extends CurveOptions {
  /** The whole catalogue was gone through: nothing can be above the staircase. */
  readonly toTheEnd?: boolean;
}

/** Margins beyond these are drawn at the edge. */
const [LOWEST, HIGHEST] = [-0.15, 0.25];

/**
 * Price across, least margin up: a cross for each rig, a letter for those compared, a staircase where none is better; a rig
 * that breaks a promise beats no sound one. Where no rig of the catalogue can be it is hatched.
 */
export function choicePlot(points: readonly ChoicePoint[], options: ChoicePlotOptions): string {
  const { palette, width, toTheEnd = false } = options;
  const prices = points.map((p) => p.priceCents);
  const [low, high] = [Math.min(...prices), Math.max(...prices)];
  const pad = Math.max(10_000, (high - low) * 0.06);
  const margins = points.map((p) => clamp(p.margin));
  const plot = layPlot(
    options,
    { from: Math.max(0, low - pad), to: high + pad, name: 'price', figure: priceText },
    {
      from: Math.min(-0.05, ...margins) - 0.02,
      to: Math.max(0.08, ...margins) + 0.02,
      name: 'least margin of all promises',
      figure: percent,
    },
    14,
  );
  const kept = number(plot.y(0));
  const sound = points.filter((p) => !p.broken);
  const steps = stepsOf(plot, sound.length > 0 ? sound : points);
  return drawing(
    width,
    plot.height,
    `${points.length} rigs by price and least margin`,
    element('rect', {
      x: plot.left,
      y: plot.y(0.05),
      width: plot.right - plot.left,
      height: plot.y(0) - plot.y(0.05),
      fill: palette.thinTint,
    }),
    toTheEnd && sound.length > 0 ? nothingAbove(plot, steps) : '',
    plot.frame,
    label(plot.left + 4, plot.y(0.05) + 14, 'thin', { size: 12, color: palette.thin }),
    element('path', {
      d: `M${number(plot.left)} ${kept}H${number(plot.right)}`,
      ...stroke('extra', palette.ink, palette),
    }),
    label(plot.right - 4, plot.y(0) + 15, 'nothing short above this line; × breaks a promise', {
      size: 12,
      color: palette.ink2,
      anchor: 'end',
      halo: palette.paper,
    }),
    steps.length === 0 ? '' : element('path', { d: path(steps), ...stroke('outline', palette.ink, palette) }),
    ...points.filter((p) => p.letter === undefined).map((p) => cross(plot, p)),
    ...points.filter((p) => p.letter !== undefined).map((p) => lettered(plot, p)),
  );
}

function clamp(margin: number): number {
  return Math.max(LOWEST, Math.min(HIGHEST, margin));
}

/** Up and to the right along the rigs that no other beats: for each price the best margin. */
function stepsOf(plot: Plot, points: readonly ChoicePoint[]): [number, number][] {
  const steps: [number, number][] = [];
  let best = -Infinity;
  for (const p of [...points].sort((a, b) => a.priceCents - b.priceCents || b.margin - a.margin)) {
    const margin = clamp(p.margin);
    if (margin <= best) continue;
    const x = plot.x(p.priceCents);
    if (steps.length > 0) steps.push([x, plot.y(best)]);
    steps.push([x, plot.y(margin)]);
    best = margin;
  }
  if (steps.length > 0) steps.push([plot.right, plot.y(best)]);
  return steps;
}

const NONE_THERE = 'no rig of this catalogue is there with what the brief wishes, searched to the end';
/** Pitch of the hatching [px]. */
const PITCH = 9;

/** Hatched solid left of the staircase and above it, where nothing is short: of rigs that break a promise the search says nothing. */
function nothingAbove(plot: Plot, steps: readonly (readonly [number, number])[]): string {
  const { left, right, top, width, palette } = plot;
  const treads = steps.flatMap(([x, y], i) => (i % 2 === 0 ? [{ from: x, y, to: steps[i + 1]![0] }] : []));
  const solid = [{ from: left, y: plot.y(0), to: treads[0]!.from }, ...treads];
  return (
    solid
      .map(({ from, y, to }) => {
        const height = y - top;
        // Lines run on from one rectangle into the next: where they are follows from the sheet alone.
        const first = PITCH * Math.ceil((from + top) / PITCH) - (from + top) - height;
        return to - from < 0.5 || height < 0.5
          ? ''
          : hatch(from, top, to - from, height, PITCH, palette.rule, palette, first);
      })
      .join('') +
    label(right, top - 18, width < 560 ? 'hatched: no rig is there' : `hatched: ${NONE_THERE}`, {
      size: 12,
      color: palette.ink,
      anchor: 'end',
    })
  );
}

function cross(plot: Plot, { priceCents, margin, broken }: ChoicePoint): string {
  const [x, y] = [number(plot.x(priceCents)), number(plot.y(clamp(margin)))];
  const d = broken ? `M${x} ${y}m-3 -3l6 6m0 -6l-6 6` : `M${x} ${y}m-4 0h8m-4 -4v8`;
  return element('path', {
    d,
    ...stroke('thin', broken ? plot.palette.ink2 : plot.palette.ink, plot.palette),
  });
}

function lettered(plot: Plot, { priceCents, margin, letter }: ChoicePoint): string {
  const { palette } = plot;
  const [x, y] = [plot.x(priceCents), plot.y(clamp(margin))];
  const below = y < plot.top + 26;
  const cy = below ? y + 18 : y - 18;
  return (
    element('circle', { cx: x, cy: y, r: 3.2, fill: palette.ink }) +
    element('circle', { cx: x, cy, r: 9.5, ...stroke('thin', palette.ink, palette), fill: palette.paper }) +
    label(x, cy + 4.4, letter ?? '', { size: 12.5, weight: 640, color: palette.ink, anchor: 'middle' })
  );
}

function percent(share: number): string {
  const value = Math.round(share * 100);
  return `${value > 0 ? '+' : value < 0 ? '−' : ''}${Math.abs(value)} %`;
}
