import type { DutyProof, PressureStep, Proof } from '../rig/index.ts';

/** One column of the line: an item with everything of it between its first and last element. */
export interface Column {
  readonly item: string | undefined;
  readonly name: string;
  readonly kind: string;
  readonly before: number;
  readonly after: number;
  readonly limit: number | undefined;
}

/**
 * Merges the elements of one item, and drops the fittings of a line into the part before them; those behind a pump into the
 * part after them, so that the figure at the pump is what its gauge shows.
 */
export function columnsOf(proof: Proof, steps: readonly PressureStep[]): Column[] {
  const columns: Column[] = [];
  let behindPump: number | undefined;
  for (const step of steps) {
    const before = step.before ?? 0;
    const after = step.after ?? 0;
    const last = columns[columns.length - 1];
    if (last !== undefined && (step.item === undefined || step.item === last.item)) {
      if (step.item === undefined && last.after > last.before) behindPump ??= before;
      else columns[columns.length - 1] = { ...last, after };
      continue;
    }
    const part = proof.parts.find((p) => p.item === step.item);
    columns.push({
      item: step.item,
      name: part?.name ?? 'Fittings',
      kind: part?.kind ?? 'fittings',
      before: behindPump ?? before,
      after,
      limit: step.limit,
    });
    behindPump = undefined;
  }
  return columns;
}

/** Pressure with the outlets shut [Pa]; undefined where there is no such state. */
export function peakOf(duty: DutyProof): number | undefined {
  const shut = duty.shut.pump?.outlet;
  return duty.shut.status === 'converged' && shut !== null && shut !== undefined && shut > 0
    ? shut
    : undefined;
}

/** Top of the scale: above every pressure and the nearest ceiling, a round figure. */
export function topOf(columns: readonly Column[], peak: number | undefined): number {
  const most = Math.max(1e4, peak ?? 0, ...columns.map((c) => Math.max(c.before, c.after)));
  const ceiling = Math.min(...columns.map((c) => c.limit ?? Infinity).filter((l) => l >= most), most * 1.6);
  return Math.max(most * 1.12, ceiling * 1.06);
}
