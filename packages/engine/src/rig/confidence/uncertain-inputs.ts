import type { Rig } from '../rig-document.ts';
import { rigHas } from './whole-rig-inputs.ts';
import { TOLERANCES, type Tolerance, type ToleranceKind } from './tolerances.data.ts';
import type { Correction, UncertainInput } from './uncertain-input.ts';
import { hasInput } from './with-factors.ts';

export type { Correction, UncertainInput } from './uncertain-input.ts';

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
  for (const [id, entry] of rig.items)
    for (const kind of kinds) {
      const tolerance: Tolerance = TOLERANCES[kind];
      if (tolerance.kinds.includes(entry.part.kind) && hasInput(kind, entry)) add(kind, id, entry.part.name);
    }
  for (const kind of kinds)
    if (TOLERANCES[kind].kinds.length === 0 && rigHas(kind, rig)) add(kind, 'rig', undefined);
  return inputs;
}
