import {
  AXLE_SHARE_RULE,
  largestMountedMass,
  leastFrontBallast,
  leastLiftForce,
  liftAtDistance,
  STANDARD_GRAVITY,
  threePointAxleLoads,
  threePointAxleLoadsOnGrade,
  type MountedTractor,
} from '../../physics/index.ts';
import { behindHitch, centreAt, FILLS } from '../placement/index.ts';
import { compared, is, unknown, worked, type RigPromise, type Step } from '../promise.ts';
import { say, type ProofContext } from './context.ts';
import { carrierItem, type Loaded } from './loaded.ts';
import { pinPromise } from './weight-pins.ts';

/** Length of the lower links when the brief does not tell it: start value, common practice, no source [m]. */
const LOWER_LINK_START = 0.76;
/** Where the trade states what a hitch lifts: 24 in behind the balls [m]. */
const LIFT_TEST = 0.61;

const LIFT = {
  id: 'weight:lift',
  kind: 'weight' as const,
  sentence: 'The tractor lifts the rig when full',
  method: 'lift at the real distance behind the hitch balls',
  source:
    "moment about the lower links, own conservative model; the lift at 24 in is the customer's word; the category of a hitch proves no lift",
};

/** What a tractor must lift and keep on its front wheels. The category of the hitch never counts as proof. */
export function hitchPromises(context: ProofContext, loaded: Loaded): RigPromise[] {
  return [liftPromise(context, loaded), pinPromise(context, loaded), ...axlePromises(context, loaded)];
}

function liftPromise(context: ProofContext, { rig }: Loaded): RigPromise {
  const { liftAt24in, lowerLinkLength, ptoPower } = context.rig.brief.carrier;
  const mass = centreAt(rig, 1).mass;
  const distance = Math.max(0, behindHitch(rig, 1));
  const working: Step[] = [
    { text: 'rig when full', figure: { value: mass, dimension: 'mass' } },
    { text: 'its centre behind the hitch balls', figure: { value: distance, dimension: 'length' } },
    ...(lowerLinkLength === undefined
      ? [
          {
            text: 'lower links, start value of ours',
            figure: { value: LOWER_LINK_START, dimension: 'length' as const },
          },
        ]
      : []),
  ];
  const told = { ...LIFT, items: [carrierItem(context), rig.tankAt.item], working };
  const asked = { value: mass, dimension: 'mass' as const };
  if (liftAt24in === undefined) {
    const least =
      ptoPower === undefined
        ? ''
        : `; the standard asks no more than ${say(context, leastLiftForce(ptoPower) / STANDARD_GRAVITY, 'mass')} of a tractor with ${say(context, ptoPower, 'power')} at the PTO`;
    return unknown(
      { ...told, cause: `ask the dealer for the tractor's lift 24 in behind the balls${least}` },
      asked,
    );
  }
  const links = lowerLinkLength ?? LOWER_LINK_START;
  const lift = liftAtDistance(liftAt24in, links, distance);
  const sum = worked(
    'what it lifts there',
    is(lift, 'mass'),
    '{lift at 24 in} × ({lower links} + {24 in}) / ({lower links} + max({centre behind the balls}, {24 in}))',
    {
      'lift at 24 in': is(liftAt24in, 'mass'),
      'lower links': is(links, 'length'),
      '24 in': is(LIFT_TEST, 'length'),
      'centre behind the balls': is(distance, 'length'),
    },
  );
  return compared(
    {
      ...told,
      working: [...working, sum],
      cause: `lifts ${say(context, liftAt24in, 'mass')} at 24 in; the rig's centre is ${say(context, distance, 'length')} behind the balls`,
    },
    asked,
    { value: lift, dimension: 'mass' },
    'at-least',
  );
}

/** The brief's tractor with the rig at a fill; undefined with what is missing when the customer has not told all. */
function tractorOf(
  context: ProofContext,
  { rig }: Loaded,
  share: number,
): { tractor: MountedTractor } | { missing: string[] } {
  const c = context.rig.brief.carrier;
  const missing = [
    ...(c.frontAxleMass === undefined ? ['front axle weight'] : []),
    ...(c.rearAxleMass === undefined ? ['rear axle weight'] : []),
    ...(c.wheelbase === undefined ? ['wheelbase'] : []),
    ...(c.ballToAxle === undefined ? ['distance from rear axle to hitch balls'] : []),
  ];
  if (missing.length > 0) return { missing };
  return {
    tractor: {
      tractorMass: c.frontAxleMass! + c.rearAxleMass!,
      frontAxleUnladen: c.frontAxleMass!,
      wheelbase: c.wheelbase!,
      axleToHitch: c.ballToAxle!,
      hitchToImplement: Math.max(0, behindHitch(rig, share)),
      implementMass: centreAt(rig, share).mass,
      ballastMass: c.ballast ?? 0,
      ballastAhead: c.ballastAhead ?? 0,
    },
  };
}

