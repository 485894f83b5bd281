import type { Piece } from './hosts.ts';

/** Free room between parts on a deck: common practice, no source [m]. */
export const GAP = 0.05;

/** A standing part with everything that rides on it. */
export interface Box {
  readonly item: string;
  readonly length: number;
  readonly width: number;
  readonly height: number;
  /** With what rides on it [kg]. */
  readonly mass: number;
}

/** Parts that stand together, in rows across the deck. */
export interface Block {
  readonly length: number;
  readonly height: number;
  readonly mass: number;
  /** Σ m x of its boxes from its front [kg m]. */
  readonly moment: number;
  /** Middle of each box behind the front of the block and to the left of the middle line, and above the deck. */
  readonly places: readonly {
    readonly box: Box;
    readonly x: number;
    readonly y: number;
    readonly z: number;
  }[];
}

export const EMPTY_BLOCK: Block = { length: 0, height: 0, mass: 0, moment: 0, places: [] };

/** Boxes of the standing parts. */
export function boxesOf(pieces: readonly Piece[]): Map<string, Box> {
  const loads = new Map<string, number>();
  for (const p of pieces) loads.set(p.host, (loads.get(p.host) ?? 0) + p.mass);
  return new Map(
    pieces
      .filter((p) => p.host === p.item.id)
      .map((p) => [p.item.id, { item: p.item.id, ...p.part.size, mass: loads.get(p.item.id) ?? p.mass }]),
  );
}

/** What a part takes of a deck. */
export type Footprint = Pick<Box, 'length' | 'width'>;

function rowsOf<T extends Footprint>(boxes: readonly T[], width: number): T[][] {
  const rows: T[][] = [];
  let used = 0;
  for (const box of boxes) {
    if (rows.length === 0 || used + GAP + box.width > width) {
      rows.push([]);
      used = -GAP;
    }
    rows[rows.length - 1]!.push(box);
    used += GAP + box.width;
  }
  return rows;
}

/** Length that boxes take which are packed across a width [m]. */
export function packedLength(boxes: readonly Footprint[], width: number): number {
  let front = 0;
  for (const row of rowsOf(boxes, width)) front += Math.max(...row.map((b) => b.length)) + GAP;
  return boxes.length === 0 ? 0 : front - GAP;
}

/** Sets boxes side by side across the deck, and begins a new row behind when the width is used up. */
export function packed(boxes: readonly Box[], width: number): Block {
  if (boxes.length === 0) return EMPTY_BLOCK;
  const rows = rowsOf(boxes, width);
  const places: { box: Box; x: number; y: number; z: number }[] = [];
  let front = 0;
  for (const row of rows) {
    const length = Math.max(...row.map((b) => b.length));
    let left = (row.reduce((sum, b) => sum + b.width, 0) + GAP * (row.length - 1)) / 2;
    for (const box of row) {
      places.push({ box, x: front + length / 2, y: left - box.width / 2, z: 0 });
      left -= box.width + GAP;
    }
    front += length + GAP;
  }
  return {
    length: front - GAP,
    height: Math.max(...boxes.map((b) => b.height)),
    mass: boxes.reduce((sum, b) => sum + b.mass, 0),
    moment: places.reduce((sum, p) => sum + p.box.mass * p.x, 0),
    places,
  };
}

/** One block on a stand over another, as reels stand over pumps. */
export function stacked(below: Block, above: Block): Block {
  if (above.places.length === 0) return below;
  if (below.places.length === 0) return above;
  const length = Math.max(below.length, above.length);
  const lift = below.height + GAP;
  const belowAt = (length - below.length) / 2;
  const aboveAt = (length - above.length) / 2;
  return {
    length,
    height: lift + above.height,
    mass: below.mass + above.mass,
    moment: momentAt(below, belowAt) + momentAt(above, aboveAt),
    places: [...placesAt(below, belowAt), ...placesAt(above, aboveAt, lift)],
  };
}

/** One block behind another. */
export function behind(front: Block, rear: Block): Block {
  if (front.places.length === 0) return rear;
  if (rear.places.length === 0) return front;
  const shift = front.length + GAP;
  return {
    length: shift + rear.length,
    height: Math.max(front.height, rear.height),
    mass: front.mass + rear.mass,
    moment: front.moment + momentAt(rear, shift),
    places: [...front.places, ...placesAt(rear, shift)],
  };
}

/** Σ m x of a block whose front stands at `start`. */
export function momentAt(block: Block, start: number): number {
  return block.moment + block.mass * start;
}

/** Places of a block whose front stands at `start`, lifted by `lift`. */
export function placesAt(block: Block, start: number, lift = 0): Block['places'] {
  return block.places.map(({ box, x, y, z }) => ({ box, x: x + start, y, z: z + lift }));
}
