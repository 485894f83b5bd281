import type { Proof } from '../rig/index.ts';

/** One number per part, the same in scene, line, list and papers: in flow order, then the rest as the rig lists them. */
export function partNumbers(proof: Proof): ReadonlyMap<string, number> {
  const order = [
    'tank',
    ...(proof.duties[0]?.open.steps ?? []).flatMap((s) => (s.item === undefined ? [] : [s.item])),
    ...proof.parts.map((p) => p.item),
  ].filter((item) => proof.parts.some((p) => p.item === item));
  return new Map([...new Set(order)].map((item, i) => [item, i + 1]));
}
