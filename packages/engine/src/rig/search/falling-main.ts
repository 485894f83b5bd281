import type { LayoutLine, Part, PartOf } from '../../catalogue/index.ts';
import { pumpDemand } from '../../physics/index.ts';
import { askedFlow } from '../asked-flow.ts';
import type { Duty } from '../brief.ts';
import { usedOutlets } from '../design/outlet-demands.ts';
import { outletHeightOf } from '../duty-network.ts';
import type { DutyLiquid } from '../proof/liquid.ts';
import { headAvailable } from '../proof/suction.ts';
import { liquidDepth } from '../tank-level.ts';
import { jetWay } from './jet.ts';
import { fallsToZero } from './falls-to-zero.ts';
import { lineLaw } from './line-takes.ts';
import { drivePower } from './main-pressure.ts';
import { flowOf, type Way } from './main-state.ts';
import { OFF } from './part-terms.ts';
import { pumpSpeed } from './pump-flow.ts';
import { pressureLaw } from './pump-limits.ts';
import type { PartAt, SearchSpace } from './space.ts';
import { leastSuctionLoss, suctionLaw, SuctionSide } from './trim-margins.ts';

const G = 9.80665;
/** For what the laws of the network have besides: a share of what the pump adds. */
const HAIR = 5e-4;
/** Flows are found to this much [m3/s]. */
const CLOSE = 5e-8;
/** Pressures are found to this much [Pa]. */
const CLOSE_PRESSURE = 1;
/** No pump of a catalogue gives more [m3/s]. */
const MOST_FLOW = 0.2;

type Law = (flow: number) => number;

/** An open outlet: what it takes at most by its flow, and what its height asks over the tank at rest [Pa]. */
interface Outlet {
  readonly takes: Law;
  readonly lift: number;
}

/** A suction line: what it takes in each duty by the flow [Pa]. */
interface Suction {
  readonly parts: readonly (Part | undefined)[];
  /** At least, with its strainer clean, and as dirty as may be. */
  readonly clean: readonly Law[];
  readonly dirty: readonly Law[];
  /** At most. */
  readonly most: readonly Law[];
  /** Most spare of the duties in which nothing stirs. */
  readonly still: number;
}

const NOTHING: Suction = { parts: [], clean: [], dirty: [], most: [], still: Infinity };

/** One duty as the pump sees it. Pressures are those of the liquid at rest at the ground [Pa]. */
interface FallingDuty {
  readonly duty: Duty;
  readonly liquid: DutyLiquid;
  readonly open: readonly Outlet[];
  readonly adds: Law;
  /** Least that the pump moves where it does not starve [m3/s]. */
  readonly least: number;
}

/**
 * A pump whose pressure falls as it gives more, with the outlets of a core. It works where its curve meets what is taken:
 * the more is taken at a pressure, the lower that is, and the more the suction line takes, the less the pump gives. So
 * with outlets and jets at the least that they let through and a suction line that takes its least, pressure and flow are
 * upper bounds. A rig that keeps its promise on suction leaves the pump some pressure in front of it; from there on the
 * pump gives at least what one outlet alone takes of it.
 */
export class FallingMain {
  /** Least that the pump moves by duty in a rig whose pump does not starve, its strainer dirty [m3/s]. */
  readonly least: readonly number[];
  /** Most pressure at the manifold over that of the tank at rest, by duty [Pa]. */
  readonly highest: readonly number[];
  /** Most spare of pump and drive. */
  readonly spare: number;
  readonly #space: SearchSpace;
  readonly #partAt: PartAt;
  readonly #duties: readonly FallingDuty[];
  readonly #tank: PartOf<'tank'>;
  /** At the pump's shaft [W]. */
  readonly #power: number;
  /** Of the nodes on either side of the pump [m]. */
  readonly #climb: number;
  readonly #pump: FallingPump;
  /** Flow at the end of its curve [m3/s]. */
  readonly #end: number;
  /** From the tank to the pump. */
  readonly #line: LayoutLine | undefined;
  readonly #side: SuctionSide | undefined;
  readonly #suctions = new Map<string, Suction>();
  readonly #known = new Map<string, number>();

