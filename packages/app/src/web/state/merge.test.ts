import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { merged } from './merge.ts';

const BASE = {
  brief: { height: '52 ft', wind: '3 mph' },
  items: [{ id: 'hose', length: '200 ft' }],
  notes: 'a',
};

describe('What two people made of one job', () => {
  it('is put together where each changed something else', () => {
    const mine = { ...BASE, brief: { ...BASE.brief, height: '60 ft' } };
    const theirs = { ...BASE, items: [{ id: 'hose', length: '250 ft' }] };
    expect(merged(BASE, mine, theirs)).toEqual({
      document: {
        ...BASE,
        brief: { height: '60 ft', wind: '3 mph' },
        items: [{ id: 'hose', length: '250 ft' }],
      },
      clashes: [],
    });
  });

  it('is asked about where both changed the same value, and keeps what was chosen', () => {
    const mine = { ...BASE, brief: { height: '60 ft', wind: '5 mph' } };
    const theirs = { ...BASE, brief: { ...BASE.brief, height: '55 ft' } };
    const clash = { path: ['brief', 'height'], mine: '60 ft', theirs: '55 ft' };
    expect(merged(BASE, mine, theirs)).toEqual({
      document: { ...BASE, brief: { height: '55 ft', wind: '5 mph' } },
      clashes: [clash],
    });
    expect(merged(BASE, mine, theirs, () => true).document.brief.height).toBe('60 ft');
  });

  it('is asked about once where one put a whole list that the other changed in', () => {
    const mine = { ...BASE, items: [] };
    const theirs = { ...BASE, items: [{ id: 'hose', length: '250 ft' }] };
    expect(merged(BASE, theirs, mine).clashes).toEqual([{ path: ['items'], mine: theirs.items, theirs: [] }]);
    expect(merged(BASE, mine, theirs, () => true).document.items).toEqual([]);
  });

  it('is not asked about where both did the same', () => {
    const same = { ...BASE, notes: 'b' };
    expect(merged(BASE, same, { ...same })).toEqual({ document: same, clashes: [] });
  });

  it('never loses what one changed alone, whatever the other did', () => {
    const record = fc.dictionary(fc.constantFrom('a', 'b', 'c', 'd'), fc.integer({ min: 0, max: 3 }));
    fc.assert(
      fc.property(record, record, record, (base, mine, theirs) => {
        const { document, clashes } = merged(base, mine, theirs);
        for (const key of ['a', 'b', 'c', 'd']) {
          if (clashes.some((c) => c.path[0] === key)) continue;
          const [b, m, t] = [base[key], mine[key], theirs[key]];
          expect(document[key]).toBe(m === b ? t : m);
        }
        expect(merged(base, mine, theirs, () => true).clashes).toEqual(clashes);
      }),
    );
  });
});
