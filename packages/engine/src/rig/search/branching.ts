import type { Part } from '../../catalogue/index.ts';
import type { Bounds } from './bounds.ts';
import type { Figures } from './figures.ts';
import type { Front } from './front.ts';
import type { Prover } from './prover.ts';
import type { PartAt, SearchSpace } from './space.ts';

/** Sets of parts between two reports. */
const REPORT = 2000;

/** A space with its bounds, once what no rig can have is gone. */
export interface Prepared {
  readonly space: SearchSpace;
  readonly bounds: Bounds;
  /** Sets of parts that are gone already, by why. */
  readonly refused: ReadonlyMap<string, number>;
}

/** Goes through all sets of parts, slot by slot, and leaves out those that are refused or bound to be beaten. */
export class Branching {
  nodes = 0;
  /** Sets of parts of the narrowed spaces that need no more looking at. */
  settled = 0;
  /** It was told to end, or has looked at or proven all that it may. */
  stopped = false;
  readonly #prover: Prover;
  readonly #front: Front;
  readonly #mostNodes: number;
  readonly #refused = new Map<string, number>();
  #within = 0;

  constructor(prover: Prover, front: Front, mostNodes: number) {
    this.#prover = prover;
    this.#front = front;
    this.#mostNodes = mostNodes;
  }

  /** Begins a round over all spaces: what is better by no more than a share than a rig found is not looked at. */
  begin(within: number): void {
    this.#within = within;
    this.settled = 0;
    this.#refused.clear();
  }

  /** True when the space has been gone through to its end. */
  run({ space, bounds, refused }: Prepared, goOn: () => boolean): boolean {
    for (const [why, sets] of refused) this.#count(why, sets);
    if (space.size === 0) return true;
    const parts = new Map<string, Part | undefined>();
    const partAt: PartAt = (slot) => parts.get(slot);
    const visit = (depth: number, sets: number, margin: number): void => {
      const slot = space.slots[depth];
      if (slot === undefined) {
        if (this.#prover.spent) {
          this.stopped = true;
          return;
        }
        const proven = this.#prover.of(space, partAt);
        if (proven !== undefined) this.#front.offer(proven);
        this.settled += sets;
        return;
      }
      const each = sets / slot.options.length;
      for (const part of slot.options) {
        if (this.nodes >= this.#mostNodes) this.stopped = true;
        if (this.stopped) break;
        this.nodes++;
        if (this.nodes % REPORT === 0 && !goOn()) this.stopped = true;
        parts.set(slot.id, part);
        const limited = Math.min(margin, bounds.limit(depth, partAt));
        if (limited < 0) this.#refuse(bounds.why(depth, partAt)!, each);
        else {
          const best = bounds.best(depth + 1, partAt, limited);
          if (best.margin < 0) this.#refuse('price or day: the least possible is beyond the brief', each);
          else if (this.#isBeaten(best)) this.#refuse('beaten by a rig already found', each);
          else visit(depth + 1, each, limited);
        }
      }
      parts.delete(slot.id);
    };
    visit(0, space.size, Infinity);
    return !this.stopped;
  }

  /** Sets of parts by the condition that refused them, most first. */
  refused(): { readonly why: string; readonly sets: number }[] {
    return [...this.#refused].map(([why, sets]) => ({ why, sets })).sort((a, b) => b.sets - a.sets);
  }

  /** Of rigs with the same figures all are proven in an exact round, and the first by its name is kept. */
  #isBeaten(best: Figures): boolean {
    return this.#within === 0 ? this.#front.beatsAll(best) : this.#front.covers(best, this.#within);
  }

  #refuse(why: string, sets: number): void {
    this.#count(why, sets);
    this.settled += sets;
  }

  #count(why: string, sets: number): void {
    this.#refused.set(why, sets + (this.#refused.get(why) ?? 0));
  }
}
