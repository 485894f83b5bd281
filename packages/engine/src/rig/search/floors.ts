import { portKey, type Part } from '../../catalogue/index.ts';
import { BlockFronts, type Point } from './block-fronts.ts';
import type { Parting } from './core.ts';
import type { Limit } from './limit.ts';
import { NOTHING, plus, type Adds } from './money.ts';
import type { PartAt } from './space.ts';
import { portKeyOf } from './trims.ts';

/**
 * Lower bounds of what a rig adds some of whose core slots are decided, in their order: the parts decided, the cheapest
 * of the parts left that go together, the cheapest way to fill each group, and what is joined at the manifold.
 */
export class Floors {
  readonly #parting: Parting;
  readonly #blocks: BlockFronts;
  readonly #groups: Map<string, Adds>;
  readonly #pumpDepth: number;
  readonly #outletDepth: number;
  readonly #nodes = new Map<string, Adds>();

  constructor(parting: Parting, limits: readonly Limit[]) {
    this.#parting = parting;
    const { space, coreSlots } = parting;
    this.#groups = parting.fronts.floors();
    this.#pumpDepth = coreSlots.indexOf('pump');
    this.#outletDepth = Math.max(
      -1,
      ...space.layout.lines
        .filter((l) => l.to === 'air')
        .flatMap((l) => l.run.map((s) => coreSlots.indexOf(s))),
    );
    this.#blocks = new BlockFronts(parting, limits);
  }

  /**
   * What a rig adds besides the parts of its first slots: `all` whatever it has there, and the front of what its other
   * core slots add, empty when nothing goes with the first ones.
   */
  beyond(decided: number, partAt: PartAt): { readonly all: Adds; readonly front: readonly Point[] } {
    const pump = decided > this.#pumpDepth ? partAt('pump') : undefined;
    const groups = this.#groups.get(portKeyOf(pump, 'in')) ?? this.#groups.get('')!;
    const outlets = decided > this.#outletDepth ? this.#outlets(partAt, pump) : NOTHING;
    const all = plus(this.#parting.always, groups, outlets);
    return { all, front: this.#blocks.beyond(decided, partAt) };
  }

  #outlets(partAt: PartAt, pump: Part | undefined): Adds {
    const along = this.#parting.joints.outletsAlong(partAt);
    if (along === undefined) return NOTHING;
    const key = `${along.ends.map((e) => `${e.line} ${portKey(e.port)} ${e.elbows.map((x) => `${x.cents}/${x.late}`).join(',')}`).join(' ')} ${portKeyOf(pump, 'out')}`;
    let node = this.#nodes.get(key);
    if (node === undefined) this.#nodes.set(key, (node = this.#parting.joints.nodeFloor(along.ends, pump)));
    return plus(along.adds, node);
  }
}
