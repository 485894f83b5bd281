import type { Part, PartOf } from '../../catalogue/index.ts';
import { heldBy, wiredBy, type Held } from './held.ts';
import { NOTHING, plus, type Adds, type Money } from './money.ts';
import type { Pieces } from './pieces.ts';
import type { PartAt, SearchSpace } from './space.ts';

/** Straps, bolts, labels, wires and caps of a core: as many as it asks for whatever fills its groups. */
export class SmallThings {
  readonly #space: SearchSpace;
  readonly #pieces: Pieces;
  readonly #money: Money;
  readonly #coreSlots: readonly string[];
  readonly #back: boolean;
  readonly #holds = new Map<string, readonly Held[]>();

  /** @param back whether a line of a group comes back to the tank's own return port */
  constructor(space: SearchSpace, pieces: Pieces, money: Money, coreSlots: readonly string[], back: boolean) {
    this.#space = space;
    this.#pieces = pieces;
    this.#money = money;
    this.#coreSlots = coreSlots;
    this.#back = back;
  }

  /** The label that a caution brings up. */
  get label(): Adds {
    return this.#small({ count: 1, fits: ({ purpose }) => purpose.form === 'label' });
  }

  /** Straps over the tank, bolts of a skid and labels: as many as the core alone asks for. */
  of(partAt: PartAt, pressure: number): Adds {
    const [tank, carrier] = [partAt('tank'), partAt('carrier')];
    if (tank?.kind !== 'tank') return NOTHING;
    const key = [tank.id, carrier?.id, pressure, ...['engine', 'pto'].map((s) => partAt(s)?.id)].join(' ');
    let held = this.#holds.get(key);
    if (held === undefined) {
      held = heldBy(this.#space, partAt, tank, pressure, this.#coreSlots);
      this.#holds.set(key, held);
    }
    const small = plus(...[...held, ...wiredBy(this.#space, partAt)].map((h) => this.#small(h)));
    return plus(small, ...this.#loose(tank));
  }

  #small({ fits, count }: Held): Adds {
    let best: Part | undefined;
    for (const part of this.#pieces.supply.hardware)
      if (fits(part) && (best === undefined || part.priceCents < best.priceCents)) best = part;
    // A rig may take a stronger one, with other days.
    return best === undefined ? NOTHING : { ...this.#money.bought(best, count), late: 0 };
  }

  /** Caps on the ports of a tank that no line uses. */
  #loose(tank: PartOf<'tank'>): Adds[] {
    return tank.ports
      .filter((p) => p.id !== 'outlet' && p.joint !== 'shaft' && !(this.#back && p.id === 'return'))
      .map((p) => this.#pieces.cap(p, 0));
  }
}
