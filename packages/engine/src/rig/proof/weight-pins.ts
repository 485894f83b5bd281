import {
  DYNAMIC_FACTOR,
  HITCH_CATEGORIES,
  HITCH_ORIGIN,
  hitchPinForces,
  STANDARD_GRAVITY,
} from '../../physics/index.ts';
import { behindHitch, centreAt, FILLS, type Fill } from '../placement/index.ts';
import { is, number, unknown, worked, type RigPromise, type Step } from '../promise.ts';
import type { ProofContext } from './context.ts';
import { carrierItem, type Loaded } from './loaded.ts';

const CATEGORY = new Map<string, (typeof HITCH_CATEGORIES)[number]>(
  HITCH_CATEGORIES.map((c) => [c.category, c]),
);
const MM = 1e-3;

/** Pins and span of the frame are those of the tractor; what each pin carries is told, since nobody states what it may. */
export function pinPromise(context: ProofContext, { rig }: Loaded): RigPromise {
  const own = rig.carrier.hitchCategory;
  const tractor = context.rig.brief.carrier.hitchCategory;
  const told = {
    id: 'weight:pins',
    kind: 'weight' as const,
    sentence: "The frame's hitch pins suit the tractor",
    items: [carrierItem(context)],
    method: 'pins and span of the hitch by category; forces on the pins by statics',
    source: `${HITCH_ORIGIN.source}; the strength of pins and links is the word of their makers`,
    working: own === undefined ? [] : pinSteps(own, rig),
  };
  if (own === undefined)
    return unknown({
      ...told,
      cause: 'the catalogue states no category of hitch: ask the maker of the frame',
    });
  if (tractor === undefined)
    return unknown({
      ...told,
      cause: `ask the customer for the category of the tractor's hitch: the frame has category ${own}`,
    });
  const same = own === tractor;
  const [a, b] = [CATEGORY.get(own)!, CATEGORY.get(tractor)!];
  return {
    ...told,
    state: same ? 'kept' : 'broken',
    sense: 'at-least',
    cause: same
      ? `both are category ${own}: it says that they fit, not that the tractor can carry the rig`
      : `the frame is category ${own} (lower pins ${a.lowerPinMm} mm, ${a.lowerSpanMm} mm apart), the tractor category ${tractor} (${b.lowerPinMm} mm, ${b.lowerSpanMm} mm)`,
  };
}

function pinSteps(category: string, rig: Loaded['rig']): Step[] {
  const { lowerPinMm, upperPinMm, lowerSpanMm, mastHeightMm } = CATEGORY.get(category)!;
  return [
    { text: 'lower pins', figure: is(lowerPinMm * MM, 'length', 'bore') },
    { text: 'top pin', figure: is(upperPinMm * MM, 'length', 'bore') },
    { text: 'between the lower pins', figure: is(lowerSpanMm * MM, 'length') },
    ...(mastHeightMm === undefined
      ? [{ text: 'height of the mast: unknown for this category, so the pull of the top link is not told' }]
      : (Object.keys(FILLS) as Fill[]).flatMap((fill) => loadSteps(rig, fill, mastHeightMm * MM))),
  ];
}

/** The top link holds the frame from tipping back; the lower pins carry the weight and push as much the other way. */
function loadSteps(rig: Loaded['rig'], fill: Fill, mast: number): Step[] {
  const { mass } = centreAt(rig, FILLS[fill]);
  const behind = Math.max(0, behindHitch(rig, FILLS[fill]));
  const factor = DYNAMIC_FACTOR.offRoadLow;
  const forces = hitchPinForces(mass, behind, mast, factor);
  const weight = is(mass * STANDARD_GRAVITY, 'force');
  const [top, pin] = [is(forces.topLink, 'force'), is(forces.lowerPin, 'force')];
  return [
    worked(`pull of the top link when ${fill}`, top, '{weight} × {centre behind the balls} / {mast}', {
      weight,
      'centre behind the balls': is(behind, 'length'),
      mast: is(mast, 'length'),
    }),
    worked(
      `on each lower pin when ${fill}, over bumps`,
      pin,
      '{bumps} × √({weight} ^ 2 + {top link} ^ 2) / 2',
      { bumps: number(factor), weight, 'top link': top },
    ),
  ];
}
