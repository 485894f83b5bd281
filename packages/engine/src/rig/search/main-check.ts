import type { LayoutLine, Part, PartOf } from '../../catalogue/index.ts';
import { hoseLoss, pumpDemand } from '../../physics/index.ts';
import { askedFlow } from '../asked-flow.ts';
import { RETURN_HOSE } from '../design/rest-of-rig.ts';
import { usedOutlets } from '../design/outlet-demands.ts';
import { outletHeightOf } from '../duty-network.ts';
import { elbowK } from '../fitting-loss.ts';
import { PLAIN_RETURN } from '../proof/agitation.ts';
import { liquidDepth } from '../tank-level.ts';
import { jetWay } from './jet.ts';
import type { LineNeeds } from './line-needs.ts';
import { leastOut } from './line-takes.ts';
import { drivePower } from './main-pressure.ts';
import { flowOf, mainPressureOf, type Way } from './main-state.ts';
import { factorOf, mostOut } from './outlet-most.ts';
import { outletNeed } from './outlet-need.ts';
import { slipAt, type PumpFlow } from './pump-flow.ts';
import { mostReach } from './reach-most.ts';
import type { PartAt, SearchSpace } from './space.ts';
import { leastSuctionLoss, SuctionSide } from './trim-margins.ts';

const BAR = 1e5;
const G = 9.80665;
/** For what the laws of the network have besides: a share of a flow or a loss. */
const HAIR = 3e-4;
/** Share of a hose's friction that is counted on. */
const COUNTED = 0.98;
/** Times the loss of a jet and its bends that it may have with their laminar part. */
const MORE = 1.05;
/** The reserve of a pump is reckoned for flows up to this only [m3/s]. */
const MOST_ASKED = 1;

/** One duty as the main sees it. */
interface MainDuty {
  readonly density: number;
  readonly viscosity: number;
  readonly agitate: boolean;
  /** Share of the tank that must be stirred [1/s]; 0 when nothing asks for it. */
  readonly stirred: number;
  readonly set: number;
  /** Least pressure at the manifold that its outlets ask, seen from the surface of the tank [Pa]. */
  readonly pressure: number;
  /** Least that goes out in a rig that keeps its promises [m3/s]. */
  readonly flow: number;
  /** Outlets at no less than they let out; undefined where that is not known. */
  readonly out: readonly Way[] | undefined;
  /** What the outlets must get by the brief [m3/s]. */
  readonly asked: number | undefined;
  /** Pressure of the tank at pump and manifold with nothing flowing [Pa]. */
  readonly atPump: number;
  readonly atManifold: number;
  readonly slip: number;
  /** Most spare of the reach of its gun by the pressure of the manifold. */
  readonly reach: ((pressure: number) => number) | undefined;
  /** Least that goes out by the pressure of the manifold [m3/s]. */
  readonly least: (pressure: number) => number;
  /** Highest pressure that its nozzles may have, and the least they have by that of the manifold. */
  readonly nozzles: { readonly highest: number; readonly least: (pressure: number) => number } | undefined;
}

/** What is known of some parts with all outlets shut: pressure [Pa] and power at the pump's shaft [W]. */
export interface OutletsShut {
  readonly pressure: number;
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
  readonly #power: number;
  readonly #flow: PumpFlow;
  readonly #rated: number;
  readonly #volume: number;
  readonly #space: SearchSpace;
  readonly #tank: PartOf<'tank'>;
  readonly #sides = new Map<string, SuctionSide>();
  readonly #backElbows: number;
  readonly #jetLine: LayoutLine | undefined;
  readonly #suction: readonly number[];
  readonly #known = new Map<string, number>();
  readonly #shut: Map<string, OutletsShut>;
  readonly #sets: string;

