import type { Catalogue, Kind, Layout, PartOf } from '../../catalogue/index.ts';
import type { Proof } from '../proof/prove.ts';
import type { Chosen } from './assemble.ts';
import { partsOfSlot } from './slot-parts.ts';

/** Takes the next larger part for the first broken promise that one part decides; false when there is none. */
export function repair(
  proof: Proof,
  layout: Layout,
  chosen: Map<string, Chosen>,
  catalogue: Catalogue,
): boolean {
  const larger = <K extends Kind>(slot: string, kind: K, size: (p: PartOf<K>) => number): boolean => {
    const now = chosen.get(slot);
    if (now === undefined || now.part.kind !== kind) return false;
    const next = [...partsOfSlot(catalogue, layout, slot, kind)]
      .filter((p) => size(p) > size(now.part as PartOf<K>) * 1.02)
      .sort((a, b) => size(a) - size(b) || priceOf(a) - priceOf(b))[0];
    if (next === undefined) return false;
    chosen.set(slot, { ...now, part: next });
    return true;
  };
  for (const promise of proof.promises) {
    if (promise.state !== 'broken') continue;
    if (CARRIER_KINDS.has(promise.kind) && heavierCarrier(layout, chosen, catalogue)) return true;
    if (promise.kind === 'suction') {
      const strainer = larger('strainer', 'strainer', (p) => p.flowAtOneBar);
      const hose = larger('suction-hose', 'hose', (p) => p.bore);
      const valve = larger('tank-valve', 'valve', (p) => p.bore);
      if (strainer || hose || valve) return true;
    }
    if (promise.kind === 'agitation') {
      const jet = larger('agitator', 'agitator', (p) => p.flowAtOneBar);
      const valve = larger('agitation-valve', 'valve', (p) => p.bore);
      if (jet || valve) return true;
    }
    if (promise.kind === 'flow' || promise.kind === 'tip-pressure')
      for (const slot of ['boom-hose', 'transfer-hose'] as const)
        if (larger(slot, 'hose', (p) => p.bore)) return true;
  }
  return false;
}

/** Promises that a larger carrier of the same form may keep. */
const CARRIER_KINDS: ReadonlySet<string> = new Set(['weight', 'stability', 'structure']);

/** The next stronger carrier of the same form whose deck takes the tank. */
function heavierCarrier(layout: Layout, chosen: Map<string, Chosen>, catalogue: Catalogue): boolean {
  const now = chosen.get('carrier');
  const tank = chosen.get('tank')?.part;
  if (now?.part.kind !== 'carrier' || tank === undefined) return false;
  const { form, grossRating } = now.part;
  const next = partsOfSlot(catalogue, layout, 'carrier', 'carrier')
    .filter((c) => c.form === form && c.grossRating > grossRating && tank.size.length <= c.deckLength)
    .sort((a, b) => a.grossRating - b.grossRating || priceOf(a) - priceOf(b))[0];
  if (next === undefined) return false;
  chosen.set('carrier', { ...now, part: next });
  return true;
}

function priceOf(part: { readonly priceCents: number }): number {
  return part.priceCents;
}
