import {
  coarseBolt,
  directLashings,
  RESTRAINT_SETS,
  restraintForces,
  skidBoltForces,
  STANDARD_GRAVITY,
  tiedownNumber,
  tiedownsForWorkingLoad,
  webbingWorkingLoad,
  type CoarseBolt,
} from '../../physics/index.ts';
import { centreAt, liquidPoint, type LoadedRig } from '../placement/index.ts';
import { compared, is, unknown, worked, type RigPromise, type Step } from '../promise.ts';
import type { ProofContext } from './context.ts';
import { carrierItem, type Loaded } from './loaded.ts';

/** Room that one strap takes along a tank: common practice, no source [m]. */
const STRAP_ROOM = 0.3;
/** Bolts that hold a skid to its vehicle: common practice, no source. */
const SKID_BOLTS = 4;
const BOLT_SIZES = [
  '3/8-16',
  '7/16-14',
  '1/2-13',
  '9/16-12',
  '5/8-11',
  '3/4-10',
] as const satisfies readonly CoarseBolt[];
/** Angle of a strap above the floor and in plan when it runs from a corner of the skid: common practice, no source [rad]. */
const STRAP_ANGLE = Math.PI / 4;
/** Shear strength over tensile strength, von Mises. */
const SHEAR_SHARE = 1 / Math.sqrt(3);

/** Straps of 2 in webbing and bolts that hold tank and rig. */
export interface Holding {
  readonly straps: number;
  /** Working load limit of each strap [N]. */
  readonly workingLoad: number;
  readonly bolts: number;
  /** Thread and grade of the bolts. */
  readonly bolt: { readonly thread: CoarseBolt; readonly grade: '5' };
}

/** What holds the tank on its frame and the rig on the vehicle that carries it. */
export function holdingOf(context: ProofContext, { rig }: Loaded): Holding {
  const carried = rig.standing === 'bed';
  const byBolts = carried && heldBy(context) === 'bolts';
  return {
    straps: tankStrapsOf(rig).asked + (carried && !byBolts ? rigStraps(context, rig).straps : 0),
    workingLoad: webbingWorkingLoad('2'),
    bolts: byBolts ? SKID_BOLTS : 0,
    bolt: { thread: boltsOf(rig).size, grade: '5' },
  };
}

/** Straps that hold the tank on its frame; bolts or straps that hold a carried rig to its vehicle. */
export function holdPromises(context: ProofContext, loaded: Loaded): RigPromise[] {
  return [tankStraps(loaded), ...(loaded.rig.standing === 'bed' ? rigHold(context, loaded) : [])];
}

/** Webbing over the tank, by working load limits: never to be mixed with the accelerations for breaking strength. */
function tankStraps({ rig }: Loaded): RigPromise {
  const { mass, one, byLoad, asked } = tankStrapsOf(rig);
  const room = Math.floor(rig.tankAt.length / STRAP_ROOM);
  const forces = restraintForces(mass, 'working-load');
  const judged = compared(
    {
      id: 'structure:tank-straps',
      kind: 'structure',
      sentence: `${asked === 1 ? '1 strap' : `${asked} straps`} of 2 in webbing ${asked === 1 ? 'holds' : 'hold'} the full tank`,
      cause: `room over the tank for ${room}; saddles keep it from sliding`,
      items: [rig.tankAt.item],
      method: 'tiedowns by working load limit, length and weight',
      source:
        '49 CFR 393.106, 393.108 (unmarked webbing), 393.110; one strap a foot is common practice, no source',
      working: [
        { text: 'full tank', figure: { value: mass, dimension: 'mass' } },
        limitsAsked(mass, byLoad.needed),
        { text: 'one strap, working load limit', figure: { value: one, dimension: 'force' } },
        worked(
          'saddles hold forward, against the working load limit',
          is(forces.forward, 'force'),
          '{weight} × {g}',
          { weight: weightOf(mass), g: is(RESTRAINT_SETS['working-load'].forward, 'ratio') },
        ),
      ],
    },
    { value: asked, dimension: 'count' },
    { value: room, dimension: 'count' },
    'at-least',
  );
  // Whole straps: exactly enough room is enough.
  return judged.state === 'thin' ? { ...judged, state: 'kept' } : judged;
}

