import type { Kind } from '../../catalogue/index.ts';
import type { Rig, RigLine } from '../../rig/index.ts';

/** Which way the suction and the pump line run. */
export type PlumbingRun = 'right' | 'down';
type Side = 'left' | 'right' | 'top' | 'bottom';

/** A place where a line is joined to a node, in pixels from the node's corner; without one the layout finds the place. */
interface PlumbingPort {
  readonly id: string;
  readonly side: Side;
  readonly at?: readonly [x: number, y: number];
}

/** Something that lines join: the tank, a part with its symbol and words, or a branching point. */
export interface PlumbingNode {
  readonly id: string;
  readonly sort: 'tank' | 'part' | 'branch';
  /** Item of the rig; absent for a branching point. */
  readonly item?: string;
  readonly kind?: Kind;
  /** Line that a part stands in. */
  readonly line?: string;
  readonly words: readonly string[];
  readonly width: number;
  readonly height: number;
  readonly ports: readonly PlumbingPort[];
}

/** A piece of a line between two parts. It is laid out from `from` to `to`; `back` says that the liquid flows the other way. */
interface PlumbingEdge {
  readonly id: string;
  readonly line: string;
  readonly from: readonly [node: string, port: string];
  readonly to: readonly [node: string, port: string];
  readonly back: boolean;
}

/** A rig's plumbing before it has places: what is joined to what, on which side. */
export interface PlumbingGraph {
  readonly run: PlumbingRun;
  readonly nodes: readonly PlumbingNode[];
  readonly edges: readonly PlumbingEdge[];
}

/** Where a layout put it all [px]. */
export interface PlumbingLayout {
  readonly width: number;
  readonly height: number;
  readonly nodes: Readonly<
    Record<
      string,
      { readonly x: number; readonly y: number; readonly width: number; readonly height: number }
    >
  >;
  readonly edges: Readonly<Record<string, readonly (readonly [x: number, y: number])[]>>;
}

/** Half the height of a symbol [px]. */
export const SYMBOL = 14;
/** Lying: ring, symbol, words, figures. Standing: symbol left, ring and words right of it. */
const LYING = { width: 66, symbolY: 40, height: 116 } as const;
const STANDING = { width: 100, symbolX: 20, height: 56 } as const;
const TANK = { right: { width: 76, height: 150 }, down: { width: 150, height: 76 } } as const;
const BRANCH = 8;

/**
 * The plumbing of a rig as a graph. Lines that lead back to the tank are laid from the tank, so that tank and pump stand at
 * one end and the outlets at the other; nodes where only two lines meet are passed through.
 */
export function plumbingGraph(rig: Rig, run: PlumbingRun): PlumbingGraph {
  const slots = rig.layout?.slots ?? [];
  const name = (item: string) => slots.find((s) => s.id === item)?.name ?? item;
  const [entry, exit]: [Side, Side] = run === 'right' ? ['left', 'right'] : ['top', 'bottom'];
  const nodes = new Map<string, PlumbingNode>();
  const edges: PlumbingEdge[] = [];
  const tankItem = [...rig.items.values()].find(({ part }) => part.kind === 'tank')?.item.id;
  const join = (node: string, side: Side, port: string): readonly [string, string] => {
    const sort = node === 'tank' ? 'tank' : 'branch';
    const known = nodes.get(node);
    nodes.set(node, {
      id: node,
      sort,
      ...(sort === 'tank' && tankItem !== undefined ? { item: tankItem, kind: 'tank' as const } : {}),
      words: sort === 'tank' && tankItem !== undefined ? [name(tankItem)] : [],
      ...(sort === 'tank' ? TANK[run] : { width: BRANCH, height: BRANCH }),
      ports: [...(known?.ports ?? []), { id: port, side }],
    });
    return [node, port];
  };
  const ends = endsOf(rig.lines);
  for (const line of rig.lines) {
    const back = line.to === 'tank';
    const items = back ? [...line.run].reverse() : line.run;
    const [start, end] = back ? [line.to, line.from] : [line.from, line.to];
    let from = join(ends.get(start) ?? start, exit, `${line.id}-start`);
    for (const item of items) {
      nodes.set(item, {
        ...partNode(item, rig.items.get(item)!.part.kind, name(item), run, back),
        line: line.id,
      });
      const [first, second] = back ? (['out', 'in'] as const) : (['in', 'out'] as const);
      edges.push({ id: `${line.id}-${item}`, line: line.id, from, to: [item, first], back });
      from = [item, second];
    }
    if (end !== 'air')
      edges.push({
        id: `${line.id}-end`,
        line: line.id,
        from,
        to: join(ends.get(end) ?? end, entry, `${line.id}-end`),
        back,
      });
  }
  return passedThrough({ run, nodes: [...nodes.values()], edges });
}

/** Nodes of the rig by the name that their branching point has in the drawing, apart from items of the same id. */
function endsOf(lines: readonly RigLine[]): Map<string, string> {
  const names = lines.flatMap((l) => [l.from, l.to]).filter((n) => n !== 'tank' && n !== 'air');
  return new Map(names.map((n) => [n, `at-${n}`]));
}

function partNode(item: string, kind: Kind, name: string, run: PlumbingRun, back: boolean): PlumbingNode {
  const words = inTwoLines(name);
  const lying = run === 'right';
  const { width, height } = lying ? LYING : STANDING;
  const [first, second]: [PlumbingPort, PlumbingPort] = lying
    ? [
        { id: 'in', side: 'left', at: [0, LYING.symbolY] },
        { id: 'out', side: 'right', at: [width, LYING.symbolY] },
      ]
    : [
        { id: 'in', side: 'top', at: [STANDING.symbolX, 0] },
        { id: 'out', side: 'bottom', at: [STANDING.symbolX, height] },
      ];
  const ports = back
    ? [
        { ...first, id: 'out' },
        { ...second, id: 'in' },
      ]
    : [first, second];
  return { id: item, sort: 'part', item, kind, words, width, height, ports };
}

/** Middle of a part's symbol from the corner of its node [px]. */
export function symbolPlace(run: PlumbingRun): readonly [x: number, y: number] {
  return run === 'right' ? [LYING.width / 2, LYING.symbolY] : [STANDING.symbolX, STANDING.height / 2];
}

/** Words in two lines, as even as they go. */
function inTwoLines(text: string): string[] {
  const words = text.split(' ');
  let best = [text];
  for (let i = 1; i < words.length; i++) {
    const lines = [words.slice(0, i).join(' '), words.slice(i).join(' ')];
    if (longest(lines) < longest(best)) best = lines;
  }
  return best;
}

function longest(lines: readonly string[]): number {
  return Math.max(...lines.map((l) => l.length));
}

/** Takes out branching points where only two pieces meet. */
function passedThrough(graph: PlumbingGraph): PlumbingGraph {
  let { nodes, edges } = graph;
  for (const node of graph.nodes) {
    if (node.sort !== 'branch') continue;
    const before = edges.find((e) => e.to[0] === node.id);
    const after = edges.find((e) => e.from[0] === node.id);
    if (node.ports.length !== 2 || before === undefined || after === undefined) continue;
    edges = edges.flatMap((e) => (e === after ? [] : e === before ? [{ ...before, to: after.to }] : [e]));
    nodes = nodes.filter((n) => n !== node);
  }
  return { ...graph, nodes, edges };
}
