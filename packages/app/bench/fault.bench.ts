// A thousand calls about rigs with one known fault each: how often the cause is found.
import { demoBriefs, demoCatalogue, demoRig, demoShop } from '../test/demo.ts';
import { confusions, hits, syntheticCalls, type SyntheticCall } from '../test/synthetic-calls.ts';

const catalogue = demoCatalogue();
const shop = demoShop();
const rigs = demoBriefs().map(({ name }) => demoRig(name, catalogue, shop).rig);
const percent = (x: number) => `${(100 * x).toFixed(1)} %`.padStart(8);

const began = performance.now();
const calls = syntheticCalls(rigs, { count: 1000, seed: 1, checks: 4 });
const took = performance.now() - began;
console.log(`${calls.length} calls, ${(took / 1000).toFixed(1)} s`);
for (const when of ['at first', 'after one check', 'at last'] as const)
  console.log(
    `  ${when.padEnd(15)} cause first ${percent(hits(calls, 1, when))}, among the first three ${percent(hits(calls, 3, when))}`,
  );
const further = calls.map((c) => c.steps.length - 1);
console.log(
  `  further checks done: ${(further.reduce((a, b) => a + b, 0) / calls.length).toFixed(2)} a call, at most 4`,
);

console.log('\nwhat was called found, and how often rightly, by the probability given at the end');
for (const [from, to] of [
  [0, 0.5],
  [0.5, 0.8],
  [0.8, 0.95],
  [0.95, 1.01],
] as const) {
  const in_ = calls.filter((c) => {
    const p = c.steps.at(-1)!.suspects[0]!.probability;
    return p >= from && p < to;
  });
  if (in_.length > 0)
    console.log(
      `  ${percent(from)} to ${percent(Math.min(1, to))}: ${String(in_.length).padStart(4)} calls, right ${percent(hits(in_, 1, 'at last'))}`,
    );
}

console.log('\nby fault: calls, cause first after the first readings, and at the end');
const byFault = new Map<string, SyntheticCall[]>();
for (const call of calls) byFault.set(call.truth.fault, [...(byFault.get(call.truth.fault) ?? []), call]);
for (const [fault, list] of [...byFault].sort((a, b) => b[1].length - a[1].length))
  console.log(
    `  ${fault.padEnd(22)}${String(list.length).padStart(5)}${percent(hits(list, 1, 'at first'))}${percent(hits(list, 1, 'at last'))}`,
  );

console.log('\nafter the first readings, what was taken for what');
for (const { truth, said, times } of confusions(calls).slice(0, 14))
  console.log(`  ${String(times).padStart(4)}  ${truth} taken for ${said}`);
