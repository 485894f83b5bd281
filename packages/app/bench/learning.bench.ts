// What a shop learns from its tests: 200 machines of known truth, each weighed once, with and without readings gone wrong; then how much narrower
// the bands of promises are after 30 tests, and what is left of them. SHOPS and FIRST say how many shops, from which seed on.
import {
  confidenceOf,
  proveRig,
  type Confidence,
  type Correction,
  type Proof,
  type Rig,
  type ToleranceKind,
} from '@spraywright/engine/rig';
import {
  correctionsOf,
  learnedDocument,
  learnFrom,
  PART_SHARES,
  WHOLE_MASS,
  type Learned,
} from '@spraywright/engine/yard';
import { demoBriefs, demoCatalogue, demoRig, demoShop } from '../test/demo.ts';
import { copiesWithin, partsWithin, syntheticShop, withoutOdd, worstShift } from '../test/synthetic-shop.ts';

const MACHINES = 200;
const SHOPS = Number(process.env.SHOPS ?? 10);
const FIRST = Number(process.env.FIRST ?? 1);
const catalogue = demoCatalogue();
const shop = demoShop();
const rigs = demoBriefs().map(({ name }) => demoRig(name, catalogue, shop).rig);
const proofs = new Map(rigs.map((rig) => [rig, proveRig(rig, catalogue, shop, { notes: false })] as const));
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
  const seed = i + FIRST;
  const clean = syntheticShop(rigs, { count: MACHINES, seed, proofs });
  const began = performance.now();
  const learned = learnFrom(clean.machines);
  const took = performance.now() - began;
  const odd = syntheticShop(rigs, { count: MACHINES, seed, proofs, odd: 0.02 });
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
const worst = (of: 'shift' | 'harm' | 'loss') => {
  const list = rows.map((r) => r[of]).sort((a, b) => a - b);
  const over = list.filter((v) => v > 0.5).length;
  return `${of} ${list[Math.floor(list.length / 2)]!.toFixed(2)} in the middle shop, ${list.at(-1)!.toFixed(2)} in the worst, above 0.5 in ${over}`;
};
console.log(
  `  all: parts ${percent(meanOf(rows.map((r) => r.parts)))}, copies ${percent(meanOf(rows.map((r) => r.copies)))}\n  ${worst('shift')}\n  ${worst('harm')}\n  ${worst('loss')}`,
);

interface Width {
  /** Of a promise's 5 to 95 % band with corrections, over that without. */
  readonly ratio: number;
  /** What teaches the input that decided most of it: water or a scale; absent where no reading does. */
  readonly taughtBy?: 'water' | 'scale';
  /** What decides most of what is left: kind of input, and share of the variance. */
  readonly left: readonly { readonly kind: string; readonly share: number }[];
}

/** Bands of every promise that has one. */
function widths(rig: Rig, proof: Proof, plain: Confidence, corrections: readonly Correction[]): Width[] {
  const taught = new Map(confidenceOf(rig, proof, { corrections }).promises.map((p) => [p.id, p]));
  const moving = new Set(corrections.map((c) => c.id));
  return plain.promises.flatMap(({ id, band, matters }): Width[] => {
    const now = taught.get(id);
    const width = band[2] - band[0];
    const first = matters[0]?.input ?? '';
    if (now === undefined || !(width > 0)) return [];
    return [
      {
        ratio: (now.band[2] - now.band[0]) / width,
        ...(moving.has(first)
          ? { taughtBy: first === WHOLE_MASS ? ('scale' as const) : ('water' as const) }
          : {}),
        left: now.matters.map((m) => ({ kind: m.input.split(':')[0]!, share: m.share })),
      },
    ];
  });
}

const ratiosOf = (list: readonly Width[], by?: Width['taughtBy']) =>
  list
    .filter(({ taughtBy }) => taughtBy !== undefined && (by === undefined || taughtBy === by))
    .map((w) => w.ratio);

