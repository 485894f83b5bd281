import { portKey, type Part } from '../../catalogue/index.ts';
import type { Parting } from './core.ts';
import { NOTHING, type Adds } from './money.ts';
import type { PartAt } from './space.ts';
import { portKeyOf } from './trims.ts';

/** Least that the slots add which are not decided yet. */
export interface Floor {
  readonly cents: number;
  readonly mass: number;
  readonly late: number;
}

/**
 * Lower bounds of what a rig adds some of whose core slots are decided, in their order: the parts decided, the cheapest
 * of the parts left in each slot, the cheapest way to fill each group, and what is joined at the manifold.
 */
export class Floors {
  readonly #parting: Parting;
  readonly #after: readonly Floor[];
  readonly #groups: Map<string, Floor>;
  readonly #pumpDepth: number;
  readonly #outletDepth: number;
  readonly #nodes = new Map<string, Adds>();

  constructor(parting: Parting) {
    this.#parting = parting;
    const { space, coreSlots } = parting;
    const nothing: PartAt = () => undefined;
    const after: Floor[] = [{ cents: 0, mass: 0, late: 0 }];
    for (const slot of [...coreSlots].reverse()) {
      const owns = space.slots.find((s) => s.id === slot)!.options.map((p) => parting.own(slot, p, nothing));
      const next = after[0]!;
      after.unshift({
        cents: next.cents + Math.min(...owns.map((o) => o.cents)),
        mass: next.mass + Math.min(...owns.map((o) => o.mass)),
        late: Math.max(next.late, Math.min(...owns.map((o) => o.late))),
      });
    }
    this.#after = after;
    this.#groups = parting.fronts.floors();
    this.#pumpDepth = coreSlots.indexOf('pump');
    this.#outletDepth = Math.max(
      -1,
      ...space.layout.lines
        .filter((l) => l.to === 'air')
        .flatMap((l) => l.run.map((s) => coreSlots.indexOf(s))),
    );
  }

  /** Least that a rig adds besides the parts of its first slots. */
  beyond(decided: number, partAt: PartAt): Floor {
    const { cents, mass, late } = this.#after[decided]!;
    const pump = decided > this.#pumpDepth ? partAt('pump') : undefined;
    const groups = this.#groups.get(portKeyOf(pump, 'in')) ?? this.#groups.get('')!;
    const outlets = decided > this.#outletDepth ? this.#outlets(partAt, pump) : NOTHING;
    const always = this.#parting.always;
    return {
      cents: always.cents + cents + groups.cents + outlets.cents,
      mass: mass + groups.mass + outlets.mass,
      late: Math.max(late, groups.late),
    };
  }

  #outlets(partAt: PartAt, pump: Part | undefined): Adds {
    const along = this.#parting.joints.outletsAlong(partAt);
    if (along === undefined) return NOTHING;
    const key = `${along.ends.map((e) => `${e.line} ${portKey(e.port)} ${e.elbows.map((x) => x.cents).join(',')}`).join(' ')} ${portKeyOf(pump, 'out')}`;
    let node = this.#nodes.get(key);
    if (node === undefined) this.#nodes.set(key, (node = this.#parting.joints.nodeFloor(along.ends, pump)));
    return { cents: along.adds.cents + node.cents, mass: along.adds.mass + node.mass };
  }
}
