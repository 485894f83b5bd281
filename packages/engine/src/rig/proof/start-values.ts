import { startValuesOf } from '../starts.ts';
import type { RigPromise } from '../promise.ts';
import type { ProofContext } from './context.ts';

/** Names are no figures that a rig is proven by. */
const NAMES = ['title', 'name'];

/** Start values of ours that nobody has confirmed: what is proven by them is not yet what the customer asked. */
export function startValuePromises({ rig: { brief } }: Pick<ProofContext, 'rig'>): RigPromise[] {
  const told = new Map<string, string[]>();
  for (const path of startValuesOf(brief)) {
    const [list, place, ...inside] = path.split('.');
    const holder = list === 'duties' || list === 'liquids' ? brief[list][Number(place)] : undefined;
    const field = holder === undefined ? path : inside.join('.');
    if (NAMES.includes(field)) continue;
    const of = holder === undefined ? '' : `"${holder.name}": `;
    told.set(of, [...(told.get(of) ?? []), wordsOf(field)]);
  }
  const count = [...told.values()].flat().length;
  if (count === 0) return [];
  const each = [...told].map(([of, fields]) => `${of}${fields.join(', ')}`);
  return [
    {
      id: 'brief:starts',
      kind: 'brief',
      state: 'unknown',
      sentence: 'It is what was asked for',
      sense: 'at-least',
      cause: `${count} ${count === 1 ? 'value of the brief is a start value' : 'values of the brief are start values'} of ours that nobody has confirmed: ask the customer`,
      items: [],
      method: 'start values of a brief that nobody has confirmed',
      source: 'the brief',
      working: each.map((text) => ({ text })),
    },
  ];
}

/** "target.height" as people read it. */
function wordsOf(path: string): string {
  return path
    .replace(/^(wishes|limits)\./, '')
    .replaceAll('.', ' ')
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase();
}
