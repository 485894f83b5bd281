import { sql, type Kysely } from 'kysely';
import { fromJsonText } from './json-text.ts';
import type { MachineDocument } from './machine.ts';
import type { Tables } from './schema.ts';

/** One machine that has a part, or had it. */
export interface Recalled {
  readonly serial: string;
  readonly title: string;
  readonly customer: string;
  readonly madeAt: string;
  /** Places of the rig where it is; empty where only the store tells of it. */
  readonly slots: readonly string[];
  /** It was put in, and another part has come in its stead since. */
  readonly replaced: boolean;
  /** Pieces or feet that the store gave for the machine, less what came back; 0 where nothing was written down. */
  readonly given: number;
  /** Lots that were written down of the part at this machine. */
  readonly lots: readonly string[];
  /** With a lot asked for: whether it is the one. Unknown where no lot was written down. */
  readonly match: 'yes' | 'no' | 'unknown';
}

interface Instead {
  readonly slot: string;
  readonly part: { readonly part: { readonly id: string } };
}

/** Every machine that has a part among its items, had it, or was given it by the store, by serial number. */
export async function recallOf(db: Kysely<Tables>, part: string, lot?: string): Promise<Recalled[]> {
  const given = new Map(
    (
      await db
        .selectFrom('stock_movements')
        .select((e) => ['serial', e.fn.sum<number>('quantity').as('quantity')])
        .where('part', '=', part)
        .where('serial', '!=', '')
        .groupBy('serial')
        .execute()
    ).map(({ serial, quantity }) => [serial, -Number(quantity)]),
  );
  const entries = await entriesAbout(db, part);
  const named = [...new Set([...given.keys(), ...entries.keys()])];
  const rows = await db
    .selectFrom('machines')
    .select(['serial', 'title', 'customer', 'made_at', 'document'])
    .where((e) =>
      e.or([
        sql<boolean>`document like ${`%"${part}"%`}`,
        ...(named.length === 0 ? [] : [e('serial', 'in', named)]),
      ]),
    )
    .orderBy('serial')
    .execute();
  return rows.flatMap((row): Recalled[] => {
    const { instead = [], lots = [] } = entries.get(row.serial) ?? {};
    const slots = slotsWith(fromJsonText<MachineDocument>(row.document), instead, part);
    const count = given.get(row.serial) ?? 0;
    if (slots.ever === 0 && count === 0 && lots.length === 0) return [];
    return [
      {
        serial: row.serial,
        title: row.title,
        customer: row.customer,
        madeAt: row.made_at,
        slots: slots.now,
        replaced: slots.now.length === 0 && slots.ever > 0,
        given: count,
        lots,
        match: lot === undefined || lots.includes(lot) ? 'yes' : lots.length === 0 ? 'unknown' : 'no',
      },
    ];
  });
}

/** What entries tell of the part: where others came in its stead or it in theirs, and its lots. */
async function entriesAbout(
  db: Kysely<Tables>,
  part: string,
): Promise<Map<string, { instead: Instead[]; lots: string[] }>> {
  const rows = await db
    .selectFrom('machine_entries')
    .select(['serial', 'kind', 'document'])
    .where('kind', 'in', ['substitution', 'lot'])
    .orderBy('serial')
    .orderBy('number')
    .execute();
  const found = new Map<string, { instead: Instead[]; lots: string[] }>();
  for (const { serial, kind, document } of rows) {
    const of = found.get(serial) ?? { instead: [], lots: [] };
    found.set(serial, of);
    if (kind === 'substitution') of.instead.push(fromJsonText<Instead>(document));
    else {
      const lot = fromJsonText<{ part: string; lot: string }>(document);
      if (lot.part === part && !of.lots.includes(lot.lot)) of.lots.push(lot.lot);
    }
  }
  return found;
}

/** Slots where the part stands now, and in how many it has ever stood. */
function slotsWith(
  { rig }: MachineDocument,
  instead: readonly Instead[],
  part: string,
): { now: string[]; ever: number } {
  const items = Array.isArray(rig.items) ? (rig.items as { id: string; part: string }[]) : [];
  const standing = new Map(items.map((item) => [item.id, item.part]));
  const ever = new Set(items.filter((item) => item.part === part).map((item) => item.id));
  for (const { slot, part: put } of instead) {
    standing.set(slot, put.part.id);
    if (put.part.id === part) ever.add(slot);
  }
  return { now: [...ever].filter((slot) => standing.get(slot) === part), ever: ever.size };
}
