import type { CompiledNetwork } from './compiled-network.ts';
import { compileNetwork } from './network.ts';
import type { ElementKind, NetworkModel } from './network-model.ts';
import type { CyclingBand, ElementReading, ModelProblem, Note, Reason } from './solution.ts';

export interface NodeResult {
  readonly id: string;
  /** [m] */
  readonly elevation: number;
  /** Total head [m] and gauge pressure of the liquid at rest [Pa]; null where nothing defines them. */
  readonly head: number | null;
  readonly pressure: number | null;
}

export interface ElementResult extends ElementReading {
  readonly id: string;
  readonly kind: ElementKind;
  readonly from: string;
  readonly to: string;
  /** What an eductor draws in [m3/s]. */
  readonly suctionFlow?: number;
  /** Between which flows an outlet swings while a demand pump switches on and off. */
  readonly cycling?: CyclingBand;
}

/** A solved network as plain data. Without a steady state `nodes` and `elements` are empty. */
export interface NetworkResult {
  readonly status: 'converged' | 'failed';
  /** Why there is no steady state. */
  readonly reason?: Reason;
  /** What is wrong with the model, when that is why it was not solved. */
  readonly problems?: readonly ModelProblem[];
  readonly iterations: number;
  /** Largest imbalance at a node over the largest flow [-]; null when nothing was solved. */
  readonly residual: number | null;
  readonly nodes: readonly NodeResult[];
  readonly elements: readonly ElementResult[];
  readonly notes: readonly Note[];
}

/** Checks, solves and reads out a network in one go. Never throws for want of a solution. */
export function solveNetwork(model: NetworkModel): NetworkResult {
  const compiled = compileNetwork(model);
  const nothing = { nodes: [], elements: [], notes: [] };
  if (!compiled.ok)
    return { status: 'failed', problems: compiled.problems, iterations: 0, residual: null, ...nothing };
  const { network } = compiled;
  const { status, reason, iterations, residual } = network.solve({ start: 'cold' });
  if (status === 'failed')
    return {
      status,
      ...(reason === undefined ? {} : { reason }),
      iterations,
      residual: Number.isFinite(residual) ? residual : null,
      ...nothing,
    };
  return {
    status,
    iterations,
    residual,
    nodes: model.nodes.map(({ id, elevation }, i) => ({
      id,
      elevation,
      head: network.head(i),
      pressure: network.pressure(i),
    })),
    elements: elementResults(model, network),
    notes: network.notes(),
  };
}

function elementResults(model: NetworkModel, network: CompiledNetwork): ElementResult[] {
  const outlets = new Set(model.nodes.filter((n) => n.atmosphere === true).map((n) => n.id));
  const cycling = model.elements.findIndex(
    (e, i) => e.law.kind === 'demand-pump' && network.state(i) === 'cycling',
  );
  return model.elements.map(({ id, law, from, to }, i) => {
    const suction = law.kind === 'eductor' && law.suction !== undefined;
    const band = cycling >= 0 && outlets.has(to) ? network.cyclingBand(cycling, i) : null;
    return {
      id,
      kind: law.kind,
      from,
      to,
      ...network.reading(i),
      ...(suction ? { suctionFlow: network.suctionFlow(i) } : {}),
      ...(band === null ? {} : { cycling: band }),
    };
  });
}
