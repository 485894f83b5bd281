import type { BillLine } from './bill-line.ts';

/** The bill in the order in which a builder reads it. */
export const BILL_GROUPS: readonly { readonly name: string; readonly sorts: readonly BillLine['sort'][] }[] =
  [
    { name: 'Parts and hose', sorts: ['part', 'hose'] },
    { name: 'Fittings and adapters', sorts: ['fitting'] },
    { name: 'Clamps, straps, wire and labels', sorts: ['hardware'] },
    { name: 'Labour', sorts: ['labour'] },
    { name: 'Small stuff', sorts: ['small-stuff'] },
  ];
