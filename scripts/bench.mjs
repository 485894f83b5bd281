// npm run bench: every benchmark, each beside its peer in one process. `npm run bench -- solver` runs one, and hands on
// what comes behind its name: `npm run bench -- search tall-elms`.
import { ensureChromium, ensureInstalled, run, say } from './ensure.mjs';

ensureInstalled();
const benches = {
  solver: 'packages/engine/bench/solver.bench.ts',
  throw: 'packages/engine/bench/throw.bench.ts',
  proof: 'packages/app/bench/proof.bench.ts',
  day: 'packages/app/bench/day.bench.ts',
  confidence: 'packages/app/bench/confidence.bench.ts',
  search: 'packages/app/bench/search.bench.ts',
  growth: 'packages/app/bench/growth.bench.ts',
  exact: 'packages/app/bench/exact.bench.ts',
  learning: 'packages/app/bench/learning.bench.ts',
  learned: 'packages/app/bench/learned.bench.ts',
  records: 'packages/app/bench/records.bench.ts',
  reproof: 'packages/app/bench/reproof.bench.ts',
  fault: 'packages/app/bench/fault.bench.ts',
  desk: 'packages/app/bench/desk.bench.ts',
};
// Take many minutes: only when they are named.
const LONG = ['exact', 'growth'];
// What a search is allowed to hold; without a limit the machine lets waste lie for as long as there is room.
const HEAP = { search: 300, growth: 300 };
const only = process.argv[2];
for (const [name, file] of Object.entries(benches)) {
  if (only === undefined ? LONG.includes(name) : only !== name) continue;
  if (name === 'desk') ensureChromium();
  say(`\n== ${name}`);
  const heap = HEAP[name] === undefined ? [] : [`--max-old-space-size=${HEAP[name]}`];
  run('node', [...heap, '--conditions=source', '--import', 'tsx', file, ...process.argv.slice(3)]);
}
