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
  readonly #known = new Map<string, Proven | undefined>();

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

  of(space: SearchSpace, partAt: PartAt): Proven | undefined {
    const key = `${space.layout.id} ${space.slots.map((s) => partAt(s.id)?.id ?? '-').join(' ')}`;
    if (this.#known.has(key)) return this.#known.get(key);
    this.proofs++;
    const proven = prove(space, this.#shop, this.#units, partAt);
    this.#known.set(key, proven);
    return proven;
  }
}
