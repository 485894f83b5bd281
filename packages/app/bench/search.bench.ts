// What the search for the rigs that no other beats takes on each demo brief, beside going through every set of parts; first
// until no rig can be better by more than a hundredth, then, begun again, until it ends.
// The name of a brief lets only that one be searched: the memory told is then that of one search.
import {
  cheapestOf,
  linearParts,
  searchRigs,
  setsOfParts,
  settledText,
  type LinearPart,
} from '@spraywright/engine/rig';
import loadHighs from 'highs';
import { demoBriefs, demoCatalogue, demoShop } from '../test/demo.ts';

/** What is no matter in the first run. */
const NEAR = 0.01;
/** Sets of parts proven to tell what all of them would take. */
const SAMPLE = 200;

const only = process.argv[2];
const briefs = demoBriefs().filter((b) => only === undefined || b.name === only);
const catalogue = demoCatalogue();
const shop = demoShop();

console.log(
  'brief                 sets of parts   left  1 % known   s    nodes  proofs  rigs     settled      s  most MB   every set one by one',
);
for (const { name, raw } of briefs) {
  const timed = (within: number) => {
    const began = performance.now();
    const answer = searchRigs(raw, catalogue, shop, { within });
    return { answer, seconds: (performance.now() - began) / 1000 };
  };
  const { answer: near, seconds: nearSeconds } = timed(NEAR);
  const { answer: found, seconds } = timed(0);
  if (!near.ok || !found.ok) throw new Error(`${name}: the brief is not read`);
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
      (near.within === undefined ? settledText(near.progress.settled) : 'yes').padStart(9),
      nearSeconds.toFixed(1).padStart(6),
      String(nodes).padStart(9),
      String(proofs).padStart(8),
      String(found.choices.length).padStart(6),
      (found.complete ? 'all' : settledText(settled)).padStart(12),
      seconds.toFixed(1).padStart(7),
      (process.resourceUsage().maxRSS / 1024).toFixed(0).padStart(9),
      `${years.toExponential(1)} years (from ${SAMPLE} of them)`.padStart(36),
    ].join(''),
  );
}

/** The same choice as a linear program in whole numbers: one option a slot, pairs that go together, a limit on the mass. */
function programOf({ slots, pairs }: LinearPart, mostMass: number): string {
  const name = (slot: number, option: number) => `x${slot}_${option}`;
  const sum = (value: (o: { cents: number; mass: number }) => number) =>
    slots.flatMap(({ options }, s) => options.map((o, i) => `${value(o)} ${name(s, i)}`)).join('\n + ');
  const rows = slots.map(
    ({ options }, s) => ` one${s}: ${options.map((_, i) => name(s, i)).join('\n + ')} = 1`,
  );
  pairs.forEach(({ a, b, together }, p) =>
    slots[a]!.options.forEach((_, i) => {
      const mates = slots[b]!.options.flatMap((__, k) => (together(i, k) ? [` - ${name(b, k)}`] : []));
      if (mates.length < slots[b]!.options.length)
        rows.push(` p${p}_${i}: ${name(a, i)}${mates.join('\n')} <= 0`);
    }),
  );
  const all = slots.flatMap(({ options }, s) => options.map((_, i) => name(s, i)));
  return `Minimize\n price: ${sum((o) => o.cents)}\nSubject To\n${rows.join('\n')}\n mass: ${sum((o) => o.mass)} <= ${mostMass}\nBinary\n ${all.join('\n ')}\nEnd`;
}

/** Of the mass of the cheapest set, the least of these shares is allowed with which there is a set. */
const LIGHTER = [0.97, 0.99, 0.997, 0.999, 1];

console.log('\nprice and mass with what goes together     ours $        ms    solver $        ms');
// Its types say that the function is one step further in than it is.
const load = loadHighs as unknown as typeof loadHighs.default;
const highs = await load();
for (const { name, raw } of briefs) {
  for (const part of linearParts(raw, catalogue, shop)) {
    const free = cheapestOf(part, Infinity);
    if (free === undefined) continue;
    const most = LIGHTER.map((share) => free.mass * share + 1e-6).find(
      (m) => cheapestOf(part, m) !== undefined,
    )!;
    const began = performance.now();
    const ours = cheapestOf(part, most);
    const between = performance.now();
    const theirs = highs.solve(programOf(part, most), { output_flag: false, mip_rel_gap: 0, mip_abs_gap: 0 });
    const end = performance.now();
    const same = ours !== undefined && Math.abs(theirs.ObjectiveValue - ours.cents) < 0.5;
    console.log(
      [
        name.padEnd(40),
        ((ours?.cents ?? NaN) / 100).toFixed(2).padStart(9),
        (between - began).toFixed(0).padStart(10),
        (theirs.ObjectiveValue / 100).toFixed(2).padStart(12),
        (end - between).toFixed(0).padStart(10),
        same ? '  the same' : '  DIFFERENT',
      ].join(''),
    );
    if (!same) process.exitCode = 1;
  }
}
