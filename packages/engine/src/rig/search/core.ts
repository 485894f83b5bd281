import type { Part, PartOf, Shop } from '../../catalogue/index.ts';
import { wholeFeet } from '../bill/index.ts';
import { contactsOf } from '../contacts.ts';
import { rinseWaterAboard } from '../placement/index.ts';
import { supplyFor } from '../rig-supply.ts';
import { idealOf, type Core, type Group } from './core-types.ts';
import { deckOrders, type Stood } from './deck-orders.ts';
import { fallingMain } from './falling-main.ts';
import { marginStep, massStep, type Figures } from './figures.ts';
import { mainPressure, type CoreFacts } from './group-asks.ts';
import { GroupFronts } from './group-fronts.ts';
import type { Limit } from './limit.ts';
import { LineJoints } from './line-joints.ts';
import { ratedOf, type Rated } from './rated.ts';
import { lineNeeds, type LineNeeds } from './line-needs.ts';
import { drivePower } from './main-pressure.ts';
import { MainCheck, SharedByMains } from './main-check.ts';
import { mostLifted } from './main-duties.ts';
import { MOST_MAINS } from './main-fronts.ts';
import { Money, NOTHING, plus, type Adds } from './money.ts';
import { hoseLength, timesOf } from './part-rig.ts';
import { Pieces, TANK_HEAD } from './pieces.ts';
import { pumpFlow, type PumpFlow } from './pump-flow.ts';
import { remember } from './remember.ts';
import { SmallThings } from './small-things.ts';
import type { PartAt, SearchSpace } from './space.ts';
import { trimGroups } from './trim-groups.ts';
import { weightSpare, type ToCome } from './weight-check.ts';
import { Owns, portOf, type Own, type Trim, type TrimFront } from './trims.ts';

type MainRest = readonly [needs: LineNeeds, flow: PumpFlow, rated: Rated];

const MOST_SPARE = 10_000;
/** Fittings of a whole rig are judged as weighing no more than so much beyond their least, or at least that [kg]. */
const MORE_FITTINGS = [5, 20, 60];
/** Petrol, from memory [kg/m3]. */
const LIGHTEST_FUEL = 745;

/** The parts of a space taken apart into a core and groups, with bounds of what each adds to a rig. */
export class Parting {
  readonly space: SearchSpace;
  readonly coreSlots: readonly string[];
  readonly groups: readonly Group[];
  readonly cap: number;
  readonly money: Money;
  readonly #owns: Owns;
  readonly #shop: Shop;
  readonly #limits: readonly Limit[];
  readonly joints: LineJoints;
  readonly fronts: GroupFronts;
  readonly pieces: Pieces;
  readonly small: SmallThings;
  readonly #regulated: boolean;
  readonly #grouped: readonly string[];
  readonly #rigAdds: Adds;
  /** What the mains of all cores have in common. */
  readonly #shared: SharedByMains;
  readonly #mains: Map<string, MainCheck>;
  readonly #density: number;

  /** The same under lower pressures, by the rating of fittings that is enough there. */
  readonly #under: Map<number, Parting>;

  /** @param within that this one is of, with a pressure that nothing behind its pump exceeds [Pa] */
  constructor(
    space: SearchSpace,
    limits: readonly Limit[],
    shop: Shop,
    within?: { readonly all: Parting; readonly most: number },
  ) {
    this.space = space;
    this.#shared = within === undefined ? new SharedByMains(space) : within.all.#shared;
    this.#mains = within === undefined ? new Map<string, MainCheck>() : within.all.#mains;
    this.#under = within === undefined ? new Map<number, Parting>() : within.all.#under;
    this.#shop = shop;
    this.#limits = limits;
    this.money = new Money(shop);
    const { brief, contexts, catalogue, layout } = space;
    const supply =
      within?.all.pieces.supply ?? supplyFor(catalogue, contactsOf(brief, contexts[0]!.site).unsuited);
    const pumps = space.slots.find((s) => s.id === 'pump')?.options ?? [];
    this.pieces = new Pieces(
      supply,
      this.money,
      within?.most ?? Math.max(...pumps.map(standing)) + TANK_HEAD,
    );
    const has = new Set(space.slots.map((s) => s.id));
    const suction = layout.lines.find((l) => l.from === 'tank');
    this.groups = trimGroups(space);
    this.#grouped = this.groups.flatMap((g) => g.slots);
    this.coreSlots = space.slots.map((s) => s.id).filter((id) => !this.#grouped.includes(id));
    this.#regulated = has.has('regulator');
    const lineCents = this.money.per('line');
    this.#density = Math.max(...brief.duties.map((d) => contexts[0]!.liquids.get(d.liquid)!.density));
    this.cap = this.#spareCap();
    this.joints = new LineJoints(space, this.pieces, this.groups, lineCents);
    const back = this.groups.some((g) => g.id === 'return' || g.id === 'induction');
    this.small = new SmallThings(space, this.pieces, back);
    this.#owns = new Owns(this.money, this.pieces, this.small);
    const { groups: filled, coreSlots, cap } = this;
    this.fronts = new GroupFronts({
      space,
      pieces: this.pieces,
      groups: filled,
      coreSlots,
      limits,
      cap,
      own: (slot, part, partAt, pressure) => this.own(slot, part, partAt, pressure),
      lineCents,
      all: within?.all.fronts,
    });
    const pumpLines = layout.lines.filter((l) => l.run.includes('pump')).length;
    const shafts = has.has('pto') ? 1 : has.has('engine') && has.has('reduction') ? 2 : 0;
    this.#rigAdds = {
      ...NOTHING,
      cents:
        this.money.per('rig') +
        shafts * this.money.perJoint +
        (pumpLines + (suction === undefined ? 0 : 1)) * lineCents -
        this.money.slack,
    };
  }

