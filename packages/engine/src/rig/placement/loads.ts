import type { PartOf } from '../../catalogue/index.ts';
import {
  brakingTongueLoad,
  couplerClass,
  STANDARD_GRAVITY,
  trailerLoads,
  twoSupportLoads,
} from '../../physics/index.ts';
import { axleMiddle, carrierMasses, hitchPlace, standingOf, type Standing } from './carrier-frame.ts';
import { massPoint, together, type MassPoint, type PlacedPart } from './placed-part.ts';
import { surgeForward, tankLiquid } from './tank-liquid.ts';

type Carrier = PartOf<'carrier'>;

export const FILLS = { full: 1, half: 0.5, empty: 0 } as const;
export type Fill = keyof typeof FILLS;

/** Deceleration of hard braking with a trailer: common practice, no source [m/s2]. */
const HARD_BRAKING = 0.5 * STANDARD_GRAVITY;

/** A place where the rig rests, with its loads [kg]. */
export interface SupportLoads {
  readonly id: string;
  readonly name: string;
  /** Behind the front of the deck [m]. */
  readonly x: number;
  /** Lowest rating of what carries here, and what sets it. Absent where no rating is known. */
  readonly rating?: number;
  readonly setBy?: string;
  readonly full: number;
  readonly half: number;
  readonly empty: number;
  /** With the tank as each duty has it, by duty id. */
  readonly byDuty: Readonly<Record<string, number>>;
  /** Full, in hard braking. */
  readonly braking?: number;
  /** The wheels of an axle of the rig itself. */
  readonly wheels?: AxleWheels;
}

/** Wheels of one axle: where they stand and what those of one side may carry. */
export interface AxleWheels {
  /** Between the middles of left and right wheels, and the tyre's outside [m]. */
  readonly track: number;
  readonly diameter: number;
  /** Of all tyres of one side [kg]. */
  readonly sideRating: number;
}

/**
 * What the left and the right wheels of an axle carry.
 *
 * @param load on the axle [kg]
 * @param y place of the rig's centre of mass to the left of its middle line [m]
 * @param track between the middles of the wheels [m]
 * @source statics: moments about one wheel; the frame taken as stiff
 */
export function wheelLoads(load: number, y: number, track: number): { left: number; right: number } {
  const left = load * (0.5 + y / track);
  return { left, right: load - left };
}

/** A loaded rig: where its mass is at any fill, and what rests where. */
export interface LoadedRig {
  readonly carrier: Carrier;
  readonly standing: Standing;
  readonly parts: readonly PlacedPart[];
  readonly tank: PartOf<'tank'>;
  readonly tankAt: PlacedPart;
  /** Density of the heaviest liquid that the duties spray [kg/m3]. */
  readonly density: number;
  /** Everything but the tank's liquid. */
  readonly dry: MassPoint;
}

export function loadedRig(
  carrier: Carrier,
  parts: readonly PlacedPart[],
  tank: PartOf<'tank'>,
  tankAt: PlacedPart,
  density: number,
): LoadedRig {
  return {
    carrier,
    standing: standingOf(carrier),
    parts,
    tank,
    tankAt,
    density,
    dry: together([...carrierMasses(carrier), ...parts.map(massPoint)]),
  };
}

/** The tank's liquid at a share of its rated volume. */
export function liquidPoint(rig: LoadedRig, share: number): MassPoint {
  const { tank, tankAt } = rig;
  const { volume, centroid } = tankLiquid(tank, share, 0);
  return {
    mass: volume * rig.density,
    x: tankAt.x,
    y: tankAt.y,
    z: tankAt.z + shellAbove(rig) + centroid,
  };
}

/** The inside's lowest point above the tank's underside: what its outside height is more than the inside. */
export function shellAbove({ tank, tankAt }: LoadedRig): number {
  const { shape } = tank;
  const inside =
    shape.form === 'lying-round'
      ? shape.diameter
      : shape.form === 'upright-round'
        ? shape.height + shape.coneHeight
        : shape.height;
  return Math.max(0, (tankAt.height - inside) / 2);
}

const centres = new WeakMap<LoadedRig, Map<number, MassPoint>>();

/** Centre of mass of the whole rig at a share of the tank. */
export function centreAt(rig: LoadedRig, share: number): MassPoint {
  let known = centres.get(rig);
  if (known === undefined) centres.set(rig, (known = new Map<number, MassPoint>()));
  let centre = known.get(share);
  if (centre === undefined) known.set(share, (centre = together([rig.dry, liquidPoint(rig, share)])));
  return centre;
}

