import { display, type UnitSystem } from '../../quantity/index.ts';
import type { DutyState, Proof } from '../../rig/index.ts';
import { balloon } from '../balloon.ts';
import { flowSymbol } from '../flow-symbols.ts';
import { liquidRows } from '../liquid-rows.ts';
import type { Palette } from '../palette.ts';
import { partNumbers } from '../part-numbers.ts';
import { drawing, element, label, number, path, stroke } from '../svg.ts';
import {
  SYMBOL,
  symbolPlace,
  type PlumbingGraph,
  type PlumbingLayout,
  type PlumbingNode,
} from './plumbing-graph.ts';

export interface PlumbingOptions {
  /** Width there is; a layout that is wider is drawn smaller, and where that would be too small, beyond it [px]. */
  readonly width: number;
  readonly units: UnitSystem;
  readonly palette: Palette;
  /** Item that is hovered or focused. */
  readonly lit?: string | undefined;
  /** Valves and triggers that stand shut. */
  readonly shut: ReadonlySet<string>;
  /** Share of the tank that is filled. */
  readonly level: number;
}

/** Flow below which a line counts as standing still [m3/s]. */
const STILL = 1e-8;
const MARGIN = 12;
/** Smallest that a wide layout is drawn: its figures can be read yet. */
const SMALLEST = 0.85;
/** Symbols through which the line would show. */
const OPEN_SYMBOLS: ReadonlySet<string> = new Set(['hose', 'agitator', 'eductor', 'boom']);

/**
 * The plumbing of a rig in one state: symbols after ISO 1219-1 and ISO 14617, lines that carry liquid in the colour of liquid with
 * the way it flows, shut valves filled, and the figures of the pump, the ways back and the outlets.
 */
export function plumbingDiagram(
  proof: Proof,
  graph: PlumbingGraph,
  layout: PlumbingLayout,
  state: DutyState,
  options: PlumbingOptions,
): string {
  const { palette } = options;
  const width = Math.max(options.width, layout.width + 2 * MARGIN);
  const left = (width - layout.width) / 2;
  const at = (id: string) => {
    const box = layout.nodes[id]!;
    return { ...box, x: box.x + left, y: box.y + MARGIN };
  };
  const numbers = partNumbers(proof);
  const flows = lineFlows(graph, state);
  const wet = graph.edges.filter((e) => isWet(flows.get(e.line)));
  const dry = graph.edges.filter((e) => !isWet(flows.get(e.line)));
  const points = (id: string) =>
    layout.edges[id]!.map(([x, y]) => [x + left, y + MARGIN] as [number, number]);
  const scale = Math.max(SMALLEST, Math.min(1, options.width / width));
  const drawn = [
    ...dry.map((e) => element('path', { d: path(points(e.id)), ...stroke('outline', palette.ink, palette) })),
    ...wet.map((e) =>
      element('path', { d: path(points(e.id)), ...stroke('liquid', palette.liquid, palette) }),
    ),
    ...wet.flatMap((e) => flowArrow(e.back ? points(e.id).reverse() : points(e.id), palette)),
    ...graph.nodes.map((node) => {
      const box = at(node.id);
      switch (node.sort) {
        case 'tank':
          return tank(node, box, numbers, options);
        case 'branch':
          return element('rect', { ...box, fill: palette.ink });
        case 'part':
          return part(graph, node, box, numbers, state, options);
      }
    }),
  ];
  return drawing(
    width * scale,
    (layout.height + 2 * MARGIN) * scale,
    sentence(proof, state, options),
    ...(scale === 1 ? drawn : [element('g', { transform: `scale(${number(scale)})` }, ...drawn)]),
  );
}

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Flow of each line: that of its first part that has one [m3/s]. */
function lineFlows(graph: PlumbingGraph, state: DutyState): ReadonlyMap<string, number> {
  const flows = new Map<string, number>();
  for (const { line, id } of graph.nodes) {
    const flow = state.flowThrough.get(id);
    if (line !== undefined && flow !== undefined && !flows.has(line)) flows.set(line, flow);
  }
  return flows;
}

