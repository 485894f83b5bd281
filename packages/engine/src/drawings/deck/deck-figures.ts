import { partsUnder, type PlacedPart, type Proof } from '../../rig/index.ts';
import { partNumbers } from '../part-numbers.ts';

/** Layers of a deck plan, as a drawing program shows them. */
export const DECK_LAYERS = ['deck', 'parts', 'covered', 'numbers', 'supports', 'balance'] as const;
export type DeckLayer = (typeof DECK_LAYERS)[number];

/** One figure of a deck plan, in metres: x behind the front of the deck, y to the left of its middle line. */
export type DeckFigure =
  | {
      readonly layer: DeckLayer;
      readonly kind: 'outline';
      readonly points: readonly Point[];
      /** Height of a part's underside above the deck [m]. */
      readonly up?: number;
    }
  | { readonly layer: DeckLayer; readonly kind: 'circle'; readonly at: Point; readonly radius: number }
  | { readonly layer: DeckLayer; readonly kind: 'text'; readonly at: Point; readonly text: string };
type Point = readonly [number, number];

/** Seen from above: the deck, what stands on it with its number, what it rests on, and where its weight sits. */
export interface DeckPlan {
  readonly figures: readonly DeckFigure[];
  /** Standing parts by their number, which are those of every other drawing; over which others each stands, by number. */
  readonly standing: readonly {
    readonly number: number;
    readonly part: PlacedPart;
    /** With what rides on it, as it works; without the liquid in a tank [kg]. */
    readonly load: number;
    /** Height of its underside above the deck [m]. */
    readonly up: number;
    readonly over: readonly number[];
  }[];
  /** What the figures take up. */
  readonly box: { readonly x0: number; readonly x1: number; readonly y0: number; readonly y1: number };
}

/** Radius of the mark of a centre of gravity [m]. */
const CENTRE_RADIUS = 0.05;
/** Smallest side of a part whose number stands in its corner, how far from it, and how far numbers stand apart [m]. */
const LARGE = 0.5;
const CORNER = 0.15;
const APART = 0.16;

/** The plan that paper, screen and drawing programs share; undefined for a rig without a carrier. */
export function deckPlanOf(proof: Proof): DeckPlan | undefined {
  const { placement } = proof;
  if (placement === undefined) return undefined;
  const { carrier, supports, centre } = placement;
  const numbers = partNumbers(proof);
  const parts = placement.parts.filter((p) => p.on === undefined).sort((a, b) => a.z - b.z);
  const numberOf = (part: PlacedPart) => numbers.get(part.item) ?? 0;
  const under = new Map(parts.map((part) => [part, partsUnder(part, parts)]));
  const over = (part: PlacedPart) => parts.filter((p) => under.get(p)!.includes(part));
  const places = numberPlaces(parts, over);
  const half = carrier.deckWidth / 2;
  const figures: DeckFigure[] = [
    outline('deck', carrier.deckLength / 2, 0, carrier.deckLength, carrier.deckWidth),
    // What stands over another part comes after it, as it lies over it in the drawing.
    ...parts.map((part): DeckFigure => ({
      ...outline('parts', part.x, part.y, part.length, part.width),
      up: part.z - carrier.deckHeight,
    })),
    ...parts.flatMap((part) => over(part).flatMap((upper) => covered(part, upper))),
    ...parts.map((part, i): DeckFigure => ({
      layer: 'numbers',
      kind: 'text',
      at: places[i]!,
      text: String(numberOf(part)),
    })),
    ...supports.flatMap(({ x, name }): DeckFigure[] => [
      {
        layer: 'supports',
        kind: 'outline',
        points: [
          [x, -half],
          [x, half],
        ],
      },
      { layer: 'supports', kind: 'text', at: [x, half], text: name },
    ]),
    ...(['full', 'empty'] as const).flatMap((fill): DeckFigure[] => {
      const at: Point = [centre[fill].x, centre[fill].y];
      return [
        { layer: 'balance', kind: 'circle', at, radius: CENTRE_RADIUS },
        {
          layer: 'balance',
          kind: 'text',
          at: [at[0], at[1] + (fill === 'full' ? -1 : 1) * 2.5 * CENTRE_RADIUS],
          text: fill,
        },
      ];
    }),
  ];
  const xs = figures.flatMap((f) => (f.kind === 'outline' ? f.points.map((p) => p[0]) : [f.at[0]]));
  const ys = figures.flatMap((f) => (f.kind === 'outline' ? f.points.map((p) => p[1]) : [f.at[1]]));
  const box = { x0: Math.min(...xs), x1: Math.max(...xs), y0: Math.min(...ys), y1: Math.max(...ys) };
  const standing = parts
    .map((part) => ({
      number: numberOf(part),
      part,
      load: placement.parts.reduce((sum, p) => sum + (p === part || p.on === part.item ? p.mass : 0), 0),
      up: part.z - carrier.deckHeight,
      over: under.get(part)!.map(numberOf),
    }))
    .sort((a, b) => a.number - b.number);
  return { figures, standing, box };
}

