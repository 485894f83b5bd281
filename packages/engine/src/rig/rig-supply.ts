import type { Catalogue } from '../catalogue/index.ts';
import { supplyOf, type Supply } from './plumbing/index.ts';
import { stands } from './suited.ts';

const supplies = new WeakMap<Catalogue, Map<string, Supply>>();

/** One supply per catalogue and set of destroyed materials, since it remembers the joints it has found. */
export function supplyFor(catalogue: Catalogue, unsuited: ReadonlySet<string>): Supply {
  let known = supplies.get(catalogue);
  if (known === undefined) {
    known = new Map<string, Supply>();
    supplies.set(catalogue, known);
  }
  const key = [...unsuited].sort().join(' ');
  let supply = known.get(key);
  if (supply === undefined) {
    supply = supplyOf(catalogue, (part) => stands(part, unsuited));
    known.set(key, supply);
  }
  return supply;
}
