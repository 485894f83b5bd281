import { addedAxleLoads } from '../../physics/index.ts';
import { centreAt } from '../placement/index.ts';
import { compared, is, unknown, worked, type RigPromise } from '../promise.ts';
import { say, type ProofContext } from './context.ts';
import { carrierItem, type Loaded } from './loaded.ts';

/** The rear axle of the truck or utility vehicle that carries the rig in its bed, and its steering. */
export function bedPromises(context: ProofContext, { rig }: Loaded): RigPromise[] {
  const c = context.rig.brief.carrier;
  const told = {
    kind: 'weight' as const,
    items: [carrierItem(context), rig.tankAt.item],
    method: 'axle loads of the vehicle with the rig in its bed',
    source: "statics; weights and places of the vehicle are the customer's word",
  };
  const rear = {
    ...told,
    id: 'weight:rear-axle',
    sentence: "The vehicle's rear axle carries the rig when full",
  };
  const front = {
    ...told,
    id: 'weight:front-axle',
    sentence: 'The vehicle still steers when the rig is full',
  };
  const missing = [
    ...(c.wheelbase === undefined ? ['wheelbase'] : []),
    ...(c.bedAheadOfAxle === undefined ? ['front end of the bed ahead of the rear axle'] : []),
    ...(c.frontAxleMass === undefined ? ['front axle weight'] : []),
    ...(c.rearAxleMass === undefined ? ['rear axle weight'] : []),
    ...(c.rearAxleRating === undefined ? ['rear axle rating'] : []),
  ];
  if (
    c.wheelbase === undefined ||
    c.bedAheadOfAxle === undefined ||
    c.frontAxleMass === undefined ||
    c.rearAxleMass === undefined ||
    c.rearAxleRating === undefined
  )
    return [
      unknown(
        { ...rear, cause: `ask the customer for the vehicle's ${missing.join(', ')}` },
        undefined,
        'at-most',
      ),
    ];
  const full = centreAt(rig, 1);
  // The rig stands against the front of the bed.
  const behindAxle = full.x - c.bedAheadOfAxle;
  const added = addedAxleLoads(full.mass, c.wheelbase, behindAxle);
  const share = (c.frontAxleMass + added.front) / c.frontAxleMass;
  const working = [
    { text: 'rig when full', figure: { value: full.mass, dimension: 'mass' as const } },
    {
      text: behindAxle > 0 ? 'its centre behind the rear axle' : 'its centre ahead of the rear axle',
      figure: { value: Math.abs(behindAxle), dimension: 'length' as const },
    },
    {
      text: 'rear axle as the vehicle stands',
      figure: { value: c.rearAxleMass, dimension: 'mass' as const },
    },
    worked(
      'added to the rear axle',
      is(added.rear, 'mass'),
      `{rig} × (1 ${behindAxle > 0 ? '+' : '−'} {distance of its centre} / {wheelbase})`,
      {
        rig: is(full.mass, 'mass'),
        'distance of its centre': is(Math.abs(behindAxle), 'length'),
        wheelbase: is(c.wheelbase, 'length'),
      },
    ),
    worked('on the rear axle', is(c.rearAxleMass + added.rear, 'mass'), '{as it stands} + {added}', {
      'as it stands': is(c.rearAxleMass, 'mass'),
      added: is(added.rear, 'mass'),
    }),
    {
      text: added.front < 0 ? 'taken off the front axle' : 'added to the front axle',
      figure: { value: Math.abs(added.front), dimension: 'mass' as const },
    },
    worked(
      'front axle against the vehicle alone',
      is(share, 'ratio'),
      '({as it stands} + {added}) / {as it stands}',
      {
        'as it stands': is(c.frontAxleMass, 'mass'),
        added: is(added.front, 'mass'),
      },
    ),
  ];
  return [
    compared(
      {
        ...rear,
        working,
        cause: `the rig adds ${say(context, added.rear, 'mass')} to ${say(context, c.rearAxleMass, 'mass')}`,
      },
      { value: c.rearAxleRating, dimension: 'mass' },
      { value: c.rearAxleMass + added.rear, dimension: 'mass' },
      'at-most',
    ),
    compared(
      {
        ...front,
        working,
        cause: 'load on the front axle against the vehicle without the rig',
        source: 'statics; four fifths of the unladen front axle load is common practice, no source',
      },
      { value: 0.8, dimension: 'ratio' },
      { value: share, dimension: 'ratio' },
      'at-least',
    ),
  ];
}