function isWet(flow: number | undefined): boolean {
  return flow !== undefined && Math.abs(flow) > STILL;
}

/** The way the liquid goes, on the longest straight piece of a line. */
function flowArrow(points: readonly [number, number][], palette: Palette): string[] {
  let best: { length: number; x: number; y: number; dx: number; dy: number } | undefined;
  for (let i = 1; i < points.length; i++) {
    const [[x1, y1], [x2, y2]] = [points[i - 1]!, points[i]!];
    const length = Math.hypot(x2 - x1, y2 - y1);
    if (length < 14 || length <= (best?.length ?? 0)) continue;
    const [dx, dy] = [(x2 - x1) / length, (y2 - y1) / length];
    best = { length, x: (x1 + x2) / 2 + 4 * dx, y: (y1 + y2) / 2 + 4 * dy, dx, dy };
  }
  if (best === undefined) return [];
  const { x, y, dx, dy } = best;
  const at = (side: number) => `${number(x - 9 * dx - side * 4 * dy)} ${number(y - 9 * dy + side * 4 * dx)}`;
  return [element('path', { d: `M${number(x)} ${number(y)}L${at(1)}L${at(-1)}Z`, fill: palette.liquid })];
}

/** Open vessel as a reservoir is drawn, with the liquid in it. */
function tank(
  node: PlumbingNode,
  { x, y, width, height }: Box,
  numbers: ReadonlyMap<string, number>,
  { palette, level, lit }: PlumbingOptions,
): string {
  const surface = y + height - Math.max(0, Math.min(1, level)) * (height - 14);
  const words = node.words.join(' ');
  return element(
    'g',
    { 'data-item': node.item },
    element('rect', { x, y, width, height, fill: lit === node.item ? palette.paper2 : palette.paper }),
    element('rect', { x, y: surface, width, height: y + height - surface, fill: palette.liquidTint }),
    ...liquidRows(
      [
        [x, y + height],
        [x, surface],
        [x + width, surface],
        [x + width, y + height],
      ],
      y + height,
      palette,
    ),
    element('path', {
      d: `M${number(x)} ${number(surface)}H${number(x + width)}`,
      ...stroke('liquid', palette.liquid, palette),
    }),
    element('path', {
      d: `M${number(x)} ${number(y)}V${number(y + height)}H${number(x + width)}V${number(y)}`,
      ...stroke('outline', palette.ink, palette),
    }),
    balloon(numbers.get(node.item ?? '') ?? 0, x + 16, y + height - 16, lit === node.item, palette),
    label(x + 30, y + height - 11.5, words, {
      size: 12,
      weight: 560,
      color: palette.ink,
      halo: palette.liquidTint,
    }),
  );
}

