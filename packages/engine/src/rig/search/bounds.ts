import type { Part, Shop } from '../../catalogue/index.ts';
import { priceBy, pricingOf, wholeFeet } from '../bill/index.ts';
import { lineHose } from '../design/line-options.ts';
import { RETURN_HOSE, SUCTION_HOSE } from '../design/rest-of-rig.ts';
import { marginStep, massStep, type Figures } from './figures.ts';
import type { Limit } from './limit.ts';
import type { PartAt, SearchSpace } from './space.ts';

/**
 * Bounds of every rig that begins with some parts: price, mass and days from below, margin from above.
 *
 * The bill is a sum of lines of which none is negative: each part that is decided stands in it with its price, each
 * slot that must be filled with at least the cheapest of its parts, the labour that every rig of the layout takes once;
 * fittings, clamps and joints are reckoned as nothing. So is the mass. Days are those of assembly and of the slowest
 * part that is short, and a part once short stays short. The price promise, the promise of the day and every limit
 * bound the least margin, since it is the least of all.
 */
export class Bounds {
  readonly #space: SearchSpace;
  readonly #shop: Shop;
  /** Least sums over the slots from a depth on. */
  readonly #priceFrom: readonly number[];
  readonly #massFrom: readonly number[];
  readonly #daysFrom: readonly number[];
  /** Limits that can be judged once the slot of a depth is decided. */
  readonly #limitsAt: readonly (readonly Limit[])[];
  readonly #fixedCents: number;
  readonly #nozzles: number;

  constructor(space: SearchSpace, limits: readonly Limit[], shop: Shop) {
    this.#space = space;
    this.#shop = shop;
    const booms = space.slots.find((s) => s.id === 'boom')?.options ?? [];
    this.#nozzles = Math.min(...booms.map((b) => (b?.kind === 'boom' ? b.nozzles : 1)), Infinity);
    this.#fixedCents = fixedLabour(space, shop);
    const depth = new Map(space.slots.map((s, i) => [s.id, i]));
    this.#limitsAt = space.slots.map((_, i) =>
      limits.filter((l) => Math.max(...l.slots.map((s) => depth.get(s)!)) === i),
    );
    const suffix = (
      value: (slot: string, part: Part | undefined) => number,
      join: (a: number, b: number) => number,
    ) => {
      const out = Array.from({ length: space.slots.length + 1 }, () => 0);
      for (let i = space.slots.length - 1; i >= 0; i--) {
        const { id, options } = space.slots[i]!;
        out[i] = join(out[i + 1]!, Math.min(...options.map((p) => value(id, p))));
      }
      return out;
    };
    const sum = (a: number, b: number) => a + b;
    const nothing: PartAt = () => undefined;
    this.#priceFrom = suffix((s, p) => this.#cents(s, p, nothing), sum);
    this.#massFrom = suffix((s, p) => (p?.mass ?? 0) * this.#quantity(s, p, nothing), sum);
    this.#daysFrom = suffix((s, p) => this.#days(s, p, nothing), Math.max);
  }

  /** Least margin that the parts of the slots up to a depth allow by the limits judged there; negative when refused. */
  limit(depth: number, partAt: PartAt): number {
    let margin = Infinity;
    for (const limit of this.#limitsAt[depth]!) {
      margin = Math.min(margin, limit.margin(partAt));
      if (margin < 0) return margin;
    }
    return margin;
  }

  /** Why the parts up to a depth are refused. */
  why(depth: number, partAt: PartAt): string | undefined {
    return this.#limitsAt[depth]!.find((l) => l.margin(partAt) < 0)?.why;
  }

  /** Best figures of the rigs that begin with the parts of the first slots. */
  best(decided: number, partAt: PartAt, margin: number): Figures {
    let cents = this.#fixedCents + this.#priceFrom[decided]!;
    let mass = this.#massFrom[decided]!;
    let late = this.#daysFrom[decided]!;
    for (let i = 0; i < decided; i++) {
      const { id } = this.#space.slots[i]!;
      const part = partAt(id);
      if (part === undefined) continue;
      cents += this.#cents(id, part, partAt);
      mass += part.mass * this.#quantity(id, part, partAt);
      late = Math.max(late, this.#days(id, part, partAt));
    }
    const days = this.#shop.assemblyDays + late;
    const { budgetCents, readyInDays } = this.#space.brief.limits;
    const most = Math.min(margin, shareLeft(budgetCents, cents), shareLeft(readyInDays, days));
    // Sums in another order may differ in the last digits.
    return { priceCents: cents, mass: massStep(mass - 1e-4), margin: marginStep(most), days };
  }

  #quantity(slot: string, part: Part | undefined, partAt: PartAt): number {
    if (part === undefined) return 0;
    if (part.kind === 'hose') return wholeFeet(this.#hose(slot));
    if (part.kind !== 'nozzle') return 1;
    const boom = partAt('boom');
    return boom?.kind === 'boom' ? boom.nozzles : Number.isFinite(this.#nozzles) ? this.#nozzles : 1;
  }

  #hose(slot: string): number {
    const { layout, brief } = this.#space;
    if (slot === 'return-hose') return RETURN_HOSE;
    const line = layout.lines.find((l) => l.to === 'air' && l.run.includes(slot));
    const duties = brief.duties.filter((d) => (d.open as readonly string[]).includes(line?.opens ?? ''));
    return line === undefined || duties.length === 0 ? SUCTION_HOSE : lineHose(brief, line, duties);
  }

  #cents(slot: string, part: Part | undefined, partAt: PartAt): number {
    if (part === undefined) return 0;
    const quantity = this.#quantity(slot, part, partAt);
    return priceBy(
      pricingOf(this.#shop, undefined).rule,
      part.costCents * quantity,
      part.priceCents * quantity,
    );
  }

  #days(slot: string, part: Part | undefined, partAt: PartAt): number {
    if (part === undefined) return 0;
    return this.#quantity(slot, part, partAt) > part.stock ? part.leadTimeDays : 0;
  }
}

function shareLeft(limit: number | undefined, has: number): number {
  return limit === undefined ? Infinity : (limit - has) / Math.max(limit, Number.MIN_VALUE);
}

/** Labour and small stuff that every rig of a layout takes: once a rig, once a filled line, once a part that must be there. */
function fixedLabour({ slots, layout }: SearchSpace, shop: Shop): number {
  const { rule } = pricingOf(shop, undefined);
  const must = slots.filter((s) => s.options.every((p) => p !== undefined));
  const required = new Set(must.map((s) => s.id));
  const lines = layout.lines.filter((l) => l.run.some((id) => required.has(id))).length;
  const times = (per: string, kinds: readonly string[] | undefined): number => {
    if (per === 'rig') return 1;
    if (per === 'line') return lines;
    if (per !== 'part') return 0;
    return must.filter((s) => s.options.every((p) => kinds === undefined || kinds.includes(p!.kind))).length;
  };
  let cents = 0;
  for (const op of shop.operations) {
    const hours = Math.round(op.hours * times(op.per, op.kinds) * 100) / 100;
    const cost = Math.round(hours * (op.costCentsPerHour ?? shop.labourCostCentsPerHour));
    const list = Math.round(hours * (op.rateCentsPerHour ?? shop.labourRateCentsPerHour));
    cents += priceBy(rule, cost, list);
  }
  for (const c of shop.consumables) {
    const n = times(c.per, c.kinds);
    cents += priceBy(rule, c.costCents * n, c.priceCents * n);
  }
  return cents;
}
