import { display, displayParts, type UnitSystem } from '../quantity/index.ts';
import type { DutyProof, Proof } from '../rig/index.ts';
import { balloon } from './balloon.ts';
import { flowSymbol } from './flow-symbols.ts';
import type { Palette } from './palette.ts';
import { liquidRows } from './liquid-rows.ts';
import { partNumbers } from './part-numbers.ts';
import { columnsOf, peakOf, topOf, type Column } from './pressure-columns.ts';
import { roundStep } from './round-step.ts';
import { drawing, element, hatch, label, number, path, stroke } from './svg.ts';

export interface PressureLineOptions {
  readonly width: number;
  readonly units: UnitSystem;
  readonly palette: Palette;
  /** Item that is hovered or focused. */
  readonly lit?: string | undefined;
}

const HEIGHT = 316;
const TOP = 44;
const BASE = 214;
const SYMBOLS = 246;

/**
 * Pressure from tank to tip as a stepped line: each part a column, the pump a rise, hoses slopes, the rest steps.
 * Ratings are ceilings hatched on the far side; suction has its own magnified scale left of a break line.
 */
export function pressureLine(proof: Proof, duty: DutyProof, options: PressureLineOptions): string {
  const { width, units, palette } = options;
  const columns = columnsOf(proof, duty.open.steps);
  const pumpAt = columns.findIndex((c) => c.kind === 'pump' || c.kind === 'motor-pump');
  if (duty.open.status === 'failed' || pumpAt === -1)
    return drawing(
      width,
      80,
      'No pressure line',
      label(width / 2, 44, duty.open.reason ?? 'The rig has no pump.', {
        size: 14,
        family: 'semi',
        color: palette.broken,
        anchor: 'middle',
      }),
    );
  const suction = columns.slice(0, pumpAt);
  const delivery = columns.slice(pumpAt);
  const cell = (width - 24) / (columns.length + 1.2);
  const tankX = 12 + cell * 0.5;
  const xOf = (k: number) => 12 + cell * (k + 1.5) + (k >= pumpAt ? cell * 0.2 : 0);
  const peak = peakOf(duty);
  const top = topOf(delivery, peak);
  const y = (pressure: number) => BASE - ((BASE - TOP) * pressure) / top;
  return drawing(
    width,
    HEIGHT,
    sentence(proof, duty, units),
    ...scale(width, top, y, options, xOf(pumpAt) - cell * 0.5),
    ...deliveryLine(delivery, pumpAt, cell, xOf, y, options),
    ...ceilings(delivery, pumpAt, cell, xOf, y, top, options),
    ...peakLine(peak, pumpAt, columns.length, cell, xOf, y, top, options),
    ...suctionLine(suction, tankX, cell, xOf, options),
    breakLine(xOf(pumpAt) - cell * 0.62, palette),
    ...symbols(proof, columns, tankX, xOf, cell, options),
  );
}

function scale(
  width: number,
  top: number,
  y: (p: number) => number,
  { units, palette }: PressureLineOptions,
  left: number,
): string[] {
  const unit = units === 'us' ? 6894.757293168361 : 1e5;
  const step = roundStep(top / unit / 4);
  const out: string[] = [];
  for (let v = 0; v * unit <= top; v += step)
    out.push(
      element('path', {
        d: `M${number(left)} ${number(y(v * unit))}H${number(width - 34)}`,
        ...stroke('hatch', palette.rule, palette),
      }),
      label(width - 4, y(v * unit) + 4, String(v), { size: 12, color: palette.ink2, anchor: 'end' }),
    );
  out.push(
    label(width - 4, TOP - 12, units === 'us' ? 'psi' : 'bar', {
      size: 12,
      color: palette.ink2,
      anchor: 'end',
    }),
  );
  return out;
}

function ceilings(
  columns: readonly Column[],
  pumpAt: number,
  cell: number,
  xOf: (k: number) => number,
  y: (p: number) => number,
  top: number,
  { units, palette, width }: PressureLineOptions,
): string[] {
  const out: string[] = [];
  let run: { from: number; to: number; limit: number; names: string[] } | undefined;
  const flush = () => {
    if (run === undefined) return;
    const x1 = xOf(run.from) - cell * 0.46;
    const x2 = Math.min(xOf(run.to) + cell * 0.46, width - 40);
    const text = `≤ ${display(run.limit, 'pressure', units)}`;
    if (run.limit <= top) {
      out.push(
        hatch(x1, y(run.limit) - 7, x2 - x1, 7, 8, palette.ink, palette),
        element('path', {
          d: `M${number(x1)} ${number(y(run.limit))}H${number(x2)}`,
          ...stroke('outline', palette.ink, palette),
        }),
        label((x1 + x2) / 2, y(run.limit) - 11, text, {
          size: 12,
          color: palette.ink,
          anchor: 'middle',
          halo: palette.paper,
        }),
      );
    } else {
      const x = (x1 + x2) / 2;
      out.push(
        element('path', {
          d: `M${number(x)} ${number(TOP - 4)}V${number(TOP - 14)}`,
          ...stroke('thin', palette.ink2, palette),
        }),
        element('path', { d: `M${number(x)} ${number(TOP - 20)}l-2.7 8h5.4Z`, fill: palette.ink2 }),
        label(x, TOP - 24, text, { size: 12, color: palette.ink2, anchor: 'middle' }),
      );
    }
    run = undefined;
  };
  columns.forEach((c, i) => {
    if (c.limit === undefined) return flush();
    if (run !== undefined && run.limit === c.limit) run.to = pumpAt + i;
    else {
      flush();
      run = { from: pumpAt + i, to: pumpAt + i, limit: c.limit, names: [c.name] };
    }
  });
  flush();
  return out;
}

