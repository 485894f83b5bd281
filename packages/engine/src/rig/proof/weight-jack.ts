import { twoSupportLoads } from '../../physics/index.ts';
import { axleMiddle, centreAt, FILLS, type Fill } from '../placement/index.ts';
import { compared, is, unknown, worked, type RigPromise } from '../promise.ts';
import type { ProofContext } from './context.ts';
import { carrierItem, type Loaded } from './loaded.ts';

/** Unhitched, the jack stands in for the coupler: nearer to the axles it carries more. */
export function jackPromises(context: ProofContext, { rig }: Loaded): RigPromise[] {
  const { jack } = rig.carrier;
  const told = {
    id: 'weight:jack',
    kind: 'weight' as const,
    sentence: 'Jack holds the tongue when it is unhitched',
    items: [carrierItem(context), rig.tankAt.item],
    method: 'rig on its axles and its jack',
    source: 'statics; rating of the catalogue',
  };
  if (jack === undefined)
    return [
      unknown(
        { ...told, cause: 'the catalogue states no jack: ask the maker of the carrier' },
        undefined,
        'at-most',
      ),
    ];
  const axles = axleMiddle(rig.carrier);
  const span = axles - jack.position;
  if (span < 0.1)
    return [
      unknown({ ...told, cause: 'the jack stands behind the axles: check its place' }, undefined, 'at-most'),
    ];
  const at = (fill: Fill) => {
    const { mass, x } = centreAt(rig, FILLS[fill]);
    return { fill, mass, ahead: axles - x, load: twoSupportLoads([mass], [x], jack.position, axles).front };
  };
  const loads = (Object.keys(FILLS) as Fill[]).map(at);
  const worst = loads.reduce((a, b) => (b.load > a.load ? b : a));
  return [
    compared(
      {
        ...told,
        cause: `heaviest when ${worst.fill}; on level, firm ground`,
        working: loads.map(({ fill, mass, ahead, load }) =>
          worked(
            `on the jack when ${fill}`,
            is(load, 'mass'),
            '{rig} × {centre ahead of the axles} / {jack ahead}',
            {
              rig: is(mass, 'mass'),
              'centre ahead of the axles': is(ahead, 'length'),
              'jack ahead': is(span, 'length'),
            },
          ),
        ),
      },
      is(jack.rating, 'mass'),
      is(Math.max(0, worst.load), 'mass'),
      'at-most',
    ),
  ];
}
