import type { Layout, LayoutLine, Part, PartOf } from '../../catalogue/index.ts';
import { hoseLoss } from '../../physics/index.ts';
import { RETURN_HOSE } from '../design/rest-of-rig.ts';
import { elbowK } from '../fitting-loss.ts';
import { jetWay } from './jet.ts';
import { spanOf, type MainDuty, type Span } from './main-duties.ts';
import type { Way } from './main-state.ts';
import { OFF, type Terms } from './part-terms.ts';
import { remember } from './remember.ts';

const BAR = 1e5;
/** Share of a hose's friction that is counted on. */
const COUNTED = 0.98;

/** Parts of which any may stand in a slot. */
export type AnyOf = readonly (Part | undefined)[];

/** Ways at no less than any of some parts lets through, and at no more. */
export interface Ways {
  readonly most: readonly Way[];
  readonly least: readonly Way[];
}

const NO_WAYS: Ways = { most: [], least: [] };

/** What a return hose takes: bends by the square of the flow, and the whole by its square at least, by itself at most. */
interface BackLosses {
  readonly bends: Span;
  readonly square: number;
  readonly linear: number;
}

/**
 * Ways from a main back to the tank: behind any of some valves or in front of any of some hoses. What hangs on neither
 * regulator nor tank is reckoned once for all mains of a space.
 */
export class MainWays {
  readonly #jetLine: LayoutLine | undefined;
  readonly #backElbows: number;
  readonly #jets = new Map<string, Record<keyof Terms, Span> | undefined>();
  readonly #backs = new Map<string, BackLosses>();

  constructor({ lines }: Layout) {
    this.#jetLine = lines.find((l) => l.run.includes('agitator'));
    this.#backElbows = lines.find((l) => l.run.includes('regulator'))?.elbows ?? 0;
  }

  jets(d: MainDuty, agitator: Part | undefined, valves: AnyOf): Ways {
    const line = this.#jetLine;
    if (!d.agitate || line === undefined || agitator === undefined) return NO_WAYS;
    const key = `${d.density} ${d.viscosity} ${agitator.id} ${anyKey(valves)}`;
    let terms = this.#jets.get(key);
    if (terms === undefined && !this.#jets.has(key)) {
      const ways = valves.flatMap((v) => jetWay(line, agitator, v, d, 0) ?? []);
      terms =
        ways.length === 0
          ? undefined
          : { linear: spanOf(ways.map((w) => w.linear)), square: spanOf(ways.map((w) => w.square)) };
      remember(this.#jets, key, terms);
    }
    if (terms === undefined) return NO_WAYS;
    const { linear, square } = terms;
    const { low, high } = d.atManifold;
    return {
      most: [{ constant: low, linear: (1 - OFF) * linear.low, square: (1 - OFF) * square.low }],
      least: [{ constant: high, linear: (1 + OFF) * linear.high, square: (1 + OFF) * square.high }],
    };
  }

  /**
   * A regulator with any of some hoses behind it: as it holds, and wide open.
   *
   * @param flow most that goes back [m3/s]
   */
  back(d: MainDuty, regulator: PartOf<'regulator'>, hoses: AnyOf, flow: number): Ways {
    const gradient = regulator.overridePressure / regulator.ratedFlow;
    const open = ((d.density / 1000) * BAR) / regulator.flowAtOneBar ** 2;
    const key = `${d.density} ${d.viscosity} ${flow} ${anyKey(hoses)}`;
    const { bends, square, linear } =
      this.#backs.get(key) ?? remember(this.#backs, key, this.#lossesOf(d, hoses, flow));
    const held = { constant: d.set, linear: gradient };
    return {
      most: [
        { ...held, square: COUNTED * bends.low },
        { constant: d.atManifold.low, linear: 0, square: COUNTED * square + open },
      ],
      // Friction grows by more than the flow and by less than its square; bends have a laminar part besides.
      least: [
        { ...held, linear: gradient + 0.1 * bends.high * flow, square: bends.high },
        { constant: d.atManifold.high, linear, square: bends.high + open },
      ],
    };
  }

  #lossesOf({ density, viscosity }: MainDuty, hoses: AnyOf, most: number): BackLosses {
    const taken = hoses.map((hose) => {
      if (hose?.kind !== 'hose') return { bends: 0, square: 0, linear: 0 };
      const { bore, roughness } = hose;
      const loss = (flow: number) =>
        hoseLoss({ flow, bore, length: RETURN_HOSE, roughness, density, viscosity }).pressureLoss;
      const bends = (this.#backElbows * elbowK(bore) * density) / 2 / ((Math.PI / 4) * bore ** 2) ** 2;
      const friction = Math.min(...[1, 0.5, 0.2].map((share) => loss(most * share) / (most * share) ** 2));
      return { bends, square: bends + friction, linear: (1.02 * loss(most)) / most + 0.1 * bends * most };
    });
    return {
      bends: spanOf(taken.map((t) => t.bends)),
      square: Math.min(...taken.map((t) => t.square)),
      linear: Math.max(...taken.map((t) => t.linear)),
    };
  }
}

/** Of some parts that may stand in a slot: all, or the one. */
function anyKey(parts: AnyOf): string {
  return parts.length > 1 ? 'any' : (parts[0]?.id ?? '-');
}
