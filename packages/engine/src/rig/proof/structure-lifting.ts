import { slingLegTension, STANDARD_GRAVITY } from '../../physics/index.ts';
import { compared, is, number, unknown, worked, type RigPromise } from '../promise.ts';
import type { ProofContext } from './context.ts';
import { carrierItem, type Loaded } from './loaded.ts';

/** Legs of the sling from the horizontal: flatter pulls far harder. Rigging practice, from memory. */
const LEG_ANGLE = Math.PI / 3;
/** Of more legs no more than two are counted: a stiff rig hangs in two of them. */
const MOST_COUNTED = 2;

/** A rig that is set into a vehicle is lifted empty by its eyes. */
export function liftingPromises(context: ProofContext, { rig }: Loaded): RigPromise[] {
  const { form, lifting } = rig.carrier;
  if (lifting === undefined && form !== 'skid' && form !== 'utility-bed') return [];
  const told = {
    id: 'structure:lifting',
    kind: 'structure' as const,
    sentence: 'Lifting eyes hold the empty rig (estimate: a qualified person must approve the frame)',
    items: [carrierItem(context)],
    method: 'pull in the legs of a sling at 60°, two legs counted',
    source:
      'statics; two of four legs counted and 60° are rigging practice, from memory; rating of the catalogue',
  };
  if (lifting === undefined)
    return [
      unknown(
        {
          ...told,
          cause: 'the catalogue states no lifting eyes: lift it by a fork, or ask the maker of the frame',
        },
        undefined,
        'at-most',
      ),
    ];
  const counted = Math.min(MOST_COUNTED, lifting.points);
  const { mass } = rig.dry;
  return [
    compared(
      {
        ...told,
        cause: `${lifting.points} eyes, ${counted} counted; lift it empty only, its centre under the hook, and mark the eyes so`,
        working: [
          worked(
            'pull in each leg that counts',
            is(slingLegTension(mass, counted, LEG_ANGLE), 'force'),
            '{weight of the empty rig} / ({legs counted} × √(3) / 2)',
            {
              'weight of the empty rig': is(mass * STANDARD_GRAVITY, 'force'),
              'legs counted': number(counted),
            },
          ),
        ],
      },
      is(lifting.workingLoad, 'force'),
      is(slingLegTension(mass, counted, LEG_ANGLE), 'force'),
      'at-most',
    ),
  ];
}