function rigHold(context: ProofContext, loaded: Loaded): RigPromise[] {
  return [heldBy(context) === 'bolts' ? bolted(context, loaded) : strapped(context, loaded)];
}

/** Four bolts against hard braking by breaking strength; proof load stands for it, on the safe side. */
function bolted(context: ProofContext, { rig }: Loaded): RigPromise {
  const rule = BOLT_RULES[tieDownRule(context)];
  const { full, forces, asTension, size, spacing, fromFront } = boltsOf(rig);
  const [shear, pull] = [is(forces.shearPerBolt, 'force'), is(forces.rearBoltUplift, 'force')];
  return compared(
    {
      id: 'structure:bolts',
      kind: 'structure',
      sentence: `${SKID_BOLTS} bolts ${size.replace('-', ' in, ')} threads, grade 5, hold the rig to the vehicle`,
      cause:
        forces.rearBoltUplift > 0
          ? 'in hard braking the rear bolts pull: the centre of mass is high for the length'
          : 'in hard braking the weight keeps the rear down',
      items: [carrierItem(context)],
      method: `shear and uplift at ${rule.forward} g forward against breaking strength, proof load in its place`,
      source: `statics; ${rule.origin.edition}; SAE J429; shear at 0.577 of tension, von Mises; no friction credited`,
      working: [
        { text: 'rig when full', figure: { value: full.mass, dimension: 'mass' } },
        { text: 'centre of mass above the bed', figure: { value: full.z, dimension: 'length' } },
        worked('shear on each bolt', shear, '{weight} × {g} / {bolts}', {
          weight: weightOf(full.mass),
          g: is(rule.forward, 'ratio'),
          bolts: is(SKID_BOLTS, 'count'),
        }),
        worked(
          'pull on each rear bolt',
          pull,
          '{weight} × max(0, {g} × {height of the centre} − {centre behind the front bolts}) / {between the bolts} / {rear bolts}',
          {
            weight: weightOf(full.mass),
            g: is(rule.forward, 'ratio'),
            'height of the centre': is(full.z, 'length'),
            'centre behind the front bolts': is(fromFront, 'length'),
            'between the bolts': is(spacing, 'length'),
            'rear bolts': is(SKID_BOLTS / 2, 'count'),
          },
        ),
        worked('both as tension', is(asTension, 'force'), '√(3 × {shear} ^ 2 + {pull} ^ 2)', { shear, pull }),
      ],
    },
    { value: coarseBolt(size, '5').proofLoad, dimension: 'force' },
    { value: asTension, dimension: 'force' },
    'at-most',
  );
}

/** Straps from the vehicle's anchors to the skid: what each must hold follows from the rule chosen. */
function strapped(context: ProofContext, { rig }: Loaded): RigPromise {
  const { straps, method, source, working } = rigStraps(context, rig);
  return {
    ...unknown(
      {
        id: 'structure:rig-straps',
        kind: 'structure',
        sentence: `${straps} straps of 2 in webbing hold the rig to the vehicle`,
        cause: "ask the customer for the rating of the vehicle's anchors: each must carry a strap",
        items: [carrierItem(context)],
        method,
        source,
        working,
      },
      { value: straps, dimension: 'count' },
    ),
  };
}

type TieDownRule = NonNullable<ProofContext['rig']['brief']['carrier']['tieDownRule']>;

const BOLT_RULES = {
  'united-states': RESTRAINT_SETS.breaking,
  australia: RESTRAINT_SETS.australia,
  europe: RESTRAINT_SETS.europe,
} as const;

const tieDownRule = (context: ProofContext): TieDownRule =>
  context.rig.brief.carrier.tieDownRule ?? 'united-states';

const weightOf = (mass: number) => is(mass * STANDARD_GRAVITY, 'force');

