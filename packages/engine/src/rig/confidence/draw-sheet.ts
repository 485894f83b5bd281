import type { Figure, RigPromise } from '../promise.ts';
import type { ProofContext, ProvenDuty } from '../proof/context.ts';
import { DrawnContexts } from './drawn-contexts.ts';
import { DrawnNetwork, type Condition, type Reading } from './drawn-network.ts';
import type { Draws } from './draws.ts';
import { drawnParameters, type DrawnParameter } from './parameter-factors.ts';
import type { ToleranceKind } from './tolerances.data.ts';

/** One of the situations that a promise is about: it is as good as the worst of them. */
export interface Contender {
  readonly readings: readonly Reading[];
  /** The promise's figure in one draw, from the readings of that draw. */
  readonly value: (draw: number) => number;
  /** Called once when all readings are there, before the first value. */
  readonly prepare?: () => void;
}

/** A promise whose figure is worked out in every draw. */
export interface DrawnPromise {
  /** Id of the promise of the proof. */
  readonly id: string;
  readonly contenders: readonly Contender[];
  /** Whether the figures are in the promise's own unit or shares of what its duty asks. */
  readonly as: 'figure' | 'share';
  /** What is asked in each draw as a multiple of what the proof asks, where that is in doubt too. */
  readonly askedFactor?: Float64Array;
  /** What is asked, for a promise whose proof tells no figures. */
  readonly stands?: { readonly asked: Figure; readonly sense: RigPromise['sense'] };
}

/** What the drawn promises of one rig are made from: its networks and its factors. */
export class DrawSheet {
  readonly context: ProofContext;
  readonly draws: Draws;
  readonly contexts: DrawnContexts;
  private readonly parameters: readonly DrawnParameter[];
  private readonly networks = new Map<string, DrawnNetwork | undefined>();
  private readonly ones: Float64Array;

  constructor(context: ProofContext, draws: Draws) {
    this.context = context;
    this.draws = draws;
    this.contexts = new DrawnContexts(this);
    this.ones = new Float64Array(draws.count).fill(1);
    const first = context.duties[0];
    this.parameters =
      first === undefined ? [] : drawnParameters(context.rig, first.duty, first.liquid, draws);
  }

  /** A duty in one condition; undefined where its proof has no steady state. */
  network(proven: ProvenDuty, condition: Condition): DrawnNetwork | undefined {
    const key = `${proven.duty.id} ${condition}`;
    if (!this.networks.has(key))
      this.networks.set(
        key,
        DrawnNetwork.of(this.context.rig, proven, condition, this.parameters, this.draws.count),
      );
    return this.networks.get(key);
  }

  /** exp(x) of one input in every draw; ones where the rig has no such input. */
  factor(kind: ToleranceKind, item: string | undefined): Float64Array {
    const k = this.draws.inputs.findIndex((input) => input.kind === kind && input.item === item);
    return k < 0 ? this.ones : this.draws.columns[k]!.map(Math.exp);
  }
}
