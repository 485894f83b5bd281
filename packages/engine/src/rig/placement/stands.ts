import type { PlacedPart } from './placed-part.ts';

/** Two parts may cut into each other's outside boxes by this much, since few parts are boxes [m]. */
export const TOUCH = 0.02;

/** How far two outside boxes cut into each other along the rig, across it and up [m]; negative where they do not meet. */
export function overlap(a: PlacedPart, b: PlacedPart): { along: number; across: number; up: number } {
  return {
    along: (a.length + b.length) / 2 - Math.abs(a.x - b.x),
    across: (a.width + b.width) / 2 - Math.abs(a.y - b.y),
    up: Math.min(a.z + a.height, b.z + b.height) - Math.max(a.z, b.z),
  };
}

/** Standing parts that lie under one part: it stands over them on a stand. */
export function partsUnder(part: PlacedPart, parts: readonly PlacedPart[]): PlacedPart[] {
  return parts.filter((other) => {
    if (other === part || other.on !== undefined || other.z >= part.z) return false;
    const { along, across, up } = overlap(part, other);
    return along > TOUCH && across > TOUCH && up <= TOUCH;
  });
}

/** What a part stands over, in words: "pump, engine and belt or gear"; undefined where it stands on the deck. */
export function underWords(part: PlacedPart, parts: readonly PlacedPart[]): string | undefined {
  const words = partsUnder(part, parts).map(({ kind }) =>
    kind === 'reduction' ? 'belt or gear' : kind.replace('-', ' '),
  );
  const last = words.pop();
  return last === undefined || words.length === 0 ? last : `${words.join(', ')} and ${last}`;
}
