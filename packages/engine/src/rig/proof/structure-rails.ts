import {
  bendingStress,
  DESIGN_WALL_SHARE,
  DYNAMIC_FACTOR,
  frameMaterial,
  loadedBeam,
  roundedTubeSection,
  squareTubeSection,
  STANDARD_GRAVITY,
  tongueBending,
  type LoadedBeamInput,
  type Section,
} from '../../physics/index.ts';
import {
  brakingTransfer,
  carrierMasses,
  centreAt,
  hitchPlace,
  liquidPoint,
  tongueAt,
  together,
  massPoint,
  type LoadedRig,
  type MassPoint,
} from '../placement/index.ts';
import { compared, is, unknown, worked, type RigPromise, type Step } from '../promise.ts';
import type { ProofContext } from './context.ts';
import { carrierItem, type Loaded } from './loaded.ts';
import { momentSteps, stressStep } from './structure-working.ts';

const ESTIMATE = 'estimate: a qualified person must approve the frame';
/** A skid stands on two bearers, each this share of its length from the end, where both moments are equal. */
const BEARER_SHARE = (Math.SQRT2 - 1) / 2;
/** Foot of a three-point frame's braces when the catalogue does not tell it: start value of ours, share of the deck. */
const BRACE_START = 0.75;

/** Rails and tongue as beams under the full rig, with a factor for bumps. */
export function railPromises(context: ProofContext, loaded: Loaded): RigPromise[] {
  const { rig } = loaded;
  const rail = rig.carrier.rail;
  const told = {
    id: 'structure:rails',
    kind: 'structure' as const,
    sentence: `Frame rails carry the full rig over bumps (${ESTIMATE})`,
    items: [carrierItem(context)],
    method: 'rails as beams on two supports',
    source:
      'Euler-Bernoulli bending; allowables AISC 360 and Aluminum Design Manual, factors from memory; dynamic factor is common practice, no code',
  };
  if (rail === undefined)
    return [
      unknown(
        { ...told, cause: 'the catalogue states no rails: ask the maker of the carrier' },
        undefined,
        'at-most',
      ),
    ];
  const section = sectionOf(rail);
  const material = frameMaterial(rail.material);
  const offRoad = rig.carrier.form !== 'tandem-trailer' && rig.carrier.form !== 'skid';
  const factor = offRoad ? DYNAMIC_FACTOR.offRoadLow : DYNAMIC_FACTOR.roadRail;
  const beam = beamOf(loaded);
  const scale = (STANDARD_GRAVITY * factor) / rail.count;
  const loads: LoadedBeamInput = {
    length: beam.length,
    supportA: beam.supports[0],
    supportB: beam.supports[1],
    pointLoads: beam.points.map((p) => p.mass * scale),
    pointPlaces: beam.points.map((p) => p.x),
    evenLoads: beam.spreads.map((s) => (s.mass / (s.to - s.from)) * scale),
    evenFrom: beam.spreads.map((s) => s.from),
    evenTo: beam.spreads.map((s) => s.to),
    stiffness: material.elasticity * section.inertiaX,
  };
  const bent = loadedBeam(loads);
  const stress = bendingStress(bent.maxMoment, section.modulusX);
  const welded = rail.material === 'aluminium-6061-t6-welded';
  return [
    compared(
      {
        ...told,
        cause: `${rail.count} rails, ${beam.held}, ${factor} times the weight${welded ? '; welded aluminium has half its strength at the weld' : ''}`,
        working: [
          ...beam.steps,
          ...momentSteps(loads, bent, factor, rail.count),
          stressStep(stress, bent.maxMoment, section),
          { text: 'sag, factor in', figure: is(bent.maxSag, 'length') },
        ],
      },
      { value: material.allowable, dimension: 'stress' },
      { value: stress, dimension: 'stress' },
      'at-most',
    ),
    ...tonguePromises(context, rig, section, material.allowable),
  ];
}

/** Cold-formed steel tube has round corners and a thin wall; aluminium is extruded square. */
function sectionOf(rail: NonNullable<LoadedRig['carrier']['rail']>): Section {
  return rail.material.startsWith('steel')
    ? roundedTubeSection(rail.height, rail.width, rail.wall * DESIGN_WALL_SHARE)
    : squareTubeSection(rail.height, rail.width, rail.wall);
}

/** The rails of a carrier as a beam: x from its front end, masses on it [kg]. */
interface RailBeam {
  readonly length: number;
  readonly supports: readonly [number, number];
  readonly points: readonly { readonly mass: number; readonly x: number }[];
  readonly spreads: readonly { readonly mass: number; readonly from: number; readonly to: number }[];
  readonly held: string;
  readonly steps: readonly Step[];
}

