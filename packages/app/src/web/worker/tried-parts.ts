import { displayParts, priceChangeText, priceText, type UnitSystem } from '@spraywright/engine/quantity';
import {
  figureText,
  alternatives,
  byUse,
  partsInstead,
  waysOut,
  type Alternative,
  type PromiseChange,
  type PromiseWays,
  type Standing,
  type Trials,
  type WayOut as EngineWay,
} from '@spraywright/engine/rig';
import type { Effect, Effects, WayOut } from '../protocol.ts';

/** What the worker fetches together with this, when parts are first tried. */
export { partById, putPart, trialsOf } from '@spraywright/engine/rig';

interface SlotTried {
  readonly tried: Alternative[];
  readonly left: Iterator<Alternative>;
  readonly total: number;
  done: boolean;
}

/** Ways out that one promise shows. */
const MOST_WAYS = 4;

/** Tries the parts of the catalogue in the slots of one rig, a few at a time, and remembers what came out. */
export class TriedParts {
  readonly #trials: Trials;
  readonly #slots = new Map<string, SlotTried>();
  readonly #ways: Generator<number, PromiseWays[]>;
  #found: PromiseWays[] | undefined;

  constructor(trials: Trials) {
    this.#trials = trials;
    this.#ways = waysOut(trials, { most: MOST_WAYS, states: ['broken'] });
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

  /** Looks for ways out of what is broken until the moment is over; gives them when all has been tried. */
  workWays(goOn: () => boolean, units: UnitSystem): Record<string, WayOut[]> | undefined {
    while (this.#found === undefined && goOn()) {
      const next = this.#ways.next();
      if (next.done === true) this.#found = next.value;
    }
    return this.#found === undefined
      ? undefined
      : Object.fromEntries(this.#found.map((of) => [of.promise.id, wayRows(of, units)]));
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
    price: priceChangeText(e.priceCents),
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

/** The ways out of one promise, and last what could be asked instead. */
function wayRows({ ways, less }: PromiseWays, units: UnitSystem): WayOut[] {
  const row = (
    way: Pick<EngineWay, 'name' | 'change' | 'effect' | 'then'>,
    slots: readonly string[],
  ): WayOut => ({
    name: way.name,
    change: way.change,
    slots,
    then: figureOf(way.then, units),
    state: way.then?.state ?? 'kept',
    price: priceChangeText(way.effect.priceCents),
    mass: `${massChange(way.effect.mass, units)} ${units === 'us' ? 'lb' : 'kg'}`,
  });
  if (less === undefined) return ways.map((w) => row(w, w.slots));
  const asked = row({ ...less, name: `Ask less: ${less.name}` }, []);
  return [...ways.slice(0, MOST_WAYS - 1).map((w) => row(w, w.slots)), asked];
}

function figureOf(promise: Standing | undefined, units: UnitSystem): string {
  const has = promise?.has;
  if (has === undefined) return 'kept';
  if (has.dimension === 'count' || has.dimension === 'days') return String(Math.round(has.value));
  if (has.dimension === 'number' || has.unit !== undefined || has.as !== undefined)
    return figureText(has, units);
  if (has.dimension === 'money') return priceText(has.value * 100);
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
