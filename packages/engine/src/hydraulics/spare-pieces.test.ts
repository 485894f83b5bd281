import { describe, expect, it, vi } from 'vitest';
import { randomNetwork } from '../../test/random-network.ts';
import { randomSource } from '../../test/random-source.ts';
import type { compileNetwork, NetworkModel } from './index.ts';

const PROCESSES = 30;
/** All their curves together are fewer than are kept. */
const NETWORKS_EACH = 8;

/** The solver as a process finds it that has solved nothing yet. */
async function freshSolver() {
  vi.resetModules();
  return { ...(await import('./index.ts')), ...(await import('./friction-table.ts')) };
}

function everyFlow(compile: typeof compileNetwork, model: NetworkModel): number[] {
  const compiled = compile(model);
  if (!compiled.ok) throw new Error(JSON.stringify(compiled.problems));
  const { network } = compiled;
  const { iterations } = network.solve({ start: 'cold' });
  const flows = model.elements.map((_, e) => network.flow(e));
  network.solve();
  return [iterations, ...flows, ...model.elements.map((_, e) => network.flow(e))];
}

describe('When a process has met more friction curves than it keeps', () => {
  it('networks are solved in the same steps to the same last digit as when it had met none', async () => {
    const full = await freshSolver();
    const curve = (i: number) => ({ law: 0, relativeRoughness: 1e-3 + 1e-6 * i, coilRatio: 0, index: 1 });
    for (let i = 0; i < full.MOST_TABLES; i++) full.frictionTables.offsetOf(curve(i));
    expect(full.frictionTables.offsetOf(curve(full.MOST_TABLES))).toBe(full.SPARE_TABLE);
    for (let process = 0; process < PROCESSES; process++) {
      const empty = await freshSolver();
      for (let i = 0; i < NETWORKS_EACH; i++) {
        const { model } = randomNetwork(randomSource(process * NETWORKS_EACH + i));
        expect(everyFlow(full.compileNetwork, model)).toEqual(everyFlow(empty.compileNetwork, model));
      }
      const one = curve(full.MOST_TABLES);
      expect(empty.frictionTables.offsetOf(one), 'room was left').not.toBe(full.SPARE_TABLE);
    }
  });
});
