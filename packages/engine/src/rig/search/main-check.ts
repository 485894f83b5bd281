import type { Part, PartOf } from '../../catalogue/index.ts';
import { usedOutlets } from '../design/outlet-demands.ts';
import { elbowK, teeBranchK, valveK } from '../fitting-loss.ts';
import type { LineNeeds } from './line-needs.ts';
import { drivePower, mainShut } from './main-pressure.ts';
import { lineLoss, outletNeed } from './outlet-need.ts';
import { slipPerPressure, type PumpFlow } from './pump-flow.ts';
import type { PartAt, SearchSpace } from './space.ts';

const BAR = 1e5;
const G = 9.80665;
/** A hair for what the laws of the network have besides. */
const HAIR = 1e-4;
/** Share of the flow of a jet that is counted on behind its valve and bends. */
const JET_LEAST = 0.8;
/** Share of the pressure at a nozzle that is counted on behind boom and bends. */
const NOZZLE_LEAST = 0.93;

/** One duty as the main sees it. */
interface MainDuty {
  readonly density: number;
  readonly agitate: boolean;
  /** Share of the tank that must be stirred [1/s]; 0 when nothing asks for it. */
  readonly stirred: number;
  readonly set: number;
  /** Least that goes out, and least pressure at the manifold, in a rig that keeps its promises. */
  readonly flow: number;
  readonly pressure: number;
  /** Most that can go out at the set pressure. */
  readonly most: number;
  /** Nozzles open, at the pressure in front of them when the set is held, and their highest. */
  readonly nozzles: { readonly pressure: number; readonly highest: number } | undefined;
}

/**
 * What a displacement pump, its regulator and an agitator let a rig spare: pressure that the parts stand, power behind
 * the pump, flow for outlets and jet together. Each figure is a bound on the side of more spare.
 */
export class MainCheck {
  readonly #duties: readonly MainDuty[];
  readonly #pump: PartOf<'pump'>;
  readonly #power: number;
  readonly #flow: PumpFlow;
  readonly #rated: number;
  readonly #volume: number;
  readonly #head: number;

