import type { Part, PartOf, LayoutLine } from '../../catalogue/index.ts';
import { hoseLoss } from '../../physics/index.ts';
import { elbowK, valveK } from '../fitting-loss.ts';
import { liquidDepth } from '../tank-level.ts';
import { SUCTION_HOSE } from '../design/rest-of-rig.ts';
import { headAvailable } from '../proof/suction.ts';
import type { SearchSpace } from './space.ts';

const G = 9.80665;
const BAR = 1e5;
/** Share of a loss that is counted on: the rest is left to what the laws of the network have besides. */
const COUNTED = 0.97;

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
      const elbows = this.#line.elbows ?? 0;
      return part === undefined ? 0 : COUNTED * suctionLoss(part, this.#flows[i]!, liquid, elbows, true);
    });
  }

  /** Most spare that a suction line keeps whose parts lose so much. */
  margin(losses: readonly (readonly number[])[], hose: Part | undefined): number {
    const { brief, contexts } = this.#space;
    let npsh = Infinity;
    let lowest = Infinity;
    for (let i = 0; i < brief.duties.length; i++) {
      let inlet = this.#rest[i]!;
      for (const l of losses) inlet -= l[i]!;
      lowest = Math.min(lowest, inlet);
      const liquid = contexts[0]!.liquids.get(brief.duties[i]!.liquid)!;
      npsh = Math.min(npsh, headAvailable(contexts[0]!.site, liquid, inlet));
    }
    const head = this.#needed > 0 ? (npsh - this.#needed) / this.#needed : npsh;
    if (lowest >= 0 || hose?.kind !== 'hose') return head;
    const stands = -hose.minPressure;
    return Math.min(head, (stands + lowest) / (stands > 0 ? stands : 1));
  }
}

/** What a part of a suction line takes of the pressure at a flow, or less; its strainer clean or as dirty as may be [Pa]. */
export function suctionLoss(
  part: Part,
  flow: number,
  { density, viscosity }: { readonly density: number; readonly viscosity: number },
  elbows: number,
  dirty: boolean,
): number {
  const byFactor = (flowAtOneBar: number) => (flow / flowAtOneBar) ** 2 * BAR * (density / 1000);
  const byK = (k: number, bore: number) => (k * density * (flow / ((Math.PI / 4) * bore ** 2)) ** 2) / 2;
  switch (part.kind) {
    case 'valve':
      return part.flowAtOneBar !== undefined
        ? byFactor(part.flowAtOneBar)
        : part.form.startsWith('ball')
          ? byK(valveK(part.form, part.bore), part.bore)
          : 0;
    case 'strainer':
      return byFactor(part.flowAtOneBar) * (dirty ? part.dirtyFactor : 1);
    case 'hose': {
      const { bore, roughness } = part;
      const bends = byK(elbows * elbowK(bore), bore);
      if (flow <= 0) return 0;
      return (
        bends + hoseLoss({ flow, bore, length: SUCTION_HOSE, roughness, density, viscosity }).pressureLoss
      );
    }
    default:
      return 0;
  }
}
