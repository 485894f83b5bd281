import type { Rig } from '../../rig/index.ts';
import type { FaultModel } from './fault-model.ts';
import { LOOKS, lookOf, type Look, type LookId } from './looks.data.ts';

/** Something to read or to look at. */
export type Check = { readonly reading: string } | { readonly look: LookId; readonly question: string };

/**
 * What a support desk asks at once, before anything is weighed: what the eye sees, then the readings that every yard test
 * needs, with each outlet in the first duty that uses it.
 */
export function firstRound(fault: FaultModel): Check[] {
  const { rows } = fault.model;
  const duties = new Set<string | undefined>([undefined]);
  const outlets = new Set<string>();
  for (const { duty, line } of rows) {
    if (line === undefined || outlets.has(line)) continue;
    outlets.add(line);
    duties.add(duty?.id);
  }
  return [
    ...looksOf(fault).flatMap((look): Check[] =>
      lookOf(look).byEye === true ? [{ look, question: questionOf(look, fault.model.rig) }] : [],
    ),
    ...rows.flatMap((row, r): Check[] =>
      row.needed && duties.has(row.duty?.id) && canBeRead(fault, r) ? [{ reading: row.id }] : [],
    ),
  ];
}

/** What is asked, with the names of this rig's own parts where they are compared. */
export function questionOf(id: LookId, rig: Rig): string {
  const { question, names }: Look = lookOf(id);
  const parts = [...rig.items.values()].flatMap(({ part }) =>
    names?.includes(part.kind) === true ? [part.name] : [],
  );
  return parts.length === 0 ? question : `${question} The list says: ${[...new Set(parts)].join('; ')}.`;
}

/** Looks that speak of a fault which this rig can have. */
export function looksOf({ faults }: FaultModel): LookId[] {
  const possible = new Set(faults.map((f) => f.of?.fault));
  return (Object.keys(LOOKS) as LookId[]).filter((look) =>
    [...possible].some((f) => f !== undefined && f in lookOf(look).yes),
  );
}

/** Whether a row has a steady value when nothing is wrong. */
export function canBeRead({ faults }: FaultModel, row: number): boolean {
  return Number.isFinite(faults[0]!.states[0]!.shown[row]!);
}
