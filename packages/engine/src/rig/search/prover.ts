import type { Shop } from '../../catalogue/index.ts';
import type { UnitSystem } from '../../quantity/index.ts';
import { prove, type Proven } from './evaluate.ts';
import type { PartAt, SearchSpace } from './space.ts';

/** Proves rigs, each once, as many as it is allowed. */
export class Prover {
  proofs = 0;
  readonly #shop: Shop;
  readonly #units: UnitSystem;
  readonly #most: number;
  readonly #known = new Set<string>();

  constructor(shop: Shop, units: UnitSystem, most: number) {
    this.#shop = shop;
    this.#units = units;
    this.#most = most;
  }

  get spent(): boolean {
    return this.proofs >= this.#most;
  }

  /** Share of the proofs that have been made. */
  get share(): number {
    return this.proofs / this.#most;
  }

  /** The proof of a set of parts; undefined when it makes no rig, and when it has been proven before. */
  of(space: SearchSpace, partAt: PartAt): Proven | undefined {
    const key = keyOf(space, partAt);
    if (this.#known.has(key)) return undefined;
    this.#known.add(key);
    this.proofs++;
    return prove(space, this.#shop, this.#units, partAt);
  }

  knows(space: SearchSpace, partAt: PartAt): boolean {
    return this.#known.has(keyOf(space, partAt));
  }
}

function keyOf({ layout, slots }: SearchSpace, partAt: PartAt): string {
  return `${layout.id} ${slots.map(({ id, options }) => options.indexOf(partAt(id)).toString(36)).join(' ')}`;
}
