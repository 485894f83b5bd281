import { describe, expect, it } from 'vitest';
import { carrier, engine, pump, reel, rigOf, roundTank } from '../../../test/machine-rig.ts';
import { hoseOf, tip } from '../../../test/work-rig.ts';
import { driveOf } from '../drive.ts';
import { TOLERANCES } from './tolerances.data.ts';
import { uncertainInputs } from './uncertain-inputs.ts';
import { withFactors } from './with-factors.ts';

const rig = rigOf({
  carrier: carrier('cart'),
  tank: roundTank(0.9, 1.4),
  engine: engine(40),
  pump: pump(20),
  reel: reel(30),
  hose: hoseOf(0.0127),
  tip: tip(),
});

describe('inputs that are not known exactly', () => {
  it('are those of the table that a part of the rig has, once for each such part, and those of the whole rig', () => {
    const ids = uncertainInputs(rig).map((i) => i.id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids).toEqual(
      expect.arrayContaining([
        'pump-flow:pump',
        'drive-speed:engine',
        'hose-bore:hose',
        'tip-wear:tip',
        'dry-mass:rig',
        'wind:rig',
      ]),
    );
    expect(ids).not.toContain('set-pressure:regulator');
    expect(ids).not.toContain('strainer-dirt:strainer');
  });

  it('take what readings have taught in place of the tolerance', () => {
    const taught = {
      id: 'tip-flow:tip',
      mean: -0.02,
      deviation: 0.01,
      source: 'bucket on the day of the test',
    };
    const find = (inputs: ReturnType<typeof uncertainInputs>, id: string) => inputs.find((i) => i.id === id);
    const inputs = uncertainInputs(rig, [taught]);
    expect(find(inputs, 'tip-flow:tip')).toMatchObject(taught);
    expect(find(inputs, 'tip-wear:tip')).toMatchObject({ mean: 0.03, deviation: 0.02 });
  });

  it('each say where their size comes from, and how to take the doubt away', () => {
    for (const [kind, { source, check, deviation }] of Object.entries(TOLERANCES)) {
      expect(source.length, kind).toBeGreaterThan(8);
      expect(check.length, kind).toBeGreaterThan(5);
      expect(deviation, kind).toBeGreaterThan(0);
    }
  });
});

describe('a rig with factors', () => {
  const inputs = uncertainInputs(rig);
  const only = (id: string, factor: number) =>
    withFactors(rig, inputs, (input) => (input.id === id ? Math.log(factor) : 0));

  it('is the same rig when every factor is one', () => {
    expect(withFactors(rig, inputs, () => 0)).toEqual(rig);
  });

  it('has the one input changed by its factor and nothing else', () => {
    const wide = only('hose-bore:hose', 1.02);
    expect(wide.items.get('hose')!.part).toMatchObject({ bore: 0.0127 * 1.02 });
    for (const [id, entry] of rig.items) if (id !== 'hose') expect(wide.items.get(id)).toBe(entry);
    const fast = only('drive-speed:engine', 1.05);
    expect(driveOf(fast)!.pumpSpeed).toBeCloseTo(driveOf(rig)!.pumpSpeed * 1.05, 9);
  });

  it('multiplies factors that fall on one figure: a tip both off when new and worn', () => {
    const both = withFactors(rig, inputs, (input) =>
      input.id === 'tip-flow:tip' ? Math.log(0.98) : input.id === 'tip-wear:tip' ? Math.log(1.06) : 0,
    );
    const { flowAtOneBar } = tip();
    const worn = both.items.get('tip')!.part;
    expect('flowAtOneBar' in worn && worn.flowAtOneBar).toBeCloseTo(flowAtOneBar * 0.98 * 1.06, 12);
  });
});
