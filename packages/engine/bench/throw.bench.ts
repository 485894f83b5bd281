// Time per shot and per best height. Run: node --import tsx packages/engine/bench/throw.bench.ts
import {
  bestHeightAtStandoff,
  bestThrowRange,
  throwOfShare,
  type ThrowStream,
} from '../src/physics/index.ts';

const TREE_GUN: ThrowStream = { jetDiameter: 0.0049, pressure: 2.76e6, quality: 0.75 };
const SOFT_WASH: ThrowStream = { jetDiameter: 0.0054, pressure: 4.14e5, quality: 0.3 };
const TRANSFER: ThrowStream = { jetDiameter: 0.0127, pressure: 5e5, quality: 1 };
const ROUNDS = 15;

/** Fastest and middle of several rounds, in microseconds a call: the machine may be busy with other work. */
function time(calls: number, call: (i: number) => number): { fastest: number; middle: number } {
  let sum = 0;
  const rounds: number[] = [];
  for (let round = 0; round <= ROUNDS; round++) {
    const start = performance.now();
    for (let i = 0; i < calls; i++) sum += call(i);
    if (round > 0) rounds.push(((performance.now() - start) / calls) * 1000);
  }
  if (!Number.isFinite(sum)) throw new Error('a throw gave no number');
  rounds.sort((a, b) => a - b);
  return { fastest: rounds[0]!, middle: rounds[ROUNDS >> 1]! };
}

/** A little different each time, so that nothing can be kept. */
const varied = (stream: ThrowStream, i: number): ThrowStream => ({
  ...stream,
  pressure: stream.pressure * (1 + i * 1e-5),
});

const rows: [string, { fastest: number; middle: number }][] = [];
for (const [name, stream, elevation, standoff] of [
  ['tree gun, 27.6 bar', TREE_GUN, 1.3, 5],
  ['soft wash, 4.1 bar', SOFT_WASH, 1.05, 6],
  ['transfer, 5 bar', TRANSFER, 0.56, 15],
] as const) {
  rows.push([
    `${name}: one shot to the ground`,
    time(3000, (i) => throwOfShare(varied(stream, i), elevation, 1.5, i & 1 ? 0.001 : 0.5).range),
  ]);
  rows.push([
    `${name}: best height at ${standoff} m, farthest, bulk and good stream`,
    time(300, (i) => bestHeightAtStandoff(varied(stream, i), standoff, 1.5).bulk),
  ]);
  rows.push([
    `${name}: best range, farthest, bulk and good stream`,
    time(300, (i) => bestThrowRange(varied(stream, i), 1.5).bulk),
  ]);
}
console.log('us per call: fastest round, middle round');
for (const [name, { fastest, middle }] of rows)
  console.log(`${fastest.toFixed(1).padStart(8)} ${middle.toFixed(1).padStart(8)}  ${name}`);
