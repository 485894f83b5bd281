import fc from 'fast-check';
import { describe, expect, expectTypeOf, it } from 'vitest';
import {
  flag,
  formatPath,
  identifier,
  integer,
  list,
  number,
  object,
  oneOf,
  optional,
  quantity,
  read,
  record,
  tagged,
  text,
  withDefault,
  type Infer,
  type Problem,
  type Shape,
} from './index.ts';

const part = object({
  id: identifier(),
  name: text({ min: 2, max: 20 }),
  mass: quantity('mass', { min: '0 kg', max: '5000 kg' }),
  stock: integer({ min: 0 }),
  peukert: optional(number({ min: 1, below: 2 })),
  bore: withDefault(quantity('length', { above: '0 mm' }), 0.0254),
  form: oneOf('gun', 'pump'),
  vented: optional(flag()),
});
const law = tagged('action', {
  displacement: object({ displacement: quantity('displacement', { above: '0 cm3/rev' }) }),
  centrifugal: object({
    curve: list(object({ flow: quantity('flow') }), { min: 2, max: 4 }),
    note: optional(text()),
  }),
});
const document = object({
  parts: list(part, { max: 50 }),
  laws: record(law),
  share: optional(quantity('ratio', { max: '60 %' })),
});

const good = { id: 'gun-1', name: 'Gun', mass: '2 lb', stock: 3, form: 'gun' };

function problems(shape: Shape<unknown>, raw: unknown): Problem[] {
  const result = read(shape, raw);
  return result.ok ? [] : result.problems;
}
const messages = (shape: Shape<unknown>, raw: unknown) => problems(shape, raw).map((p) => p.message);

