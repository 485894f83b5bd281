// What the search for the rigs that no other beats takes on each demo brief, beside going through every set of parts.
import { searchRigs, setsOfParts } from '@spraywright/engine/rig';
import { demoBriefs, demoCatalogue, demoShop } from '../test/demo.ts';

/** Sets of parts proven to tell what all of them would take. */
const SAMPLE = 200;

const catalogue = demoCatalogue();
const shop = demoShop();

console.log(
  'brief                 sets of parts   left    nodes  proofs  rigs     settled      s   every set one by one',
);
for (const { name, raw } of demoBriefs()) {
  const began = performance.now();
  const found = searchRigs(raw, catalogue, shop);
  const seconds = (performance.now() - began) / 1000;
  if (!found.ok) throw new Error(`${name}: the brief is not read`);
  const sets = setsOfParts(raw, catalogue, shop);
  const step = sets.size / SAMPLE;
  const start = performance.now();
  for (let i = 0; i < SAMPLE; i++) sets.at(Math.floor(i * step));
  const years = (((performance.now() - start) / SAMPLE) * sets.size) / 1000 / 31_557_600;
  const { size, narrowed, nodes, proofs, settled } = found.progress;
  console.log(
    [
      name.padEnd(22),
      size.toExponential(1).padStart(13),
      narrowed.toExponential(1).padStart(8),
      String(nodes).padStart(9),
      String(proofs).padStart(8),
      String(found.choices.length).padStart(6),
      (found.complete ? 'all' : `${(settled * 100).toPrecision(2)} %`).padStart(12),
      seconds.toFixed(1).padStart(7),
      `${years.toExponential(1)} years (from ${SAMPLE} of them)`.padStart(36),
    ].join(''),
  );
}
