import type { PartOf } from '../../catalogue/index.ts';
import type { MassPoint } from './placed-part.ts';

type Carrier = PartOf<'carrier'>;

/** Share of a wheeled carrier's mass that is axles and wheels: common practice, no source. */
const WHEEL_SHARE = 0.4;

/** How a carrier stands: on a coupler and axles, on axles alone, on a tractor's hitch, or in a vehicle's bed. */
export type Standing = 'coupled' | 'axles' | 'hitch' | 'bed';

export function standingOf(carrier: Carrier): Standing {
  switch (carrier.form) {
    case 'three-point':
      return 'hitch';
    case 'skid':
    case 'utility-bed':
      return 'bed';
    case 'wagon':
      return carrier.axles.length >= 2 ? 'axles' : 'bed';
    case 'cart':
    case 'tandem-trailer':
      return carrier.axles.length > 0 && carrier.coupler !== undefined ? 'coupled' : 'bed';
  }
}

/** Middle of the axles behind the front of the deck [m]. */
export function axleMiddle(carrier: Carrier): number {
  return carrier.axles.reduce((sum, a) => sum + a.position, 0) / carrier.axles.length;
}

/** Lower hitch points of a three-point frame: the frame's outside length ahead of the deck's rear end [m]. */
export function hitchPlace(carrier: Carrier): number {
  return Math.min(0, carrier.deckLength - carrier.size.length);
}

/** The carrier's own mass: frame over its whole length, axles and wheels where they are. */
export function carrierMasses(carrier: Carrier): MassPoint[] {
  const railHeight = carrier.rail?.height ?? 0;
  const frameHeight = Math.max(0, carrier.deckHeight - railHeight / 2);
  const middle = carrier.deckLength - carrier.size.length / 2;
  const wheels = carrier.axles.length;
  const frame = { x: middle, y: 0, z: frameHeight };
  if (wheels === 0) return [{ mass: carrier.mass, ...frame }];
  return [
    { mass: carrier.mass * (1 - WHEEL_SHARE), ...frame },
    ...carrier.axles.map((a) => ({
      mass: (carrier.mass * WHEEL_SHARE) / wheels,
      x: a.position,
      y: 0,
      z: a.tyreDiameter / 2,
    })),
  ];
}
