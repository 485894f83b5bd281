import type { Catalogue, Part, Shop } from '@spraywright/engine/catalogue';
import { displayParts, parseQuantity, type UnitSystem } from '@spraywright/engine/quantity';
import {
  judge,
  proveRig,
  readRig,
  type PromiseKind,
  type PromiseState,
  type Proof,
} from '@spraywright/engine/rig';
import type { Effect, Effects, RigJson, WayOut } from '../protocol.ts';
import { partsForSlot, withSlot } from './alternatives.ts';
import { moneyChange } from './money.ts';

/** A rig with one part changed, proven: what the lists of alternatives and the ways out are told from. */
interface Tried {
  readonly slot: string;
  readonly part: Part;
  readonly also: string | undefined;
  readonly states: ReadonlyMap<string, PromiseState>;
  readonly sentences: ReadonlyMap<string, string>;
  readonly has: ReadonlyMap<string, Proof['promises'][number]>;
  readonly broken: number;
  readonly priceCents: number;
  readonly mass: number;
  /** By duty: reach where there is a target, otherwise the flow of the first outlet. */
  readonly reach: ReadonlyMap<string, number | undefined>;
  readonly flow: ReadonlyMap<string, number>;
}

/** Tries the parts of the catalogue in the slots of one rig, a few at a time, and remembers what came out. */
export class TriedParts {
  readonly #catalogue: Catalogue;
  readonly #shop: Shop;
  readonly #rig: RigJson;
  readonly #now: Tried;
  readonly #proof: Proof;
  readonly #slots = new Map<string, { tried: Tried[]; left: Part[]; total: number }>();

  constructor(catalogue: Catalogue, shop: Shop, rig: RigJson, proof: Proof) {
    this.#catalogue = catalogue;
    this.#shop = shop;
    this.#rig = rig;
    this.#proof = proof;
    this.#now = summary('', undefined, undefined, proof);
  }

