// Whether the search finds what going through every set of parts finds, on catalogues cut down to some ten thousand sets.
// An argument sets how many catalogues are tried, a second one how many sets they make at least.
import { searchRigs, setsOfParts, type Figures } from '@spraywright/engine/rig';
import { cutToSize, unbeatenOf } from '../test/cut-down.ts';
import { demoBriefs, demoShop } from '../test/demo.ts';

const CATALOGUES = Number(process.argv[2] ?? 21);
const LEAST = Number(process.argv[3] ?? 10_000);
const BRIEFS = [
  'utility-12v',
  'light-cart',
  'roof-skid',
  'tall-elms',
  'three-point-pasture',
  'nurse-trailer',
];

const shop = demoShop();
const briefs = new Map(demoBriefs().map((b) => [b.name, b.raw]));
let wrong = 0;

console.log(
  'brief                 seed     sets   rigs  kept  best   proofs    nodes  search ms  every one s',
);
for (let i = 0; i < CATALOGUES; i++) {
  const name = BRIEFS[i % BRIEFS.length]!;
  const raw = briefs.get(name)!;
  const seed = 1000 + i;
  const { catalogue, size } = cutToSize(name, LEAST, seed);
  const began = performance.now();
  const found = searchRigs(raw, catalogue, shop, { mostProofs: 1_000_000, mostNodes: 1e9 });
  const ms = performance.now() - began;
  if (!found.ok) throw new Error(`${name}: the brief is not read`);
  const start = performance.now();
  const sets = setsOfParts(raw, catalogue, shop);
  const kept: Figures[] = [];
  let rigs = 0;
  for (let k = 0; k < size; k++) {
    const { outside, proven } = sets.proven(k);
    if (!outside && proven !== undefined) rigs++;
    if (proven?.broken.length === 0) kept.push(proven.figures);
  }
  const seconds = (performance.now() - start) / 1000;
  const wanted = unbeatenOf(kept);
  const got = found.choices.map((c) => JSON.stringify(c.figures)).sort();
  const same = found.complete && JSON.stringify(got) === JSON.stringify(wanted);
  if (!same) {
    wrong++;
    console.log(
      `${name} ${seed}: complete ${found.complete}\n  found  ${got.join(' ')}\n  wanted ${wanted.join(' ')}`,
    );
  }
  const { proofs, nodes } = found.progress;
  console.log(
    [
      name.padEnd(21),
      String(seed).padStart(5),
      String(size).padStart(9),
      String(rigs).padStart(7),
      String(kept.length).padStart(6),
      String(wanted.length).padStart(6),
      String(proofs).padStart(9),
      String(nodes).padStart(9),
      ms.toFixed(0).padStart(11),
      seconds.toFixed(1).padStart(13),
      same ? '  the same' : '  DIFFERENT',
    ].join(''),
  );
}
console.log(wrong === 0 ? 'all the same' : `${wrong} different`);
if (wrong > 0) process.exitCode = 1;