function part(
  graph: PlumbingGraph,
  node: PlumbingNode,
  box: Box,
  numbers: ReadonlyMap<string, number>,
  state: DutyState,
  options: PlumbingOptions,
): string {
  const { palette, units, lit, shut } = options;
  const { run } = graph;
  const [sx, sy] = symbolPlace(run);
  const [x, y] = [box.x + sx, box.y + sy];
  const isLit = lit === node.item;
  const isShut = node.item !== undefined && shut.has(node.item);
  const isWetPart = isWet(state.flowThrough.get(node.id));
  const back = graph.edges.some((e) => e.to[0] === node.id && e.back);
  const turn = run === 'right' ? (back ? 180 : 0) : back ? 270 : 90;
  const lying = run === 'right';
  const last = !graph.edges.some((e) => e.from[0] === node.id);
  const through = lying
    ? `M${number(box.x)} ${number(y)}H${number(last ? x : box.x + box.width)}`
    : `M${number(x)} ${number(box.y)}V${number(last ? y : box.y + box.height)}`;
  const figures = figuresOf(node, last, state, units);
  const figureStyle = { size: 13.5, weight: 640, color: palette.liquid, halo: palette.paper } as const;
  const words = [...node.words, ...(isShut ? ['shut'] : [])];
  return element(
    'g',
    { 'data-item': node.item },
    ...(isLit
      ? [
          element('rect', {
            x: box.x - 3,
            y: box.y - 3,
            width: box.width + 6,
            height: box.height + 6,
            fill: palette.paper2,
          }),
        ]
      : []),
    element('path', {
      d: through,
      ...(isWetPart ? stroke('liquid', palette.liquid, palette) : stroke('outline', palette.ink, palette)),
    }),
    OPEN_SYMBOLS.has(node.kind ?? '')
      ? element('rect', {
          x: x - SYMBOL,
          y: y - SYMBOL,
          width: 2 * SYMBOL,
          height: 2 * SYMBOL,
          fill: isLit ? palette.paper2 : palette.paper,
        })
      : '',
    element(
      'g',
      turn === 0 ? {} : { transform: `rotate(${turn} ${number(x)} ${number(y)})` },
      flowSymbol(node.kind ?? 'fittings', x, y, palette, isShut),
    ),
    ...(lying
      ? [
          balloon(numbers.get(node.id) ?? 0, x, box.y + 11, isLit, palette),
          ...words.map((text, i) =>
            label(x, y + SYMBOL + 14 + 13 * i, text, {
              size: 12,
              weight: text === 'shut' ? 640 : 480,
              color: palette.ink,
              anchor: 'middle',
              halo: isLit ? palette.paper2 : palette.paper,
            }),
          ),
          ...figures.map((text, i) =>
            label(x, y + SYMBOL + 16 + 13 * words.length + 14 * i, text, {
              ...figureStyle,
              anchor: 'middle',
            }),
          ),
        ]
      : [
          balloon(numbers.get(node.id) ?? 0, x + SYMBOL + 14, y - 11, isLit, palette),
          ...figures.map((text, i) =>
            label(
              i === 0 ? x + SYMBOL + 28 : x + SYMBOL + 5,
              i === 0 ? y - 6.5 : y + 14 + 13 * words.length,
              text,
              figureStyle,
            ),
          ),
          ...words.map((text, i) =>
            label(x + SYMBOL + 5, y + 13 + 13 * i, text, {
              size: 12,
              weight: text === 'shut' ? 640 : 480,
              color: palette.ink,
              halo: isLit ? palette.paper2 : palette.paper,
            }),
          ),
        ]),
  );
}

/** Flow of a part that makes it, gives it back or lets it out; the pressure behind a pump and in front of an outlet. */
function figuresOf(node: PlumbingNode, last: boolean, state: DutyState, units: UnitSystem): string[] {
  const flow = state.flowThrough.get(node.id);
  if (flow === undefined || !isWet(flow)) return [];
  const pumps = node.id === state.pump?.item;
  if (!last && !pumps && !['regulator', 'agitator', 'eductor'].includes(node.kind ?? '')) return [];
  const pressure = pumps
    ? state.pump?.outlet
    : state.outlets.find((o) => last && o.line === node.line)?.tipPressure;
  return [
    display(Math.abs(flow), 'flow', units),
    ...(pressure === undefined || pressure === null ? [] : [display(pressure, 'pressure', units)]),
  ];
}

function sentence(proof: Proof, state: DutyState, { units, shut }: PlumbingOptions): string {
  const name = (item: string) => proof.parts.find((p) => p.item === item)?.name ?? item;
  const closed = [...shut].map((item) => `${name(item)} shut`).join(', ');
  const outlets = state.outlets.map((o) => `${display(o.flow, 'flow', units)} at the ${o.line}`).join(', ');
  return [`Plumbing of ${proof.title}`, outlets, closed].filter((text) => text !== '').join(': ');
}
