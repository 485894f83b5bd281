import type { Part } from '../../catalogue/index.ts';
import type { BillLine } from './bill-line.ts';

/** A line before it is priced: at list price, or at the shop's rate. */
export type RawLine = Omit<BillLine, 'priceCents'> & { readonly listCents: number };

/** Lines of parts from one shelf: what an earlier line took is no longer there for a later one. */
export class PartLines {
  readonly #lines: RawLine[] = [];
  readonly #taken = new Map<string, number>();

  add(sort: BillLine['sort'], part: Part, quantity: number, unit: 'each' | 'ft', item?: string): void {
    if (quantity <= 0) return;
    const taken = this.#taken.get(part.id) ?? 0;
    this.#taken.set(part.id, taken + quantity);
    this.#lines.push({
      sort,
      ...(item === undefined ? {} : { item }),
      part: part.id,
      name: part.name,
      quantity,
      unit,
      costCents: part.costCents * quantity,
      listCents: part.priceCents * quantity,
      mass: part.mass * quantity,
      short: Math.min(quantity, Math.max(0, taken + quantity - part.stock)),
      leadTimeDays: part.leadTimeDays,
    });
  }

  list(): readonly RawLine[] {
    return this.#lines;
  }
}
