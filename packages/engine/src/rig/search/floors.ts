import type { Part } from '../../catalogue/index.ts';
import { BlockFronts } from './block-fronts.ts';
import { joinedPoints, type Point } from './points.ts';
import type { Parting } from './core.ts';
import type { Limit } from './limit.ts';
import { MainFronts, OF_MAIN } from './main-fronts.ts';
import { NOTHING, plus, type Adds } from './money.ts';
import type { PartAt } from './space.ts';
import { portKeyOf } from './trims.ts';

const DRIVE = ['pump', 'reduction', 'engine', 'pto'];

/** What a rig adds besides the parts of its first slots, and the front of what its other core slots add. */
export interface Beyond {
  readonly all: Adds;
  readonly front: readonly Point[];
}

/**
 * Lower bounds of what a rig adds some of whose core slots are decided, in their order: the parts decided, the cheapest
 * of the parts left that go together, the cheapest way to fill each group, and what is joined at the manifold.
 */
export class Floors {
  readonly #parting: Parting;
  readonly #blocks: BlockFronts;
  readonly #groups: Map<string, Adds>;
  /** The same without the groups that the main tells more of. */
  readonly #besideMain: Map<string, Adds>;
  readonly #mains: MainFronts;
  readonly #driveDepth: number;
  readonly #pumpDepth: number;
  readonly #tankDepth: number;
  /** Slots of the hoses of outlets: what they ask under no pressure is in the sum of the parts. */
  readonly #hoses: readonly string[];
  readonly #outletDepth: number;

  constructor(parting: Parting, limits: readonly Limit[]) {
    this.#parting = parting;
    const { space, coreSlots } = parting;
    this.#groups = parting.fronts.floors(new Set());
    this.#besideMain = parting.fronts.floors(OF_MAIN);
    this.#mains = new MainFronts(space, parting.groups, parting.fronts, parting.cap);
    this.#driveDepth = Math.max(...DRIVE.map((slot) => coreSlots.indexOf(slot)));
    this.#pumpDepth = coreSlots.indexOf('pump');
    this.#hoses = space.slots.flatMap(({ id, options }) =>
      coreSlots.includes(id) && options.some((p) => p?.kind === 'hose') ? [id] : [],
    );
    this.#tankDepth = coreSlots.indexOf('tank');
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
  beyond(decided: number, partAt: PartAt): Beyond {
    const pump = decided > this.#pumpDepth ? partAt('pump') : undefined;
    const groups = this.#groups.get(portKeyOf(pump, 'in')) ?? this.#groups.get('')!;
    const open = decided <= this.#outletDepth;
    const pressure = open ? 0 : this.#parting.pressure(partAt);
    const outlets = open ? NOTHING : this.#outlets(partAt, pump, pressure);
    const labels = this.#parting.small.labels(
      decided > this.#tankDepth ? partAt('tank') : undefined,
      pressure,
    );
    const all = plus(this.#parting.always, groups, outlets, labels);
    return { all, front: this.#blocks.beyond(decided, partAt) };
  }

  /** The same with what pump and outlets ask of regulator and jet, which takes longer; undefined where nothing more is known. */
  withMain(decided: number, partAt: PartAt, { all, front }: Beyond): Beyond | undefined {
    if (decided <= this.#outletDepth || decided <= this.#pumpDepth) return undefined;
    const driven = decided > this.#driveDepth;
    const tank = driven && decided > this.#tankDepth ? partAt('tank') : undefined;
    const main = this.#mains.of(partAt, driven, tank);
    if (main === undefined) return undefined;
    const inlet = portKeyOf(partAt('pump'), 'in');
    const [groups, beside] = [this.#groups, this.#besideMain].map((by) => by.get(inlet) ?? by.get('')!);
    const { cents, mass } = all;
    return {
      all: {
        cents: cents - groups!.cents + beside!.cents,
        mass: mass - groups!.mass + beside!.mass,
        late: all.late,
      },
      front: joinedPoints(front, main),
    };
  }

  /** Joints of the outlets, where they meet, what their hoses ask under pressure, and the wire of a pump. */
  #outlets(partAt: PartAt, pump: Part | undefined, pressure: number): Adds {
    const { joints, small } = this.#parting;
    const along = joints.outletsAlong(partAt, pressure);
    if (along === undefined) return NOTHING;
    const wire = pump === undefined ? NOTHING : small.pumpWire(partAt);
    let { cents, mass, late } = plus(along.adds, joints.nodeFloor(along.ends, pump, pressure), wire);
    for (const slot of this.#hoses) {
      const hose = partAt(slot);
      const [weak, strong] = [0, pressure].map((p) => this.#parting.own(slot, hose, partAt, p));
      cents += strong!.cents - weak!.cents;
      mass += strong!.mass - weak!.mass;
      late = Math.max(late, strong!.late);
    }
    return { cents, mass, late };
  }
}
