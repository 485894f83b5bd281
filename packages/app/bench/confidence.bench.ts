// 1,024 draws of each demo rig, all promises, beside 1,024 plain proofs (counted on a few).
import { confidenceOf, proveRig, uncertainInputs } from '@spraywright/engine/rig';
import { demoBriefs, demoCatalogue, demoRig, demoShop } from '../test/demo.ts';

const catalogue = demoCatalogue();
const shop = demoShop();
const ROUNDS = 25;
const PROOFS = 100;

function sorted(count: number, run: () => void): number[] {
  for (let i = 0; i < 5; i++) run();
  return Array.from({ length: count }, () => {
    const began = performance.now();
    run();
    return performance.now() - began;
  }).sort((a, b) => a - b);
}

console.log('rig                   inputs  promises  draws   least ms  median ms   1,024 plain proofs ms');
for (const { name } of demoBriefs()) {
  const { rig } = demoRig(name, catalogue, shop);
  const proof = proveRig(rig, catalogue, shop, { notes: false });
  const { draws, promises } = confidenceOf(rig, proof);
  const times = sorted(ROUNDS, () => void confidenceOf(rig, proof));
  const plain = sorted(PROOFS, () => void proveRig(rig, catalogue, shop, { notes: false }));
  console.log(
    name.padEnd(22) +
      String(uncertainInputs(rig).length).padStart(6) +
      String(promises.length).padStart(10) +
      String(draws).padStart(7) +
      times[0]!.toFixed(1).padStart(11) +
      times[ROUNDS >> 1]!.toFixed(1).padStart(11) +
      (plain[PROOFS >> 1]! * draws).toFixed(0).padStart(24),
  );
}
