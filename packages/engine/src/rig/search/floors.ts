import type { Part } from '../../catalogue/index.ts';
import { BlockFronts } from './block-fronts.ts';
import { idealOf, type Group } from './core-types.ts';
import type { Parting } from './core.ts';
import type { Limit } from './limit.ts';
import { MainFronts, OF_MAIN } from './main-fronts.ts';
import { NOTHING, plus, type Adds } from './money.ts';
import { OutletLines } from './outlet-lines.ts';
import { stepShare } from './figures.ts';
import { fewer, joinedPoints, type Point } from './points.ts';
import { pumpFlow } from './pump-flow.ts';
import { remember } from './remember.ts';
import type { PartAt } from './space.ts';
import { portKeyOf } from './trims.ts';
import { pressedSpare } from './whole-limits.ts';

const DRIVE = ['pump', 'reduction', 'engine', 'pto'];
const NONE: ReadonlySet<Group['id']> = new Set();
const UNRATED = { near: Infinity, far: Infinity };
const SUCTION: ReadonlySet<Group['id']> = new Set<Group['id']>(['suction']);
const WITH_MAIN: ReadonlySet<Group['id']> = new Set([...SUCTION, ...OF_MAIN]);

/** What a rig adds besides the parts of its first slots, and the front of what its other core slots add. */
export interface Beyond {
  readonly all: Adds;
  readonly front: readonly Point[];
  /** Most spare with those first parts, as far as it hangs on what is yet to come. */
  readonly spare: number;
}

/** The least that the suction line of a tank and a driven pump adds, and the most spare that one may have. */
type Suction = Adds & { readonly spare: number };

/**
 * Lower bounds of what a rig adds some of whose core slots are decided, in their order: the parts decided, the cheapest
 * of the parts left that go together, the cheapest way to fill each group, and what is joined at the manifold.
 */
export class Floors {
  readonly #parting: Parting;
  readonly #blocks: BlockFronts;
  readonly #lines: OutletLines;
  readonly #joined = new WeakMap<readonly Point[], WeakMap<readonly Point[], readonly Point[]>>();
  readonly #suctions = new Map<string, Suction | undefined>();
  /** Least that fills the groups, by which of them are known better. */
  readonly #groups: (without: ReadonlySet<Group['id']>) => Map<string, Adds>;
  readonly #mains: MainFronts;
  readonly #driveDepth: number;
  readonly #pumpDepth: number;
  readonly #tankDepth: number;
  /** Slots of the hoses of outlets: what they ask under no pressure is in the sum of the parts. */
  readonly #hoses: readonly string[];

