// What a proof of each demo rig costs: making a network of a duty and compiling it, the whole proof of all duties, and
// choosing the rig. "anew" is the proof of a rig that has just been read, as after each edit on the desk: what is remembered
// of a brief or an item does not help it; reading it is not counted. "work" is as much of such a proof as judges flow,
// pressure, suction, reach, agitation and drive power. Below stands what the time of the proofs goes into.
import { Session } from 'node:inspector';
import { compileNetwork } from '@spraywright/engine/hydraulics';
import {
  designRig,
  dutyNetwork,
  liquidOf,
  proveRig,
  proveWork,
  readRig,
  siteOf,
  type Rig,
} from '@spraywright/engine/rig';
import { demoBriefs, demoCatalogue, demoRig, demoShop } from '../test/demo.ts';

const catalogue = demoCatalogue();
const shop = demoShop();

/** What the profiler tells of a function: whom it called, and how often the program was found in it. */
interface Profile {
  readonly nodes: readonly {
    readonly id: number;
    readonly callFrame: { readonly functionName: string };
    readonly hitCount: number;
    readonly children?: readonly number[];
  }[];
}

const PASSES_ON = new Set(['proveRig', 'proveWork', 'guarded', 'map', 'bills']);
/** Documents of the rigs. */
const proven: unknown[] = [];

/** Median and least of repeated runs [µs]; making what a run works on is not counted. */
function time<T>(
  run: (on: T) => void,
  repeats: number,
  make: () => T = () => undefined as T,
): { median: number; least: number } {
  for (let i = 0; i < Math.min(repeats, 400); i++) run(make());
  const all: number[] = [];
  for (let i = 0; i < repeats; i++) {
    const on = make();
    const t = performance.now();
    run(on);
    all.push((performance.now() - t) * 1000);
  }
  all.sort((a, b) => a - b);
  return { median: all[all.length >> 1]!, least: all[0]! };
}

function readAnew(raw: unknown): Rig {
  const read = readRig(raw, catalogue);
  if (!read.ok) throw new Error(read.problems.map((p) => p.message).join('; '));
  return read.rig;
}

console.log(
  'rig                     duties  elements  to network  compile   together     proof least   median   anew least   median   work least   median   design',
);
console.log(
  '                                           median µs  median µs  median µs           µs       µs           µs       µs           µs       µs       ms',
);
for (const { name, raw: brief } of demoBriefs()) {
  const began = performance.now();
  const design = designRig(brief, catalogue, shop);
  const designMs = performance.now() - began;
  if (!design.ok) {
    console.log(`${name.padEnd(24)}no rig`);
    continue;
  }
  const { raw, rig } = demoRig(name, catalogue, shop);
  const duty = rig.brief.duties[0]!;
  const liquid = liquidOf(rig.brief, duty.liquid, siteOf(rig.brief));
  const toNetwork = time(() => void dutyNetwork(rig, duty, liquid), 2000);
  const { model } = dutyNetwork(rig, duty, liquid);
  const compile = time(() => void compileNetwork(model), 2000);
  const proof = time(() => void proveRig(rig, catalogue, shop, { notes: false }), 800);
  const anew = time(
    (read) => void proveRig(read, catalogue, shop, { notes: false }),
    800,
    () => readAnew(raw),
  );
  const work = time(
    (read) => void proveWork(read, { notes: false }),
    800,
    () => readAnew(raw),
  );
  const cells: readonly [value: number, width: number, decimals: number][] = [
    [rig.brief.duties.length, 6, 0],
    [model.elements.length, 10, 0],
    [toNetwork.median, 12, 1],
    [compile.median, 11, 1],
    [toNetwork.median + compile.median, 11, 1],
    [proof.least, 13, 0],
    [proof.median, 9, 0],
    [anew.least, 13, 0],
    [anew.median, 9, 0],
    [work.least, 13, 0],
    [work.median, 9, 0],
    [designMs, 9, 0],
  ];
  console.log(
    name.padEnd(24) + cells.map(([v, width, decimals]) => v.toFixed(decimals).padStart(width)).join(''),
  );
  proven.push(raw);
}

/** Time by the functions that a proof calls, found by looking at where it is every 100 µs; what they call counts as theirs. */
async function spenders(proofs: number): Promise<{ name: string; share: number }[]> {
  const session = new Session();
  session.connect();
  const ask = (method: string, with_: object = {}) =>
    new Promise<unknown>((done, failed) =>
      session.post(method, with_, (error, result) => (error === null ? done(result) : failed(error))),
    );
  await ask('Profiler.enable');
  await ask('Profiler.setSamplingInterval', { interval: 100 });
  await ask('Profiler.start');
  for (let i = 0; i < proofs; i++)
    for (const raw of proven) proveRig(readAnew(raw), catalogue, shop, { notes: false });
  const { profile } = (await ask('Profiler.stop')) as { profile: Profile };
  session.disconnect();
  const nodes = new Map(profile.nodes.map((n) => [n.id, n]));
  const times = new Map<string, number>();
  let whole = 0;
  const walk = (id: number, inProof: boolean, spender: string | undefined): void => {
    const { callFrame, children, hitCount } = nodes.get(id)!;
    const { functionName: called } = callFrame;
    const within = inProof || called === 'proveRig';
    // Not by the functions that only hand on to others.
    const named = called === '' || PASSES_ON.has(called) ? undefined : called;
    const by = spender ?? (within ? named : undefined);
    if (within) {
      whole += hitCount;
      times.set(by ?? 'proveRig', (times.get(by ?? 'proveRig') ?? 0) + hitCount);
    }
    for (const child of children ?? []) walk(child, within, by);
  };
  walk(profile.nodes[0]!.id, false, undefined);
  return [...times].map(([name, hits]) => ({ name, share: hits / whole })).sort((a, b) => b.share - a.share);
}

console.log('\nwhere the time of all these proofs goes');
for (const { name, share } of (await spenders(300)).slice(0, 24))
  console.log(`${(100 * share).toFixed(1).padStart(6)} %  ${name}`);