function deliveryLine(
  columns: readonly Column[],
  pumpAt: number,
  cell: number,
  xOf: (k: number) => number,
  y: (p: number) => number,
  options: PressureLineOptions,
): string[] {
  const { units, palette, lit } = options;
  const start = xOf(pumpAt);
  const points: [number, number][] = [[start, y(0)]];
  const words: string[] = [];
  let litColumn = '';
  columns.forEach((c, i) => {
    const x = xOf(pumpAt + i);
    if (c.item !== undefined && c.item === lit)
      litColumn = element('rect', {
        x: x - cell * 0.5,
        y: TOP - 8,
        width: cell,
        height: HEIGHT - TOP,
        fill: palette.paper2,
      });
    if (i === 0) {
      points.push([x, y(c.after)]);
      words.push(
        label(x + 4, y(c.after) - 8, displayParts(c.after, 'pressure', units).figure, {
          size: 14.5,
          weight: 640,
          color: palette.ink,
          halo: palette.paper,
        }),
      );
      return;
    }
    const last = i === columns.length - 1;
    const loss = c.before - c.after;
    if (c.kind === 'hose') points.push([x - cell * 0.5, y(c.before)], [x + cell * 0.5, y(c.after)]);
    else if (last) points.push([x, y(c.before)], [x, y(0)]);
    else points.push([x, y(c.before)], [x, y(c.after)]);
    if (last) words.push(...atTheTip(c, x, y, options));
    else if (Math.abs(loss) > 0)
      words.push(
        label(
          x,
          y(Math.min(c.before, c.after)) + 17,
          `−${displayParts(Math.abs(loss), 'pressure', units).figure}`,
          {
            size: 13,
            color: palette.ink,
            halo: palette.liquidTint,
            anchor: 'middle',
          },
        ),
      );
  });
  const area = [...points, [points[points.length - 1]![0], y(0)] as [number, number]];
  return [
    litColumn,
    element('path', { d: path(area, true), fill: palette.liquidTint }),
    ...liquidRows(area, y(0), palette),
    element('path', {
      d: `M${number(start)} ${number(y(0))}H${number(points[points.length - 1]![0])}`,
      ...stroke('thin', palette.ink, palette),
    }),
    element('path', { d: path(points), ...stroke('liquid', palette.liquid, palette) }),
    ...words,
  ];
}

/** The figure at the end of the line: above it, or below where a ceiling hangs just over it. */
function atTheTip(
  { kind, before, limit }: Column,
  x: number,
  y: (p: number) => number,
  { units, palette }: PressureLineOptions,
): string[] {
  const ceiling = limit === undefined ? -Infinity : y(limit);
  const below = ceiling > y(before) - 38;
  const written = {
    halo: below ? palette.liquidTint : palette.paper,
    anchor: below ? 'end' : 'middle',
  } as const;
  const left = below ? x - 6 : x + 4;
  return [
    label(left, y(before) + (below ? 18 : -8), displayParts(before, 'pressure', units).figure, {
      size: 14.5,
      weight: 640,
      color: palette.ink,
      ...written,
    }),
    label(left, y(before) + (below ? 32 : -22), whereLast(kind), {
      size: 12,
      color: below ? palette.ink : palette.ink2,
      ...written,
    }),
  ];
}

/** Where the last figure is read: a transfer hose has no tip. */
function whereLast(kind: string | undefined): string {
  return kind === 'hose' ? 'before the hose' : 'at the tip';
}

function peakLine(
  peak: number | undefined,
  pumpAt: number,
  count: number,
  cell: number,
  xOf: (k: number) => number,
  y: (p: number) => number,
  top: number,
  { units, palette }: PressureLineOptions,
): string[] {
  if (peak === undefined || peak > top) return [];
  const x2 = xOf(count - 1) - cell * 0.4;
  const text = `${displayParts(peak, 'pressure', units).figure} with the outlets shut`;
  return [
    element('path', {
      d: `M${number(xOf(pumpAt))} ${number(y(peak))}H${number(x2)}`,
      ...stroke('farthest', palette.liquid, palette),
    }),
    label((xOf(pumpAt) + x2) / 2, y(peak) - 5, text, {
      size: 12,
      color: palette.liquid,
      anchor: 'middle',
      halo: palette.paper,
    }),
  ];
}