  constructor(parting: Parting, limits: readonly Limit[]) {
    this.#parting = parting;
    const { space, coreSlots } = parting;
    const floors = new Map<ReadonlySet<Group['id']>, Map<string, Adds>>();
    this.#groups = (without) =>
      floors.get(without) ?? remember(floors, without, parting.fronts.floors(without));
    this.#mains = new MainFronts(space, parting.groups, parting.fronts);
    this.#driveDepth = Math.max(...DRIVE.map((slot) => coreSlots.indexOf(slot)));
    this.#pumpDepth = coreSlots.indexOf('pump');
    this.#hoses = space.slots.flatMap(({ id, options }) =>
      coreSlots.includes(id) && options.some((p) => p?.kind === 'hose') ? [id] : [],
    );
    this.#tankDepth = coreSlots.indexOf('tank');
    this.#blocks = new BlockFronts(parting, limits);
    this.#lines = new OutletLines(parting, limits);
  }

  /**
   * What a rig adds besides the parts of its first slots: `all` whatever it has there, and the front of what its other
   * core slots add, empty when nothing goes with the first ones.
   */
  beyond(decided: number, partAt: PartAt): Beyond {
    const pump = decided > this.#pumpDepth ? partAt('pump') : undefined;
    const begun = this.#lines.isDecided(decided) ? undefined : this.#lines.begun(decided, partAt);
    const pressure = begun === undefined ? this.#parting.pressure(partAt) : this.#parting.pressed(begun.set);
    const blocks = this.#blocks.beyond(decided, partAt);
    const front =
      begun === undefined ? blocks : this.#together(blocks, this.#lines.met(begun, pump, pressure));
    if (front.length === 0) return { all: NOTHING, front, spare: -1 };
    const outlets =
      begun === undefined ? this.#outlets(partAt, pump, pressure) : this.#parting.small.pumpWireAny(pump);
    const driven = decided > this.#driveDepth;
    const spare =
      begun !== undefined && pump !== undefined
        ? pressedSpare(this.#parting.space, partAt, begun.set, driven)
        : Infinity;
    const tank = decided > this.#tankDepth ? partAt('tank') : undefined;
    const labels = this.#parting.small.labels(tank, pressure);
    const sucks = this.#sucks(partAt, driven, tank);
    const groups = this.#floor(pump, sucks === undefined ? NONE : SUCTION);
    const all = plus(this.#parting.always, groups, outlets, labels, sucks ?? NOTHING);
    return { all, front, spare: Math.min(spare, sucks?.spare ?? Infinity) };
  }

  /**
   * The same with what pump and outlets ask of regulator and jet, which takes longer; undefined where nothing more is known.
   *
   * @param most spare that the rig can have by all else: more of it is not told
   * @param isOpen whether something of a front is still to be looked at: one point of which that is so is enough then
   */
  withMain(
    decided: number,
    partAt: PartAt,
    { all, front, spare }: Beyond,
    most: number,
    isOpen?: (all: Adds, front: readonly Point[]) => boolean,
  ): Beyond | undefined {
    if (!this.#lines.isDecided(decided) || decided <= this.#pumpDepth) return undefined;
    const driven = decided > this.#driveDepth;
    const tank = driven && decided > this.#tankDepth ? partAt('tank') : undefined;
    const pump = partAt('pump');
    const known = this.#sucks(partAt, driven, tank) === undefined ? NONE : SUCTION;
    const groups = this.#floor(pump, known);
    const beside = this.#floor(pump, known === NONE ? OF_MAIN : WITH_MAIN);
    const rest = {
      cents: all.cents - groups.cents + beside.cents,
      mass: all.mass - groups.mass + beside.mass,
      late: all.late,
    };
    const test = isOpen && ((point: Point) => isOpen(rest, joinedPoints(front, [point])));
    const main = this.#mains.of(partAt, driven, tank, this.#parting.spare(most), test);
    return main && { all: rest, front: joinedPoints(front, main), spare };
  }

  #together(blocks: readonly Point[], lines: readonly Point[]): readonly Point[] {
    if (lines.length < 2 || blocks.length === 0) return joinedPoints(blocks, lines);
    let known = this.#joined.get(blocks);
    if (known === undefined) this.#joined.set(blocks, (known = new WeakMap()));
    let joined = known.get(lines);
    if (joined === undefined) known.set(lines, (joined = fewer(joinedPoints(blocks, lines))));
    return joined;
  }

  #floor(pump: Part | undefined, without: ReadonlySet<Group['id']>): Adds {
    const floors = this.#groups(without);
    return floors.get(portKeyOf(pump, 'in')) ?? floors.get('')!;
  }

  /** The suction line of a tank and a pump that moves the same whatever its outlets; undefined where it is not known. */
  #sucks(partAt: PartAt, driven: boolean, tank: Part | undefined): Suction | undefined {
    const { space, groups, fronts, cap, pieces } = this.#parting;
    const pump = partAt('pump');
    const group = groups.find((g) => g.id === 'suction');
    const known = driven && tank?.kind === 'tank' && pump?.kind === 'pump';
    if (!known || pump.law.action !== 'displacement' || group === undefined) return undefined;
    const flow = pumpFlow(space, partAt);
    const key = `${tank.id} ${pump.id} ${flow.most}`;
    if (this.#suctions.has(key)) return this.#suctions.get(key);
    const facts = {
      space,
      partAt,
      pieces,
      tank,
      pump,
      flow,
      needs: undefined,
      rated: UNRATED,
      lifted: 0,
      cap,
    };
    const { cents, mass, late, margin } = idealOf(fronts.of(group, facts, partAt));
    return remember(this.#suctions, key, { cents, mass, late, spare: stepShare(margin) });
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
