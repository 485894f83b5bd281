import { describe, expect, it } from 'vitest';
import type { Method, MethodParam } from './method.ts';
import { argumentsOf, functionOf, METHODS } from './registry.ts';

type Values = ReadonlyMap<MethodParam, unknown>;

/** A seeded generator, so that a failure comes back (mulberry32, public domain). */
function random(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

function somewhere(param: MethodParam, next: () => number): unknown {
  const { kind, min, max, choices = [], numeric } = param;
  if (kind === 'flag') return next() < 0.5;
  if (kind === 'choice') {
    const choice = choices[Math.floor(next() * choices.length)];
    return numeric === true ? Number(choice) : choice;
  }
  const low = min ?? (max === undefined ? 0 : max - 1);
  const high = max ?? (low === 0 ? 1 : low + Math.abs(low));
  const part = next();
  const floor = Math.max(low, high * 1e-6);
  const value = low >= 0 && next() < 0.7 ? floor * (high / floor) ** part : low + (high - low) * part;
  // Counts must be whole.
  const whole = Math.round(value);
  const settled = next() < 0.4 && whole >= low && whole <= high ? whole : value;
  // Curves must rise.
  return kind === 'list' ? [0.9, 0.95, 1].map((share) => low + (settled - low) * share) : settled;
}

function call(method: Method, values: Values): unknown {
  return functionOf(method)(...argumentsOf(method, (param) => values.get(param)));
}

/** Inputs that chance does not find: shares that must add up to one. */
const GIVEN: Readonly<Record<string, Readonly<Record<string, unknown>>>> = {
  idealMixDensity: { massFractions: [0.25, 0.25, 0.5], densities: [900, 1000, 1100] },
  blendViscosity: { massFractions: [0.25, 0.25, 0.5], viscosities: [0.001, 0.002, 0.01] },
};

/** Inputs within every documented range that the method accepts; it may refuse some for how they go together. */
function acceptedInputs(method: Method): Values | undefined {
  const given = GIVEN[method.name];
  if (given !== undefined) return new Map(method.params.map((param) => [param, given[param.name]]));
  const next = random(method.name.length * 1000 + method.params.length);
  for (let attempt = 0; attempt < 3000; attempt++) {
    const values = new Map(method.params.map((param) => [param, somewhere(param, next)]));
    for (const param of method.params) if (param.optional === true && next() < 0.5) values.delete(param);
    try {
      call(method, values);
      return values;
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
    }
  }
  return undefined;
}

/** What is wrong with how a method takes one bad number, or nothing. */
function fault(method: Method, values: Values, param: MethodParam, bad: number): string {
  const good = values.get(param);
  const given = param.kind === 'list' ? (Array.isArray(good) ? good : [0, 0]).with(-1, bad) : bad;
  try {
    return `gave ${JSON.stringify(call(method, new Map(values).set(param, given)))}`;
  } catch (error) {
    if (!(error instanceof RangeError)) return `threw ${String(error)}`;
    return error.message.includes(param.name) ? '' : `was refused under another name: ${error.message}`;
  }
}

function finite(value: unknown): boolean {
  if (typeof value === 'number') return Number.isFinite(value);
  return typeof value !== 'object' || value === null || Object.values(value).every(finite);
}

describe('every method that can be run by name', () => {
  it('is there', () => {
    expect(METHODS.length).toBeGreaterThan(100);
    for (const method of METHODS) expect(typeof functionOf(method), method.name).toBe('function');
  });

  it.each(METHODS.map((method) => [method.name, method] as const))(
    '%s takes what its doc comment allows and refuses what it does not, by name',
    (_, method) => {
      const values = acceptedInputs(method);
      if (values === undefined) throw new Error(`no inputs within its ranges are accepted by ${method.name}`);
      const result = call(method, values);
      const faults: string[] = finite(result) ? [] : [`gave ${JSON.stringify(result)}`];
      for (const { name } of method.results)
        if (name !== '' && !Object.hasOwn(result as object, name)) faults.push(`gave no '${name}'`);
      for (const param of method.params.filter((p) => p.kind === 'number' || p.kind === 'list')) {
        const { min, max } = param;
        const step = (limit: number) => Math.max(Math.abs(limit) * 0.01, 1e-9);
        const bad: [string, number][] = [['NaN', NaN]];
        if (max !== undefined) bad.push(['above its maximum', max + step(max)], ['infinite', Infinity]);
        if (min !== undefined) bad.push(['below its minimum', min - step(min)]);
        for (const [what, value] of bad) {
          const found = fault(method, values, param, value);
          if (found !== '') faults.push(`${param.name} ${what} ${found}`);
        }
      }
      expect(faults).toEqual([]);
    },
  );
});
