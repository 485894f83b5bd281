import { describe, expect, it } from 'vitest';
import { LAYOUTS } from '../catalogue/index.ts';
import { changed } from '../quantity/index.ts';
import { addDuty, addLiquid, aimDuty, removeDuty, removeLiquid } from './brief-edit.ts';
import { readBrief } from './brief.ts';
import type { RawRig } from './design/assemble.ts';
import { outletsAmiss, outletsOf } from './outlets.ts';
import { confirming, isStart, startValuesOf } from './starts.ts';

const brief = {
  format: 'spraywright-brief',
  id: 'pasture',
  title: 'Pasture rig',
  customer: 'Somebody',
  work: 'tractor-spot-and-boom',
  liquids: [
    { id: 'mix', name: 'Weed killer mix', liquid: 'glyphosate_mix' },
    { id: 'rinse', name: 'Clean water', liquid: 'water', use: 'flush' },
  ],
  duties: [
    {
      id: 'fence',
      name: 'Fence row',
      liquid: 'mix',
      open: ['gun'],
      tankLevel: '30 %',
      target: { aim: 'distance', distance: '20 ft' },
      flow: '1.5 gpm',
      drench: { dose: '1 qt' },
    },
  ],
  carrier: { form: 'three-point' },
  site: {},
  limits: {},
  wishes: {},
};
const rig = {
  format: 'spraywright-rig',
  id: 'pasture',
  title: 'Pasture rig',
  layout: 'three-point',
  brief,
  items: [
    { id: 'regulator', part: 'regulator-a', set: '60 psi', setByDuty: { fence: '85 psi' } },
    { id: 'tank', part: 'tank-a' },
  ],
  nodes: [],
  lines: [],
} satisfies RawRig;

type Duties = { id: string; open: string[]; starts?: Record<string, true>; [field: string]: unknown }[];
const briefOf = (r: RawRig) => r.brief as typeof brief & { duties: Duties };
const problems = (r: RawRig) => {
  const read = readBrief(r.brief);
  return read.ok ? [] : read.problems.map((p) => p.message);
};

describe('a duty more', () => {
  it('begins like the last at the same outlet, its own measures left out, and every value is marked', () => {
    const { document, inverse } = changed<RawRig>(
      rig,
      addDuty(rig, { name: 'Along the ditch', outlet: 'gun', liquid: 'mix' }),
    );
    expect(problems(document)).toEqual([]);
    const duty = briefOf(document).duties[1]!;
    expect(duty).toMatchObject({ id: 'along-the-ditch', open: ['gun'], flow: '1.5 gpm', tankLevel: '30 %' });
    expect(duty.drench).toBeUndefined();
    expect(Object.keys(duty.starts!).sort()).toEqual(['flow', 'tankLevel', 'target.distance']);
    expect(document.items[0]!.setByDuty).toEqual({ fence: '85 psi', 'along-the-ditch': '85 psi' });
    expect(changed(document, inverse).document).toEqual(rig);
  });

  it('begins with start values of the work where no duty has that outlet', () => {
    const { document } = changed<RawRig>(
      rig,
      addDuty(rig, { name: 'The field', outlet: 'boom', liquid: 'mix' }),
    );
    expect(problems(document)).toEqual([]);
    expect(startValuesOf(document.brief)).toContain('duties.1.application.rate');
    expect(isStart(document, ['brief', 'duties', 1, 'application', 'rate'])).toBe(true);
    expect(outletsAmiss(document as never)).toEqual({ missing: ['gun', 'boom'], idle: [] });
  });

  it.each(LAYOUTS.flatMap((l) => l.works.map((work) => ({ work }))))(
    'is readable at every outlet of $work',
    ({ work }) => {
      for (const outlet of outletsOf(work, LAYOUTS)) {
        const of = {
          ...rig,
          brief: { ...brief, work, duties: [{ ...brief.duties[0]!, open: ['second-gun'] }] },
        };
        expect(
          problems(changed<RawRig>(of, addDuty(of, { name: 'More', outlet, liquid: 'mix' })).document),
        ).toEqual([]);
      }
    },
  );

  it('has an id that no other has, and a name that is one', () => {
    const twice = changed<RawRig>(
      rig,
      addDuty(rig, { name: 'Fence', outlet: 'gun', liquid: 'mix' }),
    ).document;
    expect(briefOf(twice).duties[1]!.id).toBe('fence-2');
    expect(() => addDuty(rig, { name: ' ', outlet: 'gun', liquid: 'mix' })).toThrow(
      "the name of the duty is ''; 2 to 80 characters are needed",
    );
    expect(() => addDuty(rig, { name: 'Roof', outlet: 'gun', liquid: 'oil' })).toThrow(
      "liquid is 'oil'; the brief has 'mix', 'rinse'",
    );
  });
});

