import type { PartOf } from '../../catalogue/index.ts';
import { couplerClass, TONGUE_SHARE } from '../../physics/index.ts';
import {
  arrangements,
  axleMiddle,
  boxesOf,
  carrierMasses,
  deckLoad,
  piecesOf,
  standingOf,
  tankLiquid,
} from '../placement/index.ts';
import { partRig } from './part-rig.ts';
import type { PartAt, SearchSpace } from './space.ts';

/** Parts on which others ride that may not be known yet. */
const GROWING: ReadonlySet<string> = new Set(['tank', 'pump', 'motor-pump']);
/** Share of a deck's length by which parts may stand out over it, as the promise on it has it. */
const OVERHANG = 0.05;
/** For the little that balance moves the tank with what is added to it. */
const HAIR = 2e-3;

/** What weighs on a deck along it: mass and first moment [kg, kg m]. */
interface Along {
  mass: number;
  moment: number;
}

/**
 * Most spare of axles, wheels and tongue that a rig with some parts can have, full; without end where its carrier does not
 * stand on axles of its own.
 *
 * The parts stand as the proof would put them, in any of its orders: which of them it takes may hang on what is not known
 * yet. That is only mass about the pump and in the tank: in front of the support behind it, mass adds to the load of the
 * one ahead, wherever balance puts the tank; and the share on the tongue can only move towards that of the places where
 * mass is added. Batteries take room, so each that the space has is tried where one may be needed.
 */
export function weightSpare(space: SearchSpace, partAt: PartAt, density: number): number {
  const carrier = partAt('carrier');
  if (carrier?.kind !== 'carrier') return Infinity;
  const standing = standingOf(carrier);
  if (standing !== 'coupled' && standing !== 'axles') return Infinity;
  const slots = space.layout.slots.map((s) => s.id);
  const batteries = space.slots.find((s) => s.id === 'battery')?.options ?? [undefined];
  const ruled = batteries.length > 1 && space.slots.some((s) => s.id === 'engine' || s.id === 'reel');
  const tank = partAt('tank');
  const liquid = tank?.kind === 'tank' ? tankLiquid(tank, 1, 0).volume * density : 0;
  let most = -1;
  for (const battery of batteries) {
    if (ruled && (battery !== undefined) !== needsBattery(partAt)) continue;
    const at: PartAt = (slot) => (slot === 'battery' ? battery : partAt(slot));
    const pieces = piecesOf(partRig(space, at, slots, space.layout.lines), density);
    const boxes = boxesOf(pieces);
    const load = deckLoad(pieces, carrier, density);
    for (const { spots } of arrangements(carrier, load)) {
      const whole: Along = { mass: 0, moment: 0 };
      const add = (mass: number, x: number) => {
        whole.mass += mass;
        whole.moment += mass * x;
      };
      for (const own of carrierMasses(carrier)) add(own.mass, own.x);
      const grows: number[] = [];
      let [front, rear] = [0, carrier.deckLength];
      for (const spot of spots()) {
        const { kind, size } = pieces.find((p) => p.item.id === spot.item)!.part;
        if (kind !== 'boom' && kind !== 'pto-drive') {
          front = Math.min(front, spot.x - size.length / 2);
          rear = Math.max(rear, spot.x + size.length / 2);
        }
        add(boxes.get(spot.item)!.mass, spot.x);
        if (spot.item === 'tank') add(liquid, spot.x);
        if (GROWING.has(kind)) grows.push(spot.x);
      }
      const spare =
        standing === 'axles' ? axlesSpare(carrier, whole, grows) : tongueSpare(carrier, whole, grows);
      const room = carrier.deckLength * (1 + OVERHANG);
      most = Math.max(most, Math.min(spare, 1 - (rear - front) / room));
    }
  }
  return most + HAIR;
}

function needsBattery(partAt: PartAt): boolean {
  const [engine, reel] = [partAt('engine'), partAt('reel')];
  return (
    (engine?.kind === 'engine' && engine.start === 'electric') ||
    (reel?.kind === 'reel' && reel.rewind === 'electric')
  );
}

/** Loads of a front and a rear axle; what comes yet takes of one only beyond the other, and no more than both may carry. */
function axlesSpare({ axles }: PartOf<'carrier'>, { mass, moment }: Along, grows: readonly number[]): number {
  const [front, rear] = [axles[0]!, axles[axles.length - 1]!];
  const span = rear.position - front.position;
  const atRear = (moment - mass * front.position) / span;
  const more = Math.max(0, front.rating + rear.rating - mass);
  const taken = (beyond: (x: number) => number) => (more * Math.max(0, ...grows.map(beyond))) / span;
  return Math.min(
    axleSpare(front, mass - atRear - taken((x) => x - rear.position)),
    axleSpare(rear, atRear - taken((x) => front.position - x)),
  );
}

/** An axle with its tyres, of which those of one side carry at least half. */
function axleSpare(axle: PartOf<'carrier'>['axles'][number], load: number): number {
  const tyres = axle.tyreRating * axle.tyres;
  const side = axle.tyreRating * Math.max(1, axle.tyres / 2);
  return Math.min(1 - load / Math.min(axle.rating, tyres), 1 - load / 2 / side);
}

/** Tongue and equalised axles of what is towed. */
function tongueSpare(carrier: PartOf<'carrier'>, { mass, moment }: Along, grows: readonly number[]): number {
  const coupler = carrier.coupler!;
  const span = axleMiddle(carrier) - coupler.position;
  const shareAt = (x: number) => 1 - (x - coupler.position) / span;
  const share = shareAt(moment / mass);
  const shares = [share, ...grows.map(shareAt)];
  const { low, high } = TONGUE_SHARE;
  const [least, greatest] = [Math.min(...shares), Math.max(...shares)];
  let spare = Math.min((greatest - low) / low, (high - least) / high);
  if (grows.every((x) => shareAt(x) >= 0)) {
    const { maxTongue, class: known } = couplerClass(coupler.rating);
    if (known !== 0) spare = Math.min(spare, 1 - (share * mass) / maxTongue);
  }
  if (grows.every((x) => x >= coupler.position)) {
    const each = ((1 - share) * mass) / carrier.axles.length;
    for (const axle of carrier.axles) spare = Math.min(spare, axleSpare(axle, each));
  }
  return spare;
}
