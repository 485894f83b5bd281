import { displayParts, type UnitSystem } from '@spraywright/engine/quantity';
import {
  alternatives,
  byUse,
  judge,
  partsInstead,
  type Alternative,
  type PromiseChange,
  type Proof,
  type Standing,
  type Trials,
} from '@spraywright/engine/rig';
import type { Effect, Effects, WayOut } from '../protocol.ts';
import { moneyChange } from './money.ts';

/** What the worker fetches together with this, when parts are first tried. */
export { putPart, trialsOf } from '@spraywright/engine/rig';

interface SlotTried {
  readonly tried: Alternative[];
  readonly left: Iterator<Alternative>;
  readonly total: number;
  done: boolean;
}

/** Tries the parts of the catalogue in the slots of one rig, a few at a time, and remembers what came out. */
export class TriedParts {
  readonly #trials: Trials;
  readonly #slots = new Map<string, SlotTried>();

  constructor(trials: Trials) {
    this.#trials = trials;
  }

  /** Proves the next parts of a slot until the moment is over. */
  work(slot: string, goOn: () => boolean): void {
    const state = this.#slot(slot);
    while (!state.done && goOn()) {
      const next = state.left.next();
      if (next.done === true) state.done = true;
      else state.tried.push(next.value);
    }
  }

  isDone(slot: string): boolean {
    return this.#slots.get(slot)?.done === true;
  }

  /** Slots whose parts decide the broken promises, those that decide most first. */
  decidingSlots(): string[] {
    const weight = new Map<string, number>();
    for (const p of this.#trials.proof.promises)
      if (p.state === 'broken')
        for (const item of p.items) weight.set(item, (weight.get(item) ?? 0) + 1 / p.items.length);
    return [...weight].sort((a, b) => b[1] - a[1]).map(([item]) => item);
  }

  /** The alternatives of a slot against the rig as it is: those that break nothing more first, cheapest first. */
  effects(slot: string, duty: string, units: UnitSystem): Effects {
    const { tried, total, done } = this.#slot(slot);
    const reaching = this.#trials.proof.duties.find((d) => d.id === duty)?.reach !== undefined;
    const unit = units === 'us' ? (reaching ? 'ft' : 'gpm') : reaching ? 'm' : 'L/min';
    // While the list grows it keeps the order of price; once it is whole it settles.
    const list = done ? byUse(tried) : tried;
    return {
      slot,
      what: `${reaching ? 'reach' : 'flow'}, ${unit}`,
      total,
      done,
      list: list.map((a): Effect => effectRow(a, duty, unit, reaching, units)),
    };
  }

  /** For each broken promise the single parts that would keep it, those that break nothing else and cost least first. */
  waysOut(units: UnitSystem): Record<string, WayOut[]> {
    const out: Record<string, WayOut[]> = {};
    const all = [...this.#slots.values()].flatMap((s) => s.tried);
    for (const p of this.#trials.proof.promises) {
      if (p.state !== 'broken') continue;
      const mending = all
        .filter((a) => a.effect.mends.some((m) => m.id === p.id) && this.#answersBrief(a))
        .sort(
          (a, b) =>
            a.effect.breaks.length - b.effect.breaks.length || a.effect.priceCents - b.effect.priceCents,
        );
      const perSlot = new Map<string, number>();
      const parts = mending
        .filter((a) => {
          const n = (perSlot.get(a.slot) ?? 0) + 1;
          perSlot.set(a.slot, n);
          return n <= 2;
        })
        .slice(0, 4)
        .map((a): WayOut => {
          const then = a.effect.mends.find((m) => m.id === p.id)?.after;
          return {
            take: { item: a.slot, part: a.part.id },
            name: [a.part.name, ...a.also].join(', '),
            then: figureOf(then, units),
            state: then?.state ?? 'kept',
            price: moneyChange(a.effect.priceCents),
            mass: `${massChange(a.effect.mass, units)} ${units === 'us' ? 'lb' : 'kg'}`,
            breaks: sentences(a.effect.breaks).join('; '),
          };
        });
      const less = askLess(p, this.#trials.proof, units);
      out[p.id] = less === undefined ? parts : [...parts.slice(0, 3), less];
    }
    return out;
  }

  /** A way out must not ask less than the brief: the tank that was wished for stays as large. */
  #answersBrief({ part }: Alternative): boolean {
    const wished = this.#trials.rig.brief.wishes.tank;
    return part.kind !== 'tank' || wished === undefined || part.volume >= wished * 0.98;
  }

  #slot(slot: string): SlotTried {
    let state = this.#slots.get(slot);
    if (state === undefined) {
      const { rig, catalogue } = this.#trials;
      const total = partsInstead(rig, catalogue, slot).length;
      this.#slots.set(
        slot,
        (state = { tried: [], left: alternatives(this.#trials, slot), total, done: false }),
      );
    }
    return state;
  }
}

function effectRow(
  { part, also, effect: e }: Alternative,
  duty: string,
  unit: string,
  reaching: boolean,
  units: UnitSystem,
): Effect {
  const scale = { ft: 0.3048, m: 1, gpm: 6.30901964e-5, 'L/min': 1 / 60000 }[unit] ?? 1;
  const [before, after] = e.duties.find((d) => d.duty === duty)?.[reaching ? 'reach' : 'flow'] ?? [];
  return {
    part: part.id,
    name: part.name,
    change:
      before === undefined || after === undefined ? 'unknown' : signed(((after - before) / scale).toFixed(1)),
    mass: massChange(e.mass, units),
    price: moneyChange(e.priceCents),
    broken: e.counts.broken,
    state: e.worst,
    breaks: sentences(e.breaks),
    mends: e.mends.map((m) => m.before!.sentence),
    ...(also.length === 0 ? {} : { also: also.join(', ') }),
  };
}

function sentences(promises: readonly PromiseChange[]): string[] {
  return promises.map((p) => p.after!.sentence);
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

function figureOf(promise: Standing | undefined, units: UnitSystem): string {
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
