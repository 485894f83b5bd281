import type { Rig } from '../rig-document.ts';
import { TOLERANCES, type Tolerance, type ToleranceKind } from './tolerances.data.ts';

/**
 * One input of one rig that is not known exactly. Input = nominal × exp(x), x normal with this mean and deviation:
 * of the tolerance table, or of a correction that readings have taught.
 */
export interface UncertainInput {
  /** `kind:item`, such as `tip-flow:tip`; `dry-mass:rig` and `wind:rig` for the rig as a whole. */
  readonly id: string;
  readonly kind: ToleranceKind;
  /** Item of the rig; `rig` for what belongs to none. */
  readonly item: string;
  /** "Plunger pump: flow". */
  readonly name: string;
  /** Mean and standard deviation of the logarithm of the factor [-]. */
  readonly mean: number;
  readonly deviation: number;
  readonly source: string;
  /** Whether mean and deviation come from readings of this part instead of the table. */
  readonly taught: boolean;
}

/** What readings have taught of one input, in place of its tolerance. */
export type Correction = Pick<UncertainInput, 'id' | 'mean' | 'deviation' | 'source'>;

/** Inputs of a rig that carry a tolerance, in the order of its items; a correction takes the tolerance's place. */
export function uncertainInputs(rig: Rig, corrections: readonly Correction[] = []): UncertainInput[] {
  const taught = new Map(corrections.map((c) => [c.id, c]));
  const inputs: UncertainInput[] = [];
  const add = (kind: ToleranceKind, item: string, owner: string | undefined) => {
    const tolerance: Tolerance = TOLERANCES[kind];
    const id = `${kind}:${item}`;
    const { mean, deviation, source } = taught.get(id) ?? tolerance;
    const name = owner === undefined ? tolerance.name : `${owner}: ${tolerance.name}`;
    inputs.push({ id, kind, item, name, mean, deviation, source, taught: taught.has(id) });
  };
  const kinds = Object.keys(TOLERANCES) as ToleranceKind[];
  for (const [id, { part }] of rig.items)
    for (const kind of kinds) {
      const tolerance: Tolerance = TOLERANCES[kind];
      if (tolerance.kinds.includes(part.kind)) add(kind, id, part.name);
    }
  for (const kind of kinds) if (TOLERANCES[kind].kinds.length === 0) add(kind, 'rig', undefined);
  return inputs;
}
