import type { Catalogue, Part, Shop } from '../../catalogue/index.ts';
import { readBrief } from '../brief.ts';
import { layoutsFor } from '../layouts-for.ts';
import { bestWays } from './completions.ts';
import { Parting } from './core.ts';
import { prove, type Proven } from './evaluate.ts';
import type { Figures } from './figures.ts';
import { flowSpare } from './flow-spare.ts';
import { Floors } from './floors.ts';
import type { Limit } from './limit.ts';
import { limitsOf } from './limits.ts';
import { NOTHING, plus } from './money.ts';
import { partsIn, spaceOf, type PartAt, type SearchSpace } from './space.ts';

/** One set of parts as the search sees it, and as the whole proof does. */
export interface OneSet {
  /** Left out of the space by one of its rules: a valve before nothing, an electric start without a battery. */
  readonly outside: boolean;
  /** Least margin that the limits allow; negative when they refuse it. */
  readonly limit: number;
  /**
   * Figures that the bounds allow, after each slot of the core, without and with what is known of the main, and of the
   * whole set: one of each is as good as the rig or better. Empty when the set is refused.
   */
  readonly bounds: readonly (readonly Figures[])[];
  /** Most spare of what hangs on pump, main and suction line, to all its digits; below zero where that refuses the set. */
  readonly spare: number;
  /** Undefined when the parts make no rig. */
  readonly proven: Proven | undefined;
}

type Judged = Pick<OneSet, 'limit' | 'bounds' | 'spare'>;

const REFUSED: Judged = { limit: -1, bounds: [], spare: -1 };

/** How a brief's sets of parts are counted off. */
export interface SetsOfParts {
  readonly size: number;
  /** The set with a number from 0 to size less one. */
  readonly at: (index: number) => OneSet;
  /** The set that the items of a rig make in the layout that serves the brief first; outside with a part that no slot takes. */
  readonly of: (items: readonly { readonly id: string; readonly part: string }[]) => OneSet;
  /** The same without the bounds: what going through all of them takes. */
  readonly proven: (index: number) => Pick<OneSet, 'outside' | 'proven'>;
}

/**
 * Every set of parts that the slots of a brief's layouts can take, one by one and each proven whole: the slow way, by
 * which the search is judged.
 */
export function setsOfParts(rawBrief: unknown, catalogue: Catalogue, shop: Shop): SetsOfParts {
  const read = readBrief(rawBrief);
  if (!read.ok) return { size: 0, at: noSuchSet, of: noSuchSet, proven: noSuchSet };
  const spaces = layoutsFor(read.brief, catalogue).map((layout) => {
    const space = spaceOf(read.brief, rawBrief, catalogue, layout);
    const limits = limitsOf(space);
    let judge: ((partAt: PartAt) => Judged) | undefined;
    return {
      space,
      rules: limits.filter((l) => l.rule === true),
      judge: (partAt: PartAt) => (judge ??= judgeOf(space, limits, shop))(partAt),
    };
  });
  const find = (index: number) => {
    let rest = index;
    const found = spaces.find(({ space }) => rest < space.size || ((rest -= space.size), false));
    if (found === undefined || index < 0) return noSuchSet(index);
    const parts = new Map<string, Part | undefined>();
    for (const { id, options } of found.space.slots) {
      parts.set(id, options[rest % options.length]);
      rest = Math.floor(rest / options.length);
    }
    return one(found, parts);
  };
  const one = (of: (typeof spaces)[number], parts: ReadonlyMap<string, Part | undefined>) => {
    const partAt: PartAt = (slot) => parts.get(slot);
    return { ...of, partAt, outside: of.rules.some((l) => l.margin(partAt) < 0) };
  };
  const judged = (set: ReturnType<typeof one>): OneSet => ({
    outside: set.outside,
    ...set.judge(set.partAt),
    proven: proven(set),
  });
  const proven = ({ space, partAt }: ReturnType<typeof one>) => prove(space, shop, 'us', partAt);
  return {
    size: spaces.reduce((sum, s) => sum + s.space.size, 0),
    at: (index) => judged(find(index)),
    of: (items) => {
      const [first] = spaces;
      if (first === undefined) return noSuchSet(items);
      const parts = partsIn(first.space, items);
      if (parts.size < items.length) return { outside: true, ...REFUSED, proven: undefined };
      return judged(one(first, parts));
    },
    proven: (index) => {
      const set = find(index);
      return { outside: set.outside, proven: set.outside ? undefined : proven(set) };
    },
  };
}

/** The bounds of one whole set, as the search reckons them on its way to it. */
function judgeOf(space: SearchSpace, limits: readonly Limit[], shop: Shop): (partAt: PartAt) => Judged {
  const all = new Parting(space, limits, shop);
  const floorsOf = new Map<Parting, Floors>();
  return (partAt) => {
    const limit = Math.min(...limits.map((l) => l.margin(partAt)));
    if (limit < 0) return { ...REFUSED, limit };
    const bounds: Figures[][] = [];
    let [sum, parting] = [NOTHING, all];
    all.coreSlots.forEach((slot, depth) => {
      if (slot === 'pump') parting = all.behind(partAt(slot));
      const floors = floorsOf.get(parting) ?? new Floors(parting, limits);
      floorsOf.set(parting, floors);
      sum = plus(sum, parting.own(slot, partAt(slot), partAt));
      const beyond = floors.beyond(depth + 1, partAt);
      for (const more of [beyond, floors.withMain(depth + 1, partAt, beyond, limit) ?? beyond]) {
        const { front } = more;
        const best = plus(sum, more.all);
        const lightest = Math.min(...front.map((p) => p.mass));
        const spare = Math.min(limit, more.spare, parting.carried(partAt, best.mass + lightest));
        bounds.push(
          front.map((p) =>
            parting.figures(
              best.cents + p.cents,
              best.mass + p.mass,
              Math.max(best.late, p.late),
              spare < 0 ? -1 : Math.min(parting.spare(spare), p.margin),
            ),
          ),
        );
      }
    });
    // The core with whatever fills its groups, as the whole space fills them.
    const before = all.before(partAt);
    const filled = before.coreOf(partAt, limit, () => true);
    if (filled === undefined) return REFUSED;
    bounds.push([before.ideal(filled)]);
    const slots = space.slots.map(({ id }) => ({ id, options: [partAt(id)] }));
    const alone = new Parting({ ...space, slots, size: 1 }, limits, shop).before(partAt);
    const core = alone.coreOf(partAt, limit, () => true);
    if (core === undefined) return REFUSED;
    const suction = space.layout.lines.find((l) => l.from === 'tank')?.run.map(partAt) ?? [];
    const spare = flowSpare(core, {
      regulator: partAt('regulator'),
      returnHose: partAt('return-hose'),
      agitator: partAt('agitator'),
      agitationValve: partAt('agitation-valve'),
      eductor: partAt('eductor'),
      eductorValve: partAt('eductor-valve'),
      suction,
    });
    const [whole] = bestWays(alone, core, () => true);
    const best = whole === undefined ? [[]] : alone.whole(core, whole, partAt);
    if (best.some((b) => b.length === 0)) return { ...REFUSED, spare };
    return { limit, bounds: [...bounds, ...best], spare };
  };
}

function noSuchSet(index: unknown): never {
  throw new RangeError(`index is ${String(index)}; it must be that of a set of parts`);
}
