import type { Kind } from '../../catalogue/index.ts';

/** A part where it stands: x behind the front of the deck, y to the left of the middle line, z above the ground [m]. */
export interface PlacedPart {
  readonly item: string;
  readonly kind: Kind;
  readonly name: string;
  /** As it works: all pieces, with fuel and the liquid in hoses [kg]. The liquid in the tank is not in it. */
  readonly mass: number;
  /** Middle of its plan, and its underside. */
  readonly x: number;
  readonly y: number;
  readonly z: number;
  /** Outside size along the rig, across it and up. */
  readonly length: number;
  readonly width: number;
  readonly height: number;
  /** The part it rides on, when it takes no room of its own. */
  readonly on?: string;
  /** Whether the rig document gives its place. */
  readonly given: boolean;
}

/** A mass at a point of the rig. */
export interface MassPoint {
  readonly mass: number;
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** Centre of a part's mass: the middle of its outside size. */
export function massPoint({ mass, x, y, z, height }: PlacedPart): MassPoint {
  return { mass, x, y, z: z + height / 2 };
}

/** All masses in one point. */
export function together(points: readonly MassPoint[]): MassPoint {
  let [mass, x, y, z] = [0, 0, 0, 0];
  for (const p of points) {
    mass += p.mass;
    x += p.mass * p.x;
    y += p.mass * p.y;
    z += p.mass * p.z;
  }
  return mass > 0 ? { mass, x: x / mass, y: y / mass, z: z / mass } : { mass: 0, x: 0, y: 0, z: 0 };
}
