import type { Learned } from './learn.ts';

/** What the tests of one built machine say of its own copies of a part, as the logarithm of a factor [-]. */
export interface TestedCopy {
  readonly serial: string;
  /** When it was tested last, as written down; empty where nobody did. */
  readonly taken: string;
  readonly mean: number;
  readonly deviation: number;
}

/**
 * Every tested machine under each factor that its readings depend on, the first tested first: how a part drifts over
 * time. Copies that stand side by side on one machine, as the tips of a boom, are one entry, their mean.
 */
export function testedCopies({ copies }: Learned): ReadonlyMap<string, readonly TestedCopy[]> {
  const found = new Map<string, TestedCopy[]>();
  for (const { serial, rig, taken, inputs } of copies) {
    const own = new Map<string, { mean: number; deviation: number }[]>();
    for (const { factor, mean, deviation } of inputs)
      if (factor !== undefined) own.set(factor, [...(own.get(factor) ?? []), { mean, deviation }]);
    for (const [factor, list] of own) {
      const middle = (of: 'mean' | 'deviation') => list.reduce((sum, i) => sum + i[of], 0) / list.length;
      const copy = {
        serial: serial ?? rig,
        taken: taken.at(-1) ?? '',
        mean: middle('mean'),
        deviation: middle('deviation'),
      };
      found.set(factor, [...(found.get(factor) ?? []), copy]);
    }
  }
  for (const list of found.values())
    list.sort((a, b) => compare(a.taken, b.taken) || compare(a.serial, b.serial));
  return found;
}

/** By code points, the same in every country. */
function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
