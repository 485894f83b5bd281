import type { PlacedPart, Proof } from '../../rig/index.ts';
import { partNumbers } from '../part-numbers.ts';

/** Layers of a deck plan, as a drawing program shows them. */
export const DECK_LAYERS = ['deck', 'parts', 'numbers', 'supports', 'balance'] as const;
export type DeckLayer = (typeof DECK_LAYERS)[number];

/** One figure of a deck plan, in metres: x behind the front of the deck, y to the left of its middle line. */
export type DeckFigure =
  | { readonly layer: DeckLayer; readonly kind: 'outline'; readonly points: readonly Point[] }
  | { readonly layer: DeckLayer; readonly kind: 'circle'; readonly at: Point; readonly radius: number }
  | { readonly layer: DeckLayer; readonly kind: 'text'; readonly at: Point; readonly text: string };
type Point = readonly [number, number];

/** Seen from above: the deck, what stands on it with its number, what it rests on, and where its weight sits. */
export interface DeckPlan {
  readonly figures: readonly DeckFigure[];
  /** Standing parts by their number, which are those of every other drawing. */
  readonly standing: readonly { readonly number: number; readonly part: PlacedPart }[];
  /** What the figures take up. */
  readonly box: { readonly x0: number; readonly x1: number; readonly y0: number; readonly y1: number };
}

/** Radius of the mark of a centre of gravity [m]. */
const CENTRE_RADIUS = 0.05;
/** Smallest side of a part whose number stands in its corner, and how far from it [m]. */
const LARGE = 0.5;
const CORNER = 0.15;

/** The plan that paper, screen and drawing programs share; undefined for a rig without a carrier. */
export function deckPlanOf(proof: Proof): DeckPlan | undefined {
  const { placement } = proof;
  if (placement === undefined) return undefined;
  const { carrier, supports, centre } = placement;
  const numbers = partNumbers(proof);
  const standing = placement.parts
    .filter((p) => p.on === undefined)
    .map((part) => ({ number: numbers.get(part.item) ?? 0, part }))
    .sort((a, b) => a.number - b.number);
  const half = carrier.deckWidth / 2;
  const figures: DeckFigure[] = [
    outline('deck', carrier.deckLength / 2, 0, carrier.deckLength, carrier.deckWidth),
    ...standing.flatMap(({ number, part }): DeckFigure[] => [
      outline('parts', part.x, part.y, part.length, part.width),
      { layer: 'numbers', kind: 'text', at: numberPlace(part), text: String(number) },
    ]),
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
  return { figures, standing, box };
}

/** A number stands in the middle of a small part and in the corner of a large one, where the weight's marks leave room. */
function numberPlace({ x, y, length, width }: PlacedPart): Point {
  const corner = Math.min(length, width) > LARGE;
  return corner ? [x - length / 2 + CORNER, y + width / 2 - CORNER] : [x, y];
}

function outline(layer: DeckLayer, x: number, y: number, length: number, width: number): DeckFigure {
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
