import {
  COUPLER_CLASSES,
  couplerClass,
  federalTrailerBrakes,
  GROUND_RESISTANCE,
  handForceGuide,
  largestPulledMass,
  pullForce,
  safetyChainStrength,
  STANDARD_GRAVITY,
  stateTrailerBrakes,
  surgeBrakeTowRating,
  TONGUE_SHARE,
  TRAILER_BRAKE_RULES,
} from '../../physics/index.ts';
import { brakingTransfer, centreAt, FILLS, tongueAt, type Fill } from '../placement/index.ts';
import { compared, is, unknown, worked, type RigPromise, type Step } from '../promise.ts';
import { say, type ProofContext } from './context.ts';
import { carrierItem, type Loaded } from './loaded.ts';
import { jackPromises } from './weight-jack.ts';

const NAMES = Object.keys(FILLS) as Fill[];
/** Highest speed at which a trailer on the road is drawn, for the state tables [m/s]. */
const ROAD_SPEED = 29;
const POUND = 0.45359237;

/** Tongue, coupler, brakes; and the force by hand where people move it. */
export function towPromises(context: ProofContext, loaded: Loaded): RigPromise[] {
  return [
    ...(loaded.rig.standing === 'coupled' ? tonguePromises(context, loaded) : []),
    ...couplerPromises(context, loaded),
    ...(loaded.rig.standing === 'coupled' ? jackPromises(context, loaded) : []),
    ...brakePromises(context, loaded),
    ...handPromises(context, loaded),
  ];
}

/** The tongue carries 10 to 15 % of the full rig, and never lifts. */
function tonguePromises(context: ProofContext, { rig }: Loaded): RigPromise[] {
  const at = (fill: Fill) => {
    const load = tongueAt(rig, FILLS[fill]);
    const { mass } = centreAt(rig, FILLS[fill]);
    return { fill, load, mass, share: load / mass };
  };
  const shares = NAMES.map(at);
  const full = shares[0]!;
  const working = shares.flatMap(({ fill, load, mass, share }): Step[] => [
    { text: `on the coupler when ${fill}`, figure: { value: load, dimension: 'mass' } },
    worked(`as a share of the rig when ${fill}`, is(share, 'ratio'), '{on the coupler} / {rig}', {
      'on the coupler': is(load, 'mass'),
      rig: is(mass, 'mass'),
    }),
  ]);
  const told = {
    kind: 'weight' as const,
    items: [carrierItem(context), rig.tankAt.item],
    method: 'tongue load from the masses and their places',
    source: 'statics; 10 to 15 % of gross on the tongue: vehicle manuals',
    working,
  };
  const light = full.share - TONGUE_SHARE.low < TONGUE_SHARE.high - full.share;
  const lightest = shares.reduce((a, b) => (b.share < a.share ? b : a));
  const ownClass = couplerClass(rig.carrier.coupler!.rating);
  const heaviest = shares.reduce((a, b) => (b.load > a.load ? b : a));
  return [
    compared(
      {
        ...told,
        id: 'weight:tongue',
        sentence: light ? 'Tongue heavy enough to tow straight when full' : 'Tongue not too heavy when full',
        cause: `asked 10 to 15 %; has ${percent(full.share)} full, ${percent(shares[1]!.share)} half, ${percent(shares[2]!.share)} empty`,
      },
      { value: light ? TONGUE_SHARE.low : TONGUE_SHARE.high, dimension: 'ratio' },
      { value: full.share, dimension: 'ratio' },
      light ? 'at-least' : 'at-most',
    ),
    compared(
      {
        ...told,
        id: 'weight:tongue-lift',
        sentence: 'Tongue never lifts as the tank empties',
        cause: `lightest when ${lightest.fill}`,
      },
      { value: 0, dimension: 'ratio' },
      { value: lightest.share, dimension: 'ratio' },
      'at-least',
    ),
    ...(ownClass.class === 0
      ? []
      : [
          compared(
            {
              ...told,
              id: 'weight:tongue-load',
              sentence: 'Tongue load suits the coupler',
              cause: `heaviest when ${heaviest.fill}; asks for a ${hitchClass(centreAt(rig, 1).mass, heaviest.load)} on the vehicle; in hard braking ${say(context, tongueAt(rig, 1) + brakingTransfer(rig, 1), 'mass')} for a moment`,
              source: 'statics; table of largest tongue loads by class (SAE J684 kind)',
            },
            { value: ownClass.maxTongue, dimension: 'mass' },
            { value: heaviest.load, dimension: 'mass' },
            'at-most',
          ),
        ]),
  ];
}

