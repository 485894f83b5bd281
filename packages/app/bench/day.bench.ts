// What the working day of each demo rig costs: the day alone, with the record that a curve over the day is drawn from, and
// the days of six tanks with which the proof tells whether a larger one would do more.
import { proveRig } from '@spraywright/engine/rig';
import { outputByTank, workingDay } from '@spraywright/engine/physics';
import { demoBriefs, demoCatalogue, demoRig, demoShop } from '../test/demo.ts';

const catalogue = demoCatalogue();
const shop = demoShop();

/** Median and least of repeated runs [µs]. */
function time(run: () => void, repeats: number): string {
  for (let i = 0; i < repeats; i++) run();
  const all: number[] = [];
  for (let i = 0; i < repeats; i++) {
    const t = performance.now();
    run();
    all.push((performance.now() - t) * 1000);
  }
  all.sort((a, b) => a - b);
  return [all[0]!, all[all.length >> 1]!].map((us) => us.toFixed(1).padStart(9)).join('');
}

const heads = ['day', 'with record', 'six tanks'];
console.log(
  `rig                       units  fills${heads.map((h) => `${h} least µs, median`.padStart(32)).join('')}`,
);
for (const { name } of demoBriefs()) {
  const { rig } = demoRig(name, catalogue, shop);
  const { day } = proveRig(rig, catalogue, shop);
  if (day === undefined || day.tanks === undefined) {
    console.log(`${name.padEnd(24)}  no day: it sprays nothing`);
    continue;
  }
  const { input, result } = day;
  const tanks = day.tanks.sizes;
  const costs = [
    time(() => void workingDay({ ...input, moments: false }), 2000),
    time(() => void workingDay({ ...input, moments: true }), 2000),
    time(() => void outputByTank({ day: input, tanks }), 500),
  ];
  const done = result.units.toFixed(0).padStart(7) + result.fills.toFixed(0).padStart(7);
  console.log(name.padEnd(24) + done + costs.map((cost) => cost.padStart(32)).join(''));
}
