import { display, priceText, type UnitSystem } from '@spraywright/engine/quantity';
import { BILL_GROUPS, type BillLine, type Proof } from '@spraywright/engine/rig';
import type { BillGroup } from '../protocol.ts';

/** The bill in its groups, each line with its quantity and price. */
export function billGroups(proof: Proof, units: UnitSystem): BillGroup[] {
  return BILL_GROUPS.flatMap(({ name, sorts }): BillGroup[] => {
    const lines = proof.bill.lines.filter((l) => sorts.includes(l.sort));
    if (lines.length === 0) return [];
    return [
      {
        name,
        price: priceText(lines.reduce((sum, l) => sum + l.priceCents, 0)),
        rows: lines.map((l) => ({
          name: l.name,
          quantity: quantityText(l, units),
          price: priceText(l.priceCents),
          ...(l.short > 0 ? { late: `${l.leadTimeDays} days` } : {}),
        })),
      },
    ];
  });
}

function quantityText(line: BillLine, units: UnitSystem): string {
  if (line.unit === 'ft')
    return display(line.quantity * 0.3048, 'length', units, units === 'us' ? { decimals: 0 } : {});
  return line.unit === 'h' ? `${Math.round(line.quantity * 10) / 10} h` : `${line.quantity}`;
}
