import { parseQuantity, type Change, type Dimension, type UnitSystem } from '../../quantity/index.ts';
import type { Brief } from '../brief.ts';
import { setInBrief } from '../edit.ts';
import { figureText, type Figure, type RigPromise } from '../promise.ts';

/** A value of a brief of which less could be asked: a reach, a flow, a budget, a day. */
export interface AskedValue {
  readonly id: string;
  /** What it is, as a builder says it: `height to reach in "Tops of the elms"`. */
  readonly name: string;
  readonly path: readonly (string | number)[];
  readonly dimension: Figure['dimension'];
  /** What is asked now: SI, whole currency units, days or a count. */
  readonly value: number;
  /** Whether a smaller value is easier to give, or a larger one. */
  readonly easier: 'less' | 'more';
  /** Whether a promise is judged by it. */
  readonly judges: (promise: RigPromise) => boolean;
}

/** Every value of a brief that a promise is judged by. */
export function askedValues(brief: Brief): AskedValue[] {
  const out: AskedValue[] = [];
  const add = (
    name: string,
    path: AskedValue['path'],
    value: number | undefined,
    dimension: AskedValue['dimension'],
    easier: AskedValue['easier'],
    judges: (id: string) => boolean,
  ) => {
    if (value === undefined) return;
    out.push({
      id: path.join('.'),
      name,
      path,
      value,
      dimension,
      easier,
      judges: (p) => judges(p.id),
    });
  };
  brief.duties.forEach((duty, i) => {
    const at = ['duties', i];
    const of = `in "${duty.name}"`;
    const { target } = duty;
    const reach = (id: string) => id === `reach:${duty.id}`;
    if (target?.aim === 'height')
      add(`height to reach ${of}`, [...at, 'target', 'height'], target.height, 'length', 'less', reach);
    else if (target !== undefined)
      add(`distance to reach ${of}`, [...at, 'target', 'distance'], target.distance, 'length', 'less', reach);
    add(`flow ${of}`, [...at, 'flow'], duty.flow, 'flow', 'less', (id) => id.startsWith(`flow:${duty.id}:`));
    add(
      `tip pressure ${of}`,
      [...at, 'pressure'],
      duty.pressure,
      'pressure',
      'less',
      (id) => /^tip-pressure:(.*):[^:]*:asked$/.exec(id)?.[1] === duty.id,
    );
  });
  const { limits, carrier, site, day } = brief;
  const budget = limits.budgetCents === undefined ? undefined : limits.budgetCents / 100;
  add('budget', ['limits', 'budgetCents'], budget, 'money', 'more', (id) => id === 'price');
  add(
    'days until it is ready',
    ['limits', 'readyInDays'],
    limits.readyInDays,
    'days',
    'more',
    (id) => id === 'ready',
  );
  add(
    'mass the vehicle may take',
    ['carrier', 'massLimit'],
    carrier.massLimit,
    'mass',
    'more',
    (id) => id === 'weight:vehicle',
  );
  add('slope it works on', ['site', 'slope'], site.slope, 'angle', 'less', (id) => id === 'stability:slope');
  add('work in a day', ['day', 'units'], day?.units, 'count', 'less', (id) => id === 'day:work');
  add('ground in a day', ['day', 'area'], day?.area, 'area', 'less', (id) => id === 'day:area');
  return out;
}

/** The step in which people give such a value, by unit system; money in tens, days and counts by ones. */
const STEPS: Partial<Record<Figure['dimension'], Readonly<Record<UnitSystem, Step>>>> = {
  length: { us: [1, 'ft'], metric: [0.5, 'm'] },
  volume: { us: [1, 'gal'], metric: [5, 'l'] },
  flow: { us: [0.1, 'gpm'], metric: [0.5, 'l/min'] },
  pressure: { us: [1, 'psi'], metric: [0.1, 'bar'] },
  mass: { us: [10, 'lb'], metric: [5, 'kg'] },
  angle: { us: [1, 'deg'], metric: [1, 'deg'] },
  area: { us: [0.1, 'acre'], metric: [0.1, 'ha'] },
  money: { us: [10, ''], metric: [10, ''] },
};
type Step = readonly [figure: number, unit: string];
const ONE: Step = [1, ''];

function stepOf(dimension: Figure['dimension'], units: UnitSystem): { step: Step; size: number } {
  const step = STEPS[dimension]?.[units] ?? ONE;
  const parsed = step[1] === '' ? undefined : parseQuantity(`${step[0]} ${step[1]}`, dimension as Dimension);
  return { step, size: parsed?.ok === true ? parsed.value : step[0] };
}

/** A value asked, and how it is said and written. */
export interface Asked {
  readonly value: number;
  /** As people read it: "44 ft", "$23,500". */
  readonly text: string;
  readonly change: Change;
}

/** Asks another value instead, rounded to the easier side so that what can be given is enough. */
export function ask(asked: AskedValue, value: number, units: UnitSystem): Asked {
  const { dimension, easier, path, name } = asked;
  const { step, size } = stepOf(dimension, units);
  const [figure, unit] = step;
  const steps = Math.max(
    0,
    easier === 'less' ? Math.floor(value / size + 1e-9) : Math.ceil(value / size - 1e-9),
  );
  const shown = Number((steps * figure).toPrecision(9));
  const text = unit === '' ? figureText({ value: shown, dimension }, units) : `${shown} ${unit}`;
  const written = unit === '' ? shown * (dimension === 'money' ? 100 : 1) : text;
  return { value: steps * size, text, change: setInBrief(path, written, `${name}: ${text}`) };
}