function beamOf(loaded: Loaded): RailBeam {
  const { rig } = loaded;
  const { carrier } = rig;
  const front =
    rig.standing === 'coupled'
      ? Math.min(0, carrier.coupler!.position)
      : rig.standing === 'hitch'
        ? hitchPlace(carrier)
        : 0;
  const standing = rig.parts.filter((p) => p !== rig.tankAt).map(massPoint);
  const tank = liquidPoint(rig, 1).mass + rig.tankAt.mass;
  const half = rig.tankAt.length / 2;
  const rear = Math.max(
    carrier.deckLength,
    rig.tankAt.x + half,
    ...standing.map((p) => p.x),
    ...carrier.axles.map((a) => a.position),
  );
  const start = Math.min(front, rig.tankAt.x - half, ...standing.map((p) => p.x));
  const length = rear - start;
  const from = rig.tankAt.x - half - start;
  const frame = together(carrierMasses(carrier)).mass;
  const { supports, pushes, held } = supportsOf(loaded, start, length);
  return {
    length,
    supports,
    points: [...inGroups(standing, start), ...pushes],
    spreads: [
      { mass: tank, from, to: Math.min(length, from + rig.tankAt.length) },
      { mass: frame, from: -start, to: Math.min(length, carrier.deckLength - start) },
    ],
    held,
    steps: [
      { text: 'full tank, spread over its length', figure: { value: tank, dimension: 'mass' } },
      {
        text: 'machinery, reel and small parts',
        figure: { value: together(standing).mass, dimension: 'mass' },
      },
      { text: 'between the supports', figure: { value: supports[1] - supports[0], dimension: 'length' } },
    ],
  };
}

/** Parts at the same place are one load. */
function inGroups(points: readonly MassPoint[], start: number): { mass: number; x: number }[] {
  const groups = new Map<number, number>();
  for (const p of points) groups.set(p.x, (groups.get(p.x) ?? 0) + p.mass);
  return [...groups].map(([x, mass]) => ({ mass, x: x - start }));
}

function supportsOf(
  { rig, supports }: Loaded,
  start: number,
  length: number,
): {
  supports: readonly [number, number];
  pushes: readonly { mass: number; x: number }[];
  held: string;
} {
  const { carrier } = rig;
  switch (rig.standing) {
    case 'coupled': {
      const axles = supports.filter((s) => s.id !== 'coupler');
      const middle = axles.reduce((sum, a) => sum + a.x, 0) / axles.length - start;
      const load = axles.reduce((sum, a) => sum + a.full, 0);
      // An equaliser shares the load: the axles push up where they are, and the support between them is left without load.
      const pushes =
        axles.length > 1
          ? [...axles.map((a) => ({ mass: -a.full, x: a.x - start })), { mass: load, x: middle }]
          : [];
      return {
        supports: [carrier.coupler!.position - start, middle],
        pushes,
        held: 'held by coupler and axles',
      };
    }
    case 'axles':
      return {
        supports: [
          carrier.axles[0]!.position - start,
          carrier.axles[carrier.axles.length - 1]!.position - start,
        ],
        pushes: [],
        held: 'held by both axles',
      };
    case 'hitch':
      return {
        supports: [
          hitchPlace(carrier) - start,
          Math.min(length, (carrier.rail?.braceAt ?? BRACE_START * carrier.deckLength) - start),
        ],
        pushes: [],
        held:
          carrier.rail?.braceAt === undefined
            ? 'held by the hitch points and braces (their place is a start value of ours)'
            : 'held by the hitch points and the braces of the mast',
      };
    case 'bed':
      return {
        supports: [
          BEARER_SHARE * carrier.deckLength - start,
          (1 - BEARER_SHARE) * carrier.deckLength - start,
        ],
        pushes: [],
        held: 'on two bearers at a fifth of its length from the ends',
      };
  }
}

/** The tongue bends most where it leaves the deck. */
function tonguePromises(
  context: ProofContext,
  rig: LoadedRig,
  section: Section,
  allowable: number,
): RigPromise[] {
  if (rig.standing !== 'coupled') return [];
  const arm = -rig.carrier.coupler!.position;
  if (arm < 0.05) return [];
  const loads = [1, 0.5, 0].map((fill) => Math.max(0, tongueAt(rig, fill)));
  const still = Math.max(...loads);
  const braking = tongueAt(rig, 1) + brakingTransfer(rig, 1);
  // The factor of three covers bumps and braking; hard braking alone may still ask more.
  const load = Math.max(still, braking / DYNAMIC_FACTOR.tongue) * STANDARD_GRAVITY;
  const { stress, moment } = tongueBending(load, arm, 2, section.modulusX, DYNAMIC_FACTOR.tongue);
  return [
    compared(
      {
        id: 'structure:tongue',
        kind: 'structure',
        sentence: `Tongue stands bumps and hard braking (${ESTIMATE})`,
        cause: 'two rails run on into the tongue, an assumption of ours; three times the load on the coupler',
        items: [carrierItem(context)],
        method: 'tongue as a cantilever in front of the deck',
        source: 'statics; the factor of 3 is common practice, no code; allowables as for the rails',
        working: [
          { text: 'most on the coupler at rest', figure: { value: still, dimension: 'mass' } },
          { text: 'on the coupler in hard braking', figure: { value: braking, dimension: 'mass' } },
          { text: 'coupler ahead of the deck', figure: { value: arm, dimension: 'length' } },
          worked('moment at the deck', is(moment, 'torque'), '{factor} × {load} × {ahead of the deck}', {
            factor: is(DYNAMIC_FACTOR.tongue, 'ratio'),
            load: is(load, 'force'),
            'ahead of the deck': is(arm, 'length'),
          }),
          stressStep(stress, moment / 2, section, 'each of the two rails takes half of it'),
          { text: 'rig when full', figure: { value: centreAt(rig, 1).mass, dimension: 'mass' } },
        ],
      },
      { value: allowable, dimension: 'stress' },
      { value: stress, dimension: 'stress' },
      'at-most',
    ),
  ];
}
