import type { Part, PartOf } from '../../catalogue/index.ts';
import { pumpDemand } from '../../physics/index.ts';
import { headAvailable } from '../proof/suction.ts';
import { PLAIN_RETURN } from '../proof/agitation.ts';
import type { Rated } from './rated.ts';
import { mainDuties, mostLifted, type MainDuty, type MainParts } from './main-duties.ts';
import { flowOf, mainPressureOf, type Way } from './main-state.ts';
import { MainWays, type AnyOf, type Ways } from './main-ways.ts';
import { OFF } from './part-terms.ts';
import type { PumpFlow } from './pump-flow.ts';
import { remember } from './remember.ts';
import type { SearchSpace } from './space.ts';
import { leastSuctionLoss, suctionLaw, SuctionSide } from './trim-margins.ts';

const BAR = 1e5;
const G = 9.80665;
/** For what the laws of the network have besides: a share of a flow or a loss. */
const HAIR = 3e-4;
/** For the digits of a sum. */
const CLOSE = 1e-6;
/** The reserve of a pump is reckoned for flows up to this only [m3/s]. */
const MOST_ASKED = 1;

/**
 * What is known of some parts with all outlets shut: pressure at the manifold, in front of the regulator and in front of the
 * jet [Pa], and power at the pump's shaft [W].
 */
interface OutletsShut {
  readonly pressure: number;
  readonly atRegulator: number;
  readonly atJet: number;
  readonly power: number;
}

/** Pressure in front of a pump with the outlets shut: at least, and at most by what it moves [Pa]. */
interface Inlet {
  readonly low: number;
  readonly high: (flow: number) => number;
}

/** What the mains of a space have in common. */
export class SharedByMains {
  readonly ways: MainWays;
  readonly shut = new Map<string, OutletsShut>();

  constructor({ layout }: SearchSpace) {
    this.ways = new MainWays(layout);
  }
}

/** Most spare whatever drives the pump, and the power that its drive must carry at least [W]. */
export interface Spare {
  readonly most: number;
  readonly power: number;
}

/**
 * What a displacement pump, its regulator with the return hose, and an agitator let a rig spare: pressure that the parts
 * stand, power behind the pump, flow for outlets and jet together. The manifold has the one pressure at which as much is
 * taken as the pump gives; with all that takes taken at its most, and the pump at its least, that pressure is a lower
 * bound, the other way round an upper one. Each figure is a bound on the side of more spare.
 */
export class MainCheck {
  readonly #duties: readonly MainDuty[];
  readonly #pump: PartOf<'pump'>;
  readonly #flow: PumpFlow;
  readonly #rated: Rated;
  /** Most that the height of the outlets takes of the pressure [Pa]. */
  readonly #lifted: number;
  /** Of the least tank [m3]. */
  readonly #volume: number;
  readonly #space: SearchSpace;
  readonly #tanks: readonly PartOf<'tank'>[];
  readonly #sides = new Map<string, SuctionSide>();
  readonly #ways: MainWays;
  readonly #suction: readonly number[];
  /**
   * Pressure in front of a pump that has just the head that it requires, by duty: no less in a rig that keeps its promise on
   * suction, and none with the outlets shut either, when a displacement pump moves no more than with them open [Pa].
   */
  readonly #starved: readonly number[];
  readonly #known = new Map<string, number>();
  readonly #spares = new Map<string, Spare>();
  readonly #driven = new Map<string, Spare>();
  readonly #shut: Map<string, OutletsShut>;
  readonly #sets: string;

