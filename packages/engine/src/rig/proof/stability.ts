import { LEAST_TANK_TRUCK_ROLL, rollStability, threeSupportTipAngle } from '../../physics/index.ts';
import { couplerToAxles, liquidPoint, shellAbove, tankLiquid, type LoadedRig } from '../placement/index.ts';
import { compared, unknown, type RigPromise } from '../promise.ts';
import { say, type ProofContext } from './context.ts';
import { carrierItem, loadedOf } from './loaded.ts';
import { lastLiquidPromises } from './stability-last-liquid.ts';
import { bendSteps, tipSteps, type TipAngle } from './stability-working.ts';

/** Slope that a rig must stand across when the brief names none: start value of ours [rad]. */
export const SLOPE_START = (15 * Math.PI) / 180;

/** Fills that are tried: a part-full tank may tip sooner than a full one. */
const TRIED = [1, 0.75, 0.5, 0.25, 0] as const;

/** Stays upright on the slope, holds a bend on the road, and still draws its last liquid there. */
export function stabilityPromises(context: ProofContext): RigPromise[] {
  const loaded = loadedOf(context);
  if (loaded === undefined) return [];
  const given = context.rig.brief.site.slope;
  const slope = given ?? SLOPE_START;
  const told = {
    id: 'stability:slope',
    kind: 'stability' as const,
    sentence: `Stays upright across a slope of ${say(context, slope, 'angle')}`,
    items: [carrierItem(context), loaded.rig.tankAt.item],
    method: 'static tip angle at the worst fill, liquid where it acts on the slope',
    source:
      'three-dimensional statics, T/2h; liquid of a round tank at its axis: identity of ship stability texts; rigid tyres and springs',
  };
  const asked = { value: slope, dimension: 'angle' as const };
  const tip = tipOf(context, loaded.rig);
  const upright: RigPromise =
    'missing' in tip
      ? unknown({ ...told, cause: `ask the customer for the vehicle's ${tip.missing.join(', ')}` }, asked)
      : compared(
          {
            ...told,
            cause: `${fillName(tip.fill)}; centre of mass ${say(context, tip.height, 'length')} up on a track of ${say(context, tip.track, 'length')}${given === undefined ? '; the slope is a start value of ours, ask the customer' : ''}`,
            working: tipSteps(tip, slope),
          },
          asked,
          { value: tip.angle, dimension: 'angle' },
          'at-least',
        );
  return [
    upright,
    ...('missing' in tip ? [] : bendPromises(context, loaded.rig, tip)),
    ...lastLiquidPromises(context, loaded),
  ];
}

function fillName(fill: number): string {
  return fill === 1 ? 'when full' : fill === 0 ? 'when empty' : `worst at ${Math.round(fill * 100)} % full`;
}

/** On the road: the sideways pull in a bend at which it would roll, as regulators ask of tank trucks. */
function bendPromises(context: ProofContext, rig: LoadedRig, tip: TipAngle): RigPromise[] {
  if (rig.carrier.form !== 'tandem-trailer') return [];
  return [
    compared(
      {
        id: 'stability:bend',
        kind: 'stability',
        sentence: 'Keeps its wheels down in a bend',
        cause: `rolls at ${Math.tan(tip.angle).toFixed(2)} g of sideways pull, ${fillName(tip.fill)}`,
        items: [carrierItem(context), rig.tankAt.item],
        method: 'static roll threshold against the least asked of tank trucks',
        source: '0.40 g: tank truck roll stability study, National Research Council Canada; T/2h',
        working: bendSteps(tip),
      },
      { value: LEAST_TANK_TRUCK_ROLL, dimension: 'ratio' },
      { value: Math.tan(tip.angle), dimension: 'ratio' },
      'at-least',
    ),
  ];
}

type Tips = TipAngle | { readonly missing: readonly string[] };

const computed = new WeakMap<LoadedRig, Tips>();

/** Tip angle of a proof's rig, reckoned once: across the slope that the brief names, else our start value. */
export function tipOf(context: ProofContext, rig: LoadedRig): Tips {
  let tips = computed.get(rig);
  if (tips === undefined)
    computed.set(rig, (tips = tipAngle(context, rig, context.rig.brief.site.slope ?? SLOPE_START)));
  return tips;
}

/** Smallest tip angle over the fills, with the liquid as it lies on the slope; or what the brief must tell first. */
export function tipAngle(context: ProofContext, rig: LoadedRig, slope: number): Tips {
  const vehicle = rig.standing === 'hitch' || rig.standing === 'bed' ? vehicleOf(context, rig) : undefined;
  if (vehicle !== undefined && 'missing' in vehicle) return vehicle;
  let worst: TipAngle | undefined;
  for (const fill of TRIED) {
    const centre = rollCentre(rig, fill, slope);
    const tip =
      vehicle === undefined ? tipOfRig(rig, centre) : tipOfVehicle(vehicle, centre, rig.standing === 'hitch');
    if (worst === undefined || tip.angle < worst.angle) worst = { ...tip, fill };
  }
  return worst!;
}

interface RollCentre extends Pick<TipAngle, 'made'> {
  readonly mass: number;
  readonly x: number;
  readonly z: number;
}

