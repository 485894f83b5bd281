import type { Part, Shop } from '../../catalogue/index.ts';
import type { Point } from './points.ts';
import { bestWays } from './completions.ts';
import type { Completion, Core } from './core-types.ts';
import { Parting } from './core.ts';
import { everyWay } from './every-way.ts';
import type { Figures } from './figures.ts';
import { Floors } from './floors.ts';
import type { Choice, Front } from './front.ts';
import type { Limit } from './limit.ts';
import { NOTHING, plus, type Adds } from './money.ts';
import { coresNear, limitedTo } from './near.ts';
import type { Prover } from './prover.ts';
import { partsIn, type PartAt, type SearchSpace } from './space.ts';

/** Sets of parts between two reports. */
const REPORT = 500;
/** Proofs between two reports while the ways of one core are gone through. */
const PROOFS = 25;
/** Share of the proofs that may go into finding good rigs before all cores are gone through. */
const SEEDING = 0.3;
/** Ways to fill the groups of a core that are proven then. */
const FEW_WAYS = 3;
const IN_TURN: readonly ((figures: Figures) => number)[] = [
  (f) => f.priceCents,
  (f) => f.mass,
  (f) => -f.margin,
  (f) => f.days,
];
/** Times that pump, main and suction line, or a whole rig, are judged for one core that is gone through way by way, and in a round. */
const RECKONED = 5_000;
const RECKONED_IN_ROUND = 300_000;
const NO_MATE = 'nothing in the catalogue goes with these parts';
const NO_MAIN = 'pressure: no regulator, return hose and jet go with pump and outlets';
const BEATEN = 'beaten by a rig already found';

/** A space with its bounds, once what no rig can have is gone. */
export interface Prepared {
  readonly space: SearchSpace;
  readonly limits: readonly Limit[];
  /** Sets of parts that are gone already, by why. */
  readonly refused: ReadonlyMap<string, number>;
}

/**
 * Goes through the cores of a space, slot by slot, and for each core through what fills its groups; leaves out what a
 * condition refuses and what is bound to be beaten by a rig already found.
 */
export class CoreSearch {
  nodes = 0;
  /** Sets of parts that need no more looking at. */
  settled = 0;
  /** It was told to end, or has looked at or proven all that it may. */
  stopped = false;
  readonly #prover: Prover;
  readonly #front: Front;
  readonly #mostNodes: number;
  readonly #shop: Shop;
  readonly #refused = new Map<string, number>();
  #goOn: () => boolean = () => true;
  #unsettled = false;
  #within = 0;
  /** Left of this round. */
  #reckonings = 0;
  /** What is reckoned of a space holds for every round. */
  readonly #begun = new Map<
    SearchSpace,
    { readonly parting: Parting; readonly floorsOf: Map<Parting, Floors> }
  >();

  constructor(prover: Prover, front: Front, shop: Shop, mostNodes: number) {
    this.#prover = prover;
    this.#front = front;
    this.#shop = shop;
    this.#mostNodes = mostNodes;
  }

  /** Begins a round over all spaces: what is better by no more than a share than a rig found is not looked at. */
  begin(within: number): void {
    this.#within = within;
    this.#unsettled = false;
    this.#reckonings = RECKONED_IN_ROUND;
    this.settled = 0;
    this.#refused.clear();
  }

