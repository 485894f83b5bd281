import { writeFileSync } from 'node:fs';
import type { Catalogue, RigPricing } from '@spraywright/engine/catalogue';
import { freightOf, ordersOf, proveRig, type Rig } from '@spraywright/engine/rig';
import { billSheet, cutSheet, orderSheet, sheetCsv } from '../documents/bill-table.ts';
import { billText } from '../documents/bill-text.ts';
import { billXlsx } from '../documents/bill-xlsx.ts';
import {
  CATALOGUE_OPTION,
  EXIT,
  JSON_OPTION,
  SHOP_OPTION,
  UNITS_OPTION,
  type Arguments,
  type Command,
  type Terminal,
} from './command.ts';
import { readRigInputs } from './inputs.ts';

/** The bill of a rig: parts, fittings, labour, price, hoses to cut, what to order and by when. */
export const billCommand: Command = {
  name: 'bill',
  usage: 'rig.json',
  summary: 'Everything a rig takes, with cost and price; hoses to cut; what to order and by when.',
  options: {
    'build-date': {
      type: 'string',
      value: 'YYYY-MM-DD',
      help: 'day on which building begins: tells the last day to order each part',
    },
    price: {
      type: 'string',
      value: 'list|cost-plus:35|target-margin:30',
      help: "price by list, by a markup on cost or by a margin, in percent, instead of the shop's way",
    },
    discount: { type: 'string', value: 'percent', help: 'discount asked; the floors of the shop hold' },
    csv: { type: 'string', value: 'file.csv', help: 'write the lines as CSV' },
    xlsx: { type: 'string', value: 'file.xlsx', help: 'write lines, hoses and orders as a workbook' },
    json: JSON_OPTION,
    catalogue: CATALOGUE_OPTION,
    shop: SHOP_OPTION,
    units: UNITS_OPTION,
  },
  least: 1,
  most: 1,
  examples: [
    'spraywright bill rig.json',
    'spraywright bill rig.json --build-date 2026-03-16 --xlsx bill.xlsx',
    'spraywright bill rig.json --price target-margin:32 --discount 5',
  ],
  async run(args, terminal) {
    const pricing = pricingFrom(args, terminal);
    const inputs = readRigInputs(args, terminal);
    if (pricing === undefined || inputs === undefined) return EXIT.input;
    const rig = withPricing(inputs.rig, pricing);
    const proof = proveRig(rig, inputs.catalogue, inputs.shop, { units: inputs.units });
    const buildDate = args.text('build-date');
    let orders: ReturnType<typeof ordersOf>;
    try {
      orders = ordersOf(proof.bill, finder(rig, inputs.catalogue), buildDate);
    } catch (error) {
      terminal.err(`--build-date: ${(error as Error).message}`);
      return EXIT.input;
    }
    const [csv, xlsx] = [args.text('csv'), args.text('xlsx')];
    try {
      if (csv !== undefined) writeFileSync(csv, sheetCsv(billSheet(proof)));
      if (xlsx !== undefined)
        writeFileSync(xlsx, await billXlsx([billSheet(proof), cutSheet(proof), orderSheet(orders)]));
    } catch (error) {
      terminal.err(`the file cannot be written: ${(error as Error).message}`);
      return EXIT.input;
    }
    const freight =
      proof.placement === undefined ? undefined : freightOf(proof.placement, proof.bill.dryMass);
    terminal.out(
      args.flag('json')
        ? JSON.stringify({ ...proof.bill, orders, freight: freight ?? null }, null, 2)
        : billText(proof, {
            units: inputs.units,
            shop: inputs.shop,
            orders,
            buildDate,
            today: new Date().toISOString().slice(0, 10),
          }),
    );
    return proof.bill.plumbing.gaps.length + proof.bill.missing.length > 0 ? EXIT.no : EXIT.ok;
  },
};

function finder(rig: Rig, catalogue: Catalogue) {
  return (id: string) => catalogue.parts.get(id) ?? rig.ownParts.get(id)?.part;
}

function withPricing(rig: Rig, pricing: RigPricing): Rig {
  return { ...rig, document: { ...rig.document, pricing: { ...rig.document.pricing, ...pricing } } };
}

/** What the options say about the price; problems are printed. */
function pricingFrom(args: Arguments, terminal: Terminal): RigPricing | undefined {
  const price = args.text('price');
  const discount = args.text('discount');
  const found = /^(?:(list)|(cost-plus|target-margin):(\d+(?:\.\d+)?))$/.exec(price ?? 'list');
  const percent = Number(found?.[3] ?? 0);
  const most = found?.[2] === 'target-margin' ? 90 : 900;
  if (found === null || percent > most) {
    terminal.err(
      `--price is '${price ?? ''}'; list, cost-plus:0 to cost-plus:900 or target-margin:0 to target-margin:90 was expected`,
    );
    return undefined;
  }
  const asked = discount === undefined ? undefined : Number(discount.replace(/\s*%$/, ''));
  if (asked !== undefined && !(asked >= 0 && asked <= 100)) {
    terminal.err(`--discount is '${discount ?? ''}'; a number from 0 to 100 was expected`);
    return undefined;
  }
  return {
    ...(price === undefined
      ? {}
      : {
          price:
            found[2] === 'cost-plus'
              ? { mode: 'cost-plus', markupPercent: percent }
              : found[2] === 'target-margin'
                ? { mode: 'target-margin', marginPercent: percent }
                : { mode: 'list' },
        }),
    ...(asked === undefined ? {} : { discountPercent: asked }),
  };
}
