import { beforeAll, describe, expect, it } from 'vitest';
import { proveRig, readRig, type Proof, type Rig } from '@spraywright/engine/rig';
import { demoBriefs, demoCatalogue, demoRig, demoShop } from './demo.ts';
import { walkPlumbing } from './walk-plumbing.ts';

const catalogue = demoCatalogue();
const shop = demoShop();
const names = demoBriefs().map((b) => b.name);
const rigs = new Map<string, { raw: unknown; rig: Rig; proof: Proof }>();

beforeAll(() => {
  for (const name of names) {
    const { raw, rig } = demoRig(name, catalogue, shop);
    rigs.set(name, { raw, rig, proof: proveRig(rig, catalogue, shop) });
  }
});

function changed(name: string, item: string, change: Record<string, unknown>): { rig: Rig; proof: Proof } {
  const raw = structuredClone(rigs.get(name)!.raw) as { items: { id: string }[] };
  Object.assign(
    raw.items.find((i) => i.id === item)!,
    change,
  );
  const read = readRig(raw, catalogue);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  return { rig: read.rig, proof: proveRig(read.rig, catalogue, shop) };
}

describe('the plumbing of each demo rig', () => {
  it.each(names)('%s is joined from the tank to every outlet, and every piece of it is billed', (name) => {
    const { rig, proof } = rigs.get(name)!;
    expect(walkPlumbing(rig, proof)).toEqual([]);
  });

  it('is joined with an unloader of three ports in the main, and its bypass back to the tank', () => {
    const { rig, proof } = changed('tall-elms', 'regulator', { part: 'unloader-100-580psi-48gpm-brass' });
    expect(walkPlumbing(rig, proof)).toEqual([]);
    const main = proof.bill.plumbing.joints.find((j) =>
      j.ends.some((e) => e.of === 'regulator' && e.port === 'in'),
    )!;
    expect(main.ends.map((e) => e.of)).toContain('pump');
  });

  it('joins a hose that is longer than its longest piece', () => {
    const { rig, proof } = changed('tall-elms', 'hose', { length: '700 ft' });
    const { part } = rig.items.get('hose')!;
    const longest = part.kind === 'hose' ? part.longestPiece : 0;
    const joint = proof.bill.plumbing.joints.find((j) => j.ends.every((e) => e.of === 'hose'))!;
    expect(joint.times).toBe(Math.ceil((700 * 0.3048) / longest) - 1);
    expect(joint.pieces.length).toBeGreaterThan(0);
  });

  it('names what the catalogue cannot join', () => {
    const narrow = catalogue.byKind.engine.find(
      (e) => e.ports[0]!.size !== rigs.get('tall-elms')!.rig.items.get('engine')!.part.ports[0]!.size,
    )!;
    const { proof } = changed('tall-elms', 'engine', { part: narrow.id });
    expect(proof.bill.plumbing.gaps.join()).toMatch(/engine shaft .* does not fit reduction shaft/);
    expect(proof.promises.find((p) => p.id === 'plumbing')!.state).toBe('broken');
  });
});

describe('the walk itself', () => {
  const spoil = (change: (plumbing: Proof['bill']['plumbing']) => Proof['bill']['plumbing']) => {
    const { rig, proof } = rigs.get('three-point-pasture')!;
    return walkPlumbing(rig, { ...proof, bill: { ...proof.bill, plumbing: change(proof.bill.plumbing) } });
  };

  it('finds each joint that is left out, and each piece that is left out of a joint', () => {
    const { joints } = rigs.get('three-point-pasture')!.proof.bill.plumbing;
    joints.forEach((joint, i) => {
      expect(
        spoil((p) => ({ ...p, joints: p.joints.filter((_, k) => k !== i) })),
        joint.between.join(),
      ).not.toEqual([]);
      joint.pieces.forEach((_, k) => {
        const fewer = { ...joint, pieces: joint.pieces.filter((__, n) => n !== k) };
        expect(spoil((p) => ({ ...p, joints: p.joints.map((j, n) => (n === i ? fewer : j)) }))).not.toEqual(
          [],
        );
      });
    });
  });

  it('finds an added fitting that is not billed, and a port left open without a reason', () => {
    expect(spoil((p) => ({ ...p, added: p.added.slice(1) }))).not.toEqual([]);
    expect(
      spoil((p) => ({ ...p, open: [...p.open, { of: 'tank', port: 'return', why: 'none' }] })),
    ).not.toEqual([]);
  });
});