/** Smallest class of hitch for a gross weight and a load on the tongue. */
function hitchClass(gross: number, tongue: number): string {
  const found = COUPLER_CLASSES.find((c) => {
    const most =
      c.maxTongueLb === undefined ? (c.maxTongueShare ?? 0) * c.maxGrossLb * POUND : c.maxTongueLb * POUND;
    return gross <= c.maxGrossLb * POUND && tongue <= most;
  });
  return found === undefined ? 'hitch above class 4' : `class ${found.class} hitch`;
}

function percent(share: number): string {
  return `${(share * 100).toFixed(1)} %`;
}

/** The coupler pulls the full rig; above class 4 no ball coupler of the table fits. */
function couplerPromises(context: ProofContext, { rig }: Loaded): RigPromise[] {
  const { coupler } = rig.carrier;
  const gross = centreAt(rig, 1).mass;
  const told = {
    id: 'weight:coupler',
    kind: 'weight' as const,
    sentence: 'Coupler pulls the rig when full',
    items: [carrierItem(context)],
    method: 'gross weight against the coupler and its class',
    source: 'rating of the catalogue; classes: Maryland COMAR 11.13.08.10 (SAE J684 kind)',
  };
  if (coupler === undefined)
    return [
      unknown({ ...told, cause: 'the catalogue states no coupler: ask its maker' }, undefined, 'at-most'),
    ];
  const needed = couplerClass(gross);
  const balls = COUPLER_CLASSES.find((c) => c.class === needed.class)?.ballIn.join(' or ');
  return [
    compared(
      {
        ...told,
        cause:
          needed.class === 0
            ? 'over class 4: no ball coupler of the table, a pintle or other gear with its own rating'
            : `class ${needed.class}, ball ${balls} in`,
        working: [
          {
            text: 'each safety chain breaks at no less than the gross weight (New Hampshire RSA 266:63, the stricter rule)',
            figure: { value: safetyChainStrength(gross, 'each-at-gross'), dimension: 'force' },
          },
        ],
      },
      { value: coupler.rating, dimension: 'mass' },
      { value: gross, dimension: 'mass' },
      'at-most',
    ),
  ];
}

/** Brakes against what the tables of rules ask; the tables are old and never proof of the law. */
function brakePromises(context: ProofContext, { rig }: Loaded): RigPromise[] {
  const { brakes } = rig.carrier;
  const { state, towRating, rearAxleMass, frontAxleMass } = context.rig.brief.carrier;
  const gross = centreAt(rig, 1).mass;
  const told = {
    id: 'weight:brakes',
    kind: 'weight' as const,
    sentence: 'Has the brakes that its weight asks for',
    items: [carrierItem(context)],
    method: 'gross weight against the table of state brake rules',
    source: 'a secondary compilation of state rules, about 2000; 49 CFR 393.42, 393.48; local law decides',
  };
  const has = { value: gross, dimension: 'mass' as const };
  if (brakes === 'electric' || brakes === 'hydraulic')
    return [{ ...kept(told, `${brakes} brakes on all wheels; local law decides`), has }];
  if (brakes === 'surge') {
    if (towRating === undefined)
      return [
        unknown(
          { ...told, cause: 'surge brakes: ask the gross rating of the tow vehicle' },
          undefined,
          'at-least',
        ),
      ];
    return [
      compared(
        { ...told, sentence: 'Tow vehicle heavy enough for surge brakes', cause: '49 CFR 393.48(d)' },
        { value: surgeBrakeTowRating(gross), dimension: 'mass' },
        { value: towRating, dimension: 'mass' },
        'at-least',
      ),
    ];
  }
  const known = state === undefined ? undefined : TRAILER_BRAKE_RULES[state];
  const lowest = lowestThreshold();
  if (gross <= lowest && known === undefined)
    return [
      compared(
        { ...told, cause: 'under the lowest weight at which a state of the table asks for brakes' },
        { value: lowest, dimension: 'mass' },
        has,
        'at-most',
      ),
    ];
  if (known === undefined)
    return [
      {
        ...unknown(
          {
            ...told,
            cause: `ask where it is registered, or whether it stays off public roads: states ask for brakes from ${say(context, lowest, 'mass')} on`,
          },
          undefined,
          'at-most',
        ),
        has,
      },
    ];
  const asked = stateTrailerBrakes(state!, gross, ROAD_SPEED);
  const federal =
    towRating !== undefined && frontAxleMass !== undefined && rearAxleMass !== undefined
      ? federalTrailerBrakes(
          gross + towRating,
          gross,
          rig.standing === 'coupled' ? Math.max(0, tongueAt(rig, 1)) : 0,
          frontAxleMass + rearAxleMass,
        )
      : false;
  if (asked.conflict || asked.answer === 'unknown')
    return [
      unknown(
        { ...told, cause: `the tables for ${state} disagree or are silent: ask the state` },
        undefined,
        'at-most',
      ),
    ];
  if (asked.answer === 'required' || federal)
    return brakes === undefined
      ? [
          unknown(
            { ...told, cause: `the catalogue does not say whether the carrier has brakes: ask its maker` },
            undefined,
            'at-most',
          ),
        ]
      : [
          {
            ...kept(told, `${state} asks for brakes ${asked.reason}, the carrier has none`),
            state: 'broken',
            has,
          },
        ];
  return [{ ...kept(told, `${state}: ${asked.reason}; local law decides`), has }];
}

