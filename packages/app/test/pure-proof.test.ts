import { describe, expect, it, vi } from 'vitest';

/** The engine as a process finds it that has solved nothing yet. */
async function freshEngine() {
  vi.resetModules();
  return { ...(await import('@spraywright/engine/rig')), ...(await import('./demo.ts')) };
}

/** Every digit of a proof, maps and sets included. */
function everyDigit(proof: unknown): string {
  return JSON.stringify(proof, (_key, value: unknown) =>
    value instanceof Map || value instanceof Set ? [...(value as Iterable<unknown>)] : value,
  );
}

describe('A proof', () => {
  it('is the same to the last digit whatever the process has proven before', async () => {
    const maker = await freshEngine();
    const documents = ['light-cart', 'roof-skid', 'utility-12v'].map(
      (name) => maker.demoRig(name, maker.demoCatalogue(), maker.demoShop()).raw,
    );
    const proofs = async (order: readonly unknown[]): Promise<Map<unknown, string[]>> => {
      const engine = await freshEngine();
      const catalogue = engine.demoCatalogue();
      const shop = engine.demoShop();
      const found = new Map<unknown, string[]>();
      for (const document of order) {
        const read = engine.readRig(document, catalogue);
        if (!read.ok) throw new Error(read.problems.map((p) => p.message).join('\n'));
        const prove = () => everyDigit(engine.proveRig(read.rig, catalogue, shop));
        found.set(document, [prove(), prove()]);
      }
      return found;
    };
    const there = await proofs(documents);
    const back = await proofs([...documents].reverse());
    for (const document of documents) {
      const [first, again] = there.get(document)!;
      expect(first!.length).toBeGreaterThan(10_000);
      expect(again === first, 'at once again').toBe(true);
      expect(back.get(document)![0] === first, 'after other rigs').toBe(true);
    }
  });
});
