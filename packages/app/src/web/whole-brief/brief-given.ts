import { briefShape } from '@spraywright/engine/rig';
import {
  display,
  pathOf,
  valueAt,
  type ShapeDescription,
  type UnitSystem,
} from '@spraywright/engine/quantity';
import type { Given } from '../protocol.ts';
import type { BriefLists } from './brief-edits.ts';
import { Givens } from '../worker/given.ts';
import { CHOICE_WORDS } from './brief-fields.data.ts';

/** A choice in words. */
const choiceWord = (id: string) => CHOICE_WORDS[id] ?? id.replaceAll('-', ' ');

/** What stands in for an unsaid word, number or yes and no. */
const wordOf = (start: unknown): string =>
  typeof start === 'string' ? start : (JSON.stringify(start) ?? '');

/** The shapes on the way to a field of a brief, the outermost first; a place of a list is its member's shape. */
function shapesTo(path: readonly (string | number)[]): ShapeDescription[] {
  const out: ShapeDescription[] = [];
  let shape: ShapeDescription = briefShape.describe;
  for (const step of path) {
    const fields =
      shape.type === 'tagged'
        ? Object.values(shape.cases ?? {}).flatMap((c) => c.fields ?? [])
        : shape.fields;
    const next: ShapeDescription | undefined =
      typeof step === 'number' ? shape.of : fields?.find((f) => f.name === step)?.shape;
    if (next === undefined) throw new RangeError(`a brief has no field '${path.join('.')}'`);
    out.push(next);
    shape = next;
  }
  return out;
}

/** Boxed values of a rig's whole brief, said or not. */
export class BriefGivens {
  readonly #rig: unknown;
  readonly #units: UnitSystem;
  readonly #lists: BriefLists;
  readonly #givens: Givens;

  constructor(rig: unknown, units: UnitSystem, lists: BriefLists) {
    this.#rig = rig;
    this.#units = units;
    this.#lists = lists;
    this.#givens = new Givens(rig, units);
  }

  /** Whether somebody, or a start value, has said it. */
  has(path: string): boolean {
    return this.#givens.has(`brief.${path}`);
  }

  /** A field of the brief by its path in it: `carrier.massLimit`. */
  given(path: string, label: string): Given {
    const inBrief = pathOf(path);
    const shapes = shapesTo(inBrief);
    const shape = shapes.at(-1)!;
    const full = `brief.${path}`;
    const clears = this.#clears(inBrief, shapes);
    const may = clears === undefined ? {} : { clears };
    const start = this.#fallback(inBrief, shape);
    const choices = this.#choices(path, shape, clears !== undefined && start === undefined);
    if (choices !== undefined)
      return {
        ...this.#givens.choice(full, label, choices, wordOf(start)),
        ...(this.has(path) || start === undefined ? {} : { start: true }),
        ...(shape.type === 'flag' ? { sort: 'flag' as const } : {}),
        ...may,
      };
    const sort =
      path === 'limits.budgetCents'
        ? 'money'
        : shape.dimension !== undefined
          ? 'quantity'
          : shape.type === 'text'
            ? 'text'
            : 'number';
    if (!this.has(path)) {
      if (start === undefined) return { path: full, sort, label, shown: '', ...may };
      const shown =
        shape.dimension === undefined
          ? wordOf(start)
          : display(start as number, shape.dimension, this.#units);
      return { path: full, sort, label, shown, start: true, ...may };
    }
    const told =
      sort === 'money'
        ? this.#givens.money(full, label)
        : sort === 'quantity'
          ? this.#givens.quantity(full, shape.dimension!, label)
          : sort === 'text'
            ? this.#givens.text(full, label)
            : this.#givens.number(full, label);
    return { ...told, ...may };
  }

  /** What stands in for a field that nobody has said; none where what holds it has not been said either. */
  #fallback(path: readonly (string | number)[], shape: ShapeDescription): unknown {
    const holder = valueAt(this.#rig, ['brief', ...path.slice(0, -1)]);
    return holder === undefined ? undefined : shape.fallback;
  }

  /** The widest field that says nothing more once this one is emptied; none for a field that must be said. */
  #clears(path: readonly (string | number)[], shapes: readonly ShapeDescription[]): string | undefined {
    const may = shapes.findIndex((s, i) => s.optional === true && typeof path[i] !== 'number');
    if (may < 0) return undefined;
    let end = path.length;
    while (end - 1 > may) {
      const holder = valueAt(this.#rig, ['brief', ...path.slice(0, end - 1)]);
      if (Object.keys(holder ?? {}).some((key) => key !== path[end - 1])) break;
      end--;
    }
    return ['brief', ...path.slice(0, end)].join('.');
  }

  #choices(path: string, shape: ShapeDescription, unsaid: boolean): Given['choices'] {
    const listed = this.#listed(path) ?? this.#own(shape);
    if (listed === undefined) return undefined;
    return unsaid ? [['', 'not said'], ...listed] : listed;
  }

  #own({ type, choices }: ShapeDescription): Given['choices'] {
    if (type === 'flag')
      return [
        ['true', 'yes'],
        ['false', 'no'],
      ];
    return choices?.map((c): [string, string] => [c, choiceWord(c)]);
  }

  /** Choices that are not the shape's own. */
  #listed(path: string): Given['choices'] {
    if (path === 'family') return this.#lists.families;
    if (path === 'day.duty' || path === 'transfer.duty')
      return ((valueAt(this.#rig, ['brief', 'duties']) ?? []) as { id: string; name: string }[]).map(
        (d): [string, string] => [d.id, d.name],
      );
    if (!/^liquids\.\d+\.liquid$/.test(path)) return undefined;
    const now = this.#givens.raw(`brief.${path}`);
    const { liquids } = this.#lists;
    return typeof now !== 'string' || liquids.some(([id]) => id === now)
      ? liquids
      : [...liquids, [now, `${now}, in no table`]];
  }
}
