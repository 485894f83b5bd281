import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { bytesPerCall } from '../../test/bytes-per-call.ts';
import { readInp } from '../../test/inp-network.ts';
import { compileNetwork, type CompiledNetwork } from './index.ts';

const folder = new URL('../../reference/hydraulics/networks/', import.meta.url);
/**
 * A number handed to a function that the compiler keeps apart costs 16 bytes; a few of those per solve are let pass. One
 * for each branch and step would be 500 bytes on the smallest network and 2000 on the larger ones, an object for each more.
 */
const MOST_BYTES = 128;
function compiled(name: string): { network: CompiledNetwork; tip: number } {
  const { model } = readInp(readFileSync(new URL(`${name}.inp`, folder), 'utf8'), 'colebrook');
  const result = compileNetwork(model);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return { network: result.network, tip: model.elements.findIndex((e) => e.law.kind === 'orifice') };
}

describe('The solve loop', () => {
  it('is measured by something that sees a single small object', () => {
    const kept: { value: number }[] = [{ value: 0 }];
    expect(bytesPerCall(0, (i) => (kept[0] = { value: i + 0.5 }))).toBeGreaterThan(8);
  });

  // 01, 04 and 06 have regulators, 02 and 03 pump curves, 05 a pump whose head falls as a power of the flow.
  it.each(['net01', 'net02', 'net03', 'net04', 'net05', 'net06'])(
    'of %s allocates nothing per branch and step, cold or warm',
    (name) => {
      const { network, tip } = compiled(name);
      const size = network.get(tip, 'k');
      const sizes = [0.95, 1, 1.05].map((x) => x * size);
      const cold = { start: 'cold' } as const;
      const warm = { start: 'warm' } as const;
      for (const options of [cold, warm]) {
        const bytes = bytesPerCall(MOST_BYTES, (i) => {
          network.set(tip, 'k', sizes[i % 3]!);
          network.solve(options);
        });
        expect(bytes, `${options.start}: bytes per solve`).toBeLessThan(MOST_BYTES);
      }
    },
  );
});
