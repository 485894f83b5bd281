import type { PartOf } from '../../catalogue/index.ts';
import type { Rig, RigItem } from '../rig-document.ts';
import { arrange, type DeckLoad, type Spot } from './arrange.ts';
import { boxesOf, type Box } from './blocks.ts';
import { carrierMasses } from './carrier-frame.ts';
import { piecesOf, type Piece } from './hosts.ts';
import type { PlacedPart } from './placed-part.ts';

/** Height of a boom or spray bar's frame above the ground: common practice, no source [m]. */
const BOOM_HEIGHT = 0.4;

/**
 * Every part of a rig on its carrier: automatic places by the carrier's form and the parts' sizes, replaced by the
 * coordinates that the rig document gives.
 *
 * Small parts ride on the part they belong to. What the bill adds to them is not among the masses: see `withFittings`.
 */
export function placeParts(rig: Rig, carrier: PartOf<'carrier'>, density: number): PlacedPart[] {
  const pieces = piecesOf(rig, density);
  const spots = new Map<string, Spot>();
  for (const spot of arrange(carrier, deckLoad(pieces, carrier, density))) spots.set(spot.item, spot);
  return pieces.map((piece) =>
    placedPart(piece, spots.get(piece.host), rig.items.get(piece.host)?.item.at, carrier),
  );
}

/** What pieces put on a deck, full of a liquid. */
export function deckLoad(pieces: readonly Piece[], carrier: PartOf<'carrier'>, density: number): DeckLoad {
  const boxes = boxesOf(pieces);
  const of = (...kinds: string[]): Box[] =>
    pieces.flatMap((p) => (kinds.includes(p.part.kind) ? (boxes.get(p.item.id) ?? []) : []));
  const tank = pieces.find((p) => p.part.kind === 'tank')?.part;
  return {
    tanks: of('tank'),
    machinery: of('engine', 'reduction', 'pump', 'motor-pump', 'battery'),
    reels: of('reel'),
    booms: of('boom'),
    ahead: of('pto-drive'),
    own: carrierMasses(carrier),
    liquid: tank?.kind === 'tank' ? tank.volume * density : 0,
  };
}

/**
 * Placed parts with the adapters and small things of the bill, which are counted with the pump: they sit about it.
 *
 * @param mass of all of them [kg]
 */
export function withFittings(parts: readonly PlacedPart[], mass: number): PlacedPart[] {
  const machine = parts.find((p) => p.kind === 'pump' || p.kind === 'motor-pump') ?? parts[0];
  return parts.map((p) => (p === machine ? { ...p, mass: p.mass + mass } : p));
}

type Writable<T> = { -readonly [K in keyof T]: T[K] };

/** A part at its automatic spot, or where it or the part it rides on is given a place. */
function placedPart(
  { item, part, mass, host }: Piece,
  spot: Spot | undefined,
  hostAt: RigItem['at'],
  carrier: PartOf<'carrier'>,
): PlacedPart {
  const at = (axis: 'x' | 'y' | 'z') => item.at?.[axis] ?? hostAt?.[axis];
  const given = at('z');
  const underside = part.kind === 'boom' ? BOOM_HEIGHT : carrier.deckHeight + (spot?.z ?? 0);
  const placed: Writable<PlacedPart> = {
    item: item.id,
    kind: part.kind,
    name: part.name,
    mass,
    x: at('x') ?? spot?.x ?? 0,
    y: at('y') ?? spot?.y ?? 0,
    // A place below the ground is told by the promise that everything fits; no mass may lie there.
    z: Math.max(0, given === undefined ? underside : carrier.deckHeight + given),
    length: part.size.length,
    width: part.size.width,
    height: part.size.height,
    given: item.at !== undefined,
  };
  if (host !== item.id) placed.on = host;
  return placed;
}
