import type { PartOf } from '../../catalogue/index.ts';
import { first, type Rig, type RigItem } from '../rig-document.ts';
import { arrange, type Spot } from './arrange.ts';
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
 * Fittings and small parts ride on the part they belong to. `fittings` is the mass of all adapters of the bill [kg].
 */
export function placeParts(
  rig: Rig,
  carrier: PartOf<'carrier'>,
  density: number,
  fittings: number,
): PlacedPart[] {
  const pieces = piecesOf(rig, density);
  const boxes = boxesOf(pieces);
  const tank = first(rig, 'tank');
  const of = (...kinds: string[]): Box[] =>
    pieces.flatMap((p) => (kinds.includes(p.part.kind) ? (boxes.get(p.item.id) ?? []) : []));
  const spots = new Map(
    arrange(carrier, {
      tanks: of('tank'),
      machinery: of('engine', 'reduction', 'pump', 'motor-pump', 'battery'),
      reels: of('reel'),
      booms: of('boom'),
      ahead: of('pto-drive'),
      own: carrierMasses(carrier),
      liquid: (tank?.part.volume ?? 0) * density,
    }).map((spot) => [spot.item, spot]),
  );
  const machine = machineOf(pieces);
  return pieces.map((piece) =>
    placedPart(
      piece,
      spots.get(piece.host),
      { ...rig.items.get(piece.host)?.item.at, ...piece.item.at },
      carrier,
      piece.item.id === machine ? fittings : 0,
    ),
  );
}

/** The part that the adapters of the bill are counted with: they sit about the pump. */
function machineOf(pieces: readonly Piece[]): string | undefined {
  return (pieces.find((p) => p.part.kind === 'pump' || p.part.kind === 'motor-pump') ?? pieces[0])?.item.id;
}

/** A part at its automatic spot, or where it or the part it rides on is given a place. */
function placedPart(
  { item, part, mass, host }: Piece,
  spot: Spot = { item: host, x: 0, y: 0, z: 0 },
  at: NonNullable<RigItem['at']>,
  carrier: PartOf<'carrier'>,
  fittings: number,
): PlacedPart {
  const underside = part.kind === 'boom' ? BOOM_HEIGHT : carrier.deckHeight + spot.z;
  return {
    item: item.id,
    kind: part.kind,
    name: part.name,
    mass: mass + fittings,
    x: at.x ?? spot.x,
    y: at.y ?? spot.y,
    // A place below the ground is told by the promise that everything fits; no mass may lie there.
    z: Math.max(0, at.z === undefined ? underside : carrier.deckHeight + at.z),
    length: part.size.length,
    width: part.size.width,
    height: part.size.height,
    ...(host === item.id ? {} : { on: host }),
    given: item.at !== undefined,
  };
}
