import { describe, expect, it } from 'vitest';
import { briefShape } from '@spraywright/engine/rig';
import type { ShapeDescription } from '@spraywright/engine/quantity';
import { BRIEF_FIELDS, DUTY_FIELDS, LIQUID_FIELDS } from './brief-fields.data.ts';
import { BriefGivens } from './brief-given.ts';

/** Fields that have a place of their own on the page, or none, and why. */
const ELSEWHERE: Readonly<Record<string, string>> = {
  format: 'what the document is',
  id: 'of the job, never shown to be changed',
  title: 'a sentence of the brief',
  customer: 'a sentence of the brief',
  work: 'another kind of work is another job',
  'liquids.*.id': 'made of the name',
  'liquids.*.products': 'rows of their own',
  'duties.*.id': 'made of the name',
  'duties.*.liquid': 'a sentence of the brief',
  'duties.*.open': 'ticks of their own',
  'duties.*.target.aim': 'a choice of its own',
  'duties.*.cups.pitch': 'measured in the yard, not asked in a call',
  'duties.*.cups.catches': 'measured in the yard, not asked in a call',
  'duties.*.cups.manner': 'measured in the yard, not asked in a call',
  decisions: 'rows of their own',
};

function leaves(shape: ShapeDescription, path: string): string[] {
  const inside = (name: string) => (path === '' ? name : `${path}.${name}`);
  if (shape.type === 'tagged')
    return [inside(shape.tag!), ...Object.values(shape.cases!).flatMap((c) => leaves(c, path))];
  if (shape.fields !== undefined) return shape.fields.flatMap((f) => leaves(f.shape, inside(f.name)));
  if (shape.type === 'list' && (path === 'duties' || path === 'liquids'))
    return leaves(shape.of!, `${path}.*`);
  return path.endsWith('starts') ? [] : [path];
}

const asked = [...BRIEF_FIELDS, ...DUTY_FIELDS, LIQUID_FIELDS].flatMap((g) =>
  g.fields.map(([path]) => (g.at === '' ? path : `${g.at}.${path}`)),
);
const rig = {
  brief: {
    carrier: { form: 'cart' },
    site: {},
    limits: { budgetCents: 500000 },
    wishes: {},
    liquids: [{ id: 'mix', liquid: 'seaweed' }],
    duties: [
      {
        id: 'a',
        name: 'Tops',
        tankLevel: '50 %',
        trees: { crownHeight: '20 ft' },
        starts: { tankLevel: true },
      },
    ],
  },
};
const lists = { outlets: [], liquids: [['water', 'Water']] as const, families: [] };
const given = (path: string) => new BriefGivens(rig, 'us', lists).given(path, 'a label');

describe('The whole brief on the page', () => {
  it('has a place for every field that a brief can have', () => {
    const all = new Set(leaves(briefShape.describe, ''));
    expect([...all].filter((p) => !asked.includes(p) && ELSEWHERE[p] === undefined)).toEqual([]);
    expect([...asked, ...Object.keys(ELSEWHERE)].filter((p) => !all.has(p))).toEqual([]);
    expect(new Set(asked).size).toBe(asked.length);
  });

  it('leaves open what nobody said, and takes the widest field away that says nothing more', () => {
    expect(given('carrier.massLimit')).toMatchObject({ shown: '', clears: 'brief.carrier.massLimit' });
    expect(given('duties.0.trees.crownHeight')).toMatchObject({
      shown: '20 ft',
      clears: 'brief.duties.0.trees',
    });
    expect(given('duties.0.trees.crownWidth')).toMatchObject({
      shown: '',
      clears: 'brief.duties.0.trees.crownWidth',
    });
    expect(given('duties.0.tankLevel')).toMatchObject({ shown: '50 %', start: true });
    expect(given('duties.0.tankLevel').clears).toBeUndefined();
    expect(given('carrier.form').clears).toBeUndefined();
  });

  it('tells what stands in where a field has a start value, and nothing where what holds it is not there', () => {
    expect(given('site.driftAllowed')).toMatchObject({ shown: '1.0%', start: true, sort: 'quantity' });
    expect(given('duties.0.trees.canopy')).toMatchObject({ shown: 'dense', start: true });
    expect(given('duties.0.application.basis')).toMatchObject({ shown: '' });
    expect(given('duties.0.application.basis').choices?.[0]).toEqual(['', 'not said']);
    expect(given('limits.budgetCents')).toMatchObject({ shown: '$5,000', sort: 'money' });
  });

  it('offers liquids of the tables, duties by name, and what stands though it is in no table', () => {
    expect(given('liquids.0.liquid').choices).toEqual([
      ['water', 'Water'],
      ['seaweed', 'seaweed, in no table'],
    ]);
    expect(given('day.duty').choices).toEqual([
      ['', 'not said'],
      ['a', 'Tops'],
    ]);
  });
});
