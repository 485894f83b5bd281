import { describe, expect, it } from 'vitest';
import { partOf, readCatalogue } from './catalogue.ts';

const head = { file: 'catalogue.json', raw: { name: 'test', version: 3 } };
const every = {
  name: 'A part',
  mass: '1 lb',
  size: { length: '1 in', width: '1 in', height: '1 in' },
  costCents: 100,
  priceCents: 200,
  leadTimeDays: 1,
  stock: 1,
  ports: [],
  wetted: [],
};
const hose = {
  ...every,
  id: 'hose-1',
  use: 'delivery',
  bore: '1/2 in',
  outsideDiameter: '0.8 in',
  roughness: '0.01 mm',
  maxPressure: '600 psi',
  minPressure: '0 psi',
  bendRadius: '4 in',
  longestPiece: '300 ft',
};
const problemsOf = (kind: string, part: unknown) => {
  const result = readCatalogue(head, [{ file: 'a.json', raw: { kind, parts: [part] } }]);
  return result.ok ? [] : result.problems;
};

describe('a catalogue', () => {
  it('is read into SI and found by id and kind', () => {
    const result = readCatalogue(head, [
      { file: 'hose.json', raw: { kind: 'hose', about: 'hoses', parts: [hose] } },
    ]);
    expect(result.ok).toBe(true);
    if (!result.ok) return;
    expect(result.catalogue.version).toBe(3);
    expect(partOf(result.catalogue, 'hose-1', 'hose')?.bore).toBeCloseTo(0.0127, 12);
    expect(partOf(result.catalogue, 'hose-1', 'tank')).toBeUndefined();
    expect(result.catalogue.byKind.hose).toHaveLength(1);
  });

  it('names file, field and value of each problem, all of them at once', () => {
    const problems = problemsOf('hose', { ...hose, bore: '12 gpm', maxPressure: '-3 psi', mas: 1 });
    expect(problems.map((p) => p.path.join('.'))).toEqual(
      expect.arrayContaining(['parts.0.bore', 'parts.0.maxPressure', 'parts.0.mas']),
    );
    expect(problems.every((p) => p.file === 'a.json')).toBe(true);
    expect(problems.find((p) => p.path[2] === 'bore')?.message).toMatch(/12 gpm/);
  });

  it('keeps a retired part for the rigs that have it, and offers it to no new one', () => {
    const file = { file: 'hose.json', raw: { kind: 'hose', parts: [hose, { ...hose, id: 'hose-2' }] } };
    const retiring = (ids: string[]) => ({ ...head, raw: { ...head.raw, retired: ids } });
    const result = readCatalogue(retiring(['hose-1']), [file]);
    if (!result.ok) throw new Error(result.problems[0]!.message);
    expect(result.catalogue.byKind.hose.map(({ id }) => id)).toEqual(['hose-2']);
    expect(partOf(result.catalogue, 'hose-1', 'hose')?.id).toBe('hose-1');
    const refused = readCatalogue(retiring(['hose-3']), [file]);
    expect(!refused.ok && refused.problems[0]).toMatchObject({
      file: 'catalogue.json',
      path: ['retired', 0],
      message: expect.stringContaining("'hose-3'") as string,
    });
  });

  it('refuses the same id twice and says where it was used first', () => {
    const result = readCatalogue(head, [
      { file: 'a.json', raw: { kind: 'hose', parts: [hose] } },
      { file: 'b.json', raw: { kind: 'hose', parts: [hose] } },
    ]);
    expect(!result.ok && result.problems[0]).toMatchObject({ file: 'b.json', code: 'duplicate' });
    expect(!result.ok && result.problems[0]?.message).toMatch(/a\.json, parts\[0\]/);
  });

  it('refuses fields that contradict one another', () => {
    expect(problemsOf('hose', { ...hose, outsideDiameter: '0.4 in' })[0]?.message).toMatch(
      /larger than the bore/,
    );
    expect(problemsOf('hose', { ...hose, priceCents: 50 })[0]?.message).toMatch(/below the cost/);
  });

  it('refuses a pump curve that droops or turns back', () => {
    const pump = {
      ...every,
      id: 'pump-1',
      maxPressure: '60 psi',
      maxSpeed: '3600 rpm',
      npshRequired: '8 ft',
      law: {
        action: 'centrifugal',
        ratedSpeed: '3600 rpm',
        efficiency: '60 %',
        curve: [
          { flow: '0 gpm', head: '100 ft' },
          { flow: '50 gpm', head: '104 ft' },
          { flow: '100 gpm', head: '60 ft' },
        ],
      },
    };
    expect(problemsOf('pump', pump).map((p) => p.message)).toEqual([expect.stringMatching(/head must fall/)]);
  });

  it('refuses a kind it does not know and offers the nearest', () => {
    expect(problemsOf('hoses', hose)[0]?.message).toMatch(/hose/);
  });
});
