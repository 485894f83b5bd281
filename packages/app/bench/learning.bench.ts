// What a shop learns from its tests: 200 machines of known truth, with and without readings gone wrong; then how much narrower
// the bands of promises are after 30 tests.
import { confidenceOf, proveRig, type Correction, type Rig } from '@spraywright/engine/rig';
import { correctionsOf, learnedDocument, learnFrom, type Learned } from '@spraywright/engine/yard';
import { demoBriefs, demoCatalogue, demoRig, demoShop } from '../test/demo.ts';
import { copiesWithin, partsWithin, syntheticShop, withoutOdd, worstShift } from '../test/synthetic-shop.ts';

const MACHINES = 200;
const SHOPS = 10;
const catalogue = demoCatalogue();
const shop = demoShop();
const rigs = demoBriefs().map(({ name }) => demoRig(name, catalogue, shop).rig);
const percent = (x: number) => `${(100 * x).toFixed(1)} %`;
const meanOf = (list: readonly number[]) => list.reduce((sum, v) => sum + v, 0) / list.length;

console.log(
  `${SHOPS} shops of ${MACHINES} machines: truth within 2 deviations, part by part and copy by copy;`,
);
console.log(
  'farthest that a posterior mean moves, in its deviations, when 2 % of the readings are off by 10 to 60 %:',
);
console.log('shift, from the same readings done right; harm, from the same readings with these left out;');
console.log('loss, what leaving them out moves by itself: no judgement of readings can do with less');
const rows = Array.from({ length: SHOPS }, (_, i) => {
  const seed = i + 1;
  const clean = syntheticShop(rigs, { count: MACHINES, seed });
  const began = performance.now();
  const learned = learnFrom(clean.machines);
  const took = performance.now() - began;
  const odd = syntheticShop(rigs, { count: MACHINES, seed, odd: 0.02 });
  const spoilt = learnFrom(odd.machines);
  const without = learnFrom(withoutOdd(odd, clean));
  const row = {
    parts: partsWithin(learned, clean),
    copies: copiesWithin(learned, clean),
    shift: worstShift(learned, spoilt),
    harm: worstShift(without, spoilt),
    loss: worstShift(learned, without),
  };
  console.log(
    `  shop ${String(seed).padStart(2)}: parts ${percent(row.parts)}, copies ${percent(row.copies)}, shift ${row.shift.toFixed(2)}, harm ${row.harm.toFixed(2)}, loss ${row.loss.toFixed(2)}, ${(took / 1000).toFixed(1)} s`,
  );
  return row;
});
console.log(
  `  all: parts ${percent(meanOf(rows.map((r) => r.parts)))}, copies ${percent(meanOf(rows.map((r) => r.copies)))}, shift at most ${Math.max(...rows.map((r) => r.shift)).toFixed(2)}, harm at most ${Math.max(...rows.map((r) => r.harm)).toFixed(2)}, loss at most ${Math.max(...rows.map((r) => r.loss)).toFixed(2)}`,
);

/** Width of every promise's 5 to 95 % band with corrections, over that without. */
function narrower(rig: Rig, corrections: readonly Correction[]): number[] {
  const proof = proveRig(rig, catalogue, shop, { notes: false });
  const taught = new Map(confidenceOf(rig, proof, { corrections }).promises.map((p) => [p.id, p.band]));
  const moving = new Set(corrections.map((c) => c.id));
  return confidenceOf(rig, proof).promises.flatMap(({ id, band, matters }) => {
    const now = taught.get(id);
    const width = band[2] - band[0];
    // A promise that nothing learned decides keeps its band.
    return now === undefined || !(width > 0) || !moving.has(matters[0]?.input ?? '')
      ? []
      : [(now[2] - now[0]) / width];
  });
}

const ownOf = (learned: Learned, n: number): Correction[] =>
  learned.copies[n]!.inputs.map((i) => ({ ...i, source: 'its own test' }));

/** What is learned, had every part been known exactly: what one copy differs by is left, and no number of tests takes it away. */
const knownExactly = (learned: Learned) => {
  const told = learnedDocument(learned);
  return { ...told, factors: told.factors.map((f) => ({ ...f, deviation: 0 })) };
};

console.log(
  '\nmean width of the bands of promises that a water test can teach, over that by tolerances alone',
);
const [next, best, built] = [[] as number[], [] as number[], [] as number[]];
for (const rig of rigs) {
  const learned = learnFrom(syntheticShop([rig], { count: 30, seed: 5 }).machines);
  const ofNext = narrower(rig, correctionsOf(rig, learnedDocument(learned))!);
  const ofBest = narrower(rig, correctionsOf(rig, knownExactly(learned))!);
  const ofBuilt = narrower(rig, ownOf(learned, 0));
  next.push(...ofNext);
  best.push(...ofBest);
  built.push(...ofBuilt);
  console.log(
    `  ${rig.document.id.padEnd(22)} next one, after 30 tests: ${percent(meanOf(ofNext))}, all parts known exactly: ${percent(meanOf(ofBest))}; one that was tested: ${percent(meanOf(ofBuilt))}`,
  );
}
console.log(
  `  all: next one ${percent(meanOf(next))}, all parts known exactly ${percent(meanOf(best))}, one that was tested ${percent(meanOf(built))}`,
);
