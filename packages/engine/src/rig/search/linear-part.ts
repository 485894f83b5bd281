import type { Catalogue, Shop } from '../../catalogue/index.ts';
import { readBrief } from '../brief.ts';
import { layoutsFor } from '../layouts-for.ts';
import { Parting } from './core.ts';
import { limitsOf } from './limits.ts';
import { narrowed } from './narrow.ts';
import { spaceOf, type PartAt } from './space.ts';

/** What is linear in the choice of parts: price and mass of each, and which two go together. */
export interface LinearPart {
  readonly slots: readonly {
    readonly id: string;
    /** Price [cents] and mass [kg] of each part of the slot; nothing of both where it stays empty. */
    readonly options: readonly { readonly cents: number; readonly mass: number }[];
  }[];
  /** Two slots by their places, and which of their options go together. */
  readonly pairs: readonly {
    readonly a: number;
    readonly b: number;
    readonly together: (i: number, k: number) => boolean;
  }[];
}

/** The cheapest of the sets of parts that are no heavier than something. */
export interface Cheapest {
  readonly cents: number;
  readonly mass: number;
  /** Place of the option in each slot. */
  readonly options: readonly number[];
}

/** The linear part of the choice for a brief, one for each layout that serves it; joints and promises are left out. */
export function linearParts(rawBrief: unknown, catalogue: Catalogue, shop: Shop): LinearPart[] {
  const read = readBrief(rawBrief);
  if (!read.ok) return [];
  return layoutsFor(read.brief, catalogue).map((layout) => {
    const whole = spaceOf(read.brief, rawBrief, catalogue, layout);
    const limits = limitsOf(whole);
    const { space } = narrowed(whole, limits);
    const parting = new Parting(space, limits, shop);
    const nothing: PartAt = () => undefined;
    const place = new Map(space.slots.map((s, i) => [s.id, i]));
    return {
      slots: space.slots.map(({ id, options }) => ({
        id,
        options: options.map((part) => {
          const { cents, mass } = parting.own(id, part, nothing);
          return { cents: Math.round(cents), mass };
        }),
      })),
      pairs: limits.flatMap((limit) => {
        const [a, b] = [place.get(limit.slots[0]!)!, place.get(limit.slots[1] ?? '')];
        if (limit.slots.length !== 2 || b === undefined) return [];
        const [one, other] = [space.slots[a]!, space.slots[b]!];
        const fits = one.options.map((p) =>
          other.options.map((q) => limit.margin((slot) => (slot === one.id ? p : q)) >= 0),
        );
        return [{ a, b, together: (i: number, k: number) => fits[i]![k]! }];
      }),
    };
  });
}

interface Label {
  readonly cents: number;
  readonly mass: number;
  readonly options: readonly (readonly [slot: number, option: number])[];
}

/**
 * The cheapest set of parts that go together and are no heavier than something; undefined when there is none. Slots
 * that hang together by pairs are gone through together; what no other beats in price and mass is joined, group by group.
 */
export function cheapestOf({ slots, pairs }: LinearPart, mostMass: number): Cheapest | undefined {
  let labels: Label[] = [{ cents: 0, mass: 0, options: [] }];
  for (const group of groupsOf(slots.length, pairs)) {
    const own = frontOf(group, slots, pairs);
    labels = sifted(
      labels.flatMap((l) =>
        own.map((o) => ({
          cents: l.cents + o.cents,
          mass: l.mass + o.mass,
          options: [...l.options, ...o.options],
        })),
      ),
    );
  }
  const found = labels.find((l) => l.mass <= mostMass);
  if (found === undefined) return undefined;
  const chosen = new Map(found.options);
  return { cents: found.cents, mass: found.mass, options: slots.map((_, i) => chosen.get(i)!) };
}

/** Slots that hang together by pairs, directly or by others. */
function groupsOf(count: number, pairs: LinearPart['pairs']): number[][] {
  const group = Array.from({ length: count }, (_, i) => i);
  const rootOf = (i: number): number => (group[i] === i ? i : rootOf(group[i]!));
  for (const { a, b } of pairs) group[rootOf(b)] = rootOf(a);
  const by = new Map<number, number[]>();
  for (let i = 0; i < count; i++) by.set(rootOf(i), [...(by.get(rootOf(i)) ?? []), i]);
  return [...by.values()];
}

function frontOf(group: readonly number[], slots: LinearPart['slots'], pairs: LinearPart['pairs']): Label[] {
  const out: Label[] = [];
  const chosen = new Map<number, number>();
  const visit = (depth: number, cents: number, mass: number): void => {
    const slot = group[depth];
    if (slot === undefined) {
      out.push({ cents, mass, options: [...chosen] });
      // What is beaten goes now and then, so that a large group needs no large room.
      if (out.length % 20_000 === 0) out.splice(0, out.length, ...sifted(out));
      return;
    }
    slots[slot]!.options.forEach((option, i) => {
      chosen.set(slot, i);
      const fits = pairs.every(({ a, b, together }) => {
        if (a !== slot && b !== slot) return true;
        const [one, other] = [chosen.get(a), chosen.get(b)];
        return one === undefined || other === undefined || together(one, other);
      });
      if (fits) visit(depth + 1, cents + option.cents, mass + option.mass);
      chosen.delete(slot);
    });
  };
  visit(0, 0, 0);
  return sifted(out);
}

/** Cheapest first, each lighter than all before. */
function sifted(labels: readonly Label[]): Label[] {
  let lightest = Infinity;
  return [...labels]
    .sort((a, b) => a.cents - b.cents || a.mass - b.mass)
    .filter((l) => l.mass < lightest && ((lightest = l.mass), true));
}
