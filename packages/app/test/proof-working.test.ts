import { runInNewContext } from 'node:vm';
import {
  figureText,
  proveRig,
  stepText,
  valueOfSum,
  type Figure,
  type PromiseKind,
  type Step,
} from '@spraywright/engine/rig';
import { describe, expect, it } from 'vitest';
import { demoBriefs, demoCatalogue, demoRig, demoShop } from './demo.ts';

const [catalogue, shop] = [demoCatalogue(), demoShop()];

type WithSum = Required<Pick<Step, 'text' | 'figure' | 'sum'>>;

const lines = demoBriefs().flatMap(({ name }) =>
  proveRig(demoRig(name, catalogue, shop).rig, catalogue, shop).promises.flatMap((p) =>
    p.working
      .filter((s): s is WithSum => s.sum !== undefined && s.figure !== undefined)
      .map((step) => ({ kind: p.kind, id: `${name} ${p.id}: ${step.text}`, step })),
  ),
);

/** The sum once more, written as the language of the test has it: a second reader of the formula. */
function again(formula: string, term: (name: string) => number): number {
  const code = formula
    .replaceAll(/\{([^}]+)\}/g, (_, name: string) => `(${term(name)})`)
    .replaceAll('×', '*')
    .replaceAll('−', '-')
    .replaceAll('^', '**')
    .replaceAll('²', '**2')
    .replaceAll('π', 'Math.PI')
    .replaceAll('√', 'Math.sqrt')
    .replaceAll(/\b(max|min|exp|tan|atan)\(/g, 'Math.$1(')
    .replaceAll(/\bln\(/g, 'Math.log(');
  return runInNewContext(code, { Math }) as number;
}

const GROUPS = /(?<=\d)[,\u00A0](?=\d{3})/g;
/** A unit behind its figure. */
const UNIT = /(?<=\d) ?(?:lbf·ft|N·m|Ω\/1000 ft|[a-zA-ZΩ°]+[²³⁴]?(?:\/[a-zA-Z]+[²³]?)?)(?=[ )²,]|$)/g;

/** What the printed sum comes to: its figures as printed, units struck out. */
function byHand(text: string): number {
  const sum = text.slice(text.lastIndexOf(': ') + 2);
  return again(sum.replaceAll(GROUPS, '').replaceAll(UNIT, ''), () => Number.NaN);
}

/** A printed figure, and what it may be off by rounding. */
function read(text: string, figure: Figure): { value: number; rounding: number } {
  const number = /−?[\d.]+/.exec(text.replaceAll(GROUPS, ''))![0];
  const share = figure.dimension === 'ratio' ? 100 : 1;
  const decimals = number.split('.')[1]?.length ?? 0;
  return { value: Number(number.replace('−', '-')) / share, rounding: 0.5001 / 10 ** decimals / share };
}

describe('The working of promises', () => {
  it('has sums in every kind of promise that a formula stands behind', () => {
    const kinds = new Set(lines.map((l) => l.kind));
    const expected: PromiseKind[] = [
      ...(['flow', 'rating', 'suction', 'agitation', 'power', 'reel', 'weight'] as const),
      ...(['structure', 'electrics', 'rinse', 'pattern', 'day'] as const),
      ...(['reach', 'hold', 'stability', 'liquid'] as const),
    ];
    expect([...kinds]).toEqual(expect.arrayContaining(expected));
  });

  it.each([
    ['tall-elms reach:tops', /^9 in 10 of the farthest drops/],
    ['tall-elms reach:tops', /^length over which it holds together/],
    ['tall-elms stability:slope', /^slope at which it tips over/],
    ['road-dust stability:bend', /^sideways pull at which it rolls/],
    ['tall-elms structure:rails', /^largest moment in one rail/],
    ['tall-elms structure:rails', /^stress at top and bottom/],
    ['tall-elms structure:tongue', /^stress at top and bottom/],
    ['roof-skid liquid:strength:straight', /^strength as field tables have it/],
    ['roof-skid day:work', /^the whole day/],
    ['roof-skid day:work', /^done in the day/],
    ['three-point-pasture day:area', /^done in the day/],
  ])('%s shows its sum: %s', (id, text) => {
    expect(lines.filter((l) => l.id.startsWith(`${id}: `) && text.test(l.step.text))).not.toEqual([]);
  });

  it('comes to its figure in every line of every demo rig', () => {
    expect(lines.length).toBeGreaterThan(200);
    for (const { id, step } of lines) {
      const { formula, terms, factor = 1 } = step.sum;
      const told = `${id}: ${formula}`;
      const value = again(formula, (name) => terms[name]?.value ?? Number.NaN) * factor;
      const scale = Math.max(1e-12, Math.abs(step.figure.value));
      expect(Math.abs(value - step.figure.value) / scale, told).toBeLessThan(1e-9);
      const own = valueOfSum(formula, (name) => terms[name]!.value) * factor;
      expect(Math.abs(own - value) / scale, told).toBeLessThan(1e-9);
    }
  });

  it.each(['us', 'metric'] as const)('can be done again by hand from its %s figures as printed', (units) => {
    for (const { id, step } of lines) {
      const text = stepText(step, units);
      const { value, rounding } = read(figureText(step.figure, units), step.figure);
      // Terms have four figures; a difference of nearly equal ones keeps fewer.
      const coarse = step.sum.formula.includes('−') ? 0.02 : 0.002;
      expect(Math.abs(byHand(text) - value), `${id}: ${text}`).toBeLessThan(
        rounding + coarse * Math.abs(value),
      );
    }
  });

  it('has the factors that the trade knows between its units', () => {
    const flow = { value: 10 * GPM, dimension: 'flow' } as const;
    const rise = { value: 500 * PSI, dimension: 'pressure' } as const;
    const figure = { value: flow.value * rise.value, dimension: 'power' } as const;
    const sum = { formula: '{flow} × {rise}', terms: { flow, rise } };
    // Hydraulic horsepower is gpm psi / 1714: common knowledge of the trade (550 ft lbf/s by definition).
    expect(stepText({ text: 'power', figure, sum }, 'us')).toBe(
      'power, flow × rise: 10.00 gpm × 500.0 psi / 1,714',
    );
    // kW = L/min bar / 600, by definition of the units.
    expect(stepText({ text: 'power', figure, sum }, 'metric')).toMatch(/ L\/min × [\d.]+ bar \/ 600$/);
  });

  it('refuses a sum that cannot be read', () => {
    const one = () => 1;
    expect(() => valueOfSum('{a} × × {b}', one)).toThrow(/cannot be read at '×'/);
    expect(() => valueOfSum('({a} + 2', one)).toThrow(/its end/);
    expect(() => valueOfSum('{a} ? 2', one)).toThrow(/'\? 2'|' \? 2'/);
    expect(valueOfSum('2 + 3 × 2 ^ 2 − max(1, 4) / √(16)', one)).toBe(13);
  });
});

const GPM = (231 * 0.0254 ** 3) / 60;
const PSI = 4.4482216152605 / 0.0254 ** 2;
