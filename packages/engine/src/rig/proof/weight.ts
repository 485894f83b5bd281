import { FILLS, centreAt, rinseWaterAboard, type Fill, type SupportLoads } from '../placement/index.ts';
import { compared, is, unknown, worked, type RigPromise, type Step } from '../promise.ts';
import { say, type ProofContext } from './context.ts';
import { carrierItem, loadedOf, type Loaded } from './loaded.ts';
import { bedPromises } from './weight-bed.ts';
import { hitchPromises } from './weight-hitch.ts';
import { towPromises } from './weight-tow.ts';
import { wheelPromises } from './weight-wheels.ts';

/** Carrier, axles, tyres, coupler, hitch and vehicle carry the rig at every fill of the tank. */
export function weightPromises(context: ProofContext): RigPromise[] {
  const loaded = loadedOf(context);
  if (loaded === undefined)
    return [
      unknown({
        id: 'weight',
        kind: 'weight',
        sentence: 'Carrier and vehicle carry the full rig',
        cause: 'the rig has no carrier; choose one',
        method: 'statics of the loaded carrier',
        source: 'statics',
      }),
    ];
  const { standing } = loaded.rig;
  const promises = [
    grossPromise(context, loaded),
    ...axlePromises(context, loaded),
    ...wheelPromises(context, loaded),
    vehiclePromise(context, loaded),
    ...(standing === 'coupled' || standing === 'axles' ? towPromises(context, loaded) : []),
    ...(standing === 'hitch' ? hitchPromises(context, loaded) : []),
    ...(standing === 'bed' ? bedPromises(context, loaded) : []),
  ];
  return promises.map((p) => doubted(p, loaded));
}

/** A load reckoned with a density that nobody knows is no proof that it is carried. */
function doubted(promise: RigPromise, { densityUnknown }: Loaded): RigPromise {
  if (densityUnknown.length === 0 || promise.state === 'broken' || promise.state === 'unknown')
    return promise;
  return {
    ...promise,
    state: 'unknown',
    cause: `the density of ${densityUnknown.join(', ')} is unknown: ask its supplier; ${promise.cause}`,
  };
}

function massSteps(context: ProofContext, loaded: Loaded): Step[] {
  const rinseWater = rinseWaterAboard(context.rig.brief);
  const { rig, liquid } = loaded;
  const full = centreAt(rig, FILLS.full).mass;
  return [
    {
      text: 'rig with an empty tank, fuel and filled hoses',
      figure: { value: rig.dry.mass, dimension: 'mass' },
    },
    ...(rinseWater === 0
      ? []
      : [
          {
            text: 'of it the clean water for rinsing',
            figure: { value: rinseWater, dimension: 'mass' as const },
          },
        ]),
    worked(`tank full of ${liquid}`, is(full - rig.dry.mass, 'mass'), '{tank} × {density}', {
      tank: is(rig.tank.volume, 'volume'),
      density: is(rig.density, 'density'),
    }),
    worked('rig when full', is(full, 'mass'), '{empty rig} + {liquid}', {
      'empty rig': is(rig.dry.mass, 'mass'),
      liquid: is(full - rig.dry.mass, 'mass'),
    }),
  ];
}

function grossPromise(context: ProofContext, loaded: Loaded): RigPromise {
  const { carrier, dry } = loaded.rig;
  const full = centreAt(loaded.rig, FILLS.full).mass;
  const room = Math.max(0, (carrier.grossRating - dry.mass) / loaded.rig.density);
  return compared(
    {
      id: 'weight:gross',
      kind: 'weight',
      sentence: `${carrierName(loaded)} carries the rig when full`,
      cause: `${say(context, loaded.rig.tank.volume, 'volume')} of ${loaded.liquid} weigh ${say(context, full - dry.mass, 'mass')}; there is room for ${say(context, room, 'volume')} of it`,
      items: [carrierItem(context), loaded.rig.tankAt.item],
      method: 'sum of the masses against the gross rating',
      source: 'masses and rating of the catalogue; density of the liquid',
      working: massSteps(context, loaded),
    },
    { value: carrier.grossRating, dimension: 'mass' },
    { value: full, dimension: 'mass' },
    'at-most',
  );
}

