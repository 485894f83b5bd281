import { describe, expect, it } from 'vitest';
import type { RigJson } from '../protocol.ts';
import { pathOf, valueAt } from '@spraywright/engine/quantity';
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

  it('makes no step of an edit that sets what is there', () => {
    const moved = edited(newJob(rig), put('items.0.length', '240 ft'), 'drag');
    expect(edited(moved, put('items.0.length', '240 ft'), 'drag')).toBe(moved);
    const undoing = undone(moved);
    expect(edited(undoing, put('items.0.length', '250 ft'))).toBe(undoing);
  });

  it('takes a start value that is set to what it is as confirmed', () => {
    const brief = { ...rig.brief, site: { wind: '5 mph' }, starts: { 'site.wind': true } };
    const job = edited(newJob({ ...rig, brief }), put('brief.site.wind', '5 mph'));
    expect(job.past).toHaveLength(1);
    expect(edited(job, put('brief.site.wind', '5 mph'))).toBe(job);
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