  constructor(space: SearchSpace, parts: MainParts, { ways, shut }: SharedByMains) {
    this.#ways = ways;
    const { pump, tanks, flow, needs } = parts;
    this.#shut = shut;
    this.#sets = `${pump.id} ${flow.slowest} ${flow.most} ${tanks.length > 1 ? 'any' : tanks[0]?.id} ${needs.sets.join(' ')}`;
    this.#pump = pump;
    this.#flow = flow;
    this.#rated = parts.rated;
    this.#lifted = mostLifted(space, parts.carriers);
    this.#volume = Math.min(...tanks.map((t) => t.volume));
    this.#space = space;
    this.#tanks = tanks;
    this.#duties = mainDuties(space, parts);
    const site = space.contexts[0]!.site;
    this.#starved = space.brief.duties.map((duty) => {
      const liquid = space.contexts[0]!.liquids.get(duty.liquid)!;
      return Math.max(-BAR, liquid.density * G * (pump.npshRequired - headAvailable(site, liquid, 0)));
    });
    this.#suction = this.#duties.map((d) => leastSuctionLoss(space, Math.min(...flow.least), d.density));
  }

  /**
   * Most spare with a regulator, its hose, an agitator and its valve; below zero when a promise is broken.
   *
   * @param power that the drive carries at the pump's shaft [W]
   */
  spare(
    power: number,
    regulator: PartOf<'regulator'>,
    hose: Part | undefined,
    agitator: Part | undefined,
    valve: Part | undefined,
  ): number {
    const key = `${regulator.id} ${hose?.id} ${agitator?.id} ${valve?.id}`;
    let spare = this.#spares.get(key);
    if (spare === undefined)
      this.#spares.set(key, (spare = this.of({ key, regulator, hoses: [hose], agitator, valves: [valve] })));
    return spareWith(spare, power);
  }

  /** Most spare with any of some return hoses and of some valves before an agitator, whatever drives the pump. */
  of(trims: MainTrims): Spare {
    const shut = this.#outletsShut(trims);
    let spare = this.#stands(shut, trims);
    for (let i = 0; i < this.#duties.length && spare + HAIR >= 0; i++)
      spare = Math.min(spare, this.#outletsOpen(i, trims));
    return { most: spare + HAIR, power: shut.power };
  }

  /** Most spare of the ratings with the outlets shut. */
  #stands({ pressure, atRegulator, atJet }: OutletsShut, { regulator, agitator, valves }: MainTrims): number {
    const peak = 1 + regulator.shutPeak;
    // A valve before the jet sees no less than the jet.
    const jet = Math.min(ratingOf(agitator), Math.max(...valves.map(ratingOf)));
    return Math.min(
      1 - pressure / this.#pump.maxPressure,
      1 - (pressure * peak) / this.#rated.near,
      1 - ((pressure - this.#lifted) * peak) / this.#rated.far,
      1 - (atRegulator * peak) / regulator.maxPressure,
      1 - (atJet * peak) / jet,
    );
  }

  /**
   * Most spare of ratings and drive with the outlets shut and of the pump's reserve, where the suction line is known: how
   * low the pressure in front of the pump is with it tells how much the pump slips, and what the drive must carry.
   */
  driven(
    power: number,
    regulator: PartOf<'regulator'>,
    hose: Part | undefined,
    agitator: Part | undefined,
    valve: Part | undefined,
    suction: readonly (Part | undefined)[],
  ): number {
    const line = this.#space.layout.lines.find((l) => l.from === 'tank');
    if (line === undefined || suction.length === 0) return Infinity;
    const parts = suction.map((p) => p?.id).join(' ');
    const key = `driven ${regulator.id} ${hose?.id} ${agitator?.id} ${valve?.id} ${parts}`;
    let spare = this.#driven.get(key);
    if (spare === undefined) {
      const { brief, contexts } = this.#space;
      const inlets = this.#duties.map(({ atPump }, i): Inlet => {
        const liquid = contexts[0]!.liquids.get(brief.duties[i]!.liquid)!;
        const lost = suctionLaw(suction, liquid, line.elbows ?? 0, false);
        const most = (1 + 3 * OFF) * lost(this.#flow.most * (1 + HAIR));
        const low = liquid.powerLaw === undefined ? Math.max(-BAR, atPump - most) : -BAR;
        return { low, high: (flow) => atPump - lost(flow) };
      });
      const trims = { key, regulator, hoses: [hose], agitator, valves: [valve] };
      const shut = this.#shutWith(trims, inlets);
      const reserve = Math.min(...inlets.map((inlet, i) => this.#reserve(i, trims, inlet)));
      const most = Math.min(this.#stands(shut, trims) + HAIR, reserve);
      this.#driven.set(key, (spare = { most, power: shut.power }));
    }
    return spareWith(spare, power);
  }

  /**
   * Most spare of a tank that nothing stirs but what comes back, whatever the regulator: the pump gives no more than at the
   * pressure that the outlets need, and no less goes out of them than with no pressure at all.
   */
  plainReturn(): number {
    let spare = Infinity;
    for (const [i, d] of this.#duties.entries())
      if (d.stirred > 0) spare = Math.min(spare, this.#stirredBack(i, 0, Math.max(d.flow, d.least(0))));
    return spare + HAIR;
  }

  /** The plain return stirs with what the pump gives beyond the outlets, at no less than a pressure. */
  #stirredBack(i: number, low: number, out: number): number {
    const d = this.#duties[i]!;
    const needs = d.pressure;
    const asked = Math.max(d.stirred, PLAIN_RETURN) * this.#volume;
    return (this.#pumpIn(i).gives(Math.max(needs, low)) * (1 + HAIR) - out - asked) / asked;
  }

  /**
   * Most spare of a suction line whose strainer is as dirty as may be: the pump moves at least what it gives against the
   * highest pressure that the manifold may have. Without end where there is no such line.
   */
  sucks(
    regulator: PartOf<'regulator'>,
    hose: Part | undefined,
    suction: readonly (Part | undefined)[],
  ): number {
    const line = this.#space.layout.lines.find((l) => l.from === 'tank');
    if (line === undefined || suction.length === 0) return Infinity;
    const key = `${regulator.id} ${hose?.id}`;
    let side = this.#sides.get(key);
    if (side === undefined) {
      const flows = this.#duties.map((d, i) => {
        const { least, gives } = this.#pumpIn(i);
        const back = this.#back(d, regulator, [hose]).least;
        const high = mainPressureOf({ gives, back, out: [] }, this.#highest);
        return Math.max(this.#flow.least[i]!, least(high));
      });
      side = new SuctionSide(this.#space, line, this.#tanks[0]!, this.#pump.npshRequired, flows);
      this.#sides.set(key, side);
    }
    const of = `suction ${key} ${suction.map((p) => p?.id).join(' ')}`;
    let spare = this.#known.get(of);
    if (spare === undefined) {
      const losses = suction.map((p) => side.lossesOf(p));
      const drawn = suction.find((p) => p?.kind === 'hose');
      this.#known.set(of, (spare = side.margin(losses, drawn) + HAIR));
    }
    return spare;
  }

  /** Least of the highest pressure and of the power at the shaft with the outlets shut: the same for all rigs with these parts. */
  #outletsShut(trims: MainTrims): OutletsShut {
    const key = `${this.#sets} ${trims.key}`;
    const known = this.#shut.get(key);
    if (known !== undefined) return known;
    const inlets = this.#duties.map((_, i): Inlet => ({
      low: this.#starved[i]!,
      high: () => this.#pumpIn(i).inlet,
    }));
    return remember(this.#shut, key, this.#shutWith(trims, inlets));
  }

  #shutWith({ regulator, hoses, agitator, valves }: MainTrims, inlets: readonly Inlet[]): OutletsShut {
    let [pressure, atRegulator, atJet, power] = [0, 0, 0, 0];
    const gradient = regulator.overridePressure / regulator.ratedFlow;
    for (const [i, d] of this.#duties.entries()) {
      const { gives } = this.#pumpIn(i);
      const { low, high } = inlets[i]!;
      const given = (p: number, at: number) => this.#given(d, p, at);
      const back = this.#back(d, regulator, hoses);
      const jets = this.#ways.jets(d, agitator, valves);
      const meeting = (inlet: number) =>
        mainPressureOf({ gives: (p) => given(p, inlet), back: back.most, out: jets.most }, this.#highest);
      const p = meeting(low);
      pressure = Math.max(pressure, p);
      // No more goes back than the pump gives: so much at most is lost in the bends before the regulator.
      const [bends, flow] = [back.least[0]!, gives(p)];
      atRegulator = Math.max(
        atRegulator,
        p - (Math.max(0, bends.linear - gradient) + bends.square * flow) * flow,
      );
      if (agitator?.kind === 'agitator')
        for (const way of jets.least)
          atJet = Math.max(
            atJet,
            BAR * (d.density / 1000) * (flowOf(way, p) / agitator.flowAtOneBar) ** 2 + d.atManifold.low,
          );
      // A pump lifts the pressure least where that in front of it is highest, and most where both are at their ends; in
      // between it takes no less power than at one of these.
      const most = mainPressureOf({ gives, back: back.least, out: jets.least }, this.#highest);
      const top = Math.min(this.#pump.maxPressure, most);
      const inlet = high(given(top, low));
      const takes = (lift: number) => given(lift, 0) * Math.max(0, lift);
      const shaft = Math.min(takes(meeting(inlet) - inlet), takes(top - low));
      power = Math.max(power, shaft / this.#pump.law.efficiency);
    }
    return { pressure, atRegulator, atJet, power };
  }

  /** Most spare of a duty with its outlets open. */
  #outletsOpen(i: number, { regulator, hoses, agitator, valves }: MainTrims): number {
    const d = this.#duties[i]!;
    const { least, gives } = this.#pumpIn(i);
    const jets = this.#ways.jets(d, agitator, valves);
    const back = this.#back(d, regulator, hoses);
    // What the pump gives at the pressure that the outlets need must feed them, the jet, and what the regulator lets back.
    const needs = d.pressure;
    const returned = Math.min(...back.least.map((way) => flowOf(way, needs)));
    if (gives(needs) < (d.flow + flowsOf(jets.least, needs) + returned) * (1 - HAIR)) return -1;
    let spare = Infinity;
    const low =
      d.out === undefined
        ? 0
        : mainPressureOf({ gives: least, back: back.most, out: [...jets.most, ...d.out] }, this.#highest);
    const out = Math.max(d.flow, d.least(low));
    const [jet] = jets.most;
    if (d.reach !== undefined || (d.stirred > 0 && jet !== undefined)) {
      const rest = (p: number) => Math.max(0, gives(p) - out);
      const high = mainPressureOf({ gives: rest, back: back.least, out: jets.least }, this.#highest);
      if (d.stirred > 0 && jet !== undefined) {
        const asked = d.stirred * this.#volume;
        spare = Math.min(spare, (flowOf(jet, high) - asked) / asked);
      }
      if (d.reach !== undefined) spare = Math.min(spare, d.reach(high));
    }
    if (d.stirred > 0 && agitator === undefined) spare = Math.min(spare, this.#stirredBack(i, low, out));
    if (d.out === undefined) return spare;
    const inlet = { low: this.#starved[i]!, high: () => this.#pumpIn(i).inlet };
    spare = Math.min(spare, this.#reserve(i, { key: '', regulator, hoses, agitator, valves }, inlet));
    return d.nozzles === undefined ? spare : Math.min(spare, 1 - d.nozzles.least(low) / d.nozzles.highest);
  }

  /** Most reserve of the pump in a duty whose outlets are open: if it has any, it draws at least what is asked of it. */
  #reserve(i: number, { regulator, hoses, agitator, valves }: MainTrims, inlet: Inlet): number {
    const d = this.#duties[i]!;
    if (d.out === undefined || d.asked === undefined || d.asked >= MOST_ASKED) return Infinity;
    const demand = pumpDemand(d.asked, Math.min(MOST_ASKED, d.stirred * this.#volume));
    if (demand <= 0) return Infinity;
    const least = (p: number) => this.#given(d, p, inlet.low);
    const back = this.#back(d, regulator, hoses).most;
    const jets = this.#ways.jets(d, agitator, valves).most;
    const low = mainPressureOf({ gives: least, back, out: [...jets, ...d.out] }, this.#highest);
    const gives = this.#flow.most - d.slip * Math.max(0, low - inlet.high(demand));
    return (gives - demand) / demand + CLOSE;
  }

  get #highest(): number {
    return this.#pump.maxPressure * 4;
  }

  /** Least that the pump gives against a pressure at the manifold, with a pressure in front of it [Pa, Pa -> m3/s]. */
  #given({ slip, atPump, atManifold }: MainDuty, pressure: number, inlet: number): number {
    const climb = Math.max(0, atPump - atManifold.high);
    return Math.max(0, this.#flow.slowest * (1 - HAIR) - slip * (pressure + climb - inlet));
  }

  /** What a pump that does not starve gives in a duty against a pressure, at least and at most, and the highest pressure in front of it. */
  #pumpIn(i: number) {
    const d = this.#duties[i]!;
    const { slip, atPump } = d;
    const { most } = this.#flow;
    const inlet = atPump - this.#suction[i]!;
    return {
      inlet,
      least: (p: number) => this.#given(d, p, this.#starved[i]!),
      gives: (p: number) => Math.max(0, most * (1 + HAIR) - slip * Math.max(0, p - inlet)),
    };
  }

  #back(d: MainDuty, regulator: PartOf<'regulator'>, hoses: AnyOf): Ways {
    return this.#ways.back(d, regulator, hoses, this.#flow.most);
  }
}

/** What stands about the main besides pump and outlets: any of some hoses and valves. */
export interface MainTrims {
  readonly key: string;
  readonly regulator: PartOf<'regulator'>;
  readonly hoses: AnyOf;
  readonly agitator: Part | undefined;
  readonly valves: AnyOf;
}

/** Most spare with a drive that carries some power at the pump's shaft [W]. */
export function spareWith(spare: Spare, power: number): number {
  return Math.min(spare.most, (power - spare.power) / power + HAIR);
}

function ratingOf(part: Part | undefined): number {
  return part !== undefined && 'maxPressure' in part ? part.maxPressure : Infinity;
}

function flowsOf(ways: readonly Way[], pressure: number): number {
  return ways.reduce((sum, way) => sum + flowOf(way, pressure), 0);
}
