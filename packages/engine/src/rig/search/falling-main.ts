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
import { lineTakes } from './line-takes.ts';
import { drivePower } from './main-pressure.ts';
import { flowOf, type Way } from './main-state.ts';
import { pumpSpeed } from './pump-flow.ts';
import { pressureOf } from './pump-limits.ts';
import type { PartAt, SearchSpace } from './space.ts';
import { leastSuctionLoss, suctionLoss, SuctionSide } from './trim-margins.ts';

const G = 9.80665;
/** For what the laws of the network have besides: a share of what the pump adds. */
const HAIR = 2e-3;
/** Times the loss of a jet and its bends that it may have with their laminar part. */
const MORE = 1.05;
/** Share of what a whole line takes at most that it takes at least. */
const SURE = 0.98;
/** Share of what a suction line takes that is counted on. */
const COUNTED = 0.97;
/** The flow of a line is found to a part in so many. */
const HALVINGS = 22;
/** No pump of a catalogue gives more [m3/s]. */
const MOST_FLOW = 0.2;

/** One duty as the pump sees it. Pressures are those of the liquid at rest at the ground [Pa]. */
interface FallingDuty {
  readonly duty: Duty;
  readonly liquid: DutyLiquid;
  readonly open: readonly LayoutLine[];
  readonly adds: (flow: number) => number;
  /** Of the tank with nothing flowing. */
  readonly surface: number;
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
    this.#duties = brief.duties.map((duty): FallingDuty => {
      const liquid = contexts[0]!.liquids.get(duty.liquid)!;
      const weight = liquid.density * G;
      const open = lines.filter((l) => (duty.open as readonly string[]).includes(l.opens));
      const adds = (flow: number) => pressureOf(space, pump, partAt, flow, liquid.density) ?? 0;
      // Pressure in front of the pump at which it has just the head that it requires.
      const starved = weight * (pump.npshRequired - headAvailable(contexts[0]!.site, liquid, 0));
      const before = starved + weight * (deck + heightOf('from'));
      const d = { duty, liquid, open, adds, surface: weight * (deck + liquidDepth(tank, duty.tankLevel)) };
      const behind = (flow: number) => (1 - HAIR) * adds(flow) + before - d.surface;
      return { ...d, least: Math.max(0, ...open.map((l) => this.#meeting(d, l, [], behind).all)) };
    });
    this.least = this.#duties.map((d) => d.least);
    this.highest = this.#duties.map((d) => this.#highest(d, [], []));
    this.spare = Math.min(
      ...this.#duties.map((d) =>
        this.#pumpSpare(d, d.least, (flow) => leastSuctionLoss(space, flow, d.liquid.density)),
      ),
    );
  }

  /**
   * Most spare of pump and drive in one duty: the pump gives what is asked with a reserve, and the drive carries what the pump takes of it at every flow between the least and the most
   * that it may have, which on each straight piece of the curve is least at one of its ends.
   *
   * @param lost what the suction line takes at least at a flow [Pa]
   */
  #pumpSpare(d: FallingDuty, from: number, lost: (flow: number) => number): number {
    const [line] = d.open;
    const pump = this.#pump;
    if (pump.kind !== 'pump' || pump.law.action !== 'centrifugal') return Infinity;
    if (d.duty.agitate || line === undefined || d.open.length > 1) return Infinity;
    const weight = d.liquid.density * G;
    const most = meeting(
      (flow) => (1 + HAIR) * d.adds(flow) + d.surface - lost(flow),
      (flow) => {
        const takes = lineTakes(this.#space, line, d.duty, this.#partAt, flow);
        return (Number.isFinite(takes) ? SURE * takes : 0) + weight * outletHeightOf(line, d.duty);
      },
    );
    const asked = pumpDemand(Math.min(1, askedFlow(d.duty, d.liquid) ?? 0), 0);
    const least = Math.min(most, Math.max(from, asked));
    const share = pumpSpeed(this.#space, pump, this.#partAt) / pump.law.ratedSpeed;
    const knots = pump.law.curve.map((p) => p.flow * share).filter((q) => q > least && q < most);
    const reserve = asked > 0 ? most / asked - 1 + HAIR : Infinity;
    const shafts = [least, most, ...knots].map(
      (q) => (q * Math.max(0, d.adds(q) - weight * this.#climb)) / pump.law.efficiency,
    );
    return Math.min(reserve, (this.#power - Math.min(...shafts) * (1 - HAIR)) / this.#power);
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
    const key = [jet, jetValve, eductor, eductorValve, ...suction].map((p) => p?.id).join(' ');
    let spare = this.#known.get(key);
    if (spare !== undefined) return spare;
    spare = Infinity;
    const flows: number[] = [];
    for (const d of this.#duties) {
      const through = d.duty.agitate ? this.#way('agitator', jet, jetValve, d) : undefined;
      const drawing = d.duty.agitate ? this.#way('eductor', eductor, eductorValve, d) : undefined;
      const ways = [through, drawing].flatMap((w) => w ?? []);
      const asked = d.liquid.agitationShare * this.#tank.volume;
      if (through !== undefined && asked > 0)
        spare = Math.min(spare, (flowOf(through, this.#highest(d, ways, suction)) - asked) / asked + HAIR);
      if (suction.length === 0) continue;
      const flow = Math.max(d.least, this.#through(d, ways, suction));
      flows.push(flow);
      spare = Math.min(spare, this.#pumpSpare(d, flow, this.#lost(d, suction)));
    }
    const line = this.#space.layout.lines.find((l) => l.from === 'tank');
    if (spare >= 0 && line !== undefined && suction.length > 0) {
      const side = new SuctionSide(this.#space, line, this.#tank, this.#pump.npshRequired, flows);
      const losses = suction.map((p) => side.lossesOf(p));
      spare = Math.min(
        spare,
        side.margin(
          losses,
          suction.find((p) => p?.kind === 'hose'),
        ),
      );
    }
    this.#known.set(key, spare);
    return spare;
  }

  #way(slot: string, part: Part | undefined, valve: Part | undefined, d: FallingDuty): Way | undefined {
    const line = this.#space.layout.lines.find((l) => l.run.includes(slot));
    return line === undefined ? undefined : jetWay(line, part, valve, d.liquid.density, 0);
  }

  /** Most pressure at the manifold over that of the tank at rest: what drives a jet [Pa]. */
  #highest(d: FallingDuty, ways: readonly Way[], suction: readonly (Part | undefined)[]): number {
    const lost = this.#lost(d, suction);
    const behind = (flow: number) => (1 + HAIR) * d.adds(flow) - lost(flow);
    let highest = behind(0);
    for (const line of d.open) {
      const { out, all, over } = this.#meeting(d, line, ways, behind);
      if (out > 0) highest = Math.min(highest, Math.max(over, behind(all)));
    }
    return highest;
  }

  /** What a suction line takes at least at a flow, its strainer clean [Pa]. */
  #lost({ liquid }: FallingDuty, suction: readonly (Part | undefined)[]): (flow: number) => number {
    const elbows = this.#space.layout.lines.find((l) => l.from === 'tank')?.elbows ?? 0;
    const loss = (part: Part | undefined, flow: number) =>
      part === undefined ? 0 : suctionLoss(part, flow, liquid, elbows, false);
    return (flow) => COUNTED * suction.reduce((sum, part) => sum + loss(part, flow), 0);
  }

  /** Least that the pump moves with a suction line whose strainer is as dirty as may be [m3/s]. */
  #through(d: FallingDuty, ways: readonly Way[], suction: readonly (Part | undefined)[]): number {
    const line = this.#space.layout.lines.find((l) => l.from === 'tank');
    if (line === undefined) return 0;
    const at: PartAt = (slot) => suction[line.run.indexOf(slot)];
    const behind = (flow: number) =>
      (1 - HAIR) * d.adds(flow) - lineTakes(this.#space, line, d.duty, at, flow);
    return Math.max(0, ...d.open.map((l) => this.#meeting(d, l, ways, behind).all));
  }

  /**
   * One outlet alone, and the jets, with all of them at the least that they let through: flow of the outlet and of the pump
   * [m3/s], pressure at the manifold over that of the tank at rest [Pa].
   *
   * @param behind what the pump has behind it at a flow over the tank at rest: never more at more [Pa]
   */
  #meeting(
    d: Omit<FallingDuty, 'least'>,
    line: LayoutLine,
    ways: readonly Way[],
    behind: (flow: number) => number,
  ): { readonly out: number; readonly all: number; readonly over: number } {
    const narrow = ways.map((w) => ({ ...w, square: MORE * w.square }));
    const lift = d.liquid.density * G * outletHeightOf(line, d.duty) - d.surface;
    // By the flow of the outlet: what else is taken follows from the pressure that it asks.
    const over = (flow: number) => lineTakes(this.#space, line, d.duty, this.#partAt, flow) + lift;
    const all = (flow: number) => flow + narrow.reduce((sum, w) => sum + flowOf(w, over(flow)), 0);
    const out = meeting((flow) => behind(all(flow)), over);
    return { out, all: out > 0 ? all(out) : 0, over: over(out) };
  }
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

/** Flow at which what is given, which falls, meets what is taken, which grows; 0 where nothing flows [m3/s]. */
function meeting(gives: (flow: number) => number, takes: (flow: number) => number): number {
  let [low, high] = [0, MOST_FLOW];
  for (let i = 0; i < HALVINGS; i++) {
    const flow = (low + high) / 2;
    if (takes(flow) < gives(flow)) low = flow;
    else high = flow;
  }
  return low;
}
