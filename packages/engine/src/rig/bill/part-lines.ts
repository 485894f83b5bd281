import type { Part } from '../../catalogue/index.ts';
import type { BillLine } from './bill-line.ts';

/** A line before it is priced: its price is the list price, or the shop's rate. */
export type RawLine = BillLine;

/** Lines of parts from one shelf: what an earlier line took is no longer there for a later one. */
export class PartLines {
  readonly #lines: RawLine[] = [];
  readonly #taken = new Map<string, number>();

  add(sort: BillLine['sort'], part: Part, quantity: number, unit: 'each' | 'ft', item?: string): void {
    if (quantity <= 0) return;
    this.#lines.push(this.next(sort, part, quantity, unit, item));
    this.#taken.set(part.id, (this.#taken.get(part.id) ?? 0) + quantity);
  }

  /** The line that a part would get now; it takes nothing from the shelf. */
  next(sort: BillLine['sort'], part: Part, quantity: number, unit: 'each' | 'ft', item?: string): RawLine {
    const taken = this.#taken.get(part.id) ?? 0;
    const rest = {
      part: part.id,
      name: part.name,
      quantity,
      unit,
      costCents: part.costCents * quantity,
      mass: part.mass * quantity,
      short: Math.min(quantity, Math.max(0, taken + quantity - part.stock)),
      leadTimeDays: part.leadTimeDays,
      priceCents: part.priceCents * quantity,
    };
    return item === undefined ? { sort, ...rest } : { sort, item, ...rest };
  }

  list(): readonly RawLine[] {
    return this.#lines;
  }
}
