import type { Part } from '../../catalogue/index.ts';
import type { BillLine } from './bill-line.ts';
import type { Bill } from './bill.ts';
import { workingDaysBefore } from './working-days.ts';

/** What must be bought of one part. */
export interface Order {
  readonly part: string;
  readonly name: string;
  /** Absent when the catalogue does not say who supplies it. */
  readonly supplier?: string;
  readonly need: number;
  readonly stock: number;
  readonly order: number;
  readonly unit: 'each' | 'ft' | 'h';
  readonly costCents: number;
  readonly leadTimeDays: number;
  /** Last working day on which it can be ordered to be there when building begins; with a build date. */
  readonly orderBy?: string;
}

/**
 * What is short of stock, by supplier and the day on which it must be ordered.
 *
 * @param partOf finds a part of the bill in the catalogue or among the rig's own
 * @param buildDate day on which building begins, such as 2026-03-03; a lead time is counted in working days before it
 * @throws RangeError when the build date is not a day of the calendar
 */
export function ordersOf(bill: Bill, partOf: (id: string) => Part | undefined, buildDate?: string): Order[] {
  return ordersFor(bill.lines, partOf, buildDate);
}

/** What is short of any list of parts, by supplier and the day on which it must be ordered. */
export function ordersFor(
  lines: readonly Pick<BillLine, 'part' | 'quantity' | 'short' | 'unit'>[],
  partOf: (id: string) => Part | undefined,
  buildDate?: string,
): Order[] {
  const needs = new Map<string, { need: number; short: number; unit: Order['unit'] }>();
  for (const { part, quantity, short, unit } of lines) {
    if (part === undefined) continue;
    const so = needs.get(part) ?? { need: 0, short: 0, unit };
    needs.set(part, { need: so.need + quantity, short: so.short + short, unit });
  }
  const orders = [...needs].flatMap(([id, { need, short, unit }]): Order[] => {
    const part = partOf(id);
    if (short === 0 || part === undefined) return [];
    return [
      {
        part: id,
        name: part.name,
        ...(part.supplier === undefined ? {} : { supplier: part.supplier }),
        need,
        stock: part.stock,
        order: short,
        unit,
        costCents: part.costCents * short,
        leadTimeDays: part.leadTimeDays,
        ...(buildDate === undefined ? {} : { orderBy: workingDaysBefore(buildDate, part.leadTimeDays) }),
      },
    ];
  });
  return orders.sort(
    (a, b) =>
      compare(a.supplier ?? '~', b.supplier ?? '~') ||
      b.leadTimeDays - a.leadTimeDays ||
      compare(a.part, b.part),
  );
}

/** By code points, the same in every country. */
function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
