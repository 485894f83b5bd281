import type { Part } from '../../catalogue/index.ts';
import { BILL_GROUPS, type Bill, type BillLine } from '../bill/index.ts';

/** One thing that is fetched from the store for a rig. */
export interface Pick {
  readonly group: string;
  readonly part: string;
  readonly name: string;
  /** Items of the rig that are made of it. */
  readonly items: readonly string[];
  readonly unit: BillLine['unit'];
  readonly need: number;
  /** In the store by the catalogue. */
  readonly stock: number;
  /** What can be fetched now, and what is short. */
  readonly take: number;
  readonly short: number;
}

/**
 * Everything that is fetched for a rig, like parts on one line, with what the store has and lacks.
 *
 * @param partOf finds a part of the bill in the catalogue or among the rig's own
 */
export function pickList(bill: Bill, partOf: (id: string) => Part | undefined): Pick[] {
  return BILL_GROUPS.flatMap(({ name: group, sorts }) => {
    const picks = new Map<string, Pick>();
    for (const line of bill.lines) {
      if (line.part === undefined || !sorts.includes(line.sort)) continue;
      const so = picks.get(line.part);
      const short = (so?.short ?? 0) + line.short;
      const need = (so?.need ?? 0) + line.quantity;
      picks.set(line.part, {
        group,
        part: line.part,
        name: line.name,
        items: [...(so?.items ?? []), ...(line.item === undefined ? [] : [line.item])],
        unit: line.unit,
        need,
        stock: partOf(line.part)?.stock ?? 0,
        take: need - short,
        short,
      });
    }
    return [...picks.values()];
  });
}