  constructor(space: SearchSpace, partAt: PartAt, pump: FallingPump, tank: PartOf<'tank'>, deck: number) {
    this.#space = space;
    this.#partAt = partAt;
    this.#tank = tank;
    this.#power = drivePower(space, partAt);
    this.#pump = pump;
    const { brief, layout, contexts } = space;
    const pumped = layout.lines.find((l) => l.run.includes('pump'));
    const heightOf = (end: 'from' | 'to') => layout.nodes[pumped?.[end] ?? ''] ?? 0;
    this.#climb = heightOf('to') - heightOf('from');
    const lines = usedOutlets(layout, brief);
    this.#end =
      pump.kind === 'motor-pump'
        ? Math.max(...pump.curve.map((p) => p.flow))
        : pump.law.action === 'centrifugal'
          ? pump.law.curve[pump.law.curve.length - 1]!.flow *
            (pumpSpeed(space, pump, partAt) / pump.law.ratedSpeed)
          : MOST_FLOW;
    this.#line = layout.lines.find((l) => l.from === 'tank');
    this.#side = this.#line && new SuctionSide(space, this.#line, tank, pump.npshRequired, []);
    this.#duties = brief.duties.map((duty): FallingDuty => {
      const liquid = contexts[0]!.liquids.get(duty.liquid)!;
      const weight = liquid.density * G;
      const surface = weight * (deck + liquidDepth(tank, duty.tankLevel));
      const open = lines
        .filter((l) => (duty.open as readonly string[]).includes(l.opens))
        .map((line): Outlet => ({
          takes: lineLaw(space, line, duty, partAt),
          lift: weight * outletHeightOf(line, duty) - surface,
        }));
      const adds = pressureLaw(space, pump, partAt, liquid.density) ?? (() => 0);
      // Pressure in front of the pump at which it has just the head that it requires.
      const starved = weight * (pump.npshRequired - headAvailable(contexts[0]!.site, liquid, 0));
      const before = starved + weight * (deck + heightOf('from'));
      const behind = (flow: number) => (1 - HAIR) * adds(flow) + before - surface;
      const least = Math.max(0, ...open.map((outlet) => this.#meeting(outlet, [], behind).all));
      return { duty, liquid, open, adds, least };
    });
    this.least = this.#duties.map((d) => d.least);
    this.highest = this.#duties.map((d) => this.#highest(d, [], NOTHING));
    this.spare = Math.min(
      ...this.#duties.map((d) =>
        d.duty.agitate
          ? Infinity
          : this.#pumpSpare(d, d.least, [], (flow) => leastSuctionLoss(space, flow, d.liquid.density)),
      ),
    );
  }

  /**
   * Most spare of pump and drive in one duty: the pump gives what is asked with a reserve, and the drive carries what the
   * pump takes of it with the outlet open, and shut, when only what stirs the tank takes anything.
   *
   * @param from least that the pump moves [m3/s]
   * @param ways what stirs the tank
   * @param lost what the suction line takes at least by the flow [Pa]
   */
  #pumpSpare(d: FallingDuty, from: number, ways: readonly Way[], lost: Law): number {
    const [outlet] = d.open;
    if (outlet === undefined || d.open.length > 1) return Infinity;
    const { takes, lift } = outlet;
    const wide = ways.map((w) => scaled(w, 1 - OFF));
    const over = (flow: number) => {
      const taken = takes(flow);
      return (Number.isFinite(taken) ? (1 - OFF) * taken : 0) + lift;
    };
    const out = this.#meets((flow) => {
      const asks = over(flow);
      const all = flow + flowsOf(wide, asks);
      return (1 + HAIR) * d.adds(all) - lost(all) - asks;
    });
    const most = out + flowsOf(wide, over(out));
    const open = this.#driveSpare(d, Math.max(from, askedOf(d)), most);
    if (d.duty.agitate) return Math.min(open, this.#shutSpare(d, ways, lost));
    const asked = askedOf(d);
    return Math.min(open, asked > 0 ? most / asked - 1 + HAIR : Infinity);
  }

  /** Most spare of the drive with the outlets shut: the pump moves what the ways back into the tank take. */
  #shutSpare(d: FallingDuty, ways: readonly Way[], lost: Law): number {
    const flowAt = (all: readonly Way[], adds: Law, loses: Law) => {
      const left = (pressure: number) => {
        const flow = flowsOf(all, pressure);
        return adds(flow) - loses(flow) - pressure;
      };
      return flowsOf(all, fallsToZero(left, (1 + HAIR) * d.adds(0) + 1, CLOSE_PRESSURE));
    };
    const least = flowAt(
      ways.map((w) => scaled(w, 1 + OFF)),
      (flow) => (1 - HAIR) * d.adds(flow),
      (flow) => (1 + 3 * OFF) * lost(flow),
    );
    const most = flowAt(
      ways.map((w) => scaled(w, 1 - OFF)),
      (flow) => (1 + HAIR) * d.adds(flow),
      lost,
    );
    return this.#driveSpare(d, least, most * (1 + HAIR));
  }

  /**
   * Most spare of a drive whose pump moves something between a least and a most flow: what the pump takes of it is on each
   * straight piece of the curve least at one of its ends.
   */
  #driveSpare(d: FallingDuty, from: number, most: number): number {
    const pump = this.#pump;
    if (pump.kind !== 'pump' || pump.law.action !== 'centrifugal') return Infinity;
    const least = Math.min(most, from);
    const share = pumpSpeed(this.#space, pump, this.#partAt) / pump.law.ratedSpeed;
    const knots = pump.law.curve.map((p) => p.flow * share).filter((q) => q > least && q < most);
    const climb = d.liquid.density * G * this.#climb;
    const shafts = [least, most, ...knots].map(
      (q) => (q * Math.max(0, d.adds(q) - climb)) / pump.law.efficiency,
    );
    return (this.#power - Math.min(...shafts) * (1 - HAIR)) / this.#power;
  }

  /**
   * Most spare of what stirs the tank with a jet, an eductor and their valves; where the suction line is known, of that and
   * of pump and drive too. Below zero when a promise is broken.
   */
  trims(
    jet: Part | undefined,
    jetValve: Part | undefined,
    eductor: Part | undefined,
    eductorValve: Part | undefined,
    suction: readonly (Part | undefined)[],
  ): number {
    const line = suction.map((p) => p?.id).join(' ');
    const key = `${jet?.id} ${jetValve?.id} ${eductor?.id} ${eductorValve?.id} ${line}`;
    let spare = this.#known.get(key);
    if (spare !== undefined) return spare;
    let through = suction.length === 0 ? NOTHING : this.#suctions.get(line);
    if (through === undefined) this.#suctions.set(line, (through = this.#suctionOf(suction)));
    spare = through.still;
    for (const [i, d] of this.#duties.entries()) {
      if (spare < 0) break;
      if (!d.duty.agitate) continue;
      const stirring = this.#way('agitator', jet, jetValve, d);
      const drawing = this.#way('eductor', eductor, eductorValve, d);
      const ways = [stirring, drawing].flatMap((w) => w ?? []);
      const asked = d.liquid.agitationShare * this.#tank.volume;
      if (stirring !== undefined && asked > 0)
        spare = Math.min(
          spare,
          (flowOf(scaled(stirring, 1 - OFF), this.#highest(d, ways, through)) - asked) / asked + HAIR,
        );
      if (suction.length > 0 && spare >= 0) spare = Math.min(spare, this.#sucks(i, ways, through));
    }
    this.#known.set(key, spare);
    return spare;
  }

  #suctionOf(parts: readonly (Part | undefined)[]): Suction {
    const line = this.#line;
    if (line === undefined) return NOTHING;
    const laws = (dirty: boolean) =>
      this.#duties.map((d) => suctionLaw(parts, d.liquid, line.elbows ?? 0, dirty));
    const at: PartAt = (slot) => parts[line.run.indexOf(slot)];
    const most = this.#duties.map((d) => lineLaw(this.#space, line, d.duty, at));
    const of = { parts, clean: laws(false), dirty: laws(true), most };
    let still = Infinity;
    for (const [i, d] of this.#duties.entries())
      if (!d.duty.agitate && still >= 0) still = Math.min(still, this.#sucks(i, [], { ...of, still }));
    return { ...of, still };
  }

  /** Most spare of pump, drive and suction line in one duty. */
  #sucks(i: number, ways: readonly Way[], suction: Suction): number {
    const d = this.#duties[i]!;
    const [clean, dirty, most] = [suction.clean[i]!, suction.dirty[i]!, suction.most[i]!];
    // The least that the pump moves, with a suction line that takes the most that it may.
    const behind = (flow: number) => (1 - HAIR) * d.adds(flow) - (1 + OFF) * most(flow);
    const flow = Math.max(d.least, ...d.open.map((outlet) => this.#meeting(outlet, ways, behind).all));
    const side = this.#side!;
    const hose = suction.parts.find((p) => p?.kind === 'hose');
    return Math.min(side.inDuty(i, dirty(flow), hose), this.#pumpSpare(d, flow, ways, clean));
  }

  #way(slot: string, part: Part | undefined, valve: Part | undefined, d: FallingDuty): Way | undefined {
    const line = this.#space.layout.lines.find((l) => l.run.includes(slot));
    return line === undefined ? undefined : jetWay(line, part, valve, d.liquid, 0);
  }

  /** Most pressure at the manifold over that of the tank at rest: what drives a jet [Pa]. */
  #highest(d: FallingDuty, ways: readonly Way[], { clean }: Suction): number {
    const lost = clean[this.#duties.indexOf(d)] ?? (() => 0);
    const behind = (flow: number) => (1 + HAIR) * d.adds(flow) - lost(flow);
    let highest = behind(0);
    for (const outlet of d.open) {
      const { out, all, over } = this.#meeting(outlet, ways, behind);
      if (out > 0) highest = Math.min(highest, Math.max(over, behind(all)));
    }
    return highest;
  }

  /**
   * One outlet alone, and the jets, with all of them at the least that they let through: flow of the outlet and of the pump
   * [m3/s], pressure at the manifold over that of the tank at rest [Pa].
   *
   * @param behind what the pump has behind it at a flow over the tank at rest: never more at more [Pa]
   */
  #meeting(
    { takes, lift }: Outlet,
    ways: readonly Way[],
    behind: Law,
  ): { readonly out: number; readonly all: number; readonly over: number } {
    const narrow = ways.map((w) => scaled(w, 1 + OFF));
    // What else is taken follows from the pressure that the outlet asks.
    const all = (flow: number, over: number) => flow + flowsOf(narrow, over);
    const out = this.#meets((flow) => {
      const over = (1 + OFF) * takes(flow) + lift;
      return Number.isFinite(over) ? behind(all(flow, over)) - over : -Infinity;
    });
    const over = (1 + OFF) * takes(out) + lift;
    return { out, all: out > 0 ? all(out, over) : 0, over };
  }

  /** Flow at which nothing is left of the pressure; 0 where nothing flows [m3/s]. */
  #meets(left: Law): number {
    return fallsToZero(left, left(this.#end) < 0 ? this.#end : MOST_FLOW, CLOSE);
  }
}

/** Flow of the outlets that a duty asks, with the reserve of the pump where nothing stirs [m3/s]. */
function askedOf({ duty, liquid }: FallingDuty): number {
  return duty.agitate ? 0 : pumpDemand(Math.min(1, askedFlow(duty, liquid) ?? 0), 0);
}

function flowsOf(ways: readonly Way[], pressure: number): number {
  let flow = 0;
  for (const way of ways) flow += flowOf(way, pressure);
  return flow;
}

/** A way that takes some times as much. */
function scaled({ constant, linear, square }: Way, times: number): Way {
  return { constant, linear: times * linear, square: times * square };
}

/** Pumps of which some give less against more. */
type FallingPump = PartOf<'pump' | 'motor-pump'>;

/** Undefined for a pump that holds its flow. */
export function fallingMain(
  space: SearchSpace,
  partAt: PartAt,
  pump: Part,
  tank: PartOf<'tank'>,
): FallingMain | undefined {
  const carrier = partAt('carrier');
  const falls = pump.kind === 'motor-pump' || (pump.kind === 'pump' && pump.law.action === 'centrifugal');
  if (!falls || carrier?.kind !== 'carrier') return undefined;
  return new FallingMain(space, partAt, pump, tank, carrier.deckHeight);
}