  /** The same for rigs with a pump; what is joined under lower pressures is made of fewer sorts of fittings, and better known. */
  behind(pump: Part | undefined): Parting {
    return this.#standing(standing(pump));
  }

  /** The same for cores with all their outlets: with these shut, what stands before the shutters has the manifold's pressure. */
  before(partAt: PartAt): Parting {
    const { near, far } = ratedOf(this.joints.outlets, partAt);
    const lifted = mostLifted(this.space, [partAt('carrier')]);
    return this.#standing(Math.min(standing(partAt('pump')), near, far + lifted));
  }

  /** Where the promises on ratings hold the pressure behind the pump; what lies lower has some head more. */
  #standing(pressure: number): Parting {
    const level = this.pieces.supply.level(pressure + TANK_HEAD);
    let under = this.#under.get(level);
    if (under === undefined) {
      under = new Parting(this.space, this.#limits, this.#shop, { all: this, most: level });
      this.#under.set(level, under);
    }
    return under;
  }

  /** What one part adds by itself. */
  own(slot: string, part: Part | undefined, partAt: PartAt, pressure = 0): Own {
    const length = part?.kind === 'hose' ? hoseLength(this.space, slot) : 0;
    return this.#owns.of(slot, part, length, part === undefined ? 1 : timesOf(part, partAt), pressure);
  }

