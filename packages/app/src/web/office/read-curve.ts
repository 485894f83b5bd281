import { curveFaults } from '@spraywright/engine/catalogue';
import { parseQuantity, type Dimension } from '@spraywright/engine/quantity';

/** A place on the picture, in its own pixels, from the top left. */
export interface Place {
  readonly x: number;
  readonly y: number;
}

/** A place whose flow and head the picture's axes tell. */
export interface AxisPoint {
  readonly place: Place | undefined;
  readonly flow: string;
  readonly head: string;
}

interface CurvePoint {
  readonly flow: string;
  readonly head: string;
}

type Read = { readonly points: readonly CurvePoint[] } | { readonly why: string };

/** Fewest points that a curve is read from. */
const FEWEST = 3;

/** Flows and heads of places on a plotted curve, between two points whose values are known; along level and upright axes. */
export function readCurve(first: AxisPoint, second: AxisPoint, places: readonly Place[]): Read {
  if (first.place === undefined || second.place === undefined)
    return { why: 'Name two points of the axes on the picture first.' };
  const flow = scaleOf('flow', [first.place.x, first.flow], [second.place.x, second.flow]);
  if ('why' in flow) return flow;
  const head = scaleOf('head', [first.place.y, first.head], [second.place.y, second.head]);
  if ('why' in head) return head;
  if (places.length < FEWEST)
    return { why: `${places.length} points are on the curve; at least ${FEWEST} are needed.` };
  const read = places
    .map(({ x, y }) => ({ flow: flow.at(x), head: head.at(y) }))
    .sort((a, b) => a.flow - b.flow);
  const points = read.map((p) => ({ flow: flow.text(p.flow), head: head.text(p.head) }));
  const below = read.findIndex((p) => p.flow < 0 || p.head < 0);
  if (below >= 0)
    return { why: `The point at ${points[below]!.flow}, ${points[below]!.head} lies outside the axes.` };
  const [fault] = curveFaults(read);
  if (fault === undefined) return { points };
  const [before, here] = [points[fault.place - 1]!, points[fault.place]!];
  return {
    why: `From ${before.flow}, ${before.head} to ${here.flow}, ${here.head}: ${fault.message}.`,
  };
}

interface Scale {
  readonly at: (pixel: number) => number;
  /** A value in the unit that was typed, three figures of it. */
  readonly text: (value: number) => string;
}

const DIMENSION: Readonly<Record<'flow' | 'head', Dimension>> = { flow: 'flow', head: 'length' };
/** More figures than three nobody reads off a plot. */
const FIGURES = 3;

function scaleOf(
  name: 'flow' | 'head',
  [pixel, typed]: readonly [number, string],
  [otherPixel, otherTyped]: readonly [number, string],
): Scale | { readonly why: string } {
  const dimension = DIMENSION[name];
  const [a, b] = [parseQuantity(typed, dimension), parseQuantity(otherTyped, dimension)];
  if (!a.ok) return { why: `The ${name} of the first point: ${a.message}.` };
  if (!b.ok) return { why: `The ${name} of the second point: ${b.message}.` };
  const way = name === 'flow' ? 'left and right' : 'up and down';
  if (pixel === otherPixel || a.value === b.value)
    return { why: `The two points must differ in ${name} and lie apart, ${way}.` };
  const unit = /[^\d\s.,/−-].*$/.exec(otherTyped.trim())?.[0] ?? '';
  const one = parseQuantity(`1 ${unit}`, dimension);
  if (!one.ok) return { why: `The ${name} of the second point: ${one.message}.` };
  return {
    at: (at) => a.value + ((b.value - a.value) * (at - pixel)) / (otherPixel - pixel),
    text: (value) => `${Number((value / one.value).toPrecision(FIGURES))} ${unit}`,
  };
}