/** Loads where the rig rests on the ground or on its tow vehicle; empty for a rig that a vehicle carries. */
export function supportLoads(
  rig: LoadedRig,
  duties: readonly { readonly id: string; readonly tankLevel: number }[],
): SupportLoads[] {
  const { carrier } = rig;
  if (rig.standing === 'coupled') {
    const brakingTongue = tongueAt(rig, 1) + brakingTransfer(rig, 1);
    const coupler = carrier.coupler!;
    return [
      {
        id: 'coupler',
        name: 'Coupler',
        x: coupler.position,
        ...tongueRating(coupler.rating),
        ...loadsOf(duties, (share) => tongueAt(rig, share)),
        braking: brakingTongue,
      },
      ...carrier.axles.map((axle, i) => ({
        id: `axle-${i + 1}`,
        name: carrier.axles.length === 1 ? 'Axle' : `Axle ${i + 1}`,
        x: axle.position,
        ...ratingOf(axle),
        wheels: wheelsOf(axle),
        ...loadsOf(duties, (share) => axlesAt(rig, share) / carrier.axles.length),
        braking: (centreAt(rig, 1).mass - brakingTongue) / carrier.axles.length,
      })),
    ];
  }
  if (rig.standing === 'axles') {
    const front = carrier.axles[0]!;
    const rear = carrier.axles[carrier.axles.length - 1]!;
    const at = (share: number) => {
      const centre = centreAt(rig, share);
      return twoSupportLoads([centre.mass], [centre.x], front.position, rear.position);
    };
    const moved =
      (centreAt(rig, 1).mass * (HARD_BRAKING / STANDARD_GRAVITY) * centreAt(rig, 1).z) /
      (rear.position - front.position);
    return [
      {
        id: 'axle-1',
        name: 'Front axle',
        x: front.position,
        ...ratingOf(front),
        wheels: wheelsOf(front),
        ...loadsOf(duties, (share) => at(share).front),
        braking: at(1).front + moved,
      },
      {
        id: 'axle-2',
        name: 'Rear axle',
        x: rear.position,
        ...ratingOf(rear),
        wheels: wheelsOf(rear),
        ...loadsOf(duties, (share) => at(share).rear),
        braking: at(1).rear - moved,
      },
    ];
  }
  return [];
}

function loadsOf(
  duties: readonly { readonly id: string; readonly tankLevel: number }[],
  at: (share: number) => number,
): Pick<SupportLoads, 'full' | 'half' | 'empty' | 'byDuty'> {
  return {
    full: at(FILLS.full),
    half: at(FILLS.half),
    empty: at(FILLS.empty),
    byDuty: Object.fromEntries(duties.map((d) => [d.id, at(d.tankLevel)])),
  };
}

/** What may rest on a coupler, by the class of its rating; unknown above the classes. */
function tongueRating(rating: number): { rating?: number; setBy?: string } {
  const known = couplerClass(rating);
  return known.class === 0 ? {} : { rating: known.maxTongue, setBy: "coupler's class" };
}

function wheelsOf(axle: Carrier['axles'][number]): AxleWheels {
  return {
    track: axle.track,
    diameter: axle.tyreDiameter,
    sideRating: axle.tyreRating * Math.max(1, axle.tyres / 2),
  };
}

function ratingOf(axle: Carrier['axles'][number]): { rating: number; setBy: string } {
  const tyres = axle.tyreRating * axle.tyres;
  return tyres < axle.rating ? { rating: tyres, setBy: 'tyres' } : { rating: axle.rating, setBy: 'axle' };
}

/** Distance of the axles' middle behind the coupler. */
export function couplerToAxles(rig: LoadedRig): number {
  return axleMiddle(rig.carrier) - rig.carrier.coupler!.position;
}

function towed(rig: LoadedRig, share: number) {
  const centre = centreAt(rig, share);
  return trailerLoads([centre.mass], [centre.x - rig.carrier.coupler!.position], couplerToAxles(rig));
}

/** Load on the coupler; negative when the tongue lifts. */
export function tongueAt(rig: LoadedRig, share: number): number {
  return towed(rig, share).tongue;
}

function axlesAt(rig: LoadedRig, share: number): number {
  return towed(rig, share).axles;
}

/** What hard braking adds to the coupler: the inertia of the whole rig, and the liquid that runs forward. */
export function brakingTransfer(rig: LoadedRig, share: number): number {
  const { carrier, tankAt } = rig;
  const surge = surgeForward(rig.tank, share, Math.atan(HARD_BRAKING / STANDARD_GRAVITY));
  const liquid = liquidPoint(rig, share);
  const centre = together([rig.dry, { ...liquid, z: tankAt.z + shellAbove(rig) + surge.height }]);
  const brakes = carrier.brakes ?? 'none';
  const inertia = brakingTongueLoad(
    centre.mass,
    centre.z,
    couplerToAxles(rig),
    HARD_BRAKING,
    carrier.coupler!.height,
    brakes === 'electric' || brakes === 'hydraulic',
  );
  return inertia + (liquid.mass * surge.forward) / couplerToAxles(rig);
}

/** Centre of the rig behind a tractor's lower hitch points. */
export function behindHitch(rig: LoadedRig, share: number): number {
  return centreAt(rig, share).x - hitchPlace(rig.carrier);
}
