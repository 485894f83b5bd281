import type { LayoutLine } from '../../catalogue/index.ts';
import type { Duty } from '../brief.ts';
import { outletHeightOf } from '../duty-network.ts';
import { askedOf, reachTowards } from '../gun-throw.ts';
import { lineLaw } from './line-takes.ts';
import { OFF } from './part-terms.ts';
import { remember } from './remember.ts';
import type { PartAt, SearchSpace } from './space.ts';

const BAR = 1e5;
/** Pressures at the tip are told apart by this much of them, upwards. */
const STEP = 1.002;
/** Pressures below it are asked in steps of this much: a fan or a cone may throw less far with more. */
const RUNG = 1.04;
/** No tip is asked at less [Pa]. */
const LEAST = 1000;
const HAIR = 2e-3;
const HALVINGS = 20;

/** Spare by the pressure, and the most up to each rung by duty, gun and tip: what was found for one is built upon for the next. */
interface Thrown {
  readonly known: Map<string, number>;
  readonly rungs: Map<string, number[]>;
}

const thrown = new WeakMap<SearchSpace['contexts'], Thrown>();

/**
 * Most spare of the reach that a gun has by the pressure at the manifold: there is the more pressure at its tip the less its
 * line takes, and of all pressures up to that, from the least at which the tip makes its pattern, the one that throws
 * farthest counts. Undefined where a duty has no target, or its gun is not known.
 *
 * @param lift height of the outlet over the manifold, as a pressure [Pa]
 */
export function mostReach(
  space: SearchSpace,
  line: LayoutLine,
  duty: Duty,
  partAt: PartAt,
  lift: number,
): ((pressure: number) => number) | undefined {
  const [gun, tip, context] = [partAt('gun'), partAt('tip'), space.contexts[0]!];
  const { target } = duty;
  if (target === undefined || gun?.kind !== 'gun' || tip?.kind !== 'tip' || !line.run.includes('tip'))
    return undefined;
  const { density } = context.liquids.get(duty.liquid)!;
  const conditions = {
    gun,
    tip,
    density,
    airDensity: context.site.airDensity,
    tipHeight: Math.max(0, outletHeightOf(line, duty)),
  };
  const atTip = (flow: number) => (flow / tip.flowAtOneBar) ** 2 * BAR * (density / 1000);
  const spareAt = (pressure: number): number => {
    const promised = reachTowards(conditions, pressure, target, duty.reach)?.promised;
    return promised === undefined ? -1 : (promised - askedOf(target)) / askedOf(target) + HAIR;
  };
  let mine = thrown.get(space.contexts);
  if (mine === undefined) thrown.set(space.contexts, (mine = { known: new Map(), rungs: new Map() }));
  const { known } = mine;
  const who = `${duty.id} ${outletHeightOf(line, duty)} ${gun.id} ${tip.id}`;
  const rungs = mine.rungs.get(who) ?? remember(mine.rungs, who, []);
  /** The most at any rung up to a pressure. */
  const spareUpTo = (pressure: number): number => {
    const from = Math.max(LEAST, tip.minPressure);
    const rung = Math.floor(Math.log(pressure / from) / Math.log(RUNG));
    for (let k = rungs.length; k <= rung; k++)
      rungs.push(Math.max(rungs[k - 1] ?? -1, spareAt(from * RUNG ** k)));
    return Math.max(rungs[rung] ?? -1, spareAt(pressure));
  };
  const which = `${space.layout.id} ${duty.id} ${line.run.map((slot) => partAt(slot)?.id).join(' ')}`;
  let law: ((flow: number) => number) | undefined;
  // At the top of a step of pressure in front of the line.
  const atMost = (pressure: number): number => {
    law ??= lineLaw(space, line, duty, partAt);
    let [low, high] = [0, tip.flowAtOneBar * Math.sqrt(pressure / BAR / (density / 1000)) * 1.5];
    for (let i = 0; i < HALVINGS; i++) {
      const flow = (low + high) / 2;
      const takes = law(flow);
      if (!Number.isFinite(takes)) return Infinity;
      if ((1 - OFF) * takes < pressure) low = flow;
      else high = flow;
    }
    const step = Math.ceil(Math.log(Math.max(1, atTip(high))) / Math.log(STEP));
    const key = `${who} ${step}`;
    let spare = known.get(key);
    if (spare === undefined) known.set(key, (spare = spareUpTo(STEP ** step)));
    return spare;
  };
  return (pressure) => {
    if (pressure <= lift + 1) return -1;
    const step = Math.ceil(Math.log(pressure - lift) / Math.log(STEP));
    const key = `${which} in front ${step}`;
    return known.get(key) ?? remember(known, key, atMost(STEP ** step));
  };
}
