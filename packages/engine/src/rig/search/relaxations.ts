import type { UnitSystem } from '../../quantity/index.ts';
import { ask, askedValues, type AskedValue } from '../advice/asked-values.ts';
import { figureText } from '../promise.ts';
import type { Brief } from '../brief.ts';

/** A brief as it was typed: what is changed in it is a copy. */
type RawBrief = Record<string, unknown>;

/** One thing of which a brief could ask less. */
export interface Relaxation {
  /** What is asked: `height to reach in "Tops"`, or what is dropped. */
  readonly name: string;
  /** What is asked now; absent for what is dropped whole. */
  readonly now?: string;
  /** Present for the budget: what is asked when it is as large as a price, and its share of the way. */
  readonly forPrice?: (cents: number) => { readonly text: string; readonly share: number };
  /** The brief with a share of the way from what is asked (0) to the least worth asking (1), and how that is said. */
  readonly at: (share: number) => { readonly brief: unknown; readonly text: string };
}

/** Asked less than this share of what was asked, a rig is another rig; of a limit, more than this many times. */
const LEAST = 0.1;
const MOST = 5;

/** Everything of which a brief could ask less: values that promises are judged by, sizes wished, liquids and wishes dropped. */
export function relaxationsOf(raw: unknown, brief: Brief, units: UnitSystem): Relaxation[] {
  return [
    ...askedValues(brief).map((asked) => ofValue(raw, asked, units)),
    ...ofWishes(raw, brief, units),
    ...ofLiquids(raw, brief),
  ];
}

function ofValue(
  raw: unknown,
  asked: AskedValue,
  units: UnitSystem,
  also?: (copy: RawBrief, text: string) => void,
): Relaxation {
  const { value, dimension, easier } = asked;
  return {
    name: asked.name,
    now: figureText({ value, dimension }, units),
    ...(dimension === 'money'
      ? {
          forPrice: (cents: number) => ({
            text: ask(asked, cents / 100, units).text,
            share: (cents / 100 / value - 1) / (MOST - 1),
          }),
        }
      : {}),
    at: (share) => {
      const factor = easier === 'less' ? 1 - share * (1 - LEAST) : 1 + share * (MOST - 1);
      const less = ask(asked, value * factor, units);
      const copy = copyOf(raw);
      const written =
        dimension === 'money'
          ? Math.round(less.value * 100)
          : dimension === 'days' || dimension === 'count'
            ? Math.max(1, Math.round(less.value))
            : less.text;
      put(copy, asked.path, written);
      also?.(copy, less.text);
      return { brief: copy, text: less.text };
    },
  };
}

function ofWishes(raw: unknown, { wishes, duties }: Brief, units: UnitSystem): Relaxation[] {
  const wish = (key: 'tank' | 'hose', name: string, dimension: 'volume' | 'length'): AskedValue => ({
    id: `wishes.${key}`,
    name,
    path: ['wishes', key],
    dimension,
    value: wishes[key]!,
    easier: 'less',
    judges: () => false,
  });
  // No more hose is paid out than there is.
  const shorten = (copy: RawBrief, text: string) =>
    duties.forEach((d, i) => {
      if (d.hoseOut === undefined) return;
      const share = d.hoseOut / wishes.hose!;
      const figure = Number.parseFloat(text) * Math.min(1, share);
      put(
        copy,
        ['duties', i, 'hoseOut'],
        `${Number(figure.toPrecision(6))} ${text.replace(/^[\d.,]+ /, '')}`,
      );
    });
  const dropped = (key: 'rewind'): Relaxation => ({
    name: `the wish for a reel rewound by ${wishes[key] === 'hand' ? 'hand' : 'a motor'}`,
    at: () => {
      const copy = copyOf(raw);
      delete (copy.wishes as RawBrief)[key];
      return { brief: copy, text: 'dropped' };
    },
  });
  return [
    ...(wishes.tank === undefined ? [] : [ofValue(raw, wish('tank', 'size of the tank', 'volume'), units)]),
    ...(wishes.hose === undefined
      ? []
      : [ofValue(raw, wish('hose', 'length of the hose', 'length'), units, shorten)]),
    ...(wishes.rewind === undefined ? [] : [dropped('rewind')]),
  ];
}

/** Each liquid without which the brief still has work to do, dropped with the duties that spray it. */
function ofLiquids(raw: unknown, { liquids, duties, day, transfer }: Brief): Relaxation[] {
  return liquids.flatMap(({ id, name }): Relaxation[] => {
    const gone = new Set(duties.filter((d) => d.liquid === id).map((d) => d.id));
    const named = [day?.duty, transfer?.duty].some((d) => d !== undefined && gone.has(d));
    if (gone.size === duties.length || liquids.length < 2 || named) return [];
    return [
      {
        name: `the liquid "${name}"${gone.size === 0 ? '' : ' with the duties that spray it'}`,
        at: () => {
          const copy = copyOf(raw);
          const without = (key: string, out: (entry: RawBrief) => boolean) => {
            copy[key] = (copy[key] as RawBrief[]).filter((entry) => !out(entry));
          };
          without('liquids', (l) => l.id === id);
          without('duties', (d) => gone.has(d.id as string));
          return { brief: copy, text: 'dropped' };
        },
      },
    ];
  });
}

function copyOf(raw: unknown): RawBrief {
  return JSON.parse(JSON.stringify(raw)) as RawBrief;
}

function put(copy: RawBrief, path: readonly (string | number)[], value: unknown): void {
  let at = copy as Record<string | number, unknown>;
  for (const step of path.slice(0, -1)) at = at[step] as Record<string | number, unknown>;
  at[path[path.length - 1]!] = value;
}
