import type { PartOf } from '../../catalogue/index.ts';
import type { Duty } from '../brief.ts';
import { askedOf, reachTowards, streamOf } from '../gun-throw.ts';
import type { LineContext } from './line-context.ts';

const BAR = 1e5;
const GUN_HEIGHT = 1.5;

/**
 * Least pressure at a tip with which a gun does what a duty asks: flow, pressure, reach; undefined when the tip cannot.
 *
 * Reach is found by halving, since it rises with pressure at a given tip; answers are remembered by tip and stream.
 */
export function tipPressureFor(
  context: LineContext,
  duty: Duty,
  gun: PartOf<'gun'>,
  tip: PartOf<'tip'>,
): number | undefined {
  const key = `${duty.id} ${tip.id} ${streamOf(gun, tip)}`;
  if (context.tipPressures.has(key)) return context.tipPressures.get(key);
  const found = search(context, duty, gun, tip);
  context.tipPressures.set(key, found);
  return found;
}

function search(
  context: LineContext,
  duty: Duty,
  gun: PartOf<'gun'>,
  tip: PartOf<'tip'>,
): number | undefined {
  const liquid = context.liquids.get(duty.liquid)!;
  const flow = (duty.flow ?? 0) * context.spare;
  const forFlow = (flow / tip.flowAtOneBar) ** 2 * BAR * (liquid.density / 1000);
  const least = Math.max(tip.minPressure, (duty.pressure ?? 0) * context.spare, forFlow);
  if (least > tip.maxPressure) return undefined;
  const { target } = duty;
  if (target === undefined) return least;
  const conditions = {
    gun,
    tip,
    density: liquid.density,
    airDensity: context.site.airDensity,
    tipHeight: Math.max(0, duty.outletHeight ?? GUN_HEIGHT),
  };
  const asked = askedOf(target) * context.spare;
  const reaches = (pressure: number) =>
    (reachTowards(conditions, pressure, target, duty.reach)?.promised ?? 0) >= asked;
  if (reaches(least)) return least;
  if (!reaches(tip.maxPressure)) return undefined;
  let [low, high] = [least, tip.maxPressure];
  while (high / low > 1.02) {
    const middle = Math.sqrt(low * high);
    if (reaches(middle)) high = middle;
    else low = middle;
  }
  return high;
}