/** Centre of mass with the liquid at the height where it acts in roll. */
function rollCentre(rig: LoadedRig, fill: number, slope: number): RollCentre {
  const liquid = liquidPoint(rig, fill);
  const height = rig.tankAt.z + shellAbove(rig) + tankLiquid(rig.tank, fill, slope).rollHeight;
  const mass = rig.dry.mass + liquid.mass;
  return {
    mass,
    x: (rig.dry.mass * rig.dry.x + liquid.mass * liquid.x) / mass,
    z: Math.max(0.05, (rig.dry.mass * rig.dry.z + liquid.mass * height) / mass),
    made: [
      { name: 'empty rig', mass: rig.dry.mass, height: rig.dry.z },
      { name: 'liquid', mass: liquid.mass, height },
    ],
  };
}

type Tip = Omit<TipAngle, 'fill'>;

/** On its own wheels: three supports with a ball that resists no roll, else four wheels. */
function tipOfRig(rig: LoadedRig, { mass, x, z, made }: RollCentre): Tip {
  const track = Math.min(...rig.carrier.axles.map((a) => a.track));
  const four = { angle: rollStability(track, z).tiltAngle, height: z, track, mass, made };
  if (rig.standing !== 'coupled') return four;
  const coupler = rig.carrier.coupler!;
  const span = couplerToAxles(rig);
  const ahead = x - coupler.position;
  // With the centre behind the axles the tongue lifts and the wheels alone hold it.
  if (ahead >= span || ahead <= 0.01) return four;
  // So low that the line from ball to wheel lies above it: the wheels alone decide.
  if (span * (z - coupler.height) + coupler.height * ahead <= 0) return four;
  return {
    ...four,
    angle: Math.min(Math.PI / 2, threeSupportTipAngle(track, span, ahead, z, coupler.height)),
    support: { toAxle: span, toCentre: ahead, height: coupler.height },
  };
}

interface Vehicle {
  readonly mass: number;
  readonly centreHeight: number;
  readonly track: number;
  readonly wheelbase: number;
  /** Its centre ahead of the rear axle [m]. */
  readonly ahead: number;
  /** Height of the rig's ground above the vehicle's, and the rig's deck front behind the rear axle [m]. */
  readonly lift: number;
  readonly deckFront: number;
}

function vehicleOf(context: ProofContext, rig: LoadedRig): Vehicle | { readonly missing: readonly string[] } {
  const c = context.rig.brief.carrier;
  const hitch = rig.standing === 'hitch';
  const missing = [
    ...(c.frontAxleMass === undefined ? ['front axle weight'] : []),
    ...(c.rearAxleMass === undefined ? ['rear axle weight'] : []),
    ...(c.track === undefined ? ['track'] : []),
    ...(c.centreHeight === undefined ? ['height of its centre of mass'] : []),
    ...(c.wheelbase === undefined ? ['wheelbase'] : []),
    ...(hitch && c.ballToAxle === undefined ? ['distance from rear axle to hitch balls'] : []),
    ...(!hitch && c.bedHeight === undefined ? ['height of the bed'] : []),
    ...(!hitch && c.bedAheadOfAxle === undefined ? ['front end of the bed ahead of the rear axle'] : []),
  ];
  if (missing.length > 0) return { missing };
  const mass = c.frontAxleMass! + c.rearAxleMass!;
  return {
    mass,
    centreHeight: c.centreHeight!,
    track: c.track!,
    wheelbase: c.wheelbase!,
    ahead: (c.frontAxleMass! * c.wheelbase!) / mass,
    // A mounted rig is carried half a foot clear of where it stands: common practice, no source.
    lift: hitch ? 0.15 : c.bedHeight!,
    deckFront: hitch
      ? c.ballToAxle! + (rig.carrier.size.length - rig.carrier.deckLength)
      : -c.bedAheadOfAxle!,
  };
}

/** Vehicle and rig as one; a tractor's front axle swings about a pin, so that its front is one support, taken at the ground. */
function tipOfVehicle(vehicle: Vehicle, rig: RollCentre, swinging: boolean): Tip {
  const mass = vehicle.mass + rig.mass;
  const height = (vehicle.mass * vehicle.centreHeight + rig.mass * (rig.z + vehicle.lift)) / mass;
  const { track, wheelbase } = vehicle;
  const ahead = (vehicle.mass * vehicle.ahead - rig.mass * (vehicle.deckFront + rig.x)) / mass;
  const made = [
    { name: 'vehicle', mass: vehicle.mass, height: vehicle.centreHeight },
    ...rig.made.map((m) => ({ ...m, height: m.height + vehicle.lift })),
  ];
  const four = { angle: rollStability(track, height).tiltAngle, height, track, mass, made };
  const fromFront = wheelbase - ahead;
  if (!swinging || fromFront >= wheelbase || fromFront <= 0.01) return four;
  return {
    ...four,
    angle: threeSupportTipAngle(track, wheelbase, fromFront, height, 0),
    support: { toAxle: wheelbase, toCentre: fromFront, height: 0 },
  };
}
