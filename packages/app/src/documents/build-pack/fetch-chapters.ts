import { partNumbers } from '@spraywright/engine/drawings';
import { display, moneyText } from '@spraywright/engine/quantity';
import {
  fetchList,
  ordersToFetch,
  pickList,
  type BillLine,
  type Fetch,
  type Proof,
} from '@spraywright/engine/rig';
import { note, type Block, type Chapter } from '../chapters/chapter.ts';
import type { BuildPackOptions } from './build-pack-options.ts';

const unitOf = (count: number, unit: BillLine['unit']) => (unit === 'ft' ? `${count} ft` : String(count));

/** What is fetched for the machine, with the store as the parts say. */
export function fetched(proof: Proof, { partOf, givenOf = () => 0 }: BuildPackOptions): Fetch[] {
  return fetchList(pickList(proof.bill, partOf), (id) => partOf(id)?.stock ?? 0, givenOf);
}

/** What is fetched from the store, by kind. */
export function pickChapter(proof: Proof, options: BuildPackOptions): Chapter {
  const numbers = partNumbers(proof);
  const list = fetched(proof, options);
  const groups = [...new Set(list.map((p) => p.group))];
  const short = list.filter((p) => p.short > 0).length;
  const given = list.some((p) => p.taken > 0);
  return {
    id: 'pick-list',
    title: 'Fetch from the store',
    blocks: groups
      .flatMap((group): Block[] => [
        { kind: 'head', text: group },
        {
          kind: 'table',
          captions: [
            'no.',
            'part',
            'catalogue number',
            'need',
            ...(given ? ['has'] : []),
            'in store',
            'fetch',
            'short',
            'done',
          ],
          rows: list
            .filter((p) => p.group === group)
            .map((p) => [
              p.items.map((i) => numbers.get(i)).join(', '),
              p.name,
              p.part,
              unitOf(p.need, p.unit),
              ...(given ? [p.taken > 0 ? unitOf(p.taken, p.unit) : ''] : []),
              unitOf(p.onHand, p.unit),
              unitOf(p.take, p.unit),
              p.short > 0 ? unitOf(p.short, p.unit) : '',
              '',
            ]),
          widths: [30, '*', 138, 36, ...(given ? [36] : []), 38, 36, 34, 26],
          words: 3,
          strong: given ? 7 : 6,
        },
      ])
      .concat(
        note(
          `${short} of ${list.length} lines are short by what was written down as taken and brought; count before relying on it.`,
        ),
      ),
  };
}

/** A day that has gone is told as gone: what is not ordered yet then comes too late for the day on which building begins. */
function orderBy(day: string | undefined, today: string): string {
  if (day === undefined) return 'unknown';
  return day < today ? `${day} (past)` : day;
}

/** What must be bought, by supplier, and by when. */
export function orderChapter(proof: Proof, options: BuildPackOptions): Chapter {
  const { partOf, buildDate, costs = true } = options;
  const list = ordersToFetch(fetched(proof, options), partOf, buildDate);
  const suppliers = [...new Set(list.map((o) => o.supplier))];
  return {
    id: 'orders',
    title: 'Buy',
    blocks:
      list.length === 0
        ? [note('Nothing is short.')]
        : [
            ...suppliers.flatMap((supplier): Block[] => [
              { kind: 'head', text: supplier ?? 'Supplier not told in the catalogue' },
              {
                kind: 'table',
                captions: [
                  'part',
                  'catalogue number',
                  'order',
                  ...(costs ? ['cost'] : []),
                  'takes',
                  'order by',
                ],
                rows: list
                  .filter((o) => o.supplier === supplier)
                  .map((o) => [
                    o.name,
                    o.part,
                    unitOf(o.order, o.unit),
                    ...(costs ? [moneyText(o.costCents)] : []),
                    `${o.leadTimeDays} days`,
                    orderBy(o.orderBy, options.date),
                  ]),
                widths: ['*', 150, 44, ...(costs ? [56] : []), 46, 62],
                words: 2,
                strong: costs ? 5 : 4,
              },
            ]),
            note(
              'Order by: the last working day, Monday to Friday, on which it can be ordered to be there when building begins. Holidays are not known.',
            ),
          ],
  };
}

/** Hoses to cut, with what goes on their ends. */
export function hoseChapter(proof: Proof, { units }: BuildPackOptions): Chapter {
  const numbers = partNumbers(proof);
  return {
    id: 'hoses',
    title: 'Cut hose',
    blocks:
      proof.bill.cuts.length === 0
        ? [note('No hose is cut.')]
        : [
            {
              kind: 'table',
              captions: ['no.', 'hose', 'one end', 'other end', 'pieces', 'length', 'done'],
              rows: proof.bill.cuts.map((c) => [
                String(numbers.get(c.item) ?? ''),
                c.name,
                c.ends[0],
                c.ends[1],
                String(c.count),
                display(c.length, 'length', units),
                '',
              ]),
              widths: [20, 120, '*', '*', 34, 46, 26],
              words: 4,
              strong: 5,
            },
          ],
  };
}