function lowestThreshold(): number {
  const pounds = Object.values(TRAILER_BRAKE_RULES).map((r) => r.thresholdLb ?? Infinity);
  return Math.min(...pounds) * POUND;
}

function kept(
  told: Pick<RigPromise, 'id' | 'kind' | 'sentence' | 'items' | 'method' | 'source'>,
  cause: string,
): RigPromise {
  return { ...told, cause, state: 'kept', sense: 'at-least', working: [] };
}

/** Force to keep a full cart rolling by hand, against the guideline. */
function handPromises(context: ProofContext, { rig }: Loaded): RigPromise[] {
  const { movedByHand, ground = 'turf', movedBy = 'women' } = context.rig.brief.carrier;
  if (movedByHand !== true) return [];
  const { design, ground: name, evidence } = GROUND_RESISTANCE[ground];
  const grade = Math.tan(context.rig.brief.site.slope ?? 0);
  const mass = centreAt(rig, 1).mass;
  const force = pullForce(mass, design, grade);
  const guide = handForceGuide('sustained', movedBy);
  return [
    compared(
      {
        id: 'weight:hand',
        kind: 'weight',
        sentence: 'One person can keep it rolling when full',
        cause: `on ${name}${grade > 0 ? `, up ${say(context, Math.atan(grade), 'angle')}` : ', level'}; above that tow it, do not push`,
        items: [carrierItem(context), rig.tankAt.item],
        method: 'rolling and grade force against the guideline for hands',
        source: `HSE push and pull guideline for ${movedBy}; rolling resistance ${evidence === 'memory' ? 'from memory' : 'from handbooks'}`,
        working: [
          worked(
            'rolling',
            is(force.rolling, 'force'),
            '{weight} × {share of the weight} / √(1 + {grade} ^ 2)',
            {
              weight: is(mass * STANDARD_GRAVITY, 'force'),
              'share of the weight': is(design, 'ratio'),
              grade: is(grade, 'ratio'),
            },
          ),
          worked('up the slope', is(force.grade, 'force'), '{weight} × {grade} / √(1 + {grade} ^ 2)', {
            weight: is(mass * STANDARD_GRAVITY, 'force'),
            grade: is(grade, 'ratio'),
          }),
          worked('together', is(force.total, 'force'), '{rolling} + {up the slope}', {
            rolling: is(force.rolling, 'force'),
            'up the slope': is(force.grade, 'force'),
          }),
          {
            text: 'to start it, guideline',
            figure: { value: handForceGuide('start', movedBy), dimension: 'force' },
          },
          {
            text: 'heaviest cart for one person here',
            figure: { value: largestPulledMass(guide, design, grade), dimension: 'mass' },
          },
        ],
      },
      { value: guide, dimension: 'force' },
      { value: force.total, dimension: 'force' },
      'at-most',
    ),
  ];
}
