import type { Part } from '../../catalogue/index.ts';
import type { Proof } from '../proof/prove.ts';
import type { Rig } from '../rig-document.ts';

/** A part that wears or is used up, by its number in the catalogue. */
export interface Spare {
  readonly part: string;
  readonly name: string;
  readonly count: number;
  readonly unit: 'each' | 'ft';
  readonly why: string;
  readonly supplier?: string;
}

const WHY = {
  tip: 'wears with every gallon',
  nozzle: 'wears with every gallon',
  strainer: 'screen and seal of its bowl',
  hose: 'ages in sun and spray',
  gauge: 'breaks by frost and shock',
  gun: 'seals of the trigger',
  'motor-pump': 'diaphragm and switch',
  pump: 'rollers, diaphragms, pistons or seals',
  battery: 'ages whether used or not',
} as const;

function whyOf(part: Part): string | undefined {
  if (part.kind === 'pump' && part.law.action === 'centrifugal') return 'shaft seal';
  return (WHY as Partial<Record<string, string>>)[part.kind];
}

/**
 * Parts that wear on this rig, then fuses and clamps, each with its number in the catalogue.
 *
 * @param partOf finds a part of the bill in the catalogue or among the rig's own
 */
export function sparesOf(rig: Rig, proof: Proof, partOf: (id: string) => Part | undefined): Spare[] {
  const worn = [...rig.items.values()].flatMap(({ item, part }): Spare[] => {
    const why = whyOf(part);
    if (why === undefined) return [];
    const feet = part.kind === 'hose' ? Math.ceil((item.length ?? 0) / 0.3048 - 1e-6) : undefined;
    return [
      {
        part: part.id,
        name: part.name,
        count: (feet ?? 1) * item.count,
        unit: feet === undefined ? 'each' : 'ft',
        why,
        ...(part.supplier === undefined ? {} : { supplier: part.supplier }),
      },
    ];
  });
  const small = proof.bill.lines.flatMap((l): Spare[] => {
    const part = l.part === undefined ? undefined : partOf(l.part);
    if (part?.kind !== 'hardware' || (part.purpose.form !== 'fuse' && part.purpose.form !== 'hose-clamp'))
      return [];
    return [
      {
        part: part.id,
        name: part.name,
        count: l.quantity,
        unit: 'each',
        why: part.purpose.form === 'fuse' ? 'blows when a motor sticks' : 'renewed with its hose',
        ...(part.supplier === undefined ? {} : { supplier: part.supplier }),
      },
    ];
  });
  return together([...worn, ...small]);
}

/** One line for each part, however many items are made of it. */
function together(spares: readonly Spare[]): Spare[] {
  const lines = new Map<string, Spare>();
  for (const s of spares) lines.set(s.part, { ...s, count: s.count + (lines.get(s.part)?.count ?? 0) });
  return [...lines.values()];
}
