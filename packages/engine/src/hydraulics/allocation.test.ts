import { readFileSync } from 'node:fs';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { describe, expect, it } from 'vitest';
import { readInp } from '../../test/inp-network.ts';
import { compileNetwork, type CompiledNetwork } from './index.ts';

const folder = new URL('../../reference/hydraulics/networks/', import.meta.url);
const WARM_UP = 10_000;
const SOLVES = 5_000;
/**
 * A number handed to a function that the compiler keeps apart costs 16 bytes; two dozen of those per solve are let pass. One
 * for each branch and step would be 2000 bytes on the larger networks, an object for each more.
 */
const MOST_BYTES = 400;

setFlagsFromString('--expose-gc');
const collect = runInNewContext('gc') as () => void;

function compiled(name: string): { network: CompiledNetwork; tip: number } {
  const { model } = readInp(readFileSync(new URL(`${name}.inp`, folder), 'utf8'), 'colebrook');
  const result = compileNetwork(model);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return { network: result.network, tip: model.elements.findIndex((e) => e.law.kind === 'orifice') };
}

/** Bytes of heap a call leaves behind, garbage included. */
function bytesPerCall(call: (i: number) => void): number {
  for (let i = 0; i < WARM_UP; i++) call(i);
  let least = Infinity;
  // What else runs in the process can only add; the least of some rounds is the call's own.
  for (let round = 0; round < 3; round++) {
    collect();
    const before = process.memoryUsage().heapUsed;
    for (let i = 0; i < SOLVES; i++) call(i);
    least = Math.min(least, process.memoryUsage().heapUsed - before);
  }
  return least / SOLVES;
}

describe('The solve loop', () => {
  it('is measured by something that sees a single small object', () => {
    const kept: { value: number }[] = [{ value: 0 }];
    expect(bytesPerCall((i) => (kept[0] = { value: i + 0.5 }))).toBeGreaterThan(8);
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
        const bytes = bytesPerCall((i) => {
          network.set(tip, 'k', sizes[i % 3]!);
          network.solve(options);
        });
        expect(bytes, `${options.start}: bytes per solve`).toBeLessThan(MOST_BYTES);
      }
    },
  );
});