describe('reading a document', () => {
  it('gives SI values and leaves out what is absent', () => {
    expect(read(part, good)).toEqual({
      ok: true,
      value: { id: 'gun-1', name: 'Gun', mass: 0.90718474, stock: 3, bore: 0.0254, form: 'gun' },
    });
    expect(read(law, { action: 'displacement', displacement: '60 cm3/rev' })).toEqual({
      ok: true,
      value: { action: 'displacement', displacement: 60e-6 / (2 * Math.PI) },
    });
    expect(read(quantity('ratio'), 0.25)).toEqual({ ok: true, value: 0.25 });
    expect(read(quantity('ratio'), '25 %')).toEqual({ ok: true, value: 0.25 });
  });

  it('infers the type a shape reads into', () => {
    expectTypeOf<Infer<typeof part>>().toEqualTypeOf<{
      readonly id: string;
      readonly name: string;
      readonly mass: number;
      readonly stock: number;
      readonly peukert?: number;
      readonly bore: number;
      readonly form: 'gun' | 'pump';
      readonly vented?: boolean;
    }>();
    expectTypeOf<Infer<typeof law>>().toEqualTypeOf<
      | { readonly action: 'displacement'; readonly displacement: number }
      | {
          readonly action: 'centrifugal';
          readonly curve: readonly { readonly flow: number }[];
          readonly note?: string;
        }
    >();
  });

  it('reports every problem, with its path', () => {
    const raw = {
      parts: [
        good,
        { ...good, mass: '-2 kg', stock: 1.5 },
        { ...good, mass: '70 F', form: 'gum', colour: 'red' },
      ],
      laws: { a: { action: 'displacment' }, b: { action: 'centrifugal', curve: [{ flow: '1 gpm' }] } },
    };
    const found = problems(document, raw);
    expect(found.map((p) => [formatPath(p.path), p.code])).toEqual([
      ['parts[1].mass', 'out-of-range'],
      ['parts[1].stock', 'wrong-type'],
      ['parts[2].mass', 'bad-quantity'],
      ['parts[2].form', 'not-a-choice'],
      ['parts[2].colour', 'unknown-field'],
      ['laws.a.action', 'not-a-choice'],
      ['laws.b.curve', 'too-short'],
    ]);
    expect(found.map((p) => p.message)).toEqual([
      "mass is '-2 kg'; it must be at least 0 kg",
      'stock is the number 1.5; a whole number was expected',
      "mass: '70 F' is a temperature; a mass was expected, such as 120 lb",
      "form is 'gum'; it must be one of gun, pump; did you mean 'gun'?",
      "'colour' is not a field of parts[2]; its fields are id, name, mass, stock, peukert, bore, form, vented",
      "action is 'displacment'; it must be one of displacement, centrifugal; did you mean 'displacement'?",
      'curve has 1 members; at least 2 are needed',
    ]);
  });

  it('says what a missing field should hold and what an unknown one was meant to be', () => {
    const { mass, ...rest } = good;
    expect(messages(part, { ...rest, mas: mass })).toEqual([
      "mass is missing; a mass such as '120 lb' was expected",
      "'mas' is not a field of the document; did you mean 'mass'?",
    ]);
    expect(messages(part, undefined)).toEqual(['the document is missing; an object was expected']);
    expect(messages(law, {})).toEqual(['action is missing; one of displacement, centrifugal was expected']);
  });

  it.each<[string, Shape<unknown>, unknown, string, string]>([
    [
      'a number without a unit',
      quantity('mass'),
      12,
      'wrong-type',
      'a quantity is written as text with its unit',
    ],
    ['a number for a ratio that is infinite', quantity('ratio'), Infinity, 'wrong-type', 'a ratio'],
    [
      'a limit that is excluded',
      quantity('length', { above: '0 mm' }),
      '0 in',
      'out-of-range',
      'more than 0 mm',
    ],
    [
      'a limit passed',
      quantity('ratio', { max: '60 %' }),
      '61 %',
      'out-of-range',
      "'61 %'; it must be at most 60 %",
    ],
    ['a limit reached', quantity('ratio', { below: '60 %' }), '60 %', 'out-of-range', 'less than 60 %'],
    ['a number too small', number({ min: 1 }), 0.5, 'out-of-range', 'is 0.5; it must be at least 1'],
    ['not a number', number(), NaN, 'wrong-type', 'a number was expected'],
    ['text for a number', number(), '1', 'wrong-type', "is '1'; a number was expected"],
    ['an inexact whole number', integer(), 2 ** 53, 'wrong-type', 'a whole number was expected'],
    ['text too long', text({ max: 3 }), 'abcd', 'too-long', 'has 4 characters; at most 3 are allowed'],
    ['blank text', text({ min: 1 }), '  ', 'too-short', 'at least 1 character is needed'],
    ['control characters', text(), 'a\u0000b', 'bad-text', 'must not contain control characters'],
    ['half a character', text(), 'a\uD800', 'bad-text', 'must not contain control characters'],
    ['a bad identifier', identifier(), 'Gun 1', 'bad-text', "is 'Gun 1'; an identifier of a-z"],
    ['a long identifier', identifier(), 'a'.repeat(65), 'bad-text', '(at most 64)'],
    ['text for a flag', flag(), 'yes', 'wrong-type', "is 'yes'; true or false was expected"],
    ['null', text(), null, 'wrong-type', 'is null; text was expected'],
    ['an object for a list', list(text()), {}, 'wrong-type', 'is an object; a list was expected'],
    ['a list for an object', object({}), [1], 'wrong-type', 'is a list of 1; an object was expected'],
    [
      'a long list',
      list(text(), { max: 2 }),
      ['a', 'b', 'c'],
      'too-long',
      'has 3 members; at most 2 are allowed',
    ],
    ['a sparse list', list(text()), new Array(1), 'missing', 'is missing; text was expected'],
    ['a long record', record(text(), { max: 1 }), { a: 'a', b: 'b' }, 'too-long', 'has 2 fields; at most 1'],
    ['a short record', record(text(), { min: 1 }), {}, 'too-short', 'has 0 fields; at least 1'],
  ])('refuses %s', (_, shape, raw, code, message) => {
    const [problem, ...others] = problems(shape, raw);
    expect(others).toEqual([]);
    expect(problem?.code).toBe(code);
    expect(problem?.message).toContain(message);
  });

  it('refuses limits that cannot be read when the shape is declared', () => {
    expect(() => quantity('mass', { max: '5 ft' })).toThrow("the max of a declared mass: '5 ft' is a length");
  });

  it('makes -0 a plain 0', () => {
    for (const shape of [number(), integer()])
      expect(Object.is((read(shape, -0) as { value: number }).value, 0)).toBe(true);
  });

  it('lets a whole document be optional', () => {
    expect(read(optional(text()), undefined)).toEqual({ ok: true, value: undefined });
    expect(read(withDefault(text(), 'none'), undefined)).toEqual({ ok: true, value: 'none' });
  });
});

describe('a hostile document', () => {
  it('cannot reach a prototype', () => {
    const raw: unknown = JSON.parse('{"__proto__": {"polluted": true}, "constructor": "x"}');
    expect(messages(record(text()), raw)).toEqual([
      "'__proto__' cannot be the name of a field of the document",
    ]);
    expect(messages(object({ a: optional(text()) }), raw)).toHaveLength(2);
    const names = read(record(text()), {});
    expect(names.ok && names.value['constructor']).toBeUndefined();
    expect(messages(tagged('kind', { a: object({}) }), { kind: 'constructor' })[0]).toContain(
      'must be one of a',
    );
    expect(messages(object({ toString: text() }), {})).toEqual(['toString is missing; text was expected']);
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
  });

  it('of any depth or size gives few and short messages', () => {
    let deep: unknown = 'end';
    for (let i = 0; i < 100_000; i++) deep = { parts: [deep] };
    expect(problems(document, deep).length).toBeGreaterThan(0);
    expect(messages(list(text()), new Array(4_000_000_000))[0]).toContain('has 4000000000 members');
    const wide = Object.fromEntries(
      Array.from({ length: 5000 }, (_, i) => [`field${i}`.padEnd(5000, 'x'), i]),
    );
    const found = messages(object({ field: optional(text()) }), wide);
    expect(found).toHaveLength(21);
    expect(found.at(-1)).toBe('the document has 4980 more unknown fields');
    for (const message of [...found, ...messages(identifier(), 'x'.repeat(1e6))])
      expect(message.length).toBeLessThan(200);
  });
});

