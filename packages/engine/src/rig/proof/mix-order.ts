import { tankMixOrder } from '../../liquids/index.ts';
import type { Brief } from '../brief.ts';
import type { RigPromise } from '../promise.ts';
import type { ProofContext } from './context.ts';

/** In which order the products of each mix go in, with what the sources dispute. */
export function mixOrderPromises(context: ProofContext): RigPromise[] {
  return context.rig.brief.liquids.flatMap((l): RigPromise[] => {
    const order = mixOrderOf(l);
    if (order === undefined) return [];
    const told = order.steps.filter((s) => s.partners.length > 0).map((s) => s.partners.join(', '));
    return [
      {
        id: `liquid:order:${l.id}`,
        kind: 'liquid',
        state: 'kept',
        sentence: `The products of ${l.name} go in in an order that mixes`,
        sense: 'at-least',
        cause: `${told.join(', then ')}. ${order.dispute ?? "The label's order wins over this one."}`,
        items: [],
        method: 'order of a tank mix by the form of its products',
        source: 'OMAFRA, Missouri DOT, North Dakota State and Oklahoma State mixing guides',
        working: [...order.texts, ...order.notes].map((text) => ({ text })),
      },
    ];
  });
}

/** Order of a mix of two or more products; undefined where there is nothing to order. */
export function mixOrderOf({ products }: Brief['liquids'][number]) {
  if (products.length < 2) return undefined;
  const order = tankMixOrder(products.map((p) => ({ name: p.name, formulation: p.form })));
  return {
    ...order,
    texts: order.steps.map((s) => (s.partners.length === 0 ? s.text : `${s.text}: ${s.partners.join(', ')}`)),
    dispute: order.notes.find((n) => n.startsWith('Disputed')),
  };
}
