// 1,024 draws of each demo rig, all promises, beside 1,024 plain proofs (counted on a few). The rigs take turns, so that a busy
// machine slows all alike; the least is what the work takes.
import { confidenceOf, proveRig, uncertainInputs } from '@spraywright/engine/rig';
import { demoBriefs, demoCatalogue, demoRig, demoShop } from '../test/demo.ts';

const catalogue = demoCatalogue();
const shop = demoShop();
const WARM_UP = 5;
const ROUNDS = 25;
const PROOFS = 4;

const timed = (run: () => void): number => {
  const began = performance.now();
  run();
  return performance.now() - began;
};

const rigs = demoBriefs().map(({ name }) => {
  const { rig } = demoRig(name, catalogue, shop);
  const proof = proveRig(rig, catalogue, shop, { notes: false });
  return { name, rig, proof, times: [] as number[], plain: [] as number[] };
});
for (let round = -WARM_UP; round < ROUNDS; round++)
  for (const { rig, proof, times, plain } of rigs) {
    const time = timed(() => void confidenceOf(rig, proof));
    if (round < 0) continue;
    times.push(time);
    for (let i = 0; i < PROOFS; i++)
      plain.push(timed(() => void proveRig(rig, catalogue, shop, { notes: false })));
  }

const rising = (times: number[]) => times.sort((a, b) => a - b);
console.log('rig                   inputs  promises  draws   least ms  median ms   1,024 plain proofs ms');
for (const { name, rig, proof, times, plain } of rigs) {
  const { draws, promises } = confidenceOf(rig, proof);
  const [own, other] = [rising(times), rising(plain)];
  console.log(
    name.padEnd(22) +
      String(uncertainInputs(rig).length).padStart(6) +
      String(promises.length).padStart(10) +
      String(draws).padStart(7) +
      own[0]!.toFixed(1).padStart(11) +
      own[ROUNDS >> 1]!.toFixed(1).padStart(11) +
      (other[0]! * draws).toFixed(0).padStart(24),
  );
}
