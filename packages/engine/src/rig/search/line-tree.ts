import type { LayoutLine, Part } from '../../catalogue/index.ts';
import type { Limit } from './limit.ts';
import { lineSet } from './line-needs.ts';
import type { PartAt, SearchSpace } from './space.ts';
import { portClass } from './trims.ts';

/** Beginnings and whole lines kept of one line; beyond them they are judged again when asked. */
const MOST_KEPT = 300_000;

/** An outlet line that begins with some parts, of which its next one may be any that the conditions let stand there. */
export interface Beginning {
  /** A number of its own among all of its line. */
  readonly id: number;
  readonly parts: readonly (Part | undefined)[];
  /** Most spare by the conditions that its last part is the first to meet; below zero when refused. */
  readonly spare: number;
  /** Those asked for by one more part, refused or not. */
  readonly by: Map<Part | undefined, Beginning>;
  next: readonly Beginning[] | undefined;
  whole: readonly WholeLine[] | undefined;
}

/** A whole line: its last part, and all that its joints hang on. */
export interface WholeLine {
  readonly id: number;
  readonly part: Part | undefined;
  readonly spare: number;
  /** Least that it is set to [Pa]; undefined when it cannot be. */
  readonly set: number | undefined;
  /** The same for two lines whose joints, and whose hoses, are the same under the pressure of one level. */
  readonly joints: number;
}

/**
 * Every way to build one outlet line, part by part, as far as its own conditions let it be built, and what it is set to.
 * None of this hangs on what a pump stands: it is worked out once for all pumps of a search.
 */
export class LineTree {
  readonly line: LayoutLine;
  readonly slots: readonly string[];
  readonly root: Beginning;
  readonly #space: SearchSpace;
  readonly #used: boolean;
  /** Conditions on its parts alone, by the slot with which they can be judged. */
  readonly #limitsAt: readonly (readonly Limit[])[];
  readonly #options: readonly (readonly (Part | undefined)[])[];
  readonly #classes = new Map<Part | undefined, string>();
  readonly #joints = new Map<string, number>();
  /** Rating of fittings or clamps that is enough for a line that is set to some pressure. */
  readonly #levelOf: (set: number) => number;
  #ids = 0;
  #kept = 0;

  constructor(from: {
    readonly space: SearchSpace;
    readonly line: LayoutLine;
    readonly used: boolean;
    readonly slots: readonly string[];
    readonly limits: readonly Limit[];
    readonly levelOf: (set: number) => number;
  }) {
    const { slots, limits, space } = from;
    this.#space = space;
    this.line = from.line;
    this.#used = from.used;
    this.#levelOf = from.levelOf;
    this.slots = slots;
    const own = limits.filter((l) => l.slots.every((s) => slots.includes(s)));
    this.#limitsAt = slots.map((_, i) =>
      own
        .filter((l) => Math.max(...l.slots.map((s) => slots.indexOf(s))) === i)
        .sort((a, b) => a.slots.length - b.slots.length),
    );
    this.#options = slots.map((id) => space.slots.find((s) => s.id === id)!.options);
    this.root = this.#beginning([], Infinity);
  }

  /** The line with some parts in its first slots, all but the last at most. */
  at(parts: readonly (Part | undefined)[]): Beginning {
    let at = this.root;
    for (const part of parts) at = this.#by(at, part);
    return at;
  }

  /** What a beginning goes on with that the conditions let stand; not for one that lacks its last part only. */
  next(at: Beginning): readonly Beginning[] {
    if (at.next !== undefined) return at.next;
    const options = this.#options[at.parts.length]!;
    const next = options.map((part) => this.#by(at, part)).filter((b) => b.spare >= 0);
    if (this.#kept <= MOST_KEPT) at.next = next;
    return next;
  }

  /** The whole lines of a beginning that lacks its last part only. */
  wholes(at: Beginning): readonly WholeLine[] {
    if (at.whole !== undefined) return at.whole;
    const options = this.#options[at.parts.length]!;
    const whole = options.map((part) => this.#whole(at, part)).filter((w) => w.spare >= 0);
    if (this.#kept <= MOST_KEPT) {
      this.#kept += whole.length;
      at.whole = whole;
    }
    return whole;
  }

  /** One of these, or one that is refused. */
  whole(at: Beginning, part: Part | undefined): WholeLine {
    return at.whole?.find((w) => w.part === part) ?? this.#whole(at, part);
  }

  lacksOne(at: Beginning): boolean {
    return at.parts.length === this.slots.length - 1;
  }

  partAt(parts: readonly (Part | undefined)[]): PartAt {
    return (slot) => parts[this.slots.indexOf(slot)];
  }

  #by(at: Beginning, part: Part | undefined): Beginning {
    const known = at.by.get(part);
    if (known !== undefined) return known;
    const parts = [...at.parts, part];
    const begun = this.#beginning(parts, this.#judged(parts));
    if (this.#kept <= MOST_KEPT) {
      this.#kept++;
      at.by.set(part, begun);
    }
    return begun;
  }

  #beginning(parts: readonly (Part | undefined)[], spare: number): Beginning {
    return { id: this.#ids++, parts, spare, by: new Map(), next: undefined, whole: undefined };
  }

  #judged(parts: readonly (Part | undefined)[]): number {
    const at = this.partAt(parts);
    let spare = Infinity;
    for (const limit of this.#limitsAt[parts.length - 1]!)
      if (spare >= 0) spare = Math.min(spare, limit.margin(at));
    return spare;
  }

  #whole(of: Beginning, part: Part | undefined): WholeLine {
    const parts = [...of.parts, part];
    const spare = this.#judged(parts);
    const set = spare >= 0 && this.#used ? lineSet(this.#space, this.line, this.partAt(parts)) : 0;
    let key = `${set === undefined ? '' : this.#levelOf(set)}`;
    for (const p of parts) key += ` ${this.#classOf(p)}`;
    let joints = this.#joints.get(key);
    if (joints === undefined) this.#joints.set(key, (joints = this.#joints.size));
    return { id: this.#ids++, part, spare, set, joints };
  }

  /** What a part says to the joints of its line. */
  #classOf(part: Part | undefined): string {
    let of = this.#classes.get(part);
    if (of === undefined) {
      const own = part?.kind === 'hose' ? part.id : part?.kind === 'boom' ? `${part.nozzles}` : '';
      this.#classes.set(part, (of = `${part?.kind} ${portClass(part)} ${own}`));
    }
    return of;
  }
}