function axlePromises(context: ProofContext, loaded: Loaded): RigPromise[] {
  const c = context.rig.brief.carrier;
  const told = {
    kind: 'weight' as const,
    items: [carrierItem(context), loaded.rig.tankAt.item],
    method: 'axle loads of the tractor with the rig mounted',
    source: `ballast method of several operators' manuals; ${AXLE_SHARE_RULE.origin.edition}: 20 % of the unladen tractor on the front axle`,
  };
  const level = { ...told, id: 'weight:front-axle', sentence: 'The tractor still steers on the flat' };
  const slope = { ...told, id: 'weight:front-axle-slope', sentence: 'The tractor still steers up the slope' };
  const rear = { ...told, id: 'weight:rear-axle', sentence: "The tractor's rear axle and tyres carry it" };
  const asked = { value: AXLE_SHARE_RULE.front, dimension: 'ratio' as const };
  const full = tractorOf(context, loaded, FILLS.full);
  if ('missing' in full) {
    const cause = `ask the customer for the tractor's ${full.missing.join(', ')}`;
    return [
      unknown({ ...level, cause }, asked),
      unknown({ ...slope, cause }, asked),
      unknown({ ...rear, cause }, undefined, 'at-most'),
    ];
  }
  const { tractor } = full;
  const onLevel = threePointAxleLoads(tractor);
  const ballast = leastFrontBallast(tractor);
  const working: Step[] = [
    { text: 'tractor as it stands, with driver', figure: { value: tractor.tractorMass, dimension: 'mass' } },
    { text: 'rig when full', figure: { value: tractor.implementMass, dimension: 'mass' } },
    {
      text: 'its centre behind the rear axle',
      figure: { value: tractor.axleToHitch + tractor.hitchToImplement, dimension: 'length' },
    },
    { text: 'front ballast fitted', figure: { value: tractor.ballastMass ?? 0, dimension: 'mass' } },
    worked(
      'left on the front axle',
      is(onLevel.front, 'mass'),
      '{front axle unladen} + ({ballast} × ({ballast ahead} + {wheelbase}) − {rig} × {centre behind the rear axle}) / {wheelbase}',
      {
        'front axle unladen': is(tractor.frontAxleUnladen, 'mass'),
        ballast: is(tractor.ballastMass ?? 0, 'mass'),
        'ballast ahead': is(tractor.ballastAhead ?? 0, 'length'),
        wheelbase: is(tractor.wheelbase, 'length'),
        rig: is(tractor.implementMass, 'mass'),
        'centre behind the rear axle': is(tractor.axleToHitch + tractor.hitchToImplement, 'length'),
      },
    ),
    worked(
      'as a share of the tractor',
      is(onLevel.frontShare, 'ratio'),
      '{left on the front axle} / {tractor}',
      {
        'left on the front axle': is(onLevel.front, 'mass'),
        tractor: is(tractor.tractorMass, 'mass'),
      },
    ),
    { text: 'front ballast that is needed', figure: { value: ballast, dimension: 'mass' } },
    {
      text: 'heaviest rig without ballast',
      figure: { value: largestMountedMass(tractor), dimension: 'mass' },
    },
  ];
  return [
    compared(
      {
        ...level,
        working,
        cause:
          ballast > 0
            ? `${say(context, ballast, 'mass')} of front ballast is needed, ${say(context, tractor.ballastMass ?? 0, 'mass')} is fitted`
            : 'no front ballast is needed',
      },
      asked,
      { value: onLevel.frontShare, dimension: 'ratio' },
      'at-least',
    ),
    slopePromise(context, loaded, tractor, slope, asked),
    c.rearAxleRating === undefined
      ? {
          ...unknown(
            { ...rear, cause: "ask the dealer for the rating of the tractor's rear axle and tyres" },
            undefined,
            'at-most',
          ),
          has: { value: onLevel.rear, dimension: 'mass' as const },
        }
      : compared(
          { ...rear, working, cause: 'when full, on the flat' },
          { value: c.rearAxleRating, dimension: 'mass' },
          { value: onLevel.rear, dimension: 'mass' },
          'at-most',
        ),
  ];
}

function slopePromise(
  context: ProofContext,
  { rig }: Loaded,
  tractor: MountedTractor,
  told: Pick<RigPromise, 'id' | 'kind' | 'sentence' | 'items' | 'method' | 'source'>,
  asked: { readonly value: number; readonly dimension: 'ratio' },
): RigPromise {
  const { centreHeight } = context.rig.brief.carrier;
  const { slope } = context.rig.brief.site;
  const missing = [
    ...(slope === undefined ? ['the steepest slope'] : []),
    ...(centreHeight === undefined ? ["the height of the tractor's centre of mass"] : []),
  ];
  if (slope === undefined || centreHeight === undefined)
    return unknown({ ...told, cause: `ask the customer for ${missing.join(' and ')}` }, asked);
  const loads = threePointAxleLoadsOnGrade({
    ...tractor,
    tractorCentreHeight: centreHeight,
    // Carried clear of the ground by half a foot more than it stands: common practice, no source.
    implementCentreHeight: Math.min(4, Math.max(0, centreAt(rig, 1).z + 0.15)),
    grade: slope,
  });
  return compared(
    {
      ...told,
      cause: `full, climbing ${say(context, slope, 'angle')}`,
      source: `statics; ${AXLE_SHARE_RULE.origin.edition}`,
      working: [{ text: 'left on the front axle', figure: { value: loads.front, dimension: 'mass' } }],
    },
    asked,
    { value: loads.frontShare, dimension: 'ratio' },
    'at-least',
  );
}