function limitsAsked(mass: number, needed: number): Step {
  return worked('sum of working load limits asked', is(needed, 'force'), '0.5 × {weight}', {
    weight: weightOf(mass),
  });
}

function heldBy(context: ProofContext): 'bolts' | 'straps' {
  return context.rig.brief.carrier.heldBy ?? 'bolts';
}

function tankStrapsOf(rig: LoadedRig) {
  const mass = liquidPoint(rig, 1).mass + rig.tankAt.mass;
  const one = webbingWorkingLoad('2');
  const byLoad = tiedownsForWorkingLoad(mass, one, 'over');
  return { mass, one, byLoad, asked: Math.max(byLoad.number, tiedownNumber(rig.tankAt.length, mass, false)) };
}

function rigStraps(context: ProofContext, rig: LoadedRig): RigStraps {
  const rule = tieDownRule(context);
  return rule === 'united-states' ? rigStrapsOf(rig) : rigLashingsOf(rig, rule);
}

interface RigStraps {
  readonly straps: number;
  readonly method: string;
  readonly source: string;
  readonly working: readonly Step[];
}

/** Straps from anchor to skid count half their working load limit. */
function rigStrapsOf(rig: LoadedRig): RigStraps {
  const { mass } = centreAt(rig, 1);
  const one = webbingWorkingLoad('2');
  const byLoad = tiedownsForWorkingLoad(mass, one, 'direct');
  const byNumber = tiedownNumber(rig.carrier.deckLength, mass, false);
  return {
    straps: Math.max(SKID_BOLTS, byLoad.number, byNumber),
    method: 'tiedowns by working load limit, anchored straps counted half',
    source: '49 CFR 393.106, 393.108 (unmarked webbing), 393.110',
    working: [
      limitsAsked(mass, byLoad.needed),
      { text: 'one strap, working load limit', figure: { value: one, dimension: 'force' } },
    ],
  };
}

/** As many straps against sliding forward as against sliding back; a working load limit stands for the larger lashing capacity. */
function rigLashingsOf(rig: LoadedRig, set: 'australia' | 'europe'): RigStraps {
  const { mass } = centreAt(rig, 1);
  const strength = webbingWorkingLoad('2');
  const { forward, origin } = RESTRAINT_SETS[set];
  const { needed, each, number } = directLashings({
    mass,
    set,
    direction: 'forward',
    strength,
    slope: STRAP_ANGLE,
    turn: STRAP_ANGLE,
  });
  return {
    straps: Math.max(SKID_BOLTS, 2 * number),
    method: `direct lashings at 45° against ${forward} g forward by lashing capacity, no friction credited; half of them pull each way`,
    source: `statics; ${origin.edition}; the working load limit of unmarked webbing (49 CFR 393.108) in place of the capacity on the label`,
    working: [
      worked('force forward', is(needed, 'force'), '{weight} × {g}', {
        weight: weightOf(mass),
        g: is(forward, 'ratio'),
      }),
      worked('one strap holds of it', is(each, 'force'), '{strap} / 2', { strap: is(strength, 'force') }),
      ...(origin.note === undefined ? [] : [{ text: origin.note }]),
    ],
  };
}

function boltsOf(rig: LoadedRig) {
  const full = centreAt(rig, 1);
  const spacing = rig.carrier.deckLength * 0.9;
  const fromFront = Math.min(spacing, Math.max(0, full.x - rig.carrier.deckLength * 0.05));
  const { forward } = RESTRAINT_SETS.breaking;
  const forces = skidBoltForces(
    full.mass,
    forward * STANDARD_GRAVITY,
    full.z,
    spacing,
    fromFront,
    SKID_BOLTS,
  );
  // Shear and tension together by the sum of squares of their shares.
  const asTension = Math.hypot(forces.shearPerBolt / SHEAR_SHARE, forces.rearBoltUplift);
  const size =
    BOLT_SIZES.find((s) => coarseBolt(s, '5').proofLoad >= asTension * 1.05) ??
    BOLT_SIZES[BOLT_SIZES.length - 1]!;
  return { full, forces, asTension, size, spacing, fromFront };
}