describe('a description', () => {
  it('holds what a table of fields needs', () => {
    const { fields = [] } = part.describe;
    expect(fields.map((f) => [f.name, f.shape.type, f.shape.dimension, f.shape.optional ?? false])).toEqual([
      ['id', 'identifier', undefined, false],
      ['name', 'text', undefined, false],
      ['mass', 'quantity', 'mass', false],
      ['stock', 'integer', undefined, false],
      ['peukert', 'number', undefined, true],
      ['bore', 'quantity', 'length', true],
      ['form', 'choice', undefined, false],
      ['vented', 'flag', undefined, true],
    ]);
    expect(fields[2]?.shape.limits).toEqual({ min: '0 kg', max: '5000 kg' });
    expect(fields[5]?.shape.fallback).toBe(0.0254);
    expect(fields[6]?.shape.choices).toEqual(['gun', 'pump']);
    expect(Object.keys(law.describe.cases ?? {})).toEqual(['displacement', 'centrifugal']);
    expect(law.describe.cases?.['centrifugal']?.fields?.[0]?.shape.of?.fields?.[0]?.name).toBe('flow');
  });
});

describe('a path', () => {
  it('is written as people read it', () => {
    expect(formatPath(['parts', 3, 'mass'])).toBe('parts[3].mass');
    expect(formatPath([])).toBe('');
    expect(formatPath([0, 'a b', 'x-y'])).toBe('[0]["a b"].x-y');
  });
});

describe('anything at all', () => {
  const anything = fc.anything({
    withBigInt: true,
    withNullPrototype: true,
    withSparseArray: true,
    withDate: true,
    withMap: true,
  });
  const nearly = fc.record(
    {
      parts: fc.oneof(
        anything,
        fc.array(
          fc.record(
            {
              id: anything,
              name: anything,
              mass: fc.oneof(anything, fc.string()),
              stock: anything,
              form: anything,
            },
            { requiredKeys: [] },
          ),
        ),
      ),
      laws: fc.oneof(
        anything,
        fc.dictionary(
          fc.string(),
          fc.record(
            { action: fc.constantFrom('displacement', 'centrifugal', '__proto__'), curve: anything },
            { requiredKeys: [] },
          ),
        ),
      ),
      share: anything,
    },
    { requiredKeys: [] },
  );

  it('is read or refused with named problems; it never throws and never gives a number that is not finite', () => {
    fc.assert(
      fc.property(
        fc.oneof(anything, nearly),
        fc.constantFrom<Shape<unknown>>(document, part, law, record(number()), list(integer())),
        (raw, shape) => {
          const result = read(shape, raw);
          if (result.ok) return allFinite(result.value);
          return (
            result.problems.length > 0 &&
            result.problems.every(
              (p) => p.message.length > 5 && p.code !== '' && typeof formatPath(p.path) === 'string',
            )
          );
        },
      ),
      { numRuns: 3000 },
    );
  });

  it('reads every good document it is given', () => {
    const parts = fc.record(
      {
        id: fc.stringMatching(/^[a-z0-9][a-z0-9-]{0,10}$/),
        name: fc.stringMatching(/^[A-Z][a-z ]{1,10}[a-z]$/),
        mass: fc
          .tuple(fc.double({ min: 1e-6, max: 1000, noNaN: true }), fc.constantFrom('kg', 'lb', 'g'))
          .map((q) => q.join(' ')),
        stock: fc.nat(),
        form: fc.constantFrom('gun', 'pump'),
        peukert: fc.double({ min: 1, max: 1.9, noNaN: true }),
      },
      { requiredKeys: ['id', 'name', 'mass', 'stock', 'form'] },
    );
    fc.assert(
      fc.property(fc.array(parts, { maxLength: 5 }), (raw) => {
        const result = read(document, { parts: raw, laws: {} });
        return result.ok && result.value.parts.length === raw.length;
      }),
      { numRuns: 500 },
    );
  });
});

function allFinite(value: unknown): boolean {
  if (typeof value === 'number') return Number.isFinite(value);
  if (typeof value !== 'object' || value === null) return true;
  return Object.values(value).every(allFinite);
}