  /** Pressure that what stands behind the pump sees at least, with outlets that are decided [Pa]. */
  pressure(partAt: PartAt): number {
    return mainPressure(lineNeeds(this.space, partAt), this.#regulated);
  }

  /** The same behind outlets that are set to a pressure [Pa]. */
  pressed(set: number): number {
    return mainPressure({ set }, this.#regulated);
  }

  /** What every rig adds: labour once a rig, and the lines that all have. */
  get always(): Adds {
    return this.#rigAdds;
  }

  /**
   * The core of a rig, all of whose slots outside the groups are decided; undefined when it cannot be, or when its best
   * figures are of no use.
   *
   * @param margin most spare by the conditions on these slots
   * @param keep whether figures are of use: asked before what takes long is reckoned
   */
  coreOf(partAt: PartAt, margin: number, keep: (best: Figures) => boolean): Core | undefined {
    const { space } = this;
    const [tank, pump] = [partAt('tank'), partAt('pump')];
    if (tank?.kind !== 'tank' || pump === undefined) return undefined;
    const needs = lineNeeds(space, partAt);
    const pressure = mainPressure(needs, this.#regulated);
    let own = plus(this.always, this.small.labels(tank, pressure), this.small.pumpWire(partAt));
    for (const id of this.coreSlots) own = plus(own, this.own(id, partAt(id), partAt, pressure));
    const along = this.joints.outletsAlong(partAt, pressure);
    const feed = portOf(pump, 'out');
    if (along === undefined || feed === undefined) return undefined;
    const falling = fallingMain(space, partAt, pump, tank);
    const spare = Math.min(margin, falling?.spare ?? Infinity);
    if (spare < 0) return undefined;
    const rated = ratedOf(this.joints.outlets, partAt);
    const flow = pumpFlow(space, partAt);
    const facts: CoreFacts = {
      space,
      partAt,
      pieces: this.pieces,
      tank,
      pump,
      flow,
      falling,
      needs,
      rated,
      lifted: mostLifted(space, [partAt('carrier')]),
      cap: this.cap,
    };
    const bounds = {
      adds: plus(own, along.adds),
      margin: Math.min(this.cap, marginStep(spare)),
      node: this.joints.nodeFloor(along.ends, pump, pressure),
    };
    // Wires hang on where the parts stand, which takes long to find: without them the core is no worse.
    const unwired = this.groups.map((g) => (g.id === 'battery' ? [] : this.fronts.of(g, facts, partAt)));
    if (this.groups.some((g, i) => g.id !== 'battery' && unwired[i]!.length === 0)) return undefined;
    if (!keep(this.ideal({ ...bounds, fronts: unwired.filter((f) => f.length > 0) }))) return undefined;
    const stood = this.#stood(partAt, this.#grouped);
    const wires = new Map(stood.map((s) => [s.battery, this.small.wires(partAt, s)]));
    const adds = this.#grouped.includes('battery') ? bounds.adds : plus(own, ...wires.values(), along.adds);
    const main =
      pump.kind === 'pump' && pump.law.action === 'displacement' && needs !== undefined && this.#regulated
        ? this.#mainOf(partAt, pump, tank, needs, flow, rated)
        : undefined;
    const stirred = main?.plainReturn() ?? Infinity;
    const fronts: (readonly TrimFront[])[] = [];
    for (const [i, group] of this.groups.entries()) {
      let front = group.id === 'battery' ? this.fronts.of(group, { ...facts, wires }, partAt) : unwired[i]!;
      if (group.id === 'agitation') front = front.flatMap((f) => this.#without(f, stirred));
      if (front.length === 0) return undefined;
      fronts.push(front);
    }
    return {
      ...bounds,
      adds,
      wires,
      ends: this.joints.coreEnds(along.ends, feed),
      fronts,
      pressure,
      falling,
      main,
      power: drivePower(space, partAt),
    };
  }

  /** The main of a core; engines that turn a pump alike, and carriers with decks of one height, have the same. */
  #mainOf(partAt: PartAt, pump: PartOf<'pump'>, tank: PartOf<'tank'>, ...rest: MainRest): MainCheck {
    const carrier = partAt('carrier');
    const outlets = this.joints.outlets.flatMap((line) => line.run.map((slot) => partAt(slot)?.id));
    const deck = carrier?.kind === 'carrier' ? carrier.deckHeight : 0;
    const key = `${outlets.join(' ')} ${pump.id} ${rest[1].most} ${tank.id} ${deck}`;
    const known = this.#mains.get(key);
    if (known !== undefined) return known;
    const parts = new Map(this.coreSlots.map((slot) => [slot, partAt(slot)]));
    const [needs, flow, rated] = rest;
    const main = new MainCheck(
      this.space,
      { partAt: (slot) => parts.get(slot), pump, tanks: [tank], carriers: [carrier], needs, flow, rated },
      this.#shared,
    );
    return remember(this.#mains, key, main, MOST_MAINS);
  }

  /** Ways without an agitator, which meet nothing at the manifold, with no more spare than the plain return has. */
  #without(front: TrimFront, stirred: number): TrimFront[] {
    if (front.end !== undefined) return [front];
    if (stirred < 0) return [];
    const most = this.spare(stirred);
    const margin: TrimFront['margin'] = (parts) => Math.min(most, front.margin(parts));
    return [
      { ...front, margin, trims: front.trims.map((t) => ({ ...t, margin: Math.min(t.margin, most) })) },
    ];
  }

  /** Best figures of a core with whatever fills its groups. */
  ideal(core: Pick<Core, 'adds' | 'node' | 'margin' | 'fronts'>): Figures {
    let { cents, mass, late } = plus(core.adds, core.node);
    let { margin } = core;
    for (const fronts of core.fronts) {
      const best = idealOf(fronts);
      cents += best.cents;
      mass += best.mass;
      late = Math.max(late, best.late);
      margin = Math.min(margin, best.margin);
    }
    return this.figures(cents, mass, late, margin);
  }

  /** Most spare of the masses that are limited, with a tank full and at least so much dry mass. */
  carried(partAt: PartAt, dry: number): number {
    const [tank, carrier] = [partAt('tank'), partAt('carrier')];
    if (tank?.kind !== 'tank' || carrier?.kind !== 'carrier') return Infinity;
    let full = dry - 1e-6 + tank.volume * this.#density + rinseWaterAboard(this.space.brief);
    for (const slot of this.coreSlots) {
      const part = partAt(slot);
      if (part?.kind === 'engine') full += part.fuelTank * LIGHTEST_FUEL;
      if (part?.kind === 'hose')
        full += (Math.PI / 4) * part.bore ** 2 * hoseLength(this.space, slot) * this.#density;
    }
    const { massLimit } = this.space.brief.carrier;
    return Math.min(shareLeft(carrier.grossRating, full), shareLeft(massLimit, full));
  }

  /**
   * Best figures of a whole rig: a way to fill the groups of a core, with all of its parts in the one order in which the
   * proof puts them. The rig is as good as one of each list at most: fittings and small things, which sit about the pump,
   * weigh no more than some kilograms beyond their least, or the rig weighs at least these more.
   */
  whole({ wires }: Core, way: Omit<Trim, 'parts'>, partAt: PartAt): readonly (readonly Figures[])[] {
    const carrier = partAt('carrier');
    const stood = this.#stood(partAt, []);
    const before = wires.get(partAt('battery')) ?? NOTHING;
    const now = plus(...stood.map((s) => this.small.wires(partAt, s)));
    const cents = way.cents - before.cents + now.cents;
    const mass = way.mass - before.mass + now.mass;
    const orders = stood.flatMap((s) => s.orders);
    const least = Math.max(0, mass - this.#partsMass(partAt) - 1e-6);
    const borne = (toCome: ToCome) =>
      carrier?.kind === 'carrier' ? weightSpare(carrier, orders, toCome) : Infinity;
    return MORE_FITTINGS.map((more) =>
      [
        { spare: borne({ least, most: least + more }), mass },
        { spare: borne({ least: least + more, most: Infinity }), mass: mass + more },
      ].flatMap((f) =>
        f.spare < 0 ? [] : [this.figures(cents, f.mass, way.late, Math.min(way.margin, this.spare(f.spare)))],
      ),
    );
  }

  /** Dry mass of the parts alone [kg]. */
  #partsMass(partAt: PartAt): number {
    let mass = 0;
    for (const { id } of this.space.slots) {
      const part = partAt(id);
      if (part?.kind === 'hose') mass += part.mass * wholeFeet(hoseLength(this.space, id));
      else if (part !== undefined) mass += part.mass * timesOf(part, partAt);
    }
    return mass;
  }

  /** The orders in which the proof may put the parts on the deck. */
  #stood(partAt: PartAt, open: readonly string[]): readonly Stood[] {
    const carrier = partAt('carrier');
    return carrier?.kind === 'carrier' ? deckOrders(this.space, carrier, partAt, this.#density, open) : [];
  }

  /** A margin in steps, no more than any rig of the space has. */
  spare(margin: number): number {
    return Math.min(this.cap, marginStep(margin));
  }

  /** Rounds what is summed up the way a bill does, on the safe side. */
  figures(cents: number, mass: number, late: number, margin: number): Figures {
    const { budgetCents, readyInDays } = this.space.brief.limits;
    const days = this.#shop.assemblyDays + late;
    const price = Math.ceil(cents - 1e-3);
    return {
      priceCents: price,
      mass: massStep(mass - 1e-4),
      margin: Math.min(
        margin,
        marginStep(shareLeft(budgetCents, price)),
        marginStep(shareLeft(readyInDays, days)),
      ),
      days,
    };
  }

  #spareCap(): number {
    const limits = this.#limits.filter(
      (l) => l.slots.length === 2 && l.slots.includes('carrier') && l.slots.includes('tank'),
    );
    const options = (id: string) => this.space.slots.find((s) => s.id === id)?.options ?? [];
    let most = limits.length === 0 ? Infinity : -Infinity;
    for (const limit of limits)
      for (const tank of options('tank'))
        for (const carrier of options('carrier'))
          most = Math.max(
            most,
            limit.margin((slot) => (slot === 'tank' ? tank : carrier)),
          );
    return Math.min(MOST_SPARE, marginStep(Math.max(-1, most)));
  }
}

/** Pressure that a pump may have behind it [Pa]. */
function standing(pump: Part | undefined): number {
  return pump !== undefined && 'maxPressure' in pump ? pump.maxPressure : Infinity;
}

function shareLeft(limit: number | undefined, has: number): number {
  return limit === undefined ? Infinity : (limit - has) / Math.max(limit, Number.MIN_VALUE);
}
