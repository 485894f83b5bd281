import type { Part, PartOf, LayoutLine } from '../../catalogue/index.ts';
import { elbowK, valveK } from '../fitting-loss.ts';
import { liquidDepth } from '../tank-level.ts';
import { SUCTION_HOSE } from '../design/rest-of-rig.ts';
import type { DutyLiquid } from '../proof/liquid.ts';
import { headAvailable } from '../proof/suction.ts';
import {
  bendTerms,
  countedHoseLaw,
  factorTerms,
  OFF,
  sumOfTerms,
  valveTerms,
  type Terms,
} from './part-terms.ts';
import type { SearchSpace } from './space.ts';

const G = 9.80665;
const BAR = 1e5;
/** Share of a loss that is counted on whatever the part. */
const COUNTED = 0.97;
/** Hose is cut to whole feet [m]. */
const LENGTH = Math.ceil(SUCTION_HOSE / 0.3048 - 1e-6) * 0.3048;

/** Least that any suction line of a space takes of the pressure at a flow, its strainer clean [Pa]. */
export function leastSuctionLoss({ slots, layout }: SearchSpace, flow: number, density: number): number {
  const run = layout.lines.find((l) => l.from === 'tank')?.run ?? [];
  const lossOf = (part: Part | undefined): number => {
    if (part?.kind !== 'valve' && part?.kind !== 'strainer') return 0;
    if (part.flowAtOneBar !== undefined) return (flow / part.flowAtOneBar) ** 2 * BAR * (density / 1000);
    if (part.kind !== 'valve' || !part.form.startsWith('ball')) return 0;
    return (valveK(part.form, part.bore) * density * (flow / ((Math.PI / 4) * part.bore ** 2)) ** 2) / 2;
  };
  return run.reduce((sum, slot) => {
    const options = slots.find((s) => s.id === slot)?.options ?? [];
    return sum + (options.length === 0 ? 0 : COUNTED * Math.min(...options.map(lossOf)));
  }, 0);
}

/** Pressure in front of the pump by duty, less what the parts of the suction line take [Pa]. */
export class SuctionSide {
  readonly #space: SearchSpace;
  readonly #line: LayoutLine;
  readonly #flows: readonly number[];
  readonly #rest: readonly number[];
  readonly #needed: number;

  constructor(
    space: SearchSpace,
    line: LayoutLine,
    tank: PartOf<'tank'>,
    npshRequired: number,
    flows: readonly number[],
  ) {
    this.#space = space;
    this.#line = line;
    this.#flows = flows;
    this.#needed = npshRequired;
    const height = space.layout.nodes[line.to] ?? 0;
    this.#rest = space.brief.duties.map((duty) => {
      const { density } = space.contexts[0]!.liquids.get(duty.liquid)!;
      return density * G * (liquidDepth(tank, duty.tankLevel) - height);
    });
  }

  /** Least loss in a part by duty [Pa]. */
  lossesOf(part: Part | undefined): readonly number[] {
    const { brief, contexts } = this.#space;
    return brief.duties.map((duty, i) => {
      const liquid = contexts[0]!.liquids.get(duty.liquid)!;
      const law = part && suctionLaw([part], liquid, this.#line.elbows ?? 0, true);
      return law === undefined ? 0 : law(this.#flows[i]!);
    });
  }

  /** Most spare that a suction line keeps whose parts lose so much. */
  margin(losses: readonly (readonly number[])[], hose: Part | undefined): number {
    let spare = Infinity;
    for (let i = 0; i < this.#rest.length; i++) {
      const lost = losses.reduce((sum, l) => sum + l[i]!, 0);
      spare = Math.min(spare, this.inDuty(i, lost, hose));
    }
    return spare;
  }

  /** The same in one duty, with what all of its parts lose there [Pa]. */
  inDuty(i: number, lost: number, hose: Part | undefined): number {
    const { brief, contexts } = this.#space;
    const inlet = this.#rest[i]! - lost;
    const npsh = headAvailable(contexts[0]!.site, contexts[0]!.liquids.get(brief.duties[i]!.liquid)!, inlet);
    const head = this.#needed > 0 ? (npsh - this.#needed) / this.#needed : npsh;
    if (inlet >= 0 || hose?.kind !== 'hose') return head;
    const stands = -hose.minPressure;
    return Math.min(head, (stands + inlet) / (stands > 0 ? stands : 1));
  }
}

/**
 * What some parts of a suction line take of the pressure by the flow, or a hair less; a strainer clean or as dirty as may be
 * [Pa].
 */
export function suctionLaw(
  parts: readonly (Part | undefined)[],
  liquid: Pick<DutyLiquid, 'density' | 'viscosity' | 'powerLaw'>,
  elbows: number,
  dirty: boolean,
): (flow: number) => number {
  const { powerLaw } = liquid;
  const terms: Terms[] = [];
  const rubs: ((flow: number) => number)[] = [];
  for (const part of parts)
    switch (part?.kind) {
      case 'valve':
        terms.push(valveTerms(part, liquid));
        break;
      case 'strainer':
        terms.push(factorTerms(part.flowAtOneBar, liquid, dirty ? part.dirtyFactor : 1));
        break;
      case 'hose': {
        const { bore, roughness } = part;
        terms.push(bendTerms(elbows * elbowK(bore), bore, liquid));
        // What a liquid that thins or thickens loses in a hose is not counted on.
        if (powerLaw === undefined) rubs.push(countedHoseLaw(bore, LENGTH, roughness, liquid));
        break;
      }
      default:
        break;
    }
  const { linear, square } = sumOfTerms(terms);
  return (flow) =>
    flow <= 0 ? 0 : (1 - OFF) * rubs.reduce((sum, rub) => sum + rub(flow), (square * flow + linear) * flow);
}