function suctionLine(
  columns: readonly Column[],
  tankX: number,
  cell: number,
  xOf: (k: number) => number,
  { units, palette }: PressureLineOptions,
): string[] {
  if (columns.length === 0) return [];
  const values = columns.flatMap((c) => [c.before, c.after]);
  const most = Math.max(2000, ...values.map(Math.abs));
  const zero = (TOP + BASE) / 2;
  const y = (p: number) => zero - (p / most) * 56;
  const points: [number, number][] = [
    [tankX, y(columns[0]!.before)],
    [xOf(0) - cell * 0.5, y(columns[0]!.before)],
  ];
  columns.forEach((c, k) => {
    if (c.kind === 'hose') points.push([xOf(k) - cell * 0.5, y(c.before)], [xOf(k) + cell * 0.5, y(c.after)]);
    else points.push([xOf(k), y(c.before)], [xOf(k), y(c.after)]);
  });
  const end = columns[columns.length - 1]!;
  const endX = xOf(columns.length - 1) + cell * 0.5;
  points.push([endX, y(end.after)]);
  const figure = (p: number) => display(p, 'pressure', units, { decimals: 1 });
  return [
    label(12, TOP - 24, 'SUCTION, MAGNIFIED', { size: 11, weight: 640, color: palette.ink2, spacing: 0.5 }),
    element('path', { d: `M12 ${number(zero)}H${number(endX)}`, ...stroke('thin', palette.ink2, palette) }),
    element('path', { d: path(points), ...stroke('liquid', palette.liquid, palette) }),
    label(tankX, y(columns[0]!.before) - 8, figure(columns[0]!.before), {
      size: 12,
      color: palette.ink,
      anchor: 'middle',
      halo: palette.paper,
    }),
    label(endX, y(end.after) + (end.after < 0 ? 18 : -8), figure(end.after), {
      size: 13,
      weight: 640,
      color: palette.ink,
      anchor: 'end',
      halo: palette.paper,
    }),
  ];
}

function breakLine(x: number, palette: Palette): string {
  const m = (TOP + BASE) / 2;
  return element('path', {
    d: `M${number(x)} ${number(TOP - 6)}V${number(m - 14)}l-5 5l10 9l-5 5V${number(BASE + 6)}`,
    ...stroke('thin', palette.ink2, palette),
  });
}

function symbols(
  proof: Proof,
  columns: readonly Column[],
  tankX: number,
  xOf: (k: number) => number,
  cell: number,
  { palette, lit }: PressureLineOptions,
): string[] {
  const numbers = partNumbers(proof);
  const all = [
    { item: 'tank' as string | undefined, kind: 'tank' as Column['kind'], x: tankX, name: 'Tank' },
    ...columns.map((c, k) => ({ ...c, x: xOf(k) })),
  ];
  return [
    element('path', {
      d: `M${number(tankX + 12)} ${SYMBOLS}H${number(all[all.length - 1]!.x)}`,
      ...stroke('thin', palette.liquid, palette),
    }),
    ...all.map((c) => {
      const count = c.item === undefined ? undefined : numbers.get(c.item);
      return element(
        'g',
        { 'data-item': c.item },
        flowSymbol(c.kind as Parameters<typeof flowSymbol>[0], c.x, SYMBOLS, palette),
        count === undefined ? '' : balloon(count, c.x, SYMBOLS + 34, c.item === lit, palette),
        cell > 56
          ? label(c.x, SYMBOLS + 62, shortName(c.kind), { size: 12, color: palette.ink2, anchor: 'middle' })
          : '',
      );
    }),
  ];
}

/** What a builder calls a part in one word. */
function shortName(kind: string): string {
  const words: Readonly<Record<string, string>> = {
    'motor-pump': 'Pump',
    fittings: 'Fittings',
    regulator: 'Unloader',
    nozzle: 'Nozzles',
  };
  return words[kind] ?? kind.charAt(0).toUpperCase() + kind.slice(1);
}

function sentence(proof: Proof, duty: DutyProof, units: UnitSystem): string {
  const pump = duty.open.pump;
  const outlet = duty.open.outlets[0];
  const last = columnsOf(proof, duty.open.steps).at(-1);
  const at =
    pump === undefined || pump.outlet === null
      ? ''
      : `${display(pump.outlet, 'pressure', units)} at the pump`;
  const tip =
    outlet === undefined
      ? ''
      : `, ${display(outlet.tipPressure, 'pressure', units)} ${whereLast(last?.kind)}, ${display(outlet.flow, 'flow', units)}`;
  return `Pressure from tank to tip of ${proof.title}, ${duty.name}: ${at}${tip}`;
}
