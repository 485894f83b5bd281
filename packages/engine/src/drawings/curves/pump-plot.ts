import { display } from '../../quantity/index.ts';
import type { DutyProof, Proof, PumpCurve } from '../../rig/index.ts';
import { textWidth } from '../dimension.ts';
import { drawing, label } from '../svg.ts';
import {
  ceilingLine,
  curve,
  layPlot,
  point,
  valueAt,
  type CurveOptions,
  type Plot,
  type Values,
} from './plot.ts';

/** The pump's curve and the rig's own, where they cross in this duty and in the others, and the ceiling of the rating. */
export function pumpPlot(proof: Proof, duty: DutyProof, curves: PumpCurve, options: CurveOptions): string {
  const { palette, units, width } = options;
  const { pump, rig, duties, rated } = curves;
  const measured = Math.max(...pump.map((p) => p.flow));
  const most = Math.max(measured, ...duties.map((d) => d.flow)) * 1.08;
  const shut = shutPoint(duty);
  const worked = Math.max(...duties.map((d) => d.rise), shut?.rise ?? 0);
  const ceiling = rated !== undefined && rated < worked * 1.7 ? rated : undefined;
  const given = Math.min(Math.max(...pump.map((p) => p.rise)), worked * 1.7);
  const top = Math.max(worked * 1.15, (ceiling ?? given) * 1.14);
  const plot = layPlot(
    options,
    { to: most, name: 'flow through the pump', dimension: 'flow' },
    { to: top, name: 'pressure it adds', dimension: 'pressure' },
    14,
  );
  const here = duties.find((d) => d.duty === duty.id);
  const pumpLine = [...pump].sort((a, b) => a.flow - b.flow).map((p) => [p.flow, p.rise] as const);
  const rigLine = rig.map((p) => [p.flow, p.rise] as const);
  return drawing(
    width,
    plot.height,
    sentence(proof, duty, curves, options),
    plot.frame,
    ...(ceiling === undefined
      ? []
      : [ceilingLine(plot, ceiling, `pump ≤ ${display(ceiling, 'pressure', units)}`)]),
    curve(plot, pumpLine, 'outline', palette.ink),
    most > measured * 1.09 ? curve(plot, beyond(pumpLine, most), 'hidden', palette.ink) : '',
    curve(plot, rigLine, 'liquid', palette.liquid),
    pumpWords(plot, pumpLine),
    rigWords(plot, rigLine, here?.rise ?? worked),
    ...(shut === undefined ? [] : [point(plot, shut.flow, shut.rise, palette.ink, true)]),
    ...duties.filter((d) => d !== here).map((d) => point(plot, d.flow, d.rise, palette.ink2)),
    ...(here === undefined ? [] : [point(plot, here.flow, here.rise, palette.ink)]),
    ...letters(plot, proof, duties, duty.id),
  );
}

function shutPoint({ shut }: DutyProof): { flow: number; rise: number } | undefined {
  const p = shut.pump;
  return shut.status === 'failed' || p === undefined || p.inlet === null || p.outlet === null || p.flow <= 0
    ? undefined
    : { flow: p.flow, rise: p.outlet - p.inlet };
}

/** The pump's curve past its last measured point, as the solver takes it on: straight. */
function beyond(line: Values, until: number): Values {
  const [x1, y1] = line.at(-2)!;
  const [x2, y2] = line.at(-1)!;
  const slope = (y2 - y1) / (x2 - x1);
  const end = slope < 0 ? Math.min(until, x2 - y2 / slope) : until;
  return [
    [x2, y2],
    [end, y2 + slope * (end - x2)],
  ];
}

/** Where the pump's curve stands alone: over one that falls gently, beside a steep one, left of one that needs a flow. */
function pumpWords(plot: Plot, line: Values): string {
  const [first, last] = [line[0]!, line.at(-1)!];
  const gentle = last[0] * 0.16;
  const over = first[0] < gentle && valueAt(line, gentle) < 0.86 * plot.toUp;
  const right = !over && first[0] < gentle;
  const at = over ? gentle : right ? flowAt(line, 0.86 * plot.toUp) : last[0] - (last[0] - first[0]) * 0.14;
  const [x, y] = [plot.x(at), plot.y(valueAt(line, at))];
  return label(over ? x : right ? x + 9 : x - 9, over ? y - 9 : y + 4, 'what the pump gives', {
    size: 12,
    color: plot.palette.ink,
    anchor: over || right ? 'start' : 'end',
    halo: plot.palette.paper,
  });
}

/** Flow at which a falling curve has come down to a pressure. */
function flowAt(line: Values, rise: number): number {
  const turned = line.map(([flow, value]) => [value, flow] as const).reverse();
  return valueAt(turned, rise);
}

/** Beside the rig's own curve on its way up: over it where there is room, else under it. */
function rigWords(plot: Plot, line: Values, worked: number): string {
  const text = 'what the rig asks';
  const level = Math.min(0.55 * worked, 0.38 * plot.toUp);
  const [x, y] = (line.find(([, rise]) => rise > level) ?? [0, 0]).map((v, i) =>
    i === 0 ? plot.x(v) : plot.y(v),
  ) as [number, number];
  const over = x - 12 - textWidth(text, 12) > plot.left;
  return label(over ? x - 9 : x + 9, over ? y : y + 8, text, {
    size: 12,
    color: plot.palette.liquid,
    anchor: over ? 'end' : 'start',
    halo: plot.palette.paper,
  });
}

/** Letters of the duties at their points; duties that work at one point share it. */
function letters(plot: Plot, proof: Proof, points: PumpCurve['duties'], shown: string): string[] {
  const groups: { x: number; y: number; text: string; shown: boolean }[] = [];
  for (const { duty, flow, rise } of points) {
    const [x, y] = [plot.x(flow), plot.y(rise)];
    const letter = 'abcdefghijkl'.charAt(proof.duties.findIndex((d) => d.id === duty));
    const near = groups.find((g) => Math.hypot(g.x - x, g.y - y) < 20);
    if (near === undefined) groups.push({ x, y, text: letter, shown: duty === shown });
    else {
      near.text += ` ${letter}`;
      near.shown ||= duty === shown;
    }
  }
  return groups.map((g) => {
    const fits = g.x + 10 + textWidth(g.text, 13.5) < plot.width;
    return label(fits ? g.x + 8 : g.x - 8, g.y - 7, g.text, {
      size: 13.5,
      anchor: fits ? 'start' : 'end',
      weight: g.shown ? 680 : 480,
      color: plot.palette.ink,
      halo: plot.palette.paper,
    });
  });
}

function sentence(proof: Proof, duty: DutyProof, curves: PumpCurve, { units }: CurveOptions): string {
  const here = curves.duties.find((d) => d.duty === duty.id);
  const name = proof.parts.find((p) => p.kind === 'pump' || p.kind === 'motor-pump')?.name ?? 'pump';
  const works =
    here === undefined
      ? 'no steady state'
      : `works at ${display(here.flow, 'flow', units)} and ${display(here.rise, 'pressure', units)}`;
  return `What the ${name} gives and what the rig asks of it, ${duty.name}: ${works}`;
}