/**
 * A number stands in the middle of a small part and in the corner of a large one, where the weight's marks leave room; of
 * a part that another covers, where the other does not. No two stand in the same place.
 */
function numberPlaces(
  parts: readonly PlacedPart[],
  over: (part: PlacedPart) => readonly PlacedPart[],
): Point[] {
  const taken: Point[] = [];
  for (const part of parts) {
    const { x, y, length, width } = part;
    const [along, across] = [length / 2 - inset(length), width / 2 - inset(width)];
    const corners: Point[] = [
      [x - along, y + across],
      [x + along, y + across],
      [x - along, y - across],
      [x + along, y - across],
    ];
    const wanted: Point[] = Math.min(length, width) > LARGE ? [...corners, [x, y]] : [[x, y], ...corners];
    const apart = wanted.filter((p) => taken.every((t) => Math.hypot(t[0] - p[0], t[1] - p[1]) > APART));
    const seen = apart.filter((p) => over(part).every((upper) => !lies(p, upper)));
    taken.push(seen[0] ?? apart[0] ?? wanted[0]!);
  }
  return taken;
}

/** How far from a side of this length a number in the corner stands [m]. */
const inset = (side: number) => Math.min(CORNER, side / 4);

function lies([x, y]: Point, part: PlacedPart): boolean {
  return Math.abs(x - part.x) < part.length / 2 && Math.abs(y - part.y) < part.width / 2;
}

/** The pieces of a part's sides that lie under another part. */
function covered(part: PlacedPart, upper: PlacedPart): DeckFigure[] {
  const [own, its] = [sides(part), sides(upper)];
  const within = (v: number, low: number, high: number) => v > low && v < high;
  const [x0, x1] = [Math.max(own.front, its.front), Math.min(own.rear, its.rear)];
  const [y0, y1] = [Math.max(own.right, its.right), Math.min(own.left, its.left)];
  const pieces: [Point, Point][] = [
    ...[own.right, own.left]
      .filter((y) => within(y, its.right, its.left))
      .map((y): [Point, Point] => [
        [x0, y],
        [x1, y],
      ]),
    ...[own.front, own.rear]
      .filter((x) => within(x, its.front, its.rear))
      .map((x): [Point, Point] => [
        [x, y0],
        [x, y1],
      ]),
  ];
  return pieces.map((points) => ({ layer: 'covered', kind: 'outline', points }));
}

function sides({ x, y, length, width }: PlacedPart) {
  return { front: x - length / 2, rear: x + length / 2, right: y - width / 2, left: y + width / 2 };
}

function outline(
  layer: DeckLayer,
  x: number,
  y: number,
  length: number,
  width: number,
): DeckFigure & { readonly kind: 'outline' } {
  const [front, rear, right, left] = [x - length / 2, x + length / 2, y - width / 2, y + width / 2];
  return {
    layer,
    kind: 'outline',
    points: [
      [front, right],
      [rear, right],
      [rear, left],
      [front, left],
      [front, right],
    ],
  };
}