describe('a duty less', () => {
  const two = changed<RawRig>(rig, addDuty(rig, { name: 'Second', outlet: 'gun', liquid: 'rinse' })).document;
  const used = {
    ...two,
    brief: {
      ...(two.brief as object),
      day: { duty: 'second', units: 4 },
      transfer: { duty: 'second', volume: '100 gal', within: '5 min' },
    },
  };

  it('takes what names it and what is set for it along, and comes back whole', () => {
    const { document, inverse } = changed<RawRig>(used, removeDuty(used, 'second'));
    expect(problems(document)).toEqual([]);
    expect(document.brief).toEqual({ ...brief, day: { units: 4 } });
    expect(document.items).toEqual(rig.items);
    expect(changed(document, inverse).document).toEqual(used);
  });

  it('is refused when it is the only one, or none', () => {
    expect(() => removeDuty(rig, 'fence')).toThrow('"Fence row" is the only duty: change it instead');
    expect(() => removeDuty(rig, 'roof')).toThrow("duty is 'roof'; the brief has 'fence'");
  });
});

describe('a liquid more, and less', () => {
  it('begins with a strength inside its usual range where nothing is known without one', () => {
    const { document } = changed<RawRig>(rig, addLiquid(rig, { liquid: 'naoh', use: 'spray' }));
    expect(problems(document)).toEqual([]);
    expect(briefOf(document).liquids[2]).toMatchObject({
      liquid: 'naoh',
      strength: 10,
      strengthUnit: 'weight %',
    });
    expect(startValuesOf(document.brief)).toEqual(['liquids.2.strength', 'liquids.2.strengthUnit']);
  });

  it('may be one that no table has', () => {
    const { document } = changed<RawRig>(
      rig,
      addLiquid(rig, { liquid: '', name: 'Seaweed extract', use: 'winterise' }),
    );
    expect(problems(document)).toEqual([]);
    expect(briefOf(document).liquids[2]).toEqual({
      id: 'seaweed-extract',
      name: 'Seaweed extract',
      liquid: 'Seaweed extract',
      use: 'winterise',
    });
  });

  it('goes only when no duty sprays it', () => {
    expect(() => removeLiquid(rig, 'mix')).toThrow(
      '"Weed killer mix" is sprayed in "Fence row": choose another there first',
    );
    expect(briefOf(changed<RawRig>(rig, removeLiquid(rig, 'rinse')).document).liquids).toHaveLength(1);
  });
});

describe('what a duty aims at', () => {
  it('keeps what was said and marks what begins', () => {
    const { document } = changed<RawRig>(rig, aimDuty(rig, 'fence', 'roof'));
    expect(problems(document)).toEqual([]);
    expect(briefOf(document).duties[0]!.target).toEqual({ aim: 'roof', height: '16 ft', distance: '20 ft' });
    expect(startValuesOf(document.brief)).toEqual(['duties.0.target.height']);
    expect(
      briefOf(changed<RawRig>(rig, aimDuty(rig, 'fence', undefined)).document).duties[0]!.target,
    ).toBeUndefined();
  });
});

describe('a start value', () => {
  const begun = changed<RawRig>(rig, aimDuty(rig, 'fence', 'height')).document;
  const put = (path: (string | number)[], value: unknown) =>
    startValuesOf(changed(begun, confirming(begun, { about: '', puts: [{ path, value }] })).document.brief);

  it('is confirmed by whoever sets it, if only to what it was', () => {
    expect(startValuesOf(begun.brief)).toEqual(['duties.0.target.height', 'duties.0.target.standoff']);
    expect(put(['brief', 'duties', 0, 'target', 'height'], '30 ft')).toEqual(['duties.0.target.standoff']);
  });

  it('stays one where it is put unchanged together with others', () => {
    expect(
      put(['brief', 'duties', 0, 'target'], { aim: 'height', height: '40 ft', standoff: '12 ft' }),
    ).toEqual(['duties.0.target.standoff']);
  });
});
