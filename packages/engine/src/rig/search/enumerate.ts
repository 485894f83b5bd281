import type { Catalogue, Part, Shop } from '../../catalogue/index.ts';
import { readBrief } from '../brief.ts';
import { layoutsFor } from '../layouts-for.ts';
import { Bounds } from './bounds.ts';
import { prove, type Proven } from './evaluate.ts';
import type { Figures } from './figures.ts';
import { limitsOf } from './limits.ts';
import { spaceOf, type PartAt } from './space.ts';

/** One set of parts as the search sees it, and as the whole proof does. */
export interface OneSet {
  /** Left out of the space by one of its rules: a valve before nothing, an electric start without a battery. */
  readonly outside: boolean;
  /** Least margin that the limits allow; negative when they refuse it. */
  readonly limit: number;
  /** Best figures that the bounds allow after each slot, from the first to the last. */
  readonly bounds: readonly Figures[];
  /** Undefined when the parts make no rig. */
  readonly proven: Proven | undefined;
}

/** How a brief's sets of parts are counted off. */
export interface SetsOfParts {
  readonly size: number;
  /** The set with a number from 0 to size less one. */
  readonly at: (index: number) => OneSet;
}

/**
 * Every set of parts that the slots of a brief's layouts can take, one by one and each proven whole: the slow way, by
 * which the search is judged.
 */
export function setsOfParts(rawBrief: unknown, catalogue: Catalogue, shop: Shop): SetsOfParts {
  const read = readBrief(rawBrief);
  if (!read.ok) return { size: 0, at: noSuchSet };
  const spaces = layoutsFor(read.brief, catalogue).map((layout) => {
    const space = spaceOf(read.brief, rawBrief, catalogue, layout);
    return { space, bounds: new Bounds(space, limitsOf(space), shop) };
  });
  return {
    size: spaces.reduce((sum, s) => sum + s.space.size, 0),
    at(index) {
      let rest = index;
      const found = spaces.find(({ space }) => rest < space.size || ((rest -= space.size), false));
      if (found === undefined || index < 0) return noSuchSet(index);
      const { space, bounds } = found;
      const parts = new Map<string, Part | undefined>();
      for (const { id, options } of space.slots) {
        parts.set(id, options[rest % options.length]);
        rest = Math.floor(rest / options.length);
      }
      const partAt: PartAt = (slot) => parts.get(slot);
      let limit = Infinity;
      const best = space.slots.map((_, depth) => {
        limit = Math.min(limit, bounds.limit(depth, partAt));
        return bounds.best(depth + 1, partAt, limit);
      });
      const outside = space.slots.some((_, depth) => bounds.outside(depth, partAt));
      return { outside, limit, bounds: best, proven: prove(space, shop, 'us', partAt) };
    },
  };
}

function noSuchSet(index: number): never {
  throw new RangeError(`index is ${index}; it must be that of a set of parts`);
}
