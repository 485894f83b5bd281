import { addedAxleLoads, threePointAxleLoads } from '../../physics/index.ts';
import {
  centreAt,
  FILLS,
  hitchPlace,
  type Fill,
  type MassPoint,
  type PlacedPart,
  type SupportLoads,
} from '../placement/index.ts';
import type { ProofContext } from './context.ts';
import { carrierItem, loadedOf, type Loaded } from './loaded.ts';
import { SLOPE_START, tipOf } from './stability.ts';
import type { TipAngle } from './stability-working.ts';

/** Where everything stands and what rests where: what drawings and papers show. Lengths in m, masses in kg. */
export interface Placement {
  readonly carrier: {
    readonly item: string;
    readonly form: string;
    readonly deckLength: number;
    readonly deckWidth: number;
    readonly deckHeight: number;
    readonly grossRating: number;
    /** Outermost, with drawbar or hitch and wheels. */
    readonly size: { readonly length: number; readonly width: number; readonly height: number };
  };
  readonly parts: readonly PlacedPart[];
  /** Coupler and axles of the rig, or the axles of the vehicle that carries it when the brief tells them. */
  readonly supports: readonly SupportLoads[];
  readonly centre: Readonly<Record<Fill, MassPoint>>;
  /** Liquid that the loads are reckoned with. */
  readonly liquid: { readonly name: string; readonly density: number };
  /** Slope asked, and whether the brief gives it [rad]. */
  readonly slope: { readonly angle: number; readonly given: boolean };
  /** Absent while the vehicle's data are missing. */
  readonly tip?: TipAngle;
}

/** Undefined when the rig has no carrier or a size lies outside what can be reckoned; the promises say which. */
export function placementOf(context: ProofContext): Placement | undefined {
  try {
    const loaded = loadedOf(context);
    return loaded === undefined ? undefined : placement(context, loaded);
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

function placement(context: ProofContext, loaded: Loaded): Placement {
  const { rig } = loaded;
  const { deckLength, deckWidth, deckHeight, grossRating, form, size } = rig.carrier;
  const given = context.rig.brief.site.slope;
  const angle = given ?? SLOPE_START;
  const tip = tipOf(context, rig);
  return {
    carrier: { item: carrierItem(context), form, deckLength, deckWidth, deckHeight, grossRating, size },
    parts: rig.parts,
    supports: loaded.supports.length > 0 ? loaded.supports : vehicleSupports(context, loaded),
    centre: {
      full: centreAt(rig, FILLS.full),
      half: centreAt(rig, FILLS.half),
      empty: centreAt(rig, FILLS.empty),
    },
    liquid: { name: loaded.liquid, density: rig.density },
    slope: { angle, given: given !== undefined },
    ...('missing' in tip ? {} : { tip }),
  };
}

/** Axles of the tractor or the vehicle that carries the rig, where the brief tells what is needed. */
function vehicleSupports(context: ProofContext, { rig }: Loaded): SupportLoads[] {
  const c = context.rig.brief.carrier;
  const { frontAxleMass, rearAxleMass, wheelbase, rearAxleRating } = c;
  const hitch = rig.standing === 'hitch';
  if (frontAxleMass === undefined || rearAxleMass === undefined || wheelbase === undefined) return [];
  if (hitch ? c.ballToAxle === undefined : c.bedAheadOfAxle === undefined) return [];
  const rear = hitch ? hitchPlace(rig.carrier) - c.ballToAxle! : c.bedAheadOfAxle!;
  const at = (share: number): { front: number; rear: number } => {
    const { mass, x } = centreAt(rig, share);
    if (!hitch) {
      const added = addedAxleLoads(mass, wheelbase, x - rear);
      return { front: frontAxleMass + added.front, rear: rearAxleMass + added.rear };
    }
    return threePointAxleLoads({
      tractorMass: frontAxleMass + rearAxleMass,
      frontAxleUnladen: frontAxleMass,
      wheelbase,
      axleToHitch: c.ballToAxle!,
      hitchToImplement: Math.max(0, x - hitchPlace(rig.carrier)),
      implementMass: mass,
      ballastMass: c.ballast ?? 0,
      ballastAhead: c.ballastAhead ?? 0,
    });
  };
  const loads = (axle: 'front' | 'rear') => ({
    full: at(1)[axle],
    half: at(0.5)[axle],
    empty: at(0)[axle],
    byDuty: Object.fromEntries(context.duties.map(({ duty }) => [duty.id, at(duty.tankLevel)[axle]])),
  });
  const owner = hitch ? 'Tractor' : 'Vehicle';
  return [
    { id: 'vehicle-front', name: `${owner}, front axle`, x: rear - wheelbase, ...loads('front') },
    {
      id: 'vehicle-rear',
      name: `${owner}, rear axle`,
      x: rear,
      ...(rearAxleRating === undefined ? {} : { rating: rearAxleRating, setBy: 'axle' }),
      ...loads('rear'),
    },
  ];
}
