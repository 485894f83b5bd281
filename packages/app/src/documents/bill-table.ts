import { stringify } from 'csv-stringify/sync';
import { BILL_GROUPS, type Order, type Proof } from '@spraywright/engine/rig';
import { guardedCell } from './spreadsheet-guard.ts';

/** One sheet of the bill: a head and rows of text and numbers; money in whole units of currency. */
export interface BillSheet {
  readonly name: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly (string | number)[])[];
  /** Columns that hold money. */
  readonly money: readonly number[];
}

/** The lines of a bill as a table for a spreadsheet. */
export function billSheet({ bill }: Proof): BillSheet {
  const rows = BILL_GROUPS.flatMap(({ name, sorts }) =>
    bill.lines
      .filter((l) => sorts.includes(l.sort))
      .map((l) => [
        name,
        l.item ?? '',
        l.part ?? '',
        l.name,
        l.quantity,
        l.unit,
        l.costCents / 100,
        l.priceCents / 100,
        Math.round(l.mass * 1000) / 1000,
        l.short,
        l.short > 0 ? l.leadTimeDays : '',
      ]),
  );
  const total = (name: string, cost: number | '', price: number) => [
    name,
    '',
    '',
    '',
    '',
    '',
    cost,
    price,
    '',
    '',
    '',
  ];
  return {
    name: 'Bill',
    head: [
      'group',
      'item',
      'part',
      'name',
      'quantity',
      'unit',
      'cost USD',
      'price USD',
      'mass kg',
      'to order',
      'lead time days',
    ],
    rows: [
      ...rows,
      ...(bill.discount === undefined ? [] : [total('Discount', '', -bill.discount.cents / 100)]),
      total('Price without tax', bill.costCents / 100, bill.priceCents / 100),
      ...(bill.tax === undefined ? [] : [total('Tax', '', bill.tax.cents / 100)]),
      ...(bill.freightCents === undefined ? [] : [total('Freight', '', bill.freightCents / 100)]),
    ],
    money: [6, 7],
  };
}

/** Every piece of hose to cut. */
export function cutSheet({ bill }: Proof): BillSheet {
  return {
    name: 'Hose to cut',
    head: ['item', 'part', 'name', 'pieces', 'length m', 'one end', 'other end'],
    rows: bill.cuts.map((c) => [
      c.item,
      c.part,
      c.name,
      c.count,
      Math.round(c.length * 1000) / 1000,
      c.ends[0],
      c.ends[1],
    ]),
    money: [],
  };
}

/** What to buy, by supplier. */
export function orderSheet(orders: readonly Order[]): BillSheet {
  return {
    name: 'To order',
    head: [
      'supplier',
      'part',
      'name',
      'need',
      'stock',
      'order',
      'unit',
      'cost USD',
      'lead time days',
      'order by',
    ],
    rows: orders.map((o) => [
      o.supplier ?? '',
      o.part,
      o.name,
      o.need,
      o.stock,
      o.order,
      o.unit,
      o.costCents / 100,
      o.leadTimeDays,
      o.orderBy ?? '',
    ]),
    money: [7],
  };
}

/** A sheet as CSV in which a spreadsheet runs nothing: a text that looks like a formula is marked as text. */
export function sheetCsv({ head, rows }: BillSheet): string {
  // A number is written as a number, minus sign and all; only texts are guarded.
  return stringify([[...head], ...rows.map((row) => row.map((cell) => guardedCell(cell)))]);
}
