import type { PartOf } from '../../catalogue/index.ts';
import { TONGUE_SHARE } from '../../physics/index.ts';
import { axleMiddle, standingOf } from './carrier-frame.ts';

type Carrier = PartOf<'carrier'>;

/** First moment of all masses of a rig with an amount of liquid: enough for its loads along the rig. */
export interface Along {
  readonly mass: number;
  /** Σ m x, x behind the front of the deck [kg m]. */
  readonly moment: number;
}

/** Tongue share that the automatic placement aims at when full: the middle of 10 to 15 %. */
const AIMED_SHARE = (TONGUE_SHARE.low + TONGUE_SHARE.high) / 2;

/** Place of the whole rig's centre of mass that suits the carrier best, full [m]; as far forward as can be where undefined. */
export function aimedCentre(carrier: Carrier): number | undefined {
  switch (standingOf(carrier)) {
    case 'coupled': {
      const coupler = carrier.coupler!.position;
      return coupler + (1 - AIMED_SHARE) * (axleMiddle(carrier) - coupler);
    }
    case 'axles': {
      const ratings = carrier.axles.reduce((sum, a) => sum + a.rating, 0);
      return carrier.axles.reduce((sum, a) => sum + a.position * a.rating, 0) / ratings;
    }
    case 'hitch':
      return undefined;
    case 'bed':
      return carrier.form === 'skid' ? carrier.deckLength / 2 : undefined;
  }
}

/** What the tongue's share counts in the imbalance of what is towed: outside its limits at each fill, and off the aim. */
const TOWED = { full: 10, half: 4, empty: 10, aim: 1 } as const;
/** What the place of the centre counts of other rigs. */
const STANDING = { full: 2, empty: 1 } as const;

/** How badly a rig is balanced, without unit: 0 is as aimed. Full counts most, then half, then empty. */
export function imbalance(carrier: Carrier, dry: Along, liquid: Along): number {
  const centre = (share: number): number =>
    (dry.moment + share * liquid.moment) / (dry.mass + share * liquid.mass);
  if (standingOf(carrier) === 'coupled') {
    const coupler = carrier.coupler!.position;
    const span = axleMiddle(carrier) - coupler;
    const tongue = (share: number): number => 1 - (centre(share) - coupler) / span;
    const out = (t: number): number => Math.max(0, TONGUE_SHARE.low - t, t - TONGUE_SHARE.high);
    return (
      TOWED.full * out(tongue(1)) +
      TOWED.half * out(tongue(0.5)) +
      TOWED.empty * Math.max(0, 0.03 - tongue(0)) +
      TOWED.aim * Math.abs(tongue(1) - AIMED_SHARE)
    );
  }
  const aimed = aimedCentre(carrier);
  const far = (share: number): number =>
    aimed === undefined ? centre(share) : Math.abs(centre(share) - aimed);
  return (STANDING.full * far(1) + STANDING.empty * far(0)) / carrier.deckLength;
}

/**
 * Most by which the imbalance changes when the rig's centre of mass moves by no more than so far, full, half full and empty.
 *
 * @param moves how far the centre moves along the rig at each fill [m]
 * @returns without unit, as the imbalance
 */
export function imbalanceMoved(
  carrier: Carrier,
  moves: { readonly full: number; readonly half: number; readonly empty: number },
): number {
  const { full, half, empty } = moves;
  if (standingOf(carrier) !== 'coupled')
    return (STANDING.full * full + STANDING.empty * empty) / carrier.deckLength;
  const weighed = (TOWED.full + TOWED.aim) * full + TOWED.half * half + TOWED.empty * empty;
  return weighed / Math.abs(axleMiddle(carrier) - carrier.coupler!.position);
}