function carrierName({ rig }: Loaded): string {
  switch (rig.carrier.form) {
    case 'skid':
      return 'Skid';
    case 'utility-bed':
      return 'Bed frame';
    case 'three-point':
      return 'Frame';
    case 'cart':
      return 'Cart';
    case 'wagon':
      return 'Wagon';
    case 'tandem-trailer':
      return 'Trailer';
  }
}

/** Each axle with its tyres, at its worst fill; equal axles of an equalised group are one promise. */
function axlePromises(context: ProofContext, loaded: Loaded): RigPromise[] {
  const axles = loaded.supports.filter((s) => s.rating !== undefined && s.wheels !== undefined);
  const equalised = loaded.rig.standing === 'coupled' && axles.length > 1;
  if (equalised) axles.sort((a, b) => a.rating! - b.rating!);
  return (equalised ? axles.slice(0, 1) : axles).map((axle) => {
    const { fill, load } = worstFill(axle);
    const name = equalised ? 'Each axle' : axle.name;
    return compared(
      {
        id: `weight:${axle.id}`,
        kind: 'weight',
        sentence: `${name} carries its share when ${fill}`,
        cause: `${axle.setBy === 'tyres' ? 'the tyres set' : 'the axle sets'} the limit; worst when ${fill}`,
        items: [carrierItem(context)],
        method: 'axle loads from the masses and their places',
        source: equalised
          ? 'statics; equal loads through an equaliser are common practice, no source'
          : 'statics; ratings of the catalogue',
        working: [
          ...massSteps(context, loaded),
          ...(['full', 'half', 'empty'] as const).map((f) => ({
            text: `${name.toLowerCase()} when ${f}`,
            figure: { value: axle[f], dimension: 'mass' as const },
          })),
          ...(axle.braking === undefined
            ? []
            : [
                {
                  text: `${name.toLowerCase()} when full, for a moment in hard braking`,
                  figure: is(axle.braking, 'mass'),
                },
              ]),
        ],
      },
      { value: axle.rating!, dimension: 'mass' },
      { value: load, dimension: 'mass' },
      'at-most',
    );
  });
}

function worstFill(support: SupportLoads): { fill: Fill; load: number } {
  let worst: Fill = 'full';
  for (const fill of ['half', 'empty'] as const) if (support[fill] > support[worst]) worst = fill;
  return { fill: worst, load: support[worst] };
}

/** What the customer's vehicle may pull or carry. */
function vehiclePromise(context: ProofContext, loaded: Loaded): RigPromise {
  const { rig } = loaded;
  const pulled = rig.standing === 'coupled' || rig.standing === 'axles';
  const has = { value: centreAt(rig, FILLS.full).mass, dimension: 'mass' as const };
  const told = {
    id: 'weight:vehicle',
    kind: 'weight' as const,
    sentence: pulled ? 'The vehicle may pull the rig when full' : 'The vehicle may carry the rig when full',
    items: [carrierItem(context), rig.tankAt.item],
    method: 'sum of the masses against the limit of the brief',
    source: "masses of the catalogue; the limit is the customer's word",
    working: massSteps(context, loaded),
  };
  const limit = context.rig.brief.carrier.massLimit;
  if (limit === undefined)
    return {
      ...unknown(
        {
          ...told,
          cause: `ask the customer what the vehicle may ${pulled ? 'pull' : 'carry'}: it is in its handbook`,
        },
        undefined,
        'at-most',
      ),
      has,
    };
  const people = pulled ? '' : '; people and tools on board count with it';
  return compared(
    { ...told, cause: `limit of the brief${people}` },
    { value: limit, dimension: 'mass' },
    has,
    'at-most',
  );
}
