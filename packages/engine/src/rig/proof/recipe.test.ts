import { describe, expect, it } from 'vitest';
import type { PartOf } from '../../catalogue/index.ts';
import { hoseOf, tip, workContext } from '../../../test/work-rig.ts';
import { recipePromises } from './recipe.ts';

const SOURCE_UMASS = 'Univ. of Massachusetts Extension, Ratios and concentrations';
const wash = { liquid: 'naocl_wash', strength: 0.5, strengthUnit: 'trade %', stock: 3.5 };

function eductor(dial: PartOf<'eductor'>['dial']): PartOf<'eductor'> {
  return {
    ...hoseOf(0.01),
    kind: 'eductor',
    flowAtOneBar: 1e-4,
    suction: [],
    ...(dial === undefined ? {} : { dial }),
  };
}

const promiseFor = (liquid: object, others: Record<string, PartOf<'eductor'>> = {}) =>
  recipePromises(
    workContext({
      line: { hose: hoseOf(0.0127), tip: tip() },
      others,
      outlet: { flow: 5e-4, tipPressure: 5e5 },
      liquid: { ...liquid },
    }),
  )[0];

describe('the recipe of a mix', () => {
  it('thins 3.5 to 0.5 with six parts of water (mass balance, V1 = C2 V2 / C1)', () => {
    const promise = promiseFor(wash)!;
    const figure = (text: string) => promise.working.find((s) => s.text === text)!.figure!.value;
    const [stock, water] = [
      figure('stock for a full tank, by volume'),
      figure('water for a full tank, by volume'),
    ];
    expect(water / stock).toBeCloseTo(6, 9);
    expect(promise.state).toBe('kept');
  });

  it('is broken when the stock has grown too weak, and asks for a strength that nobody gave', () => {
    expect(promiseFor({ ...wash, stock: 0.4 })!.state).toBe('broken');
    expect(promiseFor({ liquid: 'naocl_wash', stock: 3.5 })!.state).toBe('unknown');
    expect(promiseFor({ ...wash, stock: undefined })).toBeUndefined();
  });

  it(`reads a dial by what its maker means: 1:10 on 12.5 % gives 1.25 or 1.14 (${SOURCE_UMASS})`, () => {
    const said = (means: 'one in N' | 'one and N') =>
      promiseFor(
        { ...wash, stock: 12.5, strength: 1 },
        { mixer: eductor({ settings: [10], means }) },
      )!.working.map((s) => s.text);
    expect(said('one in N')).toContain('proportioner at 1:10 (one in N) gives 1.25 trade %');
    expect(said('one and N')).toContain('proportioner at 1:10 (one and N) gives 1.14 trade %');
  });
});
