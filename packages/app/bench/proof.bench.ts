// What a proof of each demo rig costs: compiling a duty to a network, the whole proof, and choosing the rig.
import { compileNetwork } from '@spraywright/engine/hydraulics';
import { designRig, dutyNetwork, liquidOf, proveRig, siteOf } from '@spraywright/engine/rig';
import { demoBriefs, demoCatalogue, demoRig, demoShop } from '../test/demo.ts';

const catalogue = demoCatalogue();
const shop = demoShop();

/** Median and least of repeated runs [µs]. */
function time(run: () => void, repeats: number): { median: number; least: number } {
  for (let i = 0; i < Math.min(repeats, 200); i++) run();
  const all: number[] = [];
  for (let i = 0; i < repeats; i++) {
    const t = performance.now();
    run();
    all.push((performance.now() - t) * 1000);
  }
  all.sort((a, b) => a - b);
  return { median: all[all.length >> 1]!, least: all[0]! };
}

console.log('rig                     duties  elements  rig to network  compile      proof       design');
console.log('                                          median µs       median µs    median µs   ms');
for (const { name, raw } of demoBriefs()) {
  const began = performance.now();
  const design = designRig(raw, catalogue, shop);
  const designMs = performance.now() - began;
  if (!design.ok) {
    console.log(`${name.padEnd(24)}no rig`);
    continue;
  }
  const { rig } = demoRig(name, catalogue, shop);
  const duty = rig.brief.duties[0]!;
  const liquid = liquidOf(rig.brief, duty.liquid, siteOf(rig.brief));
  const toNetwork = time(() => void dutyNetwork(rig, duty, liquid), 2000);
  const { model } = dutyNetwork(rig, duty, liquid);
  const compile = time(() => void compileNetwork(model), 2000);
  const proof = time(() => void proveRig(rig, catalogue, shop, { notes: false }), 400);
  console.log(
    `${name.padEnd(24)}${String(rig.brief.duties.length).padStart(6)}${String(model.elements.length).padStart(10)}${toNetwork.median.toFixed(1).padStart(16)}${compile.median.toFixed(1).padStart(13)}${proof.median.toFixed(0).padStart(12)}${designMs.toFixed(0).padStart(12)}`,
  );
}