  constructor(
    space: SearchSpace,
    partAt: PartAt,
    pump: PartOf<'pump'>,
    tank: PartOf<'tank'>,
    needs: LineNeeds,
    flow: PumpFlow,
    rated: number,
    shut: Map<string, OutletsShut>,
  ) {
    this.#shut = shut;
    this.#sets = `${pump.id} ${flow.most} ${tank.id} ${needs.sets.join(' ')}`;
    this.#pump = pump;
    this.#power = drivePower(space, partAt);
    this.#flow = flow;
    this.#rated = rated;
    this.#volume = tank.volume;
    this.#space = space;
    this.#tank = tank;
    const { contexts, brief, layout } = space;
    const withPart = (slot: string) => layout.lines.find((l) => l.run.includes(slot));
    this.#backElbows = withPart('regulator')?.elbows ?? 0;
    this.#jetLine = withPart('agitator');
    const nodeOf = (slot: string, end: 'from' | 'to') => layout.nodes[withPart(slot)?.[end] ?? ''] ?? 0;
    const lines = usedOutlets(layout, brief);
    const carrier = partAt('carrier');
    this.#duties = brief.duties.map((duty, i): MainDuty => {
      const liquid = contexts[0]!.liquids.get(duty.liquid)!;
      const { density, viscosity, agitationShare } = liquid;
      const open = lines.filter((l) => (duty.open as readonly string[]).includes(l.opens));
      const outlets = open.map((l) => outletNeed(space, l, duty, partAt, 1));
      const boom = open.find((l) => l.run.includes('nozzle'));
      const nozzle = partAt('nozzle');
      const throwing = open.find((l) => l.run.includes('tip'));
      const depth = liquidDepth(tank, duty.tankLevel);
      const manifold = nodeOf('pump', 'to');
      const deck = carrier?.kind === 'carrier' ? carrier.deckHeight : 0;
      const lift = (line: (typeof lines)[number]) =>
        density * G * (outletHeightOf(line, duty) - deck - manifold);
      const out = open.map((l) => mostOut(l, partAt, density, lift(l)));
      const asked = askedFlow(duty, liquid);
      const lets = open.map((l) => ({ lift: lift(l), least: leastOut(space, l, duty, partAt) }));
      const atBoom = lets[open.indexOf(boom!)]?.least ?? (() => 0);
      return {
        density,
        viscosity,
        agitate: duty.agitate,
        stirred: duty.agitate ? agitationShare : 0,
        set: needs.sets[i]!,
        pressure: Math.max(0, ...outlets.map((o) => o.pressure)),
        flow: outlets.reduce((sum, o) => sum + o.flow, 0),
        out: out.some((o) => o === undefined) ? undefined : out.flatMap((o) => o ?? []),
        asked: asked === undefined ? undefined : asked * duty.open.length,
        atPump: density * G * (depth - nodeOf('pump', 'from')),
        atManifold: density * G * (depth - manifold),
        slip: slipAt(pump, viscosity),
        reach: throwing === undefined ? undefined : mostReach(space, throwing, duty, partAt, lift(throwing)),
        least: (pressure) => lets.reduce((sum, l) => sum + l.least(pressure - l.lift), 0),
        nozzles:
          boom === undefined || nozzle?.kind !== 'nozzle'
            ? undefined
            : {
                highest: nozzle.maxPressure,
                least: (pressure) => {
                  const flow = atBoom(pressure - lift(boom));
                  return (flow / factorOf(boom, partAt)!) ** 2 * BAR * (density / 1000);
                },
              },
      };
    });
    this.#suction = this.#duties.map((d) => leastSuctionLoss(space, Math.min(...flow.least), d.density));
  }

  /** Most spare with a regulator, its hose, an agitator and its valve; below zero when a promise is broken. */
  spare(
    regulator: PartOf<'regulator'>,
    hose: Part | undefined,
    agitator: Part | undefined,
    valve: Part | undefined,
  ): number {
    const key = `${regulator.id} ${hose?.id} ${agitator?.id} ${valve?.id}`;
    let spare = this.#known.get(key);
    if (spare === undefined) this.#known.set(key, (spare = this.#spare(regulator, hose, agitator, valve)));
    return spare;
  }

  #spare(
    regulator: PartOf<'regulator'>,
    hose: Part | undefined,
    agitator: Part | undefined,
    valve: Part | undefined,
  ): number {
    const stands = Math.min(
      this.#rated,
      ...[regulator, valve, agitator].map((p) =>
        p !== undefined && 'maxPressure' in p ? p.maxPressure : Infinity,
      ),
    );
    const shut = this.#outletsShut(regulator, hose, agitator, valve);
    const peak = shut.pressure * (1 + regulator.shutPeak);
    let spare = Math.min(
      1 - shut.pressure / this.#pump.maxPressure,
      1 - peak / stands,
      (this.#power - shut.power) / this.#power,
    );
    for (let i = 0; i < this.#duties.length && spare + HAIR >= 0; i++)
      spare = Math.min(spare, this.#outletsOpen(i, regulator, hose, agitator, valve));
    return spare + HAIR;
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
    const needs = Math.max(0, d.pressure - d.atManifold);
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
        const back = this.#back(d, regulator, hose).least;
        const high = mainPressureOf({ gives, back, out: [] }, this.#highest);
        return Math.max(this.#flow.least[i]!, least(high));
      });
      side = new SuctionSide(this.#space, line, this.#tank, this.#pump.npshRequired, flows);
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
  #outletsShut(
    regulator: PartOf<'regulator'>,
    hose: Part | undefined,
    agitator: Part | undefined,
    valve: Part | undefined,
  ): OutletsShut {
    const key = `${this.#sets} ${regulator.id} ${hose?.id} ${agitator?.id} ${valve?.id}`;
    let shut = this.#shut.get(key);
    if (shut !== undefined) return shut;
    let [pressure, power] = [0, 0];
    for (const [i, d] of this.#duties.entries()) {
      const { least, inlet } = this.#pumpIn(i);
      const back = this.#back(d, regulator, hose).most;
      const p = mainPressureOf({ gives: least, back, out: this.#jets(d, agitator, valve) }, this.#highest);
      pressure = Math.max(pressure, p);
      power = Math.max(power, (least(p) * Math.max(0, p - inlet)) / this.#pump.law.efficiency);
    }
    this.#shut.set(key, (shut = { pressure, power }));
    return shut;
  }

  /** Most spare of a duty with its outlets open. */
  #outletsOpen(
    i: number,
    regulator: PartOf<'regulator'>,
    hose: Part | undefined,
    agitator: Part | undefined,
    valve: Part | undefined,
  ): number {
    const d = this.#duties[i]!;
    const { least, gives } = this.#pumpIn(i);
    const jets = this.#jets(d, agitator, valve);
    // What the pump gives at the pressure that the outlets need must feed them and the jet.
    const needs = Math.max(0, d.pressure - d.atManifold);
    if (gives(needs) < (d.flow + flowsOf(jets, needs)) * (1 - HAIR)) return -1;
    const back = this.#back(d, regulator, hose);
    let spare = Infinity;
    const low =
      d.out === undefined
        ? 0
        : mainPressureOf({ gives: least, back: back.most, out: [...jets, ...d.out] }, this.#highest);
    const out = Math.max(d.flow, d.least(low));
    const [jet] = jets;
    const narrow = jets.map((way) => ({ ...way, square: MORE * way.square }));
    if (d.reach !== undefined || (d.stirred > 0 && jet !== undefined)) {
      const rest = (p: number) => Math.max(0, gives(p) - out);
      const high = mainPressureOf({ gives: rest, back: back.least, out: narrow }, this.#highest);
      if (d.stirred > 0 && jet !== undefined) {
        const asked = d.stirred * this.#volume;
        spare = Math.min(spare, (flowOf(jet, high) - asked) / asked);
      }
      if (d.reach !== undefined) spare = Math.min(spare, d.reach(high));
    }
    if (d.stirred > 0 && agitator === undefined) spare = Math.min(spare, this.#stirredBack(i, low, out));
    if (d.out === undefined) return spare;
    if (d.asked !== undefined && d.asked < MOST_ASKED) {
      const demand = pumpDemand(d.asked, Math.min(MOST_ASKED, d.stirred * this.#volume));
      if (demand > 0) spare = Math.min(spare, (gives(low) - demand) / demand);
    }
    return d.nozzles === undefined ? spare : Math.min(spare, 1 - d.nozzles.least(low) / d.nozzles.highest);
  }

  get #highest(): number {
    return this.#pump.maxPressure * 4;
  }

  /** What the pump gives in a duty against a pressure, at least and at most, and the highest pressure in front of it. */
  #pumpIn(i: number) {
    const { slip, atPump } = this.#duties[i]!;
    const most = this.#flow.most;
    const inlet = atPump - this.#suction[i]!;
    return {
      inlet,
      // Against no less than the inlet of a pump that starves.
      least: (p: number) => Math.max(0, most * (1 - HAIR) - slip * (p + BAR)),
      gives: (p: number) => Math.max(0, most * (1 + HAIR) - slip * Math.max(0, p - inlet)),
    };
  }

  #jets(d: MainDuty, agitator: Part | undefined, valve: Part | undefined): readonly Way[] {
    const jet =
      d.agitate && this.#jetLine !== undefined
        ? jetWay(this.#jetLine, agitator, valve, d.density, d.atManifold)
        : undefined;
    return jet === undefined ? [] : [jet];
  }

  /** The regulator with its hose: as it holds, and wide open; at no less than they let through, and at no more. */
  #back(
    d: MainDuty,
    regulator: PartOf<'regulator'>,
    hose: Part | undefined,
  ): { readonly most: readonly Way[]; readonly least: readonly Way[] } {
    const gradient = regulator.overridePressure / regulator.ratedFlow;
    const open = ((d.density / 1000) * BAR) / regulator.flowAtOneBar ** 2;
    let [bends, friction, atMost] = [0, 0, 0];
    if (hose?.kind === 'hose') {
      const { bore, roughness } = hose;
      const { density, viscosity } = d;
      bends = (this.#backElbows * elbowK(bore) * density) / 2 / ((Math.PI / 4) * bore ** 2) ** 2;
      const loss = (flow: number) =>
        hoseLoss({ flow, bore, length: RETURN_HOSE, roughness, density, viscosity }).pressureLoss;
      const most = this.#flow.most;
      friction = Math.min(...[1, 0.5, 0.2].map((share) => loss(most * share) / (most * share) ** 2));
      atMost = loss(most) / most;
    }
    const held = { constant: d.set, linear: gradient };
    return {
      most: [
        { ...held, square: COUNTED * bends },
        { constant: d.atManifold, linear: 0, square: COUNTED * (bends + friction) + open },
      ],
      // Friction grows by more than the flow and by less than its square; bends have a laminar part besides.
      least: [
        { ...held, linear: gradient + 0.1 * bends * this.#flow.most, square: bends },
        {
          constant: d.atManifold,
          linear: 1.02 * atMost + 0.1 * bends * this.#flow.most,
          square: bends + open,
        },
      ],
    };
  }
}

function flowsOf(ways: readonly Way[], pressure: number): number {
  return ways.reduce((sum, way) => sum + flowOf(way, pressure), 0);
}
