import {
  display,
  parseQuantity,
  pathOf,
  priceText,
  unitOf,
  type Dimension,
  type UnitSystem,
} from '@spraywright/engine/quantity';
import { isStart } from '@spraywright/engine/rig';
import type { Given } from '../protocol.ts';

/** Makes boxed values of the fields of a raw document, shown in the reader's units. */
export class Givens {
  readonly #document: unknown;
  readonly #units: UnitSystem;

  constructor(document: unknown, units: UnitSystem) {
    this.#document = document;
    this.#units = units;
  }

  raw(path: string): unknown {
    let value = this.#document;
    for (const step of path.split('.')) {
      if (typeof value !== 'object' || value === null) return undefined;
      value = (value as Record<string, unknown>)[step];
    }
    return value;
  }

  /** The mark of a start value that stands in the document and that nobody has confirmed. */
  #mark(path: string): { start?: true } {
    return isStart(this.#document, pathOf(path)) ? { start: true } : {};
  }

  has(path: string): boolean {
    return this.raw(path) !== undefined;
  }

  /** A quantity; when the document has none, `start` is the value [SI] we begin with. */
  quantity(path: string, dimension: Dimension, label: string, start?: number): Given {
    const raw = this.raw(path);
    if (raw === undefined)
      return {
        path,
        sort: 'quantity',
        label,
        shown: start === undefined ? '?' : display(start, dimension, this.#units),
        start: true,
      };
    return {
      path,
      sort: 'quantity',
      label,
      shown: this.#typed(textOf(raw), dimension),
      ...this.#mark(path),
    };
  }

  number(path: string, label: string, start?: string): Given {
    const raw = this.raw(path);
    return raw === undefined
      ? { path, sort: 'number', label, shown: start ?? '?', start: true }
      : { path, sort: 'number', label, shown: textOf(raw), ...this.#mark(path) };
  }

  money(path: string, label: string, start?: string): Given {
    const raw = this.raw(path);
    if (raw === undefined && start !== undefined)
      return { path, sort: 'money', label, shown: start, start: true };
    const shown = typeof raw === 'number' ? priceText(raw) : textOf(raw);
    return { path, sort: 'money', label, shown, ...this.#mark(path) };
  }

  /** Words as they were typed, and a second field that says the same. */
  text(path: string, label: string, also?: string): Given {
    const raw = this.raw(path);
    const shown = raw === undefined ? '' : textOf(raw);
    return {
      path,
      sort: 'text',
      label,
      shown,
      ...(also === undefined ? {} : { also }),
      ...this.#mark(also ?? path),
    };
  }

  choice(path: string, label: string, choices: readonly (readonly [string, string])[], start: string): Given {
    const raw = this.raw(path);
    const value = raw === undefined ? start : textOf(raw);
    return {
      path,
      sort: typeof raw === 'boolean' || start === 'true' || start === 'false' ? 'flag' : 'choice',
      label,
      shown: value,
      choices,
      ...this.#mark(path),
    };
  }

  /** What was typed, when its unit belongs to the reader's system; converted otherwise. */
  #typed(text: string, dimension: Dimension): string {
    const parsed = parseQuantity(text, dimension);
    if (!parsed.ok) return text;
    const system = unitOf(parsed.unit, dimension)?.system;
    if (system === 'any' || system === undefined || system === this.#units)
      return text.replace(/(\d) ?°?([FC])$/, '$1 °$2');
    return display(parsed.value, dimension, this.#units);
  }
}

/** A raw field as text: what is neither text nor number nor flag is refused by the engine and shown as JSON. */
function textOf(raw: unknown): string {
  return typeof raw === 'string' ? raw : JSON.stringify(raw);
}
