import { catalogueOf, type Catalogue, type Part } from '@spraywright/engine/catalogue';
import { designRig, setsOfParts, type Figures } from '@spraywright/engine/rig';
import { demoBriefs, demoCatalogue, demoShop } from './demo.ts';

const catalogue = demoCatalogue();
const shop = demoShop();
const briefs = new Map(demoBriefs().map((b) => [b.name, b.raw]));

/** A sequence of even numbers in [0, 1), the same each time: multiplication modulo 2^31 - 1. */
export function sequence(seed: number): () => number {
  let x = seed;
  return () => (x = (x * 48271) % 2147483647) / 2147483647;
}

function itemsOf(name: string): readonly { readonly id: string; readonly part: string }[] {
  const design = designRig(briefs.get(name), catalogue, shop);
  if (!design.ok) throw new Error(`no rig for ${name}`);
  return design.rig.items;
}

/** A catalogue of some parts of the demo's, with all its fittings and small things. */
function only(kept: ReadonlySet<string>): Catalogue {
  const parts = [...catalogue.parts.values()].filter(
    (p) => kept.has(p.id) || p.kind === 'fitting' || p.kind === 'hardware',
  );
  return catalogueOf(catalogue.name, catalogue.version, parts);
}

/** Parts of the kind of one, nearest in price first, with some chance in it. */
function othersOf(part: Part, next: () => number): Part[] {
  return catalogue.byKind[part.kind]
    .map((other: Part) => ({ other, near: Math.abs(other.priceCents - part.priceCents) * (0.5 + next()) }))
    .sort((a, b) => a.near - b.near)
    .map(({ other }) => other);
}

/**
 * The parts of the quick selection and some others in the slots that are named: a catalogue small enough to go through
 * whole.
 */
export function cutDown(name: string, slots: Readonly<Record<string, number>>, seed: number): Catalogue {
  const next = sequence(seed);
  const items = itemsOf(name);
  const kept = new Set(items.map((i) => i.part));
  for (const [slot, more] of Object.entries(slots)) {
    const item = items.find((i) => i.id === slot);
    if (item === undefined) throw new Error(`${name} has nothing in the slot ${slot}`);
    const others = othersOf(catalogue.parts.get(item.part)!, next).filter((p) => !kept.has(p.id));
    for (const other of others.slice(0, more)) kept.add(other.id);
  }
  return only(kept);
}

/** The same with chance choosing the slots, until the parts make at least so many sets. */
export function cutToSize(name: string, least: number, seed: number): { catalogue: Catalogue; size: number } {
  const next = sequence(seed);
  const items = itemsOf(name);
  let kept = new Set(items.map((i) => i.part));
  const sizeOf = (parts: ReadonlySet<string>) => setsOfParts(briefs.get(name), only(parts), shop).size;
  let size = sizeOf(kept);
  while (size < least) {
    const item = items[Math.floor(next() * items.length)]!;
    const other = othersOf(catalogue.parts.get(item.part)!, next).find((p) => !kept.has(p.id));
    if (other === undefined) continue;
    const more = new Set([...kept, other.id]);
    const then = sizeOf(more);
    // No step multiplies the sets by more than four: the size stays near what is asked.
    if (then > size * 4) continue;
    [kept, size] = [more, then];
  }
  return { catalogue: only(kept), size };
}

/** Whether one set of figures is as good as another in everything and better in something. */
function beaten(a: Figures, b: Figures): boolean {
  return (
    b.priceCents <= a.priceCents &&
    b.mass <= a.mass &&
    b.margin >= a.margin &&
    b.days <= a.days &&
    JSON.stringify(a) !== JSON.stringify(b)
  );
}

/** Figures that no others beat, each once, as text in order. */
export function unbeatenOf(all: readonly Figures[]): string[] {
  const once = new Map(all.map((f) => [JSON.stringify(f), f]));
  const different = [...once.values()];
  return different
    .filter((a) => !different.some((b) => beaten(a, b)))
    .map((f) => JSON.stringify(f))
    .sort();
}