  /** True when nothing of the space is left to look at. */
  run({ space, limits, refused }: Prepared, goOn: () => boolean): boolean {
    this.#goOn = goOn;
    for (const [why, sets] of refused) this.#count(why, sets);
    if (space.size === 0) return !this.stopped;
    const begun = this.#begun.get(space) ?? {
      parting: new Parting(space, limits, this.#shop),
      floorsOf: new Map<Parting, Floors>(),
    };
    this.#begun.set(space, begun);
    const { parting, floorsOf } = begun;
    const { coreSlots } = parting;
    const options = coreSlots.map((id) => space.slots.find((s) => s.id === id)!.options);
    const depthOf = new Map(coreSlots.map((s, i) => [s, i]));
    const limitsAt = coreSlots.map((_, i) =>
      limits.filter(
        (l) => l.slots.every((s) => depthOf.has(s)) && Math.max(...l.slots.map((s) => depthOf.get(s)!)) === i,
      ),
    );
    const inCore = limitsAt.flat().sort((a, b) => a.slots.length - b.slots.length);
    this.#seed(parting, inCore, goOn);
    const parts = new Map<string, Part | undefined>();
    const partAt: PartAt = (slot) => parts.get(slot);
    const left: LeftCore[] = [];
    const visit = (depth: number, sets: number, sum: Adds, margin: number, under: Parting): void => {
      const slot = coreSlots[depth];
      if (slot === undefined) {
        if (this.#try(under, parts, partAt, margin)) this.settled += sets;
        else left.push({ parts: new Map(parts), sets, margin });
        return;
      }
      const each = sets / options[depth]!.length;
      for (const part of options[depth]!) {
        if (this.nodes >= this.#mostNodes || this.#prover.spent) this.stopped = true;
        if (this.stopped) break;
        this.nodes++;
        if (this.nodes % REPORT === 0 && !goOn()) this.stopped = true;
        parts.set(slot, part);
        const parting = slot === 'pump' ? under.behind(part) : under;
        const floors = floorsOf.get(parting) ?? new Floors(parting, limits);
        floorsOf.set(parting, floors);
        const next = plus(sum, parting.own(slot, part, partAt));
        const beyond = floors.beyond(depth + 1, partAt);
        const { front } = beyond;
        const best = plus(next, beyond.all);
        const now = this.#why(parting, best, front, Math.min(margin, beyond.spare));
        if (now !== undefined) {
          this.#refuse(now, each);
          continue;
        }
        const lightest = Math.min(...front.map((p) => p.mass));
        let spare = Math.min(margin, beyond.spare, parting.carried(partAt, best.mass + lightest));
        let refusedBy =
          spare < 0 ? 'weight: the tank full is more than the carrier or the vehicle takes' : '';
        for (const limit of limitsAt[depth]!) {
          if (spare < 0) break;
          spare = Math.min(spare, limit.margin(partAt));
          refusedBy = limit.why;
        }
        let why = spare < 0 ? refusedBy : this.#why(parting, best, front, spare);
        const isOpen = (all: Adds, some: readonly Point[]) =>
          this.#why(parting, plus(next, all), some, spare) === undefined;
        const told =
          why === undefined ? floors.withMain(depth + 1, partAt, beyond, spare, isOpen) : undefined;
        if (told !== undefined)
          why =
            told.front.length === 0 ? NO_MAIN : this.#why(parting, plus(next, told.all), told.front, spare);
        if (why !== undefined) this.#refuse(why, each);
        else visit(depth + 1, each, next, spare, parting);
      }
      parts.delete(slot);
    };
    visit(0, space.size, NOTHING, Infinity, parting);
    for (const { parts: of, sets, margin } of left) {
      if (this.stopped) break;
      if (!goOn()) this.stopped = true;
      else if (this.#goThrough(parting, of, margin)) this.settled += sets;
      else this.#unsettled = true;
    }
    return !this.stopped && !this.#unsettled;
  }

  /**
   * Finds good rigs near those already found: tries the cores that differ from theirs in a slot or two, and goes on from
   * what comes of it. It settles nothing; but the better the rigs that are known, the more is bound to be beaten.
   */
  #seed(parting: Parting, limits: readonly Limit[], goOn: () => boolean): void {
    const { space, coreSlots } = parting;
    const gone = new Set<Choice>();
    const tried = new Set<string>();
    const optionsOf = new Map(space.slots.map((s) => [s.id, s.options]));
    for (;;) {
      const open = this.#front.choices.filter((c) => c.rig.layout === space.layout.id && !gone.has(c));
      if (open.length === 0) return;
      // In turn from the cheapest, the lightest, the safest and the soonest, so that all ends of the front are sought.
      const better = IN_TURN[gone.size % IN_TURN.length]!;
      const from = open.reduce((a, b) => (better(b.figures) < better(a.figures) ? b : a));
      gone.add(from);
      const found = partsIn(space, from.rig.items);
      const core = new Map(coreSlots.map((id) => [id, found.get(id)]));
      for (const parts of coresNear(space, coreSlots, core)) {
        const key = coreSlots.map((id) => optionsOf.get(id)!.indexOf(parts.get(id))).join(' ');
        if (tried.has(key)) continue;
        tried.add(key);
        if (this.#prover.share >= SEEDING || !goOn()) return;
        const at: PartAt = (slot) => parts.get(slot);
        const margin = limitedTo(limits, at);
        if (margin >= 0) this.#try(parting, parts, at, margin, FEW_WAYS);
      }
    }
  }

  /** Sets of parts by the condition that refused them, most first. */
  refused(): { readonly why: string; readonly sets: number }[] {
    return [...this.#refused].map(([why, sets]) => ({ why, sets })).sort((a, b) => b.sets - a.sets);
  }

  /** Why nothing of a front is left to look at, with what a rig adds besides; undefined when something is. */
  #why(parting: Parting, adds: Adds, front: readonly Point[], spare: number): string | undefined {
    if (front.length === 0) return NO_MATE;
    const margin = parting.spare(spare);
    let why = 'price or day: the least possible is beyond the brief';
    for (const p of front) {
      const best = parting.figures(
        adds.cents + p.cents,
        adds.mass + p.mass,
        Math.max(adds.late, p.late),
        Math.min(margin, p.margin),
      );
      if (best.margin < 0) continue;
      if (!this.#front.covers(best, this.#within)) return undefined;
      why = BEATEN;
    }
    return why;
  }

  /**
   * Proves the ways to fill a core's groups that have the best bounds: they make the front by which nearly all others
   * are covered. True when nothing of the core is left.
   */
  #try(
    all: Parting,
    parts: ReadonlyMap<string, Part | undefined>,
    partAt: PartAt,
    margin: number,
    most = Infinity,
  ): boolean {
    const parting = all.before(partAt);
    const core = parting.coreOf(partAt, margin, (best) => this.#keeps(best));
    if (core === undefined || !this.#keeps(parting.ideal(core))) return true;
    const best = bestWays(parting, core, (figures) => this.#keeps(figures));
    return this.#prove(parting, core, best, parts, most) && !this.#keeps(parting.ideal(core));
  }

  /** Proves every way to fill a core's groups that the front does not cover; true when nothing of the core is left. */
  #goThrough(all: Parting, parts: ReadonlyMap<string, Part | undefined>, margin: number): boolean {
    const partAt: PartAt = (slot) => parts.get(slot);
    const parting = all.before(partAt);
    const core = parting.coreOf(partAt, margin, (best) => this.#keeps(best));
    if (core === undefined || !this.#keeps(parting.ideal(core))) return true;
    const keep = (figures: Figures) => this.#keeps(figures);
    const most = Math.min(RECKONED, this.#reckonings);
    const allowance = { left: most };
    const ended = everyWay(parting, core, keep, allowance, (way) => this.#prove(parting, core, [way], parts));
    this.#reckonings -= most - Math.max(0, allowance.left);
    return ended;
  }

  #keeps(best: Figures): boolean {
    return best.margin >= 0 && !this.#front.covers(best, this.#within);
  }

  #prove(
    parting: Parting,
    core: Core,
    found: readonly Completion[],
    parts: ReadonlyMap<string, Part | undefined>,
    most = Infinity,
  ): boolean {
    const { groups, space } = parting;
    let left = most;
    for (const c of found) {
      if (left <= 0) return false;
      if (this.#prover.spent) this.stopped = true;
      if (this.stopped) return false;
      if (!this.#keeps(parting.figures(c.cents, c.mass, c.late, c.margin))) continue;
      const whole = new Map(parts);
      groups.forEach((g, i) => g.slots.forEach((slot, k) => whole.set(slot, c.groups[i]!.parts[k])));
      const at: PartAt = (slot) => whole.get(slot);
      if (!parting.whole(core, c, at).every((best) => best.some((figures) => this.#keeps(figures)))) continue;
      const proven = this.#prover.of(space, at);
      left--;
      if (proven !== undefined) this.#front.offer(proven);
      if (this.#prover.proofs % PROOFS === 0 && !this.#goOn()) this.stopped = true;
    }
    return true;
  }

  #refuse(why: string, sets: number): void {
    this.#count(why, sets);
    this.settled += sets;
  }

  #count(why: string, sets: number): void {
    this.#refused.set(why, sets + (this.#refused.get(why) ?? 0));
  }
}

/** A core of which something is left when all cores have been tried. */
interface LeftCore {
  readonly parts: ReadonlyMap<string, Part | undefined>;
  readonly sets: number;
  readonly margin: number;
}
