import { describe, expect, it } from 'vitest';
import type { RigJson } from '../protocol.ts';
import { changed, pathOf, valueAt } from './change.ts';
import { edited, judged, newJob, redone, settled, undone } from './job.ts';

const rig = {
  format: 'spraywright-rig',
  id: 'a',
  title: 'A rig',
  layout: 'heavy-cart',
  brief: { duties: [{ id: 'tops', target: { height: '52 ft' } }], site: {} },
  items: [
    { id: 'hose', part: 'hose-1in', length: '250 ft' },
    { id: 'tip', part: 'tip-1' },
  ],
  nodes: [],
  lines: [],
} satisfies RigJson;
const put = (path: string, value: unknown) => ({ about: path, puts: [{ path: pathOf(path), value }] });

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
});

describe('A job', () => {
  it('takes typing in one field back in one step, and the next field on its own', () => {
    let job = newJob(rig);
    for (const text of ['3', '30', '300 ft'])
      job = edited(job, put('items.0.length', text), 'items.0.length');
    job = edited(settled(job), put('title', 'Another'), 'title');
    expect(job.past).toHaveLength(2);
    job = undone(job);
    expect(valueAt(job.rig, pathOf('items.0.length'))).toBe('300 ft');
    job = undone(job);
    expect(job.rig).toEqual(rig);
    expect(undone(job)).toBe(job);
    expect(redone(redone(job)).rig.title).toBe('Another');
  });

  it('forgets what was undone once something else is done', () => {
    const job = edited(undone(edited(newJob(rig), put('title', 'B'))), put('title', 'C'));
    expect(redone(job)).toBe(job);
  });

  it('keeps the last document that could be read while the newest cannot', () => {
    const bad = judged(edited(newJob(rig), put('items.0.length', 'long')), false, rig);
    expect(bad.good).toBe(rig);
    const worse = judged(edited(bad, put('items.0.length', 'longer')), false, rig);
    expect(worse.good).toBe(rig);
    expect(judged(undone(worse), true, rig).good).toBeUndefined();
  });
});