  constructor(
    space: SearchSpace,
    partAt: PartAt,
    pump: PartOf<'pump'>,
    tank: PartOf<'tank'>,
    needs: LineNeeds,
    flow: PumpFlow,
    rated: number,
  ) {
    this.#pump = pump;
    this.#power = drivePower(space, partAt);
    this.#flow = flow;
    this.#rated = rated;
    this.#volume = tank.volume;
    const lines = usedOutlets(space.layout, space.brief);
    const { contexts, brief } = space;
    this.#duties = brief.duties.map((duty, i): MainDuty => {
      const liquid = contexts[0]!.liquids.get(duty.liquid)!;
      const { density, agitationShare } = liquid;
      const open = lines.filter((l) => (duty.open as readonly string[]).includes(l.opens));
      const set = needs.sets[i]!;
      const outlets = open.map((l) => outletNeed(space, l, duty, partAt, 1));
      const most = open.reduce((sum, l) => sum + mostOut(l.run, partAt, set, density), 0);
      const boom = open.find((l) => l.run.includes('nozzle'));
      const nozzle = partAt('nozzle');
      return {
        density,
        agitate: duty.agitate,
        stirred: duty.agitate ? agitationShare : 0,
        set,
        flow: outlets.reduce((sum, o) => sum + o.flow, 0),
        pressure: Math.max(0, ...outlets.map((o) => o.pressure)),
        most,
        nozzles:
          boom === undefined || nozzle?.kind !== 'nozzle'
            ? undefined
            : {
                pressure: atNozzle(boom.run, partAt, set, density, (q) =>
                  lineLoss(space, boom, duty, partAt, q),
                ),
                highest: nozzle.maxPressure,
              },
      };
    });
    this.#head = Math.max(...this.#duties.map((d) => d.density)) * G * (tank.size.height + 0.2);
  }

  /** Most spare with a regulator, an agitator and its valve; below zero when a promise is broken. */
  spare(regulator: PartOf<'regulator'>, agitator: Part | undefined, valve: Part | undefined): number {
    const gradient = regulator.overridePressure / regulator.ratedFlow;
    const jet = agitator?.kind === 'agitator' ? agitator.flowAtOneBar : 0;
    const { efficiency } = this.#pump.law;
    const slip = slipPerPressure(this.#pump);
    let spare = Infinity;
    let peak = 0;
    for (const d of this.#duties) {
      const jets = (p: number) => jet * Math.sqrt(Math.max(0, p) / BAR / (d.density / 1000));
      const shutJets = d.agitate ? jet : 0;
      // A pump slips by the pressure behind it, which follows from what it gives: the most that can be, then what that makes.
      const gives = (p: number) =>
        Math.max(0, this.#flow.most - slip.most * Math.min(this.#pump.maxPressure, p));
      const highest = mainShut(d.set, gradient, this.#flow.most, 0, d.density);
      const least = gives(highest * 1.1 + BAR);
      const at = mainShut(d.set, gradient, least, shutJets, d.density);
      peak = Math.max(peak, at * (1 + regulator.shutPeak));
      const needed = (least * Math.max(0, at - this.#head)) / efficiency;
      spare = Math.min(spare, 1 - at / this.#pump.maxPressure, (this.#power - needed) / this.#power);
      // What the pump gives at the pressure that the outlets need must feed them and the jet.
      const feeds = this.#flow.most - slip.least * Math.max(0, d.pressure - this.#head);
      if (feeds * 1.002 < d.flow + (d.agitate ? JET_LEAST * jets(d.pressure) : 0)) return -1;
      if (d.stirred > 0 && jet > 0) {
        const most = d.set + gradient * Math.max(0, this.#flow.most - d.flow);
        const asked = d.stirred * this.#volume;
        spare = Math.min(spare, (throughValve(jets(most), most, valve, d.density) - asked) / asked);
      }
      if (d.nozzles !== undefined && least > d.most + (d.agitate ? jets(d.set) : 0))
        spare = Math.min(spare, 1 - (NOZZLE_LEAST * d.nozzles.pressure) / d.nozzles.highest);
    }
    const stands = Math.min(
      this.#rated,
      ...[regulator, valve, agitator].map((p) =>
        p !== undefined && 'maxPressure' in p ? p.maxPressure : Infinity,
      ),
    );
    return Math.min(spare, 1 - peak / stands) + HAIR;
  }
}

/** Flow of a jet that its valve throttles: both take of the same pressure [m3/s]. */
function throughValve(jet: number, pressure: number, valve: Part | undefined, density: number): number {
  if (valve?.kind !== 'valve' || jet <= 0 || pressure <= 0) return jet;
  const loss =
    valve.flowAtOneBar !== undefined
      ? (jet / valve.flowAtOneBar) ** 2 * BAR * (density / 1000)
      : valve.form.startsWith('ball')
        ? (valveK(valve.form, valve.bore) * density * (jet / ((Math.PI / 4) * valve.bore ** 2)) ** 2) / 2
        : 0;
  return jet / Math.sqrt(1 + (0.95 * loss) / pressure);
}

/** Most that a line lets out with a pressure in front of it [m3/s]. */
function mostOut(run: readonly string[], partAt: PartAt, pressure: number, density: number): number {
  const root = Math.sqrt((pressure * 1.1 + BAR) / BAR / (density / 1000));
  const [boom, nozzle, tip] = ['boom', 'nozzle', 'tip'].map(partAt);
  if (run.includes('tip') && tip?.kind === 'tip') return tip.flowAtOneBar * root;
  if (boom?.kind === 'boom' && nozzle?.kind === 'nozzle') return boom.nozzles * nozzle.flowAtOneBar * root;
  return Infinity;
}

/** Pressure in front of nozzles with a pressure at the manifold, with more loss than the line has [Pa]. */
function atNozzle(
  run: readonly string[],
  partAt: PartAt,
  pressure: number,
  density: number,
  loss: (flow: number) => number,
): number {
  const [boom, nozzle] = [partAt('boom'), partAt('nozzle')];
  if (boom?.kind !== 'boom' || nozzle?.kind !== 'nozzle') return 0;
  const hose = run.map(partAt).find((p) => p?.kind === 'hose');
  const bore = hose?.kind === 'hose' ? hose.bore : 0.02;
  const k = 2 * elbowK(bore) + teeBranchK(bore);
  let [low, high] = [0, pressure];
  for (let i = 0; i < 20; i++) {
    const middle = (low + high) / 2;
    const flow = boom.nozzles * nozzle.flowAtOneBar * Math.sqrt(middle / BAR / (density / 1000));
    const bends = (k * density * (flow / ((Math.PI / 4) * bore ** 2)) ** 2) / 2;
    if (middle + 1.1 * loss(flow) + bends < pressure) low = middle;
    else high = middle;
  }
  return low;
}
