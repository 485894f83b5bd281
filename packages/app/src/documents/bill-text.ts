import type { Shop } from '@spraywright/engine/catalogue';
import { amountText, display, moneyText } from '@spraywright/engine/quantity';
import { BILL_GROUPS, freightOf, type Order, type Proof } from '@spraywright/engine/rig';
import { freightDensityText } from './freight-density-text.ts';
import { table } from './text-table.ts';

export interface BillTextOptions {
  readonly units: 'us' | 'metric';
  readonly shop: Shop;
  readonly orders: readonly Order[];
  readonly buildDate: string | undefined;
  /** Today, so that an order that is late already is told. */
  readonly today: string;
}

/** The bill of a rig as a builder reads it: groups, totals, hoses to cut, what to order and by when. */
export function billText(proof: Proof, options: BillTextOptions): string {
  return [
    `${proof.title}, for ${proof.customer}`,
    '',
    groupsText(proof),
    '',
    ...totals(proof, options),
    '',
    'Hose to cut',
    cutsText(proof, options.units),
    '',
    ...ordersText(options),
    ...lacking(proof),
    ...freightText(proof, options.units),
    '',
  ].join('\n');
}

function groupsText({ bill }: Proof): string {
  const rows = BILL_GROUPS.flatMap(({ name, sorts }) => {
    const lines = bill.lines.filter((l) => sorts.includes(l.sort));
    if (lines.length === 0) return [];
    const sum = (value: (l: (typeof lines)[number]) => number) => lines.reduce((n, l) => n + value(l), 0);
    return [
      [name.toUpperCase(), '', amountText(sum((l) => l.costCents)), amountText(sum((l) => l.priceCents)), ''],
      ...lines.map((l) => [
        `  ${l.name}`,
        quantityText(l),
        amountText(l.costCents),
        amountText(l.priceCents),
        l.short > 0 ? `${l.short} to order, ${l.leadTimeDays} days` : '',
      ]),
    ];
  });
  return table(['', 'quantity', 'cost', 'price', 'stock'], rows, [1, 2, 3]);
}

function quantityText({ quantity, unit }: Proof['bill']['lines'][number]): string {
  return unit === 'each' ? String(quantity) : `${Math.round(quantity * 100) / 100} ${unit}`;
}

function totals({ bill }: Proof, { shop }: BillTextOptions): string[] {
  const { discount, tax } = bill;
  const margin = bill.priceCents > 0 ? 1 - bill.costCents / bill.priceCents : 0;
  const rows: [string, string][] = [['Cost', amountText(bill.costCents)]];
  if (discount !== undefined) {
    rows.push(['Lines together', amountText(bill.linesCents)]);
    const held = {
      'least-margin': `the shop keeps a margin of ${shop.pricing.leastMarginPercent} %`,
      'most-discount': `the shop gives ${shop.pricing.mostDiscountPercent} % at most`,
    };
    const why =
      discount.held === undefined
        ? ''
        : `; ${amountText(discount.askedCents)} was asked, ${held[discount.held]}`;
    rows.push([`Discount, ${discount.askedPercent} % asked${why}`, amountText(-discount.cents)]);
  }
  rows.push([`Price, margin ${(margin * 100).toFixed(1)} %`, amountText(bill.priceCents)]);
  if (tax === undefined) rows.push(['Tax', 'not set in the shop file']);
  else {
    rows.push([`Tax, ${tax.percent} % on ${tax.on}`, amountText(tax.cents)]);
    rows.push(['With tax', amountText(bill.priceCents + tax.cents)]);
  }
  if (bill.freightCents !== undefined) {
    rows.push(['Freight, no tax reckoned on it', amountText(bill.freightCents)]);
    rows.push(['To be paid', amountText(bill.totalCents)]);
  }
  rows.push(['Ready', `${bill.readyInDays} working days after the order`]);
  const width = Math.max(...rows.map(([name]) => name.length));
  const right = Math.max(...rows.map(([, value]) => (value.includes(' ') ? 0 : value.length)));
  return rows.map(([name, value]) => `${name.padEnd(width)}  ${value.padStart(right)}`);
}

function cutsText({ bill }: Proof, units: 'us' | 'metric'): string {
  return table(
    ['hose', 'cut', 'one end', 'other end'],
    bill.cuts.map((c) => [
      `  ${c.item}: ${c.name}`,
      `${c.count > 1 ? `${c.count} x ` : ''}${display(c.length, 'length', units)}`,
      ...c.ends,
    ]),
    [1],
  );
}

function ordersText({ orders, buildDate, today }: BillTextOptions): string[] {
  if (orders.length === 0) return ['Everything is in stock.', ''];
  const suppliers = [...new Set(orders.map((o) => o.supplier ?? 'supplier not stated'))];
  const rows = suppliers.flatMap((supplier) => [
    [supplier, '', '', '', ''],
    ...orders
      .filter((o) => (o.supplier ?? 'supplier not stated') === supplier)
      .map((o) => [
        `  ${o.name}`,
        `${o.order}${o.unit === 'each' ? '' : ` ${o.unit}`}`,
        amountText(o.costCents),
        `${o.leadTimeDays} days`,
        o.orderBy === undefined ? '' : `${o.orderBy}${o.orderBy < today ? ' (past)' : ''}`,
      ]),
  ]);
  return [
    buildDate === undefined
      ? 'To order (with --build-date the last day for each)'
      : `To order, to build from ${buildDate}`,
    table(['', 'order', 'cost', 'takes', 'order by'], rows, [1, 2, 3]),
    `${moneyText(orders.reduce((n, o) => n + o.costCents, 0))} to spend. Working days, Monday to Friday; holidays are not known.`,
    '',
  ];
}

function lacking({ bill }: Proof): string[] {
  const all = [...bill.plumbing.gaps, ...bill.missing];
  return all.length === 0 ? [] : ['Missing in the catalogue', ...all.map((text) => `  ${text}`), ''];
}

function freightText(proof: Proof, units: 'us' | 'metric'): string[] {
  const freight = proof.placement === undefined ? undefined : freightOf(proof.placement, proof.bill.dryMass);
  if (freight === undefined) return [`Dry mass ${display(proof.bill.dryMass, 'mass', units)}.`];
  const [length, width, height] = [freight.length, freight.width, freight.height].map((v) =>
    display(v, 'length', units),
  );
  return [
    `As freight, estimated without crate: ${length} x ${width} x ${height}, ${display(freight.mass, 'mass', units)} dry, ${freightDensityText(freight.density, units)}; by density alone class ${freight.freightClass}. The carrier decides.`,
  ];
}
