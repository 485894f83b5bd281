import {
  hoseReach,
  proveRig,
  pumpCurve,
  tankCurve,
  type CurvePoint,
  type Proof,
  type Rig,
} from '@spraywright/engine/rig';
import { beforeAll, describe, expect, it } from 'vitest';
import { demoBriefs, demoCatalogue, demoRig, demoShop } from './demo.ts';

const names = demoBriefs().map((b) => b.name);
const rigs = new Map<string, { rig: Rig; proof: Proof }>();

beforeAll(() => {
  const [catalogue, shop] = [demoCatalogue(), demoShop()];
  for (const name of names) {
    const { rig } = demoRig(name, catalogue, shop);
    rigs.set(name, { rig, proof: proveRig(rig, catalogue, shop) });
  }
});

/** Pressure on a line of points at a flow. */
function riseAt(points: readonly CurvePoint[], flow: number): number {
  const line = [...points].sort((a, b) => a.flow - b.flow);
  const found = line.findIndex((p) => p.flow >= flow);
  const next = found === -1 ? line.length - 1 : Math.max(1, found);
  const [p, q] = [line[next - 1]!, line[next]!];
  return p.rise + ((q.rise - p.rise) * (flow - p.flow)) / (q.flow - p.flow);
}

describe.each(names)('the curves of %s', (name) => {
  it('cross where each duty was solved to work', () => {
    const { rig, proof } = rigs.get(name)!;
    for (const duty of proof.duties) {
      const curves = pumpCurve(rig, proof.duties, duty)!;
      const here = curves.duties.find((d) => d.duty === duty.id)!;
      expect(curves.rig.length, duty.id).toBeGreaterThan(30);
      // Between two of its points the rig's own curve bends; the pump's is straight there.
      expect(riseAt(curves.rig, here.flow) / here.rise, duty.id).toBeCloseTo(1, 1);
      if (duty.open.states.size === 0 || duty.open.states.get('pump') === undefined)
        expect(riseAt(curves.pump, here.flow) / here.rise, duty.id).toBeCloseTo(1, 2);
    }
  });

  it('never ask less pressure for more flow', () => {
    const { rig, proof } = rigs.get(name)!;
    const { rig: own } = pumpCurve(rig, proof.duties, proof.duties[0]!)!;
    for (const [i, p] of own.entries())
      if (i > 0) expect(p.rise).toBeGreaterThanOrEqual(own[i - 1]!.rise * (1 - 1e-9));
  });

  it("never give more through a longer hose, and with the rig's own what the proof says", () => {
    const { rig, proof } = rigs.get(name)!;
    for (const duty of proof.duties) {
      const hose = hoseReach(rig, duty);
      if (hose === undefined) continue;
      for (const [i, flow] of hose.flows.entries())
        if (i > 0) expect(flow, duty.id).toBeLessThanOrEqual(hose.flows[i - 1]! * (1 + 1e-9));
      if (duty.reach === undefined) continue;
      const own = hose.lengths.findIndex((l) => Math.abs(l / hose.own - 1) < 1e-9);
      expect(hose.flows[own], duty.id).toBeCloseTo(duty.open.outlets[0]!.flow, 9);
      expect(hose.reach!.bulk[own], duty.id).toBeCloseTo(duty.reach.bulk, 6);
      expect(hose.reach!.farthest[own], duty.id).toBeCloseTo(duty.reach.farthest, 6);
    }
  });

  it('tell the same day for its own tank as the proof', () => {
    const { proof } = rigs.get(name)!;
    const { day } = proof;
    if (day === undefined) return;
    const tanks = tankCurve(day);
    const own = tanks.sizes.findIndex((size) => Math.abs(size / day.input.tank - 1) < 1e-9);
    expect(tanks.units[own]).toBeCloseTo(day.result.units, 9);
    expect(tanks.sizes).toEqual([...tanks.sizes].sort((a, b) => a - b));
  });
});
