import { designRig, proveRig, readRig } from '@spraywright/engine/rig';
import { describe, expect, it } from 'vitest';
import { demoBriefs, demoCatalogue, demoShop } from './demo.ts';

const GALLON = 231 * 0.0254 ** 3;
const GPM = GALLON / 60;

type RawBrief = { liquids: { id: string }[]; duties: Record<string, unknown>[] };

/** The demo's road brief, asking nothing but dry salt by length of lane. */
function laneBrief(lane: object): unknown {
  const raw = structuredClone(demoBriefs().find((b) => b.name === 'road-dust')!.raw) as RawBrief;
  for (const liquid of raw.liquids)
    if (liquid.id === 'brine') Object.assign(liquid, { strength: 23.3, density: '9.81 lb/gal' });
  for (const duty of raw.duties) {
    delete duty['application'];
    duty['lane'] = lane;
  }
  return raw;
}

describe('a road brief that asks only dry salt by length of lane', () => {
  const catalogue = demoCatalogue();
  const shop = demoShop();
  const promisesFor = (lane: object) => {
    const design = designRig(laneBrief(lane), catalogue, shop);
    if (!design.ok) throw new Error(design.problems.map((p) => p.message).join('\n'));
    const rig = readRig(design.rig, catalogue);
    if (!rig.ok) throw new Error(rig.problems.map((p) => p.message).join('\n'));
    return proveRig(rig.rig, catalogue, shop).promises;
  };

  it('is sized for it: 23.3 % at 9.81 lb/gal holds 2.29 lb/gal (Turf Magazine), so 2000 lb/mi at 5 mph asks 72.9 gpm', () => {
    const promises = promisesFor({ drySalt: '2000 lb/mi', lanes: 1, width: '12 ft', speed: '5 mph' });
    const flow = promises.find((p) => p.id === 'flow:first-coat:bar')!;
    expect(flow.asked!.value / GPM).toBeCloseTo((2000 * 5) / 60 / (9.81 * 0.233), 6);
    for (const id of ['flow:first-coat:bar', 'pattern:lane:first-coat', 'pattern:width:first-coat'])
      expect(['kept', 'thin'], id).toContain(promises.find((p) => p.id === id)!.state);
  });

  it('asks how wide a lane is when nobody said', () => {
    const promises = promisesFor({ drySalt: '2000 lb/mi', speed: '5 mph' });
    expect(promises.find((p) => p.id === 'pattern:width:first-coat')).toMatchObject({ state: 'unknown' });
  });
});
