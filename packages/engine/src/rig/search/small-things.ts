import type { Part, PartOf } from '../../catalogue/index.ts';
import { cableWay } from '../proof/electrics-cable.ts';
import type { DeckOrder, Stood } from './deck-orders.ts';
import {
  boltedBy,
  labelsOf,
  LEAST_WAY,
  leastPumpWay,
  pumpWiredBy,
  pumpWiredByAny,
  strappedBy,
  wiredBy,
  type Held,
} from './held.ts';
import { NOTHING, plus, type Adds } from './money.ts';
import { leastOf, TANK_HEAD, type Pieces } from './pieces.ts';
import { remember } from './remember.ts';
import type { PartAt, SearchSpace } from './space.ts';

/** Straps, bolts, labels, wires and caps: as many as some parts ask for whatever else a rig has. */
export class SmallThings {
  readonly #space: SearchSpace;
  readonly #pieces: Pieces;
  readonly #back: boolean;
  readonly #carried: boolean;
  readonly #owns = new Map<Part, Adds>();
  readonly #labels = new Map<string, Adds>();
  readonly #anyWires = new Map<Part, Adds>();
  /** A part of each kind that every rig has and that brings up cautions of its own. */
  readonly #telling: ReadonlyMap<string, Part | undefined>;

  /** @param back whether a line of a group comes back to the tank's own return port */
  constructor(space: SearchSpace, pieces: Pieces, back: boolean) {
    this.#space = space;
    this.#pieces = pieces;
    this.#back = back;
    const optionsOf = (id: string) => space.slots.find((s) => s.id === id)?.options ?? [];
    this.#carried = optionsOf('carrier').every((p) => p?.kind === 'carrier');
    this.#telling = new Map(
      ['engine', 'pto'].flatMap((id) => {
        const options = optionsOf(id);
        return options.includes(undefined) ? [] : [[id, options[0]] as const];
      }),
    );
  }

  /** What one part asks by itself. */
  own(part: Part): Adds {
    let own = this.#owns.get(part);
    if (own === undefined) this.#owns.set(part, (own = this.#own(part)));
    return own;
  }

  #own(part: Part): Adds {
    switch (part.kind) {
      case 'tank': {
        const straps = this.#carried ? [strappedBy(this.#space, part)] : [];
        return plus(this.#sum(straps), ...this.#loose(part));
      }
      case 'carrier':
        return this.#sum(boltedBy(this.#space, part));
      case 'battery':
        // It brings up a caution of its own, with its label.
        return this.#sum([{ count: 1, fits: ({ purpose }) => purpose.form === 'label' }]);
      case 'engine':
      case 'reel':
        return this.#sum(wiredBy(part, LEAST_WAY));
      default:
        return NOTHING;
    }
  }

  /** Wire of a 12 V pump behind outlets that are decided, over the least way there is. */
  pumpWire(partAt: PartAt): Adds {
    return this.#sum(pumpWiredBy(this.#space, partAt, leastPumpWay(this.#space, partAt('pump'))));
  }

  /** The same behind any outlets. */
  pumpWireAny(pump: Part | undefined): Adds {
    if (pump === undefined) return NOTHING;
    return (
      this.#anyWires.get(pump) ?? remember(this.#anyWires, pump, this.#sum(pumpWiredByAny(this.#space, pump)))
    );
  }

  /**
   * What the wires of a rig with one battery, or none, add beyond those over the least ways there are. Each lies along the
   * frame from where the battery stands to where its consumer does, which the order of the parts on the deck tells to the
   * millimetre: what is not known yet only moves the tank. Of several orders that the proof may choose the least counts.
   */
  wires(partAt: PartAt, { battery, orders }: Stood): Adds {
    const driven = [partAt('engine'), partAt('reel')].flatMap((part) => wiredBy(part, LEAST_WAY));
    const least = plus(this.pumpWire(partAt), this.#sum(driven));
    const laid = leastOf(orders.map((order) => this.#laid(partAt, battery, order)));
    return laid === undefined
      ? NOTHING
      : { cents: laid.cents - least.cents, mass: laid.mass - least.mass, late: 0 };
  }

  /** All wires of a rig in one order of its parts. */
  #laid(partAt: PartAt, battery: Part | undefined, { spots }: DeckOrder): Adds {
    const places = spots();
    const spotOf = (slot: string) => places.find((s) => s.item === slot);
    const from = spotOf('battery');
    const wired = ['pump', 'engine', 'reel'].flatMap((slot) => {
      const to = spotOf(slot);
      if (to === undefined) return [];
      const way = cableWay(to, from);
      return slot === 'pump'
        ? pumpWiredBy(this.#space, partAt, way, battery)
        : wiredBy(partAt(slot), way, battery);
    });
    return this.#sum(wired);
  }

  /** Labels of a rig with a tank, or with any, at a pressure that it sees at least. */
  labels(tank: Part | undefined, pressure: number): Adds {
    const of = tank?.kind === 'tank' ? tank : undefined;
    const key = `${of?.id} ${pressure}`;
    let labels = this.#labels.get(key);
    if (labels === undefined) {
      labels = of === undefined ? this.#leastLabels(pressure) : this.#labelsOf(of, pressure);
      this.#labels.set(key, labels);
    }
    return labels;
  }

  #leastLabels(pressure: number): Adds {
    const tanks = this.#space.slots.find((s) => s.id === 'tank')?.options ?? [];
    return tanks
      .map((t) => (t?.kind === 'tank' ? this.#labelsOf(t, pressure) : NOTHING))
      .reduce((a, b) => (b.cents < a.cents ? b : a), { ...NOTHING, cents: Infinity });
  }

  #labelsOf(tank: PartOf<'tank'>, pressure: number): Adds {
    const at: PartAt = (slot) => this.#telling.get(slot);
    return this.#sum([labelsOf(this.#space, at, tank, pressure, [...this.#telling.keys()])]);
  }

  #sum(held: readonly Held[]): Adds {
    return plus(...held.map(({ count, fits }) => this.#pieces.small(count, fits)));
  }

  /** Caps on the ports of a tank that no line uses. */
  #loose(tank: PartOf<'tank'>): Adds[] {
    return tank.ports
      .filter((p) => p.id !== 'outlet' && p.joint !== 'shaft' && !(this.#back && p.id === 'return'))
      .map((p) => this.#pieces.cap(p, 0, TANK_HEAD));
  }
}