const ownOf = (learned: Learned, n: number): Correction[] =>
  learned.copies[n]!.inputs.map((i) => ({ ...i, source: 'its own test' }));

/** What is learned, had every part been known exactly: what one copy differs by is left, and no number of tests takes it away. */
const knownExactly = (learned: Learned) => {
  const told = learnedDocument(learned);
  return { ...told, together: [], factors: told.factors.map((f) => ({ ...f, deviation: 0 })) };
};

const TESTS = 30;
/** Of the tested machines of each kind so many are looked at. */
const LOOKED_AT = 3;
console.log(
  `\nwidth of the bands of promises after ${TESTS} tests of that rig, over that by tolerances alone: mean of the ratios`,
);
const [next, best, built] = [[] as Width[], [] as Width[], [] as Width[]];
for (const rig of rigs) {
  const learned = learnFrom(syntheticShop([rig], { count: TESTS, seed: 5, proofs }).machines);
  const proof = proofs.get(rig)!;
  const plain = confidenceOf(rig, proof);
  const ofNext = widths(rig, proof, plain, correctionsOf(rig, learnedDocument(learned))!);
  const ofBest = widths(rig, proof, plain, correctionsOf(rig, knownExactly(learned))!);
  const ofBuilt = Array.from({ length: LOOKED_AT }, (_, n) =>
    widths(rig, proof, plain, ownOf(learned, n)),
  ).flat();
  next.push(...ofNext);
  best.push(...ofBest);
  built.push(...ofBuilt);
  const [now, known, own] = [ofNext, ofBest, ofBuilt].map((list) => percent(meanOf(ratiosOf(list))));
  console.log(
    `  ${rig.document.id.padEnd(22)} next one ${now}, had all parts been known exactly ${known}; one that was tested ${own}`,
  );
}
const fallOf = (ratios: readonly number[]) => `${(100 * (1 - meanOf(ratios))).toFixed(1)} %`;
const ofAll = (list: readonly Width[]) => list.map((w) => w.ratio);
const [tested, untested] = [meanOf(ratiosOf(built)), meanOf(ratiosOf(next))];
console.log(`"falls by at least a third after ${TESTS} tests" can be read so (a third is 33.3 %):
  the next machine, promises that a test can teach                ${fallOf(ratiosOf(next))}
    ${ratiosOf(next, 'water').length} of them mostly taught by water, and ${ratiosOf(next, 'scale').length} by the scale       ${fallOf(ratiosOf(next, 'water'))} and ${fallOf(ratiosOf(next, 'scale'))}
    the most that it can be, had every part been known exactly    ${fallOf(ratiosOf(best))}: the rest is what copies differ by
  the tested machines, the same promises                          ${fallOf(ratiosOf(built))}
    of water, and of the scale                                    ${fallOf(ratiosOf(built, 'water'))} and ${fallOf(ratiosOf(built, 'scale'))}
  the shop: ${TESTS} tested and the next, the same promises            ${fallOf([(TESTS * tested + untested) / (TESTS + 1)])}
  the next machine, every promise with a band                     ${fallOf(ofAll(next))}
  the tested machines, every promise with a band                  ${fallOf(ofAll(built))}`);

console.log('what decides the bands that are left to the next machine: mean share of their variance');
const shares = new Map<string, number>();
const teachable = next.filter((w) => w.taughtBy !== undefined);
for (const { left } of teachable)
  for (const { kind, share } of left) shares.set(kind, (shares.get(kind) ?? 0) + share / teachable.length);
for (const [kind, share] of [...shares].sort((a, b) => b[1] - a[1]).slice(0, 10)) {
  const part = PART_SHARES[kind as ToleranceKind];
  const why =
    part === undefined
      ? 'no test of a new rig reads it'
      : `of its doubt ${percent(1 - part.share)} is one copy's own`;
  console.log(`  ${kind.padEnd(20)} ${percent(share).padStart(7)}  ${why}`);
}
