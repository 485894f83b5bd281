import * as liquids from '@spraywright/engine/liquids';
import * as physics from '@spraywright/engine/physics';
import { closestName, type Problem } from '@spraywright/engine/quantity';
import { METHODS } from './methods.data.ts';
import type { Method, MethodParam, MethodResult } from './method.ts';
import { wantedBy } from './trade-words.ts';
import { readInput } from './typed-input.ts';

export { METHODS };

/** What a method gave for one of its results; null where it says itself that it does not know. */
export interface CalculationResult extends MethodResult {
  readonly value: number | boolean | string | readonly number[] | readonly string[] | null;
}

/** How a result came about: enough to check it by hand. */
export interface Working {
  readonly purpose: string;
  readonly formula: string;
  readonly inputs: readonly {
    readonly name: string;
    readonly meaning: string;
    /** As it was given. */
    readonly typed: string;
    /** As the formula took it, in `unit`. */
    readonly value: number | boolean | string | readonly number[];
    readonly unit?: string;
  }[];
  readonly valid?: string;
  readonly source: string;
}

export type Calculation =
  | { readonly ok: true; readonly results: readonly CalculationResult[]; readonly working: Working }
  | { readonly ok: false; readonly problems: readonly Problem[] };

const byName = new Map(METHODS.map((method) => [method.name, method]));
const layers: Readonly<Record<string, Readonly<Record<string, unknown>>>> = { physics, liquids };

export function methodNamed(name: string): Method | undefined {
  return byName.get(name);
}

/** The name that a mistyped one was probably meant to be. */
export function closestMethod(name: string): string | undefined {
  return closestName(name, byName.keys());
}

/** Methods that speak of all the words, as typed or as the sums say it: those with them in their name or purpose first, of these the plainest. */
export function methodsAbout(words: readonly string[]): readonly Method[] {
  const wanted = wantedBy(words);
  const rank = (m: Method) => {
    const title = `${m.name} ${m.purpose}`.toLowerCase();
    const text =
      `${title} ${m.formula} ${m.file} ${m.params.map((p) => `${p.name} ${p.meaning}`).join(' ')}`.toLowerCase();
    if (!wanted.every((isIn) => isIn(text))) return undefined;
    return wanted.filter((isIn) => !isIn(title)).length;
  };
  return METHODS.map((method) => ({ method, rank: rank(method) }))
    .filter((found) => found.rank !== undefined)
    .sort(
      (a, b) =>
        a.rank! - b.rank! || (wanted.length === 0 ? 0 : a.method.purpose.length - b.method.purpose.length),
    )
    .map(({ method }) => method);
}

/** The engine's own function of a method. */
export function functionOf(method: Method): (...args: unknown[]) => unknown {
  const found = layers[method.layer]?.[method.name];
  if (typeof found !== 'function') throw new Error(`${method.layer} exports no function ${method.name}`);
  return found as (...args: unknown[]) => unknown;
}

/**
 * Runs a method on inputs as people type them: `{ flow: '12 gpm', pressureRise: '40 psi' }`.
 * Every input that is missing, unknown, unreadable or out of range is a problem of its own.
 */
export function runCalculation(name: string, inputs: Readonly<Record<string, unknown>>): Calculation {
  const method = byName.get(name);
  if (method === undefined) {
    const near = closestMethod(name);
    return refused(
      'unknown-calculation',
      [],
      `there is no calculation '${name}'${near === undefined ? '' : `; did you mean '${near}'?`}`,
    );
  }
  const problems: Problem[] = [];
  const values = new Map<string, Working['inputs'][number]>();
  for (const param of method.params) {
    const given = Object.hasOwn(inputs, param.name) ? inputs[param.name] : undefined;
    if (given === undefined) {
      if (param.optional !== true) problems.push(missing(param));
      continue;
    }
    const read = readInput(param, given);
    if (!read.ok) problems.push({ path: [param.name], code: read.code, message: read.message });
    else
      values.set(param.name, {
        name: param.name,
        meaning: param.meaning,
        typed: shown(given),
        value: read.value,
        ...unitOf(param),
      });
  }
  const known = method.params.map((p) => p.name);
  for (const extra of Object.keys(inputs).filter((key) => !known.includes(key))) {
    const near = closestName(extra, known);
    const hint = near === undefined ? `its inputs are ${known.join(', ')}` : `did you mean '${near}'?`;
    problems.push({
      path: [extra],
      code: 'unknown-field',
      message: `'${extra}' is not an input of ${name}; ${hint}`,
    });
  }
  if (problems.length > 0) return { ok: false, problems };
  return carriedOut(method, values);
}

function carriedOut(method: Method, inputs: ReadonlyMap<string, Working['inputs'][number]>): Calculation {
  const args = argumentsOf(method, (param) => inputs.get(param.name)?.value);
  let given: unknown;
  try {
    given = functionOf(method)(...args);
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    const culprit = method.params.find((p) => error.message.startsWith(`${p.name} `));
    return refused('out-of-range', culprit === undefined ? [] : [culprit.name], error.message);
  }
  const results = method.results.map((result) => ({
    ...result,
    value: resultValue(result.name === '' ? given : (given as Record<string, unknown>)[result.name]),
  }));
  const lost = results.find(({ value }) =>
    [value].flat().some((v) => typeof v === 'number' && !Number.isFinite(v)),
  );
  if (lost !== undefined)
    return refused('no-number', [], `${method.name} gives no finite number for these inputs`);
  const { purpose, formula, valid, source } = method;
  return {
    ok: true,
    results,
    working: {
      purpose,
      formula,
      inputs: [...inputs.values()],
      ...(valid === undefined ? {} : { valid }),
      source,
    },
  };
}

/** The arguments a method's function is called with, from the value of each of its inputs; undefined leaves it out. */
export function argumentsOf(method: Method, valueOf: (param: MethodParam) => unknown): unknown[] {
  return method.args.map((arg) => {
    if (!arg.object)
      return valueOf(method.params.find((p) => p.name === arg.name && p.of === undefined) as MethodParam);
    const fields = method.params.filter((p) => p.of === arg.name).map((p) => [p.name, valueOf(p)] as const);
    return Object.fromEntries(fields.filter(([, value]) => value !== undefined));
  });
}

function resultValue(value: unknown): CalculationResult['value'] {
  if (typeof value === 'number' || typeof value === 'boolean' || typeof value === 'string') return value;
  if (!Array.isArray(value)) return null;
  if (value.every((v) => typeof v === 'number') || value.every((v) => typeof v === 'string')) return value;
  return null;
}

function missing(param: MethodParam): Problem {
  return { path: [param.name], code: 'missing', message: `${param.name} is missing: ${param.meaning}` };
}

function refused(code: string, path: readonly string[], message: string): Calculation {
  return { ok: false, problems: [{ path, code, message }] };
}

const unitOf = (param: MethodParam) => (param.unit === undefined ? {} : { unit: param.unit });
const shown = (given: unknown) => (Array.isArray(given) ? given.map(String).join('; ') : String(given));