  /** Proves the next parts of a slot until the moment is over; true when the slot is finished. */
  work(slot: string, goOn: () => boolean): boolean {
    const state = this.#slot(slot);
    while (state.left.length > 0 && goOn()) {
      const part = state.left.shift()!;
      const { rig, also } = withSlot(this.#rig, this.#catalogue, slot, part);
      const read = readRig(rig, this.#catalogue);
      if (!read.ok) continue;
      const proof = proveRig(read.rig, this.#catalogue, this.#shop, { notes: false });
      state.tried.push(summary(slot, part, also, proof));
    }
    return state.left.length === 0;
  }

  isDone(slot: string): boolean {
    return this.#slots.get(slot)?.left.length === 0;
  }

  /** Slots whose parts decide the broken promises, those that decide most first. */
  decidingSlots(): string[] {
    const weight = new Map<string, number>();
    for (const p of this.#proof.promises)
      if (p.state === 'broken')
        for (const item of p.items) weight.set(item, (weight.get(item) ?? 0) + 1 / p.items.length);
    return [...weight].sort((a, b) => b[1] - a[1]).map(([item]) => item);
  }

  /** The alternatives of a slot against the rig as it is: those that break nothing more first, cheapest first. */
  effects(slot: string, duty: string, units: UnitSystem): Effects {
    const state = this.#slot(slot);
    const reach = this.#now.reach.get(duty);
    const unit = units === 'us' ? (reach === undefined ? 'gpm' : 'ft') : reach === undefined ? 'L/min' : 'm';
    const done = state.left.length === 0;
    // While the list grows it keeps the order of price; once it is whole it settles.
    const list = !done
      ? state.tried
      : [...state.tried].sort(
          (a, b) => a.broken - b.broken || a.priceCents - b.priceCents || (a.part.id < b.part.id ? -1 : 1),
        );
    return {
      slot,
      what: `${reach === undefined ? 'flow' : 'reach'}, ${unit}`,
      total: state.total,
      done,
      list: list.map((t): Effect => this.#effect(t, duty, unit, reach !== undefined, units)),
    };
  }

  /** For each broken promise the single parts that would keep it, those that break nothing else and cost least first. */
  waysOut(units: UnitSystem): Record<string, WayOut[]> {
    const out: Record<string, WayOut[]> = {};
    const all = [...this.#slots.values()].flatMap((s) => s.tried);
    for (const p of this.#proof.promises) {
      if (p.state !== 'broken') continue;
      const mending = all
        .filter((t) => mended(t, p.id, p.kind) && answersBrief(t.part, this.#rig.brief))
        .sort((a, b) => this.#fresh(a).length - this.#fresh(b).length || a.priceCents - b.priceCents);
      const perSlot = new Map<string, number>();
      const parts = mending
        .filter((t) => {
          const n = (perSlot.get(t.slot) ?? 0) + 1;
          perSlot.set(t.slot, n);
          return n <= 2;
        })
        .slice(0, 4)
        .map((t): WayOut => {
          const then = t.has.get(p.id);
          return {
            take: { item: t.slot, part: t.part.id },
            name: t.part.name + (t.also === undefined ? '' : `, ${t.also}`),
            then: figureOf(then, units),
            state: t.states.get(p.id) ?? 'kept',
            price: moneyChange(t.priceCents - this.#now.priceCents),
            mass: `${massChange(t.mass - this.#now.mass, units)} ${units === 'us' ? 'lb' : 'kg'}`,
            breaks: this.#fresh(t)
              .map((id) => t.sentences.get(id) ?? id)
              .join('; '),
          };
        });
      const less = askLess(p, this.#proof, units);
      out[p.id] = less === undefined ? parts : [...parts.slice(0, 3), less];
    }
    return out;
  }

  #effect(t: Tried, duty: string, unit: string, reaching: boolean, units: UnitSystem): Effect {
    const scale = { ft: 0.3048, m: 1, gpm: 6.30901964e-5, 'L/min': 1 / 60000 }[unit] ?? 1;
    const value = (of: Tried) => (reaching ? of.reach.get(duty) : of.flow.get(duty));
    const before = value(this.#now);
    const after = value(t);
    const change = before === undefined || after === undefined ? undefined : (after - before) / scale;
    return {
      part: t.part.id,
      name: t.part.name,
      change: change === undefined ? 'unknown' : signed(change.toFixed(1)),
      mass: massChange(t.mass - this.#now.mass, units),
      price: moneyChange(t.priceCents - this.#now.priceCents),
      broken: t.broken,
      state: worst(t.states),
      breaks: this.#fresh(t).map((id) => t.sentences.get(id) ?? id),
      mends: [...this.#now.states]
        .filter(([id, state]) => state === 'broken' && mended(t, id, this.#now.has.get(id)?.kind))
        .map(([id]) => this.#now.sentences.get(id) ?? id),
      ...(t.also === undefined ? {} : { also: t.also }),
    };
  }

  /** Promises broken with the part that are not broken now. */
  #fresh(t: Tried): string[] {
    return [...t.states]
      .filter(([id, state]) => state === 'broken' && this.#now.states.get(id) !== 'broken')
      .map(([id]) => id);
  }

  #slot(slot: string): { tried: Tried[]; left: Part[]; total: number } {
    let state = this.#slots.get(slot);
    if (state === undefined) {
      const there = this.#rig.items.find((i) => i.id === slot)?.part;
      const left = partsForSlot(this.#catalogue, this.#rig, slot).filter((p) => p.id !== there);
      this.#slots.set(slot, (state = { tried: [], left, total: left.length }));
    }
    return state;
  }
}

/** A promise that is kept with the part. One that is gone is not, unless it was a finding on a material that is gone. */
function mended(t: Tried, id: string, kind: PromiseKind | undefined): boolean {
  const state = t.states.get(id);
  return state === undefined ? kind === 'materials' : state !== 'broken';
}

/** A way out must not ask less than the brief: the tank that was wished for stays as large. */
function answersBrief(part: Part, brief: unknown): boolean {
  const wished = (brief as { wishes?: { tank?: string } }).wishes?.tank;
  if (part.kind !== 'tank' || wished === undefined) return true;
  const volume = parseQuantity(wished, 'volume');
  return !volume.ok || part.volume >= volume.value * 0.98;
}

/** The way out that is always there: to promise no more than the rig reaches. */
function askLess(p: Proof['promises'][number], proof: Proof, units: UnitSystem): WayOut | undefined {
  const at = proof.duties.findIndex((d) => d.id === p.duty);
  const target = proof.duties[at]?.duty.target;
  if (p.kind !== 'reach' || p.has === undefined || target === undefined) return undefined;
  const unit = units === 'us' ? 0.3048 : 1;
  const figure = Math.floor(p.has.value / unit);
  if (figure < 1) return undefined;
  const value = `${figure} ${units === 'us' ? 'ft' : 'm'}`;
  const { state } = judge(figure * unit, p.has.value, 'at-least');
  return {
    name: `Ask them: promise ${value}`,
    take: { path: `brief.duties.${at}.target.${target.aim === 'height' ? 'height' : 'distance'}`, value },
    then: figureOf(p, units),
    state,
    price: '$0',
    mass: '0',
    breaks: '',
  };
}

function summary(slot: string, part: Part | undefined, also: string | undefined, proof: Proof): Tried {
  return {
    slot,
    part: part!,
    also,
    states: new Map(proof.promises.map((p) => [p.id, p.state])),
    sentences: new Map(proof.promises.map((p) => [p.id, p.sentence])),
    has: new Map(proof.promises.map((p) => [p.id, p])),
    broken: proof.counts.broken,
    priceCents: proof.bill.priceCents,
    mass: proof.bill.dryMass,
    reach: new Map(proof.duties.map((d) => [d.id, d.reach?.promised])),
    flow: new Map(proof.duties.map((d) => [d.id, d.open.outlets[0]?.flow ?? 0])),
  };
}

function worst(states: ReadonlyMap<string, PromiseState>): PromiseState {
  const all = new Set(states.values());
  return (['broken', 'thin', 'unknown'] as const).find((s) => all.has(s)) ?? 'kept';
}

function figureOf(promise: Proof['promises'][number] | undefined, units: UnitSystem): string {
  const has = promise?.has;
  if (has === undefined) return 'kept';
  if (has.dimension === 'count' || has.dimension === 'days') return String(Math.round(has.value));
  if (has.dimension === 'money') return moneyChange(has.value * 100).replace('+', '');
  const { figure, unit } = displayParts(has.value, has.dimension, units);
  return `${figure} ${unit}`;
}

function massChange(mass: number, units: UnitSystem): string {
  const rounded = Math.round(mass / (units === 'us' ? 0.45359237 : 1));
  return signed(String(rounded === 0 ? 0 : rounded));
}

function signed(figure: string): string {
  if (/^-?0(\.0)?$/.test(figure)) return figure.replace('-', '');
  return figure.startsWith('-') ? `−${figure.slice(1)}` : `+${figure}`;
}
