import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changeBetween, changed, pathOf } from './change.ts';

const rig = {
  title: 'A rig',
  brief: { duties: [{ id: 'tops', target: { height: '52 ft' } }], site: {} },
  items: [
    { id: 'hose', part: 'hose-1in', length: '250 ft' },
    { id: 'tip', part: 'tip-1' },
  ],
};
const put = (path: string, value?: unknown) => ({ about: path, puts: [{ path: pathOf(path), value }] });

describe('A change of a document', () => {
  it('changes only what lies on its path and leaves the document it was given alone', () => {
    const before = structuredClone(rig);
    const { document } = changed(rig, put('items.0.length', '300 ft'));
    expect(document.items[0]).toEqual({ id: 'hose', part: 'hose-1in', length: '300 ft' });
    expect(document.items[1]).toBe(rig.items[1]);
    expect(document.brief).toBe(rig.brief);
    expect(rig).toEqual(before);
  });

  it('is taken back by its inverse, also where a field was not there before', () => {
    for (const change of [
      put('items.1.count', 3),
      put('brief.site.altitude', '600 ft'),
      put('brief.duties.0.target.height', 'high'),
      put('brief.wishes.colour.frame', 'green'),
      put('brief.site'),
      put('brief.wishes.colour'),
      put('items.2', { id: 'gun' }),
      put('items.1'),
      { about: 'two', puts: [...put('title', 'B').puts, ...put('title', 'C').puts] },
    ]) {
      const there = changed(rig, change);
      const back = changed(there.document, there.inverse);
      expect(back.document).toEqual(rig);
      expect(changed(back.document, back.inverse).document).toEqual(there.document);
    }
  });

  it('replaces the whole document at the empty path', () => {
    const { document, inverse } = changed<unknown>(rig, { about: 'all', puts: [{ path: [], value: 1 }] });
    expect(document).toBe(1);
    expect(changed(document, inverse).document).toBe(rig);
  });

  it('refuses a path that leads nowhere, by name', () => {
    expect(() => changed(rig, put('title.colour', 1))).toThrow(/'title.colour' leads through 'colour'/);
    expect(() => changed(rig, put('items.4', {}))).toThrow(/names place 4 of a list of 2/);
    expect(() => changed(rig, put('items.first', {}))).toThrow(/names place first/);
    expect(() => changed(rig, put('items.0'))).toThrow(/only the last can be taken/);
    expect(() => changed(rig, put('__proto__.polluted', 1))).toThrow(RangeError);
  });
});

describe('The change between two documents', () => {
  it('puts only the fields that differ', () => {
    const { document } = changed(rig, put('items.0.length', '300 ft'));
    expect(changeBetween(rig, document, 'longer').puts).toEqual([
      { path: ['items', 0, 'length'], value: '300 ft' },
    ]);
    expect(changeBetween(rig, structuredClone(rig), 'nothing').puts).toEqual([]);
  });

  it('makes the second of the first, and its inverse the first of the second, for any two', () => {
    const json = (value: unknown) => JSON.stringify(value);
    const plain = (value: unknown): unknown => JSON.parse(json(value)) as unknown;
    fc.assert(
      fc.property(fc.dictionary(fc.string(), fc.jsonValue()), fc.jsonValue(), fc.nat(), (a, value, at) => {
        fc.pre(!json([a, value]).includes('__proto__'));
        const keys = Object.keys(a);
        const b = keys.length === 0 ? value : { ...a, [keys[at % keys.length]!]: value, more: [value] };
        const { document, inverse } = changed<unknown>(a, changeBetween(a, b, ''));
        expect(plain(document)).toEqual(plain(b));
        expect(plain(changed(document, inverse).document)).toEqual(plain(a));
      }),
    );
  });
});
