import { unknown, type RigPromise } from '../promise.ts';
import type { ProofContext } from './context.ts';

/** One unknown promise for each liquid that lacks a property the proof needs. */
export function liquidPromises(context: ProofContext): RigPromise[] {
  const seen = new Set<string>();
  return context.duties.flatMap(({ liquid }) => {
    if (liquid.missing.length === 0 || seen.has(liquid.id)) return [];
    seen.add(liquid.id);
    return [
      unknown({
        id: `liquid:${liquid.id}`,
        kind: 'liquid',
        sentence: `${liquid.name} flows as it was reckoned`,
        cause: `ask the supplier. ${liquid.missing.join('; ')}`,
        method: 'properties by strength and temperature',
        source: 'liquid tables; the upper bound of judgement or water stands in',
      }),
    ];
  });
}
