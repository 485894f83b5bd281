import { display } from '../../quantity/index.ts';
import type { DayProof, Proof } from '../../rig/index.ts';
import { textWidth } from '../dimension.ts';
import type { Palette } from '../palette.ts';
import { drawing, element, label, number, path, stroke } from '../svg.ts';
import { ceilingLine, curve, layPlot, type CurveOptions, type Plot } from './plot.ts';

type Phase = DayProof['result']['phases'][number];

/** Height of the strip that says what goes on [px]. */
const STRIP = 7;

/** Weight of the rig over its day, under the rating of its carrier; a strip along the foot says what goes on. */
export function dayPlot(proof: Proof, day: DayProof, options: CurveOptions): string {
  const { palette, units, width } = options;
  const { times, masses, phases, greatestMass } = day.result;
  const rating = proof.placement?.carrier.grossRating;
  const ceiling = rating !== undefined && rating < greatestMass * 2 ? rating : undefined;
  const plot = layPlot(
    options,
    { to: Math.max(...times, 1), name: 'into the day', dimension: 'time' },
    { to: Math.max(greatestMass, ceiling ?? 0) * 1.14, name: 'rig with what it carries', dimension: 'mass' },
    14,
  );
  const line = times.map((t, i) => [t, masses[i]!] as const);
  const wet = [
    [plot.x(0), plot.base] as const,
    ...line.map(([t, m]) => [plot.x(t), plot.y(m)] as const),
    [plot.x(times.at(-1) ?? 0), plot.base] as const,
  ];
  return drawing(
    width,
    plot.height,
    sentence(day, rating, options),
    element('path', { d: path(wet, true), fill: palette.liquidTint }),
    plot.frame,
    ...(ceiling === undefined
      ? []
      : [ceilingLine(plot, ceiling, `carrier ≤ ${display(ceiling, 'mass', units)}`)]),
    curve(plot, line, 'liquid', palette.liquid),
    label(plot.right, plot.top - 18, `heaviest ${display(greatestMass, 'mass', units)}`, {
      size: 12,
      weight: 640,
      color: palette.ink,
      anchor: 'end',
    }),
    ...strip(plot, times, phases),
    legend(plot),
  );
}

/** What a step of the day is to somebody who looks at the strip: water, the way, the hose, or work. */
function sortOf(phase: Phase): 'work' | 'water' | 'way' | undefined {
  switch (phase) {
    case 'work':
      return 'work';
    case 'fill':
    case 'mix':
      return 'water';
    case 'drive':
    case 'move':
    case 'refuel':
      return 'way';
    default:
      return undefined;
  }
}

function bar(sort: 'work' | 'water' | 'way', x: number, y: number, width: number, palette: Palette): string {
  const box = { x, y, width, height: STRIP } as const;
  if (sort === 'work') return element('rect', { ...box, fill: palette.liquid });
  if (sort === 'water') return element('rect', { ...box, fill: palette.ink });
  return element('path', {
    d: `M${number(x)} ${number(y + STRIP / 2)}H${number(x + width)}`,
    ...stroke('outline', palette.ink, palette),
  });
}

function strip(plot: Plot, times: readonly number[], phases: readonly Phase[]): string[] {
  const out: string[] = [];
  let from = 0;
  phases.forEach((phase, i) => {
    const until = times[i]!;
    const sort = sortOf(phase);
    if (phases[i + 1] !== undefined && sortOf(phases[i + 1]!) === sort) return;
    const [x1, x2] = [plot.x(from), plot.x(until)];
    from = until;
    if (sort !== undefined && x2 - x1 > 0.4)
      out.push(bar(sort, x1, plot.base - STRIP, x2 - x1, plot.palette));
  });
  return out;
}

/** The three sorts by name, on the line of the axis' own name. */
function legend(plot: Plot): string {
  const y = plot.base + 27;
  let x = plot.left;
  return (['work', 'water', 'way'] as const)
    .map((sort) => {
      const text = { work: 'spraying', water: 'filling, mixing', way: 'driving' }[sort];
      const sign = bar(sort, x, y - STRIP + 3, 12, plot.palette);
      const words = label(x + 16, y + 5, text, { size: 12, color: plot.palette.ink2 });
      x += 30 + textWidth(text, 12);
      return sign + words;
    })
    .join('');
}

function sentence(day: DayProof, rating: number | undefined, { units }: CurveOptions): string {
  const { result } = day;
  const limit = rating === undefined ? '' : `; its carrier is rated for ${display(rating, 'mass', units)}`;
  return `Weight over the day: heaviest ${display(result.greatestMass, 'mass', units)}, ${result.fills} fills${limit}`;
}
